import { GRADES } from '../base/grade.ts';
import { groupBy } from '../base/group-by.ts';
import { phrase, type Said, sameSaid } from '../base/said.ts';
import type { Tried } from '../chronology/chronology.ts';
import type { BoundChange } from '../chronology/worth.ts';
import { sayDateOf } from '../language/date-words.ts';
import { titleOf } from '../model/catalogue.ts';
import type { FileStatement, Moment } from '../statements/statements.ts';
import type { CaseFile } from './case-file.ts';
import { type PrintedRange, printedBound, printedRange, UNBOUNDED } from './printed-range.ts';
import { type GradedRanges, type RangeChange, rangeChanges } from './range-changes.ts';
import { sayBound } from './say-bound.ts';

/** A date of an entry that is another one without some statements. */
export interface EntryChange extends RangeChange {
  readonly entry: string;
  readonly title: string;
}

/** Dates that are others, and how many more move by less than they are printed to. */
export interface SaidChanges {
  readonly changes: readonly EntryChange[];
  readonly finer: number;
}

/** A bound in words as it is at a grade without some statements. */
export function sayBoundWithout(
  file: CaseFile,
  moment: Moment,
  rank: number,
  side: 'earliest' | 'latest',
  withdrawn: readonly FileStatement[],
): Said {
  const bound = printedBound(withoutThese(file, withdrawn), file.statements.used, rank, moment.index, side);
  const now = file.rangesOf(moment)[rank]?.[side];
  if (bound && now && sameSaid(sayDateOf(bound), sayDateOf(now)))
    return phrase('a little further, by less than what is printed');
  return bound ? sayBound(side, bound) : phrase('no limit known');
}

/** Tells the dates that a withdrawal changes, entry by entry, each no finer than what it rests on. */
export function sayChanges(
  file: CaseFile,
  changes: readonly BoundChange[],
  withdrawn: readonly FileStatement[],
): SaidChanges {
  if (changes.length === 0) return { changes: [], finer: 0 };
  const without = withoutThese(file, withdrawn);
  const moments = file.statements.moments.all;
  const ranks = new Set(changes.map((one) => one.rank));
  const entries = [...groupBy(changes, (one) => (moments[one.moment] as Moment).entry).keys()];
  let finer = 0;
  const told = entries.flatMap((id): readonly EntryChange[] => {
    const mine = file.statements.moments.ofEntry(id);
    const entry = file.catalogue.get(id);
    const rangesIn = (chronology: Tried): GradedRanges => gradedRanges(file, chronology, mine, ranks);
    const found = rangeChanges(rangesIn(file.chronology), rangesIn(without));
    if (found.length === 0) finer += 1;
    return found.map((one) => ({ ...one, entry: id, title: entry ? titleOf(entry, file.settings.languages) : id }));
  });
  return { changes: told, finer };
}

function withoutThese(file: CaseFile, withdrawn: readonly FileStatement[]): Tried {
  return file.trial({ withdrawn: new Set(withdrawn.map((one) => file.placeOf(one))) });
}

/** Printed ranges of an entry's moments at the ranks that are asked about. */
function gradedRanges(
  file: CaseFile,
  chronology: Tried,
  moments: readonly Moment[],
  ranks: ReadonlySet<number>,
): GradedRanges {
  const ranges = (moment: Moment | undefined): readonly PrintedRange[] =>
    GRADES.map((_, rank) => {
      if (!moment || !ranks.has(rank)) return UNBOUNDED;
      return printedRange(chronology, file.statements.used, rank, moment.index);
    });
  return { starts: ranges(moments[0]), ends: ranges(moments.at(-1)) };
}
