import { GRADES } from '../base/grade.ts';
import { isOfType } from '../model/entry.ts';
import terms from '../reference/trade-terms.json' with { type: 'json' };
import { type Block, list, paragraph, passage, passagesOf, type ReportDocument, section } from './document.ts';
import type { Matter } from './matter.ts';
import { nameOf } from './say-entry.ts';

/** Facts of the making of a report that no file knows. */
export interface Making {
  /** ISO date of the day on which it is made. */
  readonly built: string;
  readonly version: string;
}

const GRADE_MEANING: Readonly<Record<(typeof GRADES)[number], string>> = {
  established: 'nobody who has seen the evidence doubts it',
  probable: 'the evidence speaks for it, and nothing of weight against it',
  possible: 'there is something for it',
  conjectural: 'a guess that explains something',
};

/** How dates, grades, names and words are meant. */
export function conventions({ file }: Matter): readonly Block[] {
  const own = file.catalogue.workspace?.keys['grade-words'] ?? {};
  const circa = file.catalogue.workspace?.keys.circa ?? {};
  const widths = Object.entries(circa).map(([what, width]) => `${width} for a ${what}`);
  return [
    { kind: 'heading', level: 2, words: 'Conventions' },
    {
      kind: 'terms',
      terms: GRADES.map((grade) => ({ name: grade, passage: passage(`${own[grade] ?? GRADE_MEANING[grade]}.`) })),
    },
    ...list([
      passage(
        'A range says no more than the statements of a grade or better allow: it is a stretch in which an event lies, not its length.',
      ),
      passage(`“About” counts as so many years, months or days either side: ${widths.join(', ') || 'not set'}.`),
      passage(
        'Dates are those of the Gregorian calendar, where nothing else is said; documents keep the date that they bear.',
      ),
      passage(
        'Nothing is inferred of anybody’s conduct from dates. The order of dates does not say that an act was lawful or unlawful.',
      ),
      passage('Letters in brackets (EV-removal) are names of entries of the file, which are kept for ever.'),
    ]),
  ];
}

/** Terms of the trade that the document uses, each with its source and standing. */
export function glossary(document: Pick<ReportDocument, 'blocks'>): readonly Block[] {
  const words = passagesOf(document as ReportDocument)
    .map((one) => one.words)
    .join(' ')
    .toLowerCase();
  const used = terms.filter(({ term }) => isUsed(words, term));
  const said = used.map((one) => ({
    name: one.term,
    passage: passage(`${one.meaning} (${one.source}; ${one.standing}).`),
  }));
  return section(
    'Glossary',
    said.length === 0 ? [] : [{ kind: 'terms', terms: said }],
    'No term of the table is used.',
  );
}

function isUsed(words: string, term: string): boolean {
  const bare = term.toLowerCase().replace(/\s*\(.*\)$/, '');
  return new RegExp(`(?<![\\p{L}])${bare.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}(?![\\p{L}])`, 'u').test(words);
}

/** Beginnings of the names of entries. */
const PREFIXES: readonly (readonly [string, string])[] = [
  ['CL', 'claim: what a source says'],
  ['EV', 'event'],
  ['EX', 'examination'],
  ['FI', 'figure'],
  ['HO', 'holding: somebody having it for a time'],
  ['OB', 'object'],
  ['PA', 'party'],
  ['PE', 'physical evidence'],
  ['PL', 'place'],
  ['QU', 'question'],
  ['RD', 'reading'],
  ['RF', 'reference date'],
  ['SE', 'search'],
  ['SO', 'source'],
  ['TI', 'assertion of title'],
];

/** Beginnings of names that the document uses. */
export function abbreviations(document: Pick<ReportDocument, 'blocks'>): readonly Block[] {
  const rests = new Set(
    passagesOf(document as ReportDocument).flatMap((one) => one.rests.map((id) => id.split('-')[0])),
  );
  const used = PREFIXES.filter(([prefix]) => rests.has(prefix));
  const said = used.map(([name, meaning]) => ({ name, passage: passage(meaning) }));
  return section('Abbreviations', said.length === 0 ? [] : [{ kind: 'terms', terms: said }], 'None are used.');
}

/** Who wrote which entries, as the entries say. */
export function contributors({ file }: Matter): readonly Block[] {
  const byName = new Map<string, string[]>();
  for (const entry of file.catalogue.entries) {
    const who = entry.keys.by;
    if (who === undefined) continue;
    const name = file.catalogue.get(who) ? nameOf(file, who) : who;
    byName.set(name, [...(byName.get(name) ?? []), entry.id]);
  }
  const unsigned = file.catalogue.entries.filter(
    (entry) => entry.keys.by === undefined && entry.type !== 'workspace',
  ).length;
  const said = [...byName].map(([name, ids]) => passage(`${name}: ${ids.join(', ')}.`));
  const rest = unsigned === 0 ? [] : [passage(`${unsigned} entries do not say who recorded them.`)];
  return section('Contributors', list([...said, ...rest]), 'The entries do not say who recorded them.');
}

/** What this audience does not see, as far as that may be said. */
export function hiddenPart({ file }: Matter): readonly Block[] {
  const { holdsMore, audience } = file.catalogue;
  const partly = file.catalogue.entries.filter((entry) => (entry.withheld ?? []).length > 0);
  const said = holdsMore
    ? 'This file holds entries that are not shown to this audience; dates and gaps printed here rest on the shown entries only.'
    : 'Nothing is kept from this audience.';
  const lines = partly.map((entry) =>
    passage(`${nameOf(file, entry.id)}: some particulars are not shown.`, [entry.id]),
  );
  return section('What is withheld', [paragraph(`Made for the audience “${audience}”. ${said}`), ...list(lines)], '');
}

/** With which program and on which day it was made, which answers were sent, and what has changed since an older copy. */
export function versions({ file }: Matter, { built, version }: Making): readonly Block[] {
  const sent = file.catalogue.entries.flatMap((entry) =>
    isOfType(entry, 'inquiry') && entry.keys['sent-on']
      ? [passage(`Answer ${entry.id} sent ${entry.keys['sent-on']}.`, [entry.id])]
      : [],
  );
  return section(
    'Version',
    [
      paragraph(`Made on ${built} with Kerfmark ${version}, from ${file.catalogue.entries.length} entries.`),
      ...list(sent),
    ],
    '',
  );
}
