import { type Active, isCrossed, propagate } from './bounds.ts';
import { searchChoices } from './choices.ts';
import type { Compiled } from './compiled.ts';

/**
 * True where the active statements can hold together: some choice of members of the dates with
 * gaps leaves every moment a day. A search that is cut off counts as consistent (nothing is
 * called a contradiction that was not shown to be one).
 */
export function isConsistent(compiled: Compiled, active: Active): boolean {
  if (isCrossed(propagate(compiled, active))) return false;
  if (!compiled.splitting.some((statement) => active[statement])) return true;
  return searchChoices(compiled, active, true).consistent !== false;
}
