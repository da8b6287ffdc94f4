import { GRADES } from '../base/grade.ts';
import { phrase, type Said } from '../base/said.ts';
import type { Sayer } from '../language/sayer.ts';
import { citationOf } from '../model/row-citation.ts';
import terms from '../reference/trade-terms.json' with { type: 'json' };
import { type Block, list, paragraph, passage, passagesOf, type ReportDocument, section } from './document.ts';
import { bearing, type Matter } from './matter.ts';
import { nameOf } from './say-entry.ts';

/** Facts of the making of a report that no file knows. */
export interface Making {
  /** ISO date of the day on which it is made. */
  readonly built: string;
  readonly version: string;
}

const GRADE_MEANING: Readonly<Record<(typeof GRADES)[number], Said>> = {
  established: phrase('nobody who has seen the evidence doubts it'),
  probable: phrase('the evidence speaks for it, and nothing of weight against it'),
  possible: phrase('there is something for it'),
  conjectural: phrase('a guess that explains something'),
};

/** How dates, grades, names and words are meant. */
export function conventions({ file }: Matter): readonly Block[] {
  const { words, term, say } = file.sayer;
  const own = file.catalogue.workspace?.keys['grade-words'] ?? {};
  const circa = file.catalogue.workspace?.keys.circa ?? {};
  const widths = Object.entries(circa).map(([what, width]) => words('{0} for a {1}', width, what));
  return [
    { kind: 'heading', level: 2, words: words('Conventions') },
    {
      kind: 'terms',
      terms: GRADES.map((grade) => ({
        name: term(grade),
        passage: passage(`${own[grade] ?? say(GRADE_MEANING[grade])}.`),
      })),
    },
    ...list([
      passage(
        words(
          'A range says no more than the statements of a grade or better allow: it is a stretch in which an event lies, not its length.',
        ),
      ),
      passage(
        words(
          '“About” counts as so many years, months or days either side: {0}.',
          widths.join(', ') || words('not set'),
        ),
      ),
      passage(
        words(
          'Dates are those of the Gregorian calendar, where nothing else is said; documents keep the date that they bear.',
        ),
      ),
      passage(
        words(
          'Nothing is inferred of anybody’s conduct from dates. The order of dates does not say that an act was lawful or unlawful.',
        ),
      ),
      passage(words('Names such as EV-removal, in notes, are those of entries of the file, which are kept for ever.')),
    ]),
  ];
}

/** Terms of the trade that the document uses, each with its source. */
export function glossary(sayer: Sayer, document: Pick<ReportDocument, 'blocks'>): readonly Block[] {
  const { words } = sayer;
  const text = passagesOf(document as ReportDocument)
    .map((one) => one.words)
    .join(' ')
    .toLowerCase();
  const used = terms.filter((one) => isUsed(text, one.term));
  const said = used.map((one) => ({
    name: one.term,
    passage: passage(words('{0} ({1}).', one.meaning, citationOf(one))),
  }));
  return section(words('Glossary'), said.length === 0 ? [] : [{ kind: 'terms', terms: said }]);
}

function isUsed(text: string, term: string): boolean {
  const bare = term.toLowerCase().replace(/\s*\(.*\)$/, '');
  return new RegExp(`(?<![\\p{L}])${bare.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}(?![\\p{L}])`, 'u').test(text);
}

/** Beginnings of the names of entries. */
const PREFIXES: readonly (readonly [string, Said])[] = [
  ['CL', phrase('claim: what a source says')],
  ['EV', phrase('event')],
  ['EX', phrase('examination')],
  ['FI', phrase('figure')],
  ['HO', phrase('holding: somebody having it for a time')],
  ['OB', phrase('object')],
  ['PA', phrase('party')],
  ['PE', phrase('physical evidence')],
  ['PL', phrase('place')],
  ['QU', phrase('question')],
  ['RD', phrase('reading')],
  ['RF', phrase('reference date')],
  ['SE', phrase('search')],
  ['SO', phrase('source')],
  ['TI', phrase('assertion of title')],
];

/** Beginnings of names that the document uses. */
export function abbreviations(sayer: Sayer, document: Pick<ReportDocument, 'blocks'>): readonly Block[] {
  const { words, say } = sayer;
  const rests = new Set(
    passagesOf(document as ReportDocument).flatMap((one) => one.rests.map((id) => id.split('-')[0])),
  );
  const used = PREFIXES.filter(([prefix]) => rests.has(prefix));
  const said = used.map(([name, meaning]) => ({ name, passage: passage(say(meaning)) }));
  return section(words('Abbreviations'), said.length === 0 ? [] : [{ kind: 'terms', terms: said }]);
}

/** Who wrote which entries, as the entries say. */
export function contributors({ file, dossier }: Matter): readonly Block[] {
  const { words } = file.sayer;
  const byName = new Map<string, string[]>();
  for (const entry of dossier) {
    const who = entry.keys.by;
    if (who === undefined) continue;
    const name = file.catalogue.get(who) ? nameOf(file, who) : who;
    byName.set(name, [...(byName.get(name) ?? []), entry.id]);
  }
  const unsigned = dossier.filter((entry) => entry.keys.by === undefined && entry.type !== 'workspace').length;
  const said = [...byName].map(([name, ids]) => passage(words('{0}: {1}.', name, ids.join(', '))));
  const rest =
    unsigned === 0
      ? []
      : [passage(words('{0, plural, one {One entry does} other {# entries do}} not say who recorded it.', unsigned))];
  return section(words('Contributors'), list([...said, ...rest]), words('The entries do not say who recorded them.'));
}

/** What this audience does not see, as far as that may be said. */
export function hiddenPart({ file, dossier }: Matter): readonly Block[] {
  const { words, term } = file.sayer;
  const { holdsMore, audience } = file.catalogue;
  const partly = dossier.filter((entry) => (entry.withheld ?? []).length > 0);
  const said = holdsMore
    ? words(
        'This file holds entries that are not shown to this audience; dates and gaps printed here rest on the shown entries only.',
      )
    : words('Nothing is kept from this audience.');
  const lines = partly.map((entry) =>
    passage(words('{0}: some particulars are not shown.', nameOf(file, entry.id)), [entry.id]),
  );
  return section(
    words('What is withheld'),
    [paragraph(words('Made for the audience “{0}”. {1}', term(audience), said)), ...list(lines)],
    '',
  );
}

/** With which program and on which day it was made, which answers were sent, and what has changed since an older copy. */
export function versions(matter: Matter, { built, version }: Making): readonly Block[] {
  const { words } = matter.file.sayer;
  const { file } = matter;
  const sent = bearing(matter, 'inquiry').flatMap((entry) =>
    entry.keys['sent-on'] ? [passage(words('Answer {0} sent {1}.', entry.id, entry.keys['sent-on']), [entry.id])] : [],
  );
  return section(
    words('Version'),
    [
      paragraph(
        words('Made on {0} with Kerfmark {1}, from {2} entries.', built, version, file.catalogue.entries.length),
      ),
      ...list(sent),
    ],
    '',
  );
}
