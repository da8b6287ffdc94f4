import { phrase, type Said } from '../base/said.ts';
import type { Side } from '../chronology/chronology.ts';
import type { PrintedBound } from '../dates/printed-bound.ts';
import { sayDateOf } from '../language/date-words.ts';

/** `not before 23 April 1933`, `not after about 1900`. */
export function sayBound(side: Side, bound: PrintedBound): Said {
  const date = sayDateOf(bound);
  return side === 'earliest' ? phrase('not before {0}', date) : phrase('not after {0}', date);
}
