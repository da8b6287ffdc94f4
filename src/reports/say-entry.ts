import { GRADES, type Grade } from '../base/grade.ts';
import { isDateProblem, readDate } from '../dates/read-date.ts';
import { formatExpression, formatRange } from '../dates/wording.ts';
import type { CaseFile } from '../findings/case-file.ts';
import { findChains } from '../findings/custody-chains.ts';
import { sayCertain, sayStretch } from '../findings/custody-words.ts';
import type { MomentRange } from '../findings/printed-range.ts';
import { shownRank } from '../findings/range-changes.ts';
import { titleOf } from '../model/catalogue.ts';
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
    words: formatRange(from, to),
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
  const read = readDate(edtf, 'gregorian', file.settings.dates);
  return isDateProblem(read) ? edtf : formatExpression(read);
}

/** What the file says of an entry, as a sentence; its title for entries that say nothing by themselves. */
export function sayEntry(file: CaseFile, id: string): Passage {
  const entry = file.catalogue.resolve(id.split('#')[0] as string)?.entry;
  if (!entry) return passage(id);
  const title = titleOf(entry, file.settings.languages);
  if (isOfType(entry, 'event')) {
    const { words, grade, cites } = sayEventDates(file, entry);
    return passage(`${title}: ${words}, on ${grade} statements.`, [entry.id], cites);
  }
  if (isOfType(entry, 'holding')) return sayHolding(file, entry);
  if (isOfType(entry, 'search')) return saySearch(file, entry);
  if (isOfType(entry, 'question'))
    return passage(`${title} (${entry.keys.state === 'answered' ? 'answered' : 'an open question'}).`, [entry.id]);
  if (isOfType(entry, 'title')) return sayTitle(file, entry);
  if (isOfType(entry, 'claim')) {
    const source = file.catalogue.get(entry.keys.source);
    return passage(`${title}${source ? `; ${titleOf(source, file.settings.languages)}` : ''} (${entry.keys.grade}).`, [
      entry.id,
      entry.keys.source,
    ]);
  }
  return passage(`${title}.`, [entry.id]);
}

function sayHolding(file: CaseFile, { id, keys }: Entry<'holding'>): Passage {
  const found = findChains(file)
    .flatMap((chain) => [...chain.holdings, ...chain.meanwhile])
    .find((one) => one.holding.id === id);
  const title = nameOf(file, id);
  const cites = statementsOf(file, id);
  if (!found) return passage(`${title}.`, [id]);
  const held = found.throughout || found.recorded ? `held ${sayCertain(found)}; ` : '';
  return passage(
    `${title}: ${sayCapacity(keys.capacity)}; ${held}possibly ${sayStretch(found.possibly)}.`,
    [id],
    cites,
  );
}

/** In what capacity, as part of a sentence. */
export function sayCapacity(capacity: Keys<'holding'>['capacity']): string {
  return capacity === 'unknown' ? 'in a capacity that is not known' : `as ${capacity}`;
}

/** Where was looked, when, and what came of it. */
export function saySearch(file: CaseFile, { id, keys }: Entry<'search'>): Passage {
  const scope = [
    keys.scope?.series,
    keys.scope?.from || keys.scope?.to ? `${keys.scope.from ?? ''}–${keys.scope.to ?? ''}` : undefined,
  ].filter((part) => part !== undefined);
  const found = (keys.found ?? []).map((one) => nameOf(file, one));
  return passage(
    `${keys.repository}${scope.length > 0 ? ` (${scope.join(', ')})` : ''}, looking for ${keys.for}${keys.when ? `, ${sayDate(file, keys.when)}` : ''}: ${keys.outcome}${found.length > 0 ? `: ${found.join('; ')}` : ''}${keys.scope?.missing ? `; could not be seen: ${keys.scope.missing}` : ''}.`,
    [id, ...(keys.found ?? [])],
  );
}

/** An assertion of title; a legal position of the party named, not a finding. */
export function sayTitle(file: CaseFile, { id, keys }: Entry<'title'>): Passage {
  const interest = keys.interest.charAt(0).toUpperCase() + keys.interest.slice(1);
  const time = `${keys.begins ? `, from ${sayDate(file, keys.begins)}` : ''}${keys.ends ? ` until ${sayDate(file, keys.ends)}` : ''}`;
  const ground = keys.ground === 'none stated' ? 'no ground stated' : `on the ground of ${keys.ground}`;
  return passage(`${interest}, asserted by ${nameOf(file, keys['asserted-by'])}, ${ground}${time}.`, [
    id,
    ...(keys.source ? [keys.source] : []),
  ]);
}
