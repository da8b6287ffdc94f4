import type { Active } from './bounds.ts';
import type { Ranges } from './ranges.ts';

/** Everything computed at one grade. */
export interface GradeResult {
  readonly rank: number;
  /** Statements of this grade or better. */
  readonly all: Active;
  /** The kept set: what ranges are computed from. */
  readonly kept: Active;
  readonly disputed: ReadonlySet<number>;
  readonly ranges: Ranges;
  /** Moments through which a contradiction of this grade or better passes. */
  readonly contradicted: ReadonlySet<number>;
}
