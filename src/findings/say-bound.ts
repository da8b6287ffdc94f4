import type { Side } from '../chronology/chronology.ts';
import { formatBound, type PrintedBound } from '../dates/wording.ts';
import { dated, words } from '../language/spoken.ts';

/** `not before 23 April 1933`, `not after about 1900`. */
export function sayBound(side: Side, bound: PrintedBound): string {
  const date = dated(formatBound(bound));
  return side === 'earliest' ? words('not before {0}', date) : words('not after {0}', date);
}
