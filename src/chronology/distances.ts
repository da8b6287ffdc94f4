import { type Active, propagate } from './bounds.ts';
import { AXIOM, type Compiled } from './compiled.ts';

/**
 * Least number of days by which the moment `to` lies after the moment `from` (negative: it may lie
 * that much before), over all solutions of the active statements; minus infinity where nothing ties
 * them. The greatest distance is minus the least one the other way round.
 */
export function leastDistance(compiled: Compiled, active: Active, from: number, to: number): number {
  const bounds = propagate(compiled, active);
  const throughOrigin = (bounds.earliest[to] as number) - (bounds.latest[from] as number);
  const label = new Float64Array(compiled.moments).fill(Number.NEGATIVE_INFINITY);
  label[from] = 0;
  for (let round = 0; round <= compiled.moments; round += 1) {
    let changed = false;
    for (const moment of compiled.order) {
      for (let k = compiled.outStart[moment] as number; k < (compiled.outStart[moment + 1] as number); k += 1) {
        const link = compiled.outList[k] as number;
        const owner = compiled.owner[link] as number;
        if (owner !== AXIOM && !active[owner]) continue;
        const target = compiled.to[link] as number;
        const days = (label[moment] as number) + (compiled.days[link] as number);
        if (days > (label[target] as number)) {
          label[target] = days;
          changed = true;
        }
      }
    }
    if (!changed) break;
  }
  return Math.max(label[to] as number, Number.isNaN(throughOrigin) ? Number.NEGATIVE_INFINITY : throughOrigin);
}
