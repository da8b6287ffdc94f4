import { GRADES, type Grade, rankOf } from '../base/grade.ts';
import { phrase, type Said, sameSaid } from '../base/said.ts';
import { coarsest } from '../dates/expression.ts';
import type { PrintedBound } from '../dates/printed-bound.ts';
import { fromTo, type GradedRange, type PrintedRange, sayRange, UNBOUNDED } from './printed-range.ts';

/** An entry with the ranges of its beginning and its end at the four grades. */
export interface EntryRanges {
  readonly id: string;
  readonly title: string;
  readonly starts: readonly GradedRange[];
  readonly ends: readonly GradedRange[];
  /** The two days that cross where statements cannot all be right. */
  readonly crossing: { readonly earliest: number; readonly latest: number } | null;
}

/** The printed grade; where statements contradict each other there, the last grade at which none do. */
export function shownRank(printedGrade: Grade, starts: readonly GradedRange[], ends: readonly GradedRange[]): number {
  let rank = rankOf(printedGrade);
  while (rank > 0 && !(starts[rank]?.consistent && ends[rank]?.consistent)) rank -= 1;
  return rank;
}

/** The beginning and the end of something at the four grades. */
export interface GradedRanges {
  readonly starts: readonly PrintedRange[];
  readonly ends: readonly PrintedRange[];
}

/** A range that is another one, told once for all grades at which it is. */
export interface RangeChange {
  /** From the earliest beginning to the latest end; or one end alone, where only that moved. */
  readonly of: 'whole' | 'beginning' | 'end';
  readonly grades: readonly Grade[];
  readonly was: Said;
  readonly is: Said;
  readonly effect: 'widens' | 'narrows' | 'moves';
}

/** Changes of the ranges of one thing. A change finer than the dates are printed is not told. */
export function rangeChanges(before: GradedRanges, after: GradedRanges): readonly RangeChange[] {
  const whole = (ranges: GradedRanges): readonly PrintedRange[] =>
    ranges.starts.map((start, rank) => fromTo(start, ranges.ends[rank]));
  const outer = changes('whole', whole(before), whole(after));
  if (outer.length > 0) return outer;
  return [...changes('beginning', before.starts, after.starts), ...changes('end', before.ends, after.ends)];
}

function changes(
  of: RangeChange['of'],
  before: readonly PrintedRange[],
  after: readonly PrintedRange[],
): readonly RangeChange[] {
  const told: (RangeChange & { readonly grades: Grade[] })[] = [];
  after.forEach((range, rank) => {
    const old = before[rank] ?? UNBOUNDED;
    const [was, is] = alike(old, range);
    if (sameSaid(was, is)) return;
    const grade = GRADES[rank] as Grade;
    const known = told.find((one) => sameSaid(one.was, was) && sameSaid(one.is, is));
    if (known) known.grades.push(grade);
    else told.push({ of, grades: [grade], was, is, effect: effectOf(old, range) });
  });
  return told;
}

/** Both ranges in words, each pair of bounds no finer than the coarser of the two, so that they can be compared. */
function alike(before: PrintedRange, after: PrintedRange): readonly [Said, Said] {
  const pair = (
    a: PrintedBound | null,
    b: PrintedBound | null,
  ): readonly [PrintedBound | null, PrintedBound | null] => {
    if (!a || !b) return [a, b];
    const precision = coarsest([a.precision, b.precision]);
    return [
      { ...a, precision },
      { ...b, precision },
    ];
  };
  const [firstBefore, firstAfter] = pair(before.earliest, after.earliest);
  const [lastBefore, lastAfter] = pair(before.latest, after.latest);
  return [
    sayRange({ earliest: firstBefore, latest: lastBefore }),
    sayRange({ earliest: firstAfter, latest: lastAfter }),
  ];
}

function effectOf(before: PrintedRange, after: PrintedRange): RangeChange['effect'] {
  const first = (range: PrintedRange): number => range.earliest?.day ?? Number.NEGATIVE_INFINITY;
  const last = (range: PrintedRange): number => range.latest?.day ?? Number.POSITIVE_INFINITY;
  if (first(after) <= first(before) && last(after) >= last(before)) return 'widens';
  return first(after) >= first(before) && last(after) <= last(before) ? 'narrows' : 'moves';
}

/** `the beginning of “Taken off the wall”`, or the title alone for the whole. */
export function sayChanged(of: RangeChange['of'], title: string): Said {
  if (of === 'whole') return phrase('“{0}”', title);
  return of === 'beginning' ? phrase('the beginning of “{0}”', title) : phrase('the end of “{0}”', title);
}
