import { GRADES, type Grade } from '../base/grade.ts';
import { isDateProblem, readDate } from '../dates/read-date.ts';
import type { CaseFile } from '../findings/case-file.ts';
import { findChains } from '../findings/custody-chains.ts';
import { sayCertain, sayStretch } from '../findings/custody-words.ts';
import { type MomentRange, sayRange } from '../findings/printed-range.ts';
import { shownRank } from '../findings/range-changes.ts';
import { sayExpression } from '../language/date-words.ts';
import type { Sayer } from '../language/sayer.ts';
import { inLanguage, titleOf } from '../model/catalogue.ts';
import { type Entry, isOfType, type Keys } from '../model/entry.ts';
import { type Passage, passage } from './document.ts';

/** The dates of an event as they are printed, with the grade and the statements that they rest on. */
export interface SaidDates {
  readonly words: string;
  readonly grade: Grade;
  readonly cites: readonly string[];
}

/**
 * From the earliest beginning to the latest end, at the printed grade or the last one below which nothing disagrees;
 * told with the best grade that gives the same days, and at a weaker one where only that one bounds anything.
 */
export function sayEventDates(file: CaseFile, event: Entry<'event'>): SaidDates {
  const { say } = file.sayer;
  const [starts = [], ends = []] = (['start', 'end'] as const).map((edge) => {
    const moment = file.statements.moments.momentOf(event.id, edge);
    return moment ? file.rangesOf(moment) : [];
  });
  const at = (rank: number): readonly [MomentRange['earliest'], MomentRange['latest']] => [
    starts[rank]?.earliest ?? null,
    ends[rank]?.latest ?? null,
  ];
  const isOpen = (rank: number): boolean => at(rank).every((bound) => bound === null);
  const sameDays = (one: number, other: number): boolean =>
    at(one).every((bound, i) => bound?.day === at(other)[i]?.day);
  const stands = (rank: number): boolean => starts[rank]?.consistent === true && ends[rank]?.consistent === true;
  let rank = shownRank(file.settings.printedGrade, starts, ends);
  while (isOpen(rank) && stands(rank + 1)) rank += 1;
  while (rank > 0 && sameDays(rank, rank - 1)) rank -= 1;
  const [from, to] = at(rank);
  return {
    words: say(sayRange({ earliest: from, latest: to })),
    grade: GRADES[rank] ?? 'established',
    cites: [...(from?.because ?? []), ...(to?.because ?? [])].map((one) => one.id),
  };
}

/** The title of an entry in the languages of the file; the id where it is not shown. */
export function nameOf(file: CaseFile, id: string): string {
  const target = file.catalogue.resolve(id.split('#')[0] as string);
  if (!target) return id;
  const title = titleOf(target.entry, file.settings.languages);
  return target.part === null ? title : `${title}, ${target.part}`;
}

/** Statements about a holding that take part in the computing. */
export function statementsOf(file: CaseFile, holding: string): readonly string[] {
  return file.statementsAbout(holding).flatMap((one) => (one.notUsed === null ? [one.id] : []));
}

/** An EDTF date of an entry in words. */
export function sayDate(file: CaseFile, edtf: string): string {
  const { say } = file.sayer;
  const read = readDate(edtf, 'gregorian', file.settings.dates);
  return isDateProblem(read) ? edtf : say(sayExpression(read));
}

/** How fine an EDTF date of an entry is, by which a language chooses its words around it. */
export function finenessOf(file: CaseFile, edtf: string): string {
  const read = readDate(edtf, 'gregorian', file.settings.dates);
  if (isDateProblem(read)) return 'year';
  return read.approximate ? 'about' : read.precision;
}

/** What the file says of an entry, as a sentence; its title for entries that say nothing by themselves. */
export function sayEntry(file: CaseFile, id: string): Passage {
  const { words, term } = file.sayer;
  const entry = file.catalogue.resolve(id.split('#')[0] as string)?.entry;
  if (!entry) return passage(id);
  const title = titleOf(entry, file.settings.languages);
  if (isOfType(entry, 'event')) {
    const { words: dates, grade, cites } = sayEventDates(file, entry);
    return passage(words('{0}: {1}, on {2} statements.', title, dates, term(grade)), [entry.id], cites);
  }
  if (isOfType(entry, 'holding')) return sayHolding(file, entry);
  if (isOfType(entry, 'search')) return saySearch(file, entry);
  if (isOfType(entry, 'question'))
    return passage(`${title} (${entry.keys.state === 'answered' ? words('answered') : words('an open question')}).`, [
      entry.id,
    ]);
  if (isOfType(entry, 'title')) return sayTitle(file, entry);
  if (isOfType(entry, 'claim')) {
    const source = file.catalogue.get(entry.keys.source);
    const narrator = entry.keys.narrator ? words(', told by {0}', entry.keys.narrator) : '';
    const quoted = sayQuote(file, entry);
    return passage(
      `${title}${narrator}${quoted}${source ? `${file.sayer.semicolon}${titleOf(source, file.settings.languages)}` : ''} (${term(entry.keys.grade)}).`,
      [entry.id, entry.keys.source],
    );
  }
  return passage(`${title}.`, [entry.id]);
}

/** The very words of a claim, with their language where it is recorded, and a translation beside them. */
function sayQuote(file: CaseFile, { keys }: Entry<'claim'>): string {
  if (keys.quote === undefined) return '';
  const { languages } = file.settings;
  const language = keys['quote-language'] ? ` (${keys['quote-language']})` : '';
  const translation = keys.translation ? ` [${inLanguage(keys.translation, languages)}]` : '';
  return file.sayer.words(': “{0}”{1}', inLanguage(keys.quote, languages), `${language}${translation}`);
}

function sayHolding(file: CaseFile, { id, keys }: Entry<'holding'>): Passage {
  const { words, say } = file.sayer;
  const found = findChains(file)
    .flatMap((chain) => [...chain.holdings, ...chain.meanwhile])
    .find((one) => one.holding.id === id);
  const title = nameOf(file, id);
  const cites = statementsOf(file, id);
  if (!found) return passage(`${title}.`, [id]);
  const held = found.throughout || found.recorded ? words('held {0}; ', say(sayCertain(found))) : '';
  return passage(
    words(
      '{0}: {1}; {2}possibly {3}.',
      title,
      sayCapacity(file.sayer, keys.capacity),
      held,
      say(sayStretch(found.possibly)),
    ),
    [id],
    cites,
  );
}

/** In what capacity, as part of a sentence. */
export function sayCapacity(sayer: Sayer, capacity: Keys<'holding'>['capacity']): string {
  const { words, term } = sayer;
  return capacity === 'unknown' ? words('in a capacity that is not known') : words('as {0}', term(capacity));
}

/** Where was looked, when, and what came of it. */
export function saySearch(file: CaseFile, { id, keys }: Entry<'search'>): Passage {
  const { words, term } = file.sayer;
  const scope = [
    keys.scope?.series,
    keys.scope?.from || keys.scope?.to ? `${keys.scope.from ?? ''}–${keys.scope.to ?? ''}` : undefined,
  ].filter((part) => part !== undefined);
  const found = (keys.found ?? []).map((one) => nameOf(file, one));
  const who = (keys.searcher ?? []).map((one) => nameOf(file, one));
  return passage(
    words(
      '{0}{1}, looking for {2}{3}{7}: {4}{5}{6}.',
      keys.repository,
      scope.length > 0 ? ` (${scope.join(', ')})` : '',
      keys.for,
      keys.when ? `, ${sayDate(file, keys.when)}` : '',
      term(keys.outcome),
      found.length > 0 ? words(': {0}', found.join(file.sayer.semicolon)) : '',
      keys.scope?.missing ? words('; could not be seen: {0}', keys.scope.missing) : '',
      who.length > 0 ? ` (${who.join(', ')})` : '',
    ),
    [id, ...(keys.found ?? [])],
  );
}

/** An assertion of title; a legal position of the party named, not a finding. */
export function sayTitle(file: CaseFile, { id, keys }: Entry<'title'>): Passage {
  const { term, words } = file.sayer;
  const interest = capital(term(keys.interest));
  const time = `${keys.begins ? words(', from {0}', sayDate(file, keys.begins), finenessOf(file, keys.begins)) : ''}${keys.ends ? words(' until {0}', sayDate(file, keys.ends), finenessOf(file, keys.ends)) : ''}`;
  const ground =
    keys.ground === 'none stated' ? words('no ground stated') : words('on the ground of {0}', term(keys.ground));
  const by = (keys['recognised-by'] ?? []).map((who) => (file.catalogue.get(who) ? nameOf(file, who) : who));
  const recognised = by.length > 0 ? words('; recognised by {0}', file.sayer.list(by)) : '';
  return passage(
    words('{0}, asserted by {1}, {2}{3}{4}.', interest, nameOf(file, keys['asserted-by']), ground, time, recognised),
    [id, ...(keys.source ? [keys.source] : [])],
  );
}

/** With a capital letter at the head. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
