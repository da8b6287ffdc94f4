import type { Active } from './bounds.ts';
import { AXIOM, type Compiled } from './compiled.ts';

const MOST_LOOPS = 200;

/**
 * Loops of order whose days add to nothing: each event after the next and the last after the
 * first. Such a loop is satisfiable (all on one day) and makes no range inconsistent; it is
 * listed. For every link of order, the shortest way back along links of order, sameness and
 * axioms; sets that hold another are dropped.
 */
export function findOrderLoops(compiled: Compiled, active: Active): readonly (readonly number[])[] {
  const found = new Map<string, readonly number[]>();
  compiled.links.forEach((link, i) => {
    const owner = compiled.owner[i] as number;
    if (found.size >= MOST_LOOPS || owner === AXIOM || !active[owner]) return;
    if (compiled.network.statements[owner]?.order !== 'order' || link.days !== 0) return;
    const back = shortestWay(compiled, active, link.to, link.from);
    if (!back) return;
    const set = [...new Set([owner, ...back])].sort((a, b) => a - b);
    found.set(set.join(','), set);
  });
  const sets = [...found.values()];
  return sets.filter(
    (set) =>
      !sets.some((other) => other !== set && other.length < set.length && other.every((one) => set.includes(one))),
  );
}

/** Statements on a shortest way from one moment to another along zero links of order; null if none. */
function shortestWay(compiled: Compiled, active: Active, from: number, to: number): readonly number[] | null {
  const cameBy = new Map<number, { readonly before: number; readonly owner: number }>();
  let level = [from];
  const visited = new Set(level);
  while (level.length > 0 && !visited.has(to)) {
    const next: number[] = [];
    for (const moment of level) {
      for (let k = compiled.outStart[moment] as number; k < (compiled.outStart[moment + 1] as number); k += 1) {
        const link = compiled.outList[k] as number;
        const target = compiled.to[link] as number;
        if (!isOrderLink(compiled, active, link) || visited.has(target)) continue;
        visited.add(target);
        cameBy.set(target, { before: moment, owner: compiled.owner[link] as number });
        next.push(target);
      }
    }
    level = next;
  }
  if (!visited.has(to)) return null;
  const owners: number[] = [];
  for (let at = to; at !== from; ) {
    const step = cameBy.get(at);
    if (!step) break;
    if (step.owner !== AXIOM) owners.push(step.owner);
    at = step.before;
  }
  return owners;
}

function isOrderLink(compiled: Compiled, active: Active, link: number): boolean {
  if (compiled.days[link] !== 0) return false;
  const owner = compiled.owner[link] as number;
  if (owner === AXIOM) return true;
  return active[owner] === 1 && compiled.network.statements[owner]?.order !== undefined;
}
