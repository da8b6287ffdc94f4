import { GRADES, type Grade } from '../base/grade.ts';
import type { Said } from '../base/said.ts';
import type { Chronology, Side, Tried } from '../chronology/chronology.ts';
import { coarsest, type Precision } from '../dates/expression.ts';
import type { PrintedBound } from '../dates/printed-bound.ts';
import { sayBounds } from '../language/date-words.ts';
import type { FileStatement } from '../statements/statements.ts';

/** A range as it is printed: of a moment at a grade, or from the beginning of something to its end. */
export interface PrintedRange {
  /** Null where nothing bounds it. */
  readonly earliest: PrintedBound | null;
  readonly latest: PrintedBound | null;
}

/** A printed range that may be in dispute. */
export interface GradedRange extends PrintedRange {
  /** False where statements that cannot all be right pass through it. */
  readonly consistent: boolean;
}

/** A bound of a moment at a grade, with why and how fine it may be printed. */
export interface MomentBound extends PrintedBound {
  /** Statements that it rests on, in the order of the argument. */
  readonly because: readonly FileStatement[];
}

/** The range of a moment at one grade. */
export interface MomentRange extends GradedRange {
  readonly grade: Grade;
  readonly earliest: MomentBound | null;
  readonly latest: MomentBound | null;
  /** Statements in dispute that alone would tighten or contradict this moment. */
  readonly setAside: readonly FileStatement[];
  /** Separate stretches, where a date with gaps leaves two or more. */
  readonly alternatives: readonly { readonly earliest: number; readonly latest: number }[];
  readonly exact: boolean;
}

/** Ranges of a moment at the four grades. */
export function rangesOfMoment(
  chronology: Chronology,
  used: readonly FileStatement[],
  moment: number,
): readonly MomentRange[] {
  return GRADES.map((grade, rank) => {
    const result = chronology.grades[rank] as Chronology['grades'][number];
    return {
      grade,
      earliest: boundOf(chronology, used, rank, moment, 'earliest'),
      latest: boundOf(chronology, used, rank, moment, 'latest'),
      consistent: !chronology.isContradicted(rank, moment),
      setAside: chronology.setAside(rank, moment).map((i) => used[i] as FileStatement),
      alternatives: chronology.stretches(rank, moment),
      exact: !result.ranges.inexact.has(moment),
    };
  });
}

function boundOf(
  chronology: Chronology,
  used: readonly FileStatement[],
  rank: number,
  moment: number,
  side: Side,
): MomentBound | null {
  const bound = printedBound(chronology, used, rank, moment, side);
  if (!bound) return null;
  return {
    ...bound,
    because: chronology.reason(rank, moment, side).statements.map((i) => used[i] as FileStatement),
  };
}

/** What has to be known of a statement to print a bound that rests on it. */
export interface PrintableStatement {
  readonly precision: Precision;
  readonly about: boolean;
}

/** A bound as it may be printed: no finer than the coarsest of what it rests on. Null where it is open. */
export function printedBound(
  chronology: Tried,
  used: readonly PrintableStatement[],
  rank: number,
  moment: number,
  side: Side,
): PrintedBound | null {
  const day = chronology.day(rank, moment, side);
  if (!Number.isFinite(day)) return null;
  const because = chronology.reason(rank, moment, side).statements.map((i) => used[i] as PrintableStatement);
  // Past the cap of a search a bound may have no reason to tell; it is then printed no finer than a year.
  const precision = because.length === 0 ? 'year' : coarsest(because.map((one) => one.precision));
  return { day, precision, about: because.some((one) => one.about) };
}

/** A moment at one grade as it may be printed in some chronology of a file. */
export function printedRange(
  chronology: Tried,
  used: readonly PrintableStatement[],
  rank: number,
  moment: number,
): PrintedRange {
  return {
    earliest: printedBound(chronology, used, rank, moment, 'earliest'),
    latest: printedBound(chronology, used, rank, moment, 'latest'),
  };
}

/** A moment at the four grades. A bound that no further grade moves keeps its reason, and so the way in which it is printed. */
export function printedRanges(
  chronology: Tried,
  used: readonly PrintableStatement[],
  moment: number,
): readonly GradedRange[] {
  return GRADES.map((_, rank) => ({
    ...printedRange(chronology, used, rank, moment),
    consistent: !chronology.isContradicted(rank, moment),
  }));
}

/** What nothing bounds. */
export const UNBOUNDED: PrintedRange = { earliest: null, latest: null };

/** From the beginning of something to its end. */
export function fromTo(first: PrintedRange | undefined, last: PrintedRange | undefined): PrintedRange {
  return { earliest: first?.earliest ?? null, latest: last?.latest ?? null };
}

/** A range in words: the one way in which ranges are printed. */
export function sayRange({ earliest, latest }: PrintedRange): Said {
  return sayBounds(earliest, latest);
}
