import type { Day } from './day.ts';
import type { Precision } from './expression.ts';

/** A bound as it may be printed. */
export interface PrintedBound {
  readonly day: Day;
  readonly precision: Precision;
  /** Rests on an "about". */
  readonly about: boolean;
}
