import { oncePerBoth } from '../base/once.ts';
import { type Active, type Bounds, propagate } from './bounds.ts';
import { AXIOM, type Compiled } from './compiled.ts';

/** Bounds of a set of statements that is asked about again and again; they live as long as the set. */
const boundsOf = oncePerBoth((active: Active, compiled: Compiled): Bounds => propagate(compiled, active));

/**
 * Least number of days by which the moment `to` lies after the moment `from` (negative: it may lie
 * that much before), over all solutions of the active statements; minus infinity where nothing ties
 * them. The greatest distance is minus the least one the other way round. Only moments that links reach from `from` are
 * visited; in a loop that adds up, which has no solution, each is visited only as often as there are moments.
 */
export function leastDistance(compiled: Compiled, active: Active, from: number, to: number): number {
  const bounds = boundsOf(active, compiled);
  const throughOrigin = (bounds.earliest[to] as number) - (bounds.latest[from] as number);
  const label = new Map([[from, 0]]);
  const visits = new Map<number, number>();
  const queue = [from];
  const waiting = new Set(queue);
  for (let at = 0; at < queue.length; at += 1) {
    const moment = queue[at] as number;
    waiting.delete(moment);
    const count = (visits.get(moment) ?? 0) + 1;
    visits.set(moment, count);
    if (count > compiled.moments) break;
    const base = label.get(moment) as number;
    for (let k = compiled.outStart[moment] as number; k < (compiled.outStart[moment + 1] as number); k += 1) {
      const link = compiled.outList[k] as number;
      const owner = compiled.owner[link] as number;
      if (owner !== AXIOM && !active[owner]) continue;
      const target = compiled.to[link] as number;
      const days = base + (compiled.days[link] as number);
      if (days <= (label.get(target) ?? Number.NEGATIVE_INFINITY)) continue;
      label.set(target, days);
      if (waiting.has(target)) continue;
      waiting.add(target);
      queue.push(target);
    }
  }
  const straight = label.get(to) ?? Number.NEGATIVE_INFINITY;
  return Math.max(straight, Number.isNaN(throughOrigin) ? Number.NEGATIVE_INFINITY : throughOrigin);
}
