import type { Active } from './bounds.ts';
import { AXIOM, type Compiled } from './compiled.ts';
import { findIrreducible } from './irreducible.ts';

/** Loops of order that were found, and whether all were. */
export interface OrderLoops {
  readonly sets: readonly (readonly number[])[];
  readonly complete: boolean;
}

/**
 * Loops of order whose days add to nothing: each event after the next and the last after the
 * first. Such a loop is satisfiable (all on one day) and makes no range inconsistent; it is
 * listed. A set is irreducible if no statement of it can be spared for the loop.
 */
export function findOrderLoops(compiled: Compiled, active: Active): OrderLoops {
  const sets: (readonly number[])[] = [];
  let complete = true;
  for (const statements of loopingGroups(compiled, active)) {
    const ranks = statements.map((one) => compiled.network.statements[one]?.rank ?? 0);
    const result = findIrreducible(ranks, (chosen) => {
      const mask = new Uint8Array(active.length);
      statements.forEach((one, i) => {
        mask[one] = chosen[i] as number;
      });
      return !hasOrderLoop(compiled, mask);
    });
    complete &&= result.complete;
    for (const set of result.sets) sets.push(set.map((one) => statements[one] as number));
  }
  return { sets, complete };
}

/** True where some link of order closes a loop along links of order, sameness and axioms. */
export function hasOrderLoop(compiled: Compiled, active: Active): boolean {
  return compiled.links.some(
    (link, i) => isOrder(compiled, active, i) && reaches(compiled, active, link.to, link.from),
  );
}

/** Statements that lie on loops, by loop or loops that hang together. */
function loopingGroups(compiled: Compiled, active: Active): readonly (readonly number[])[] {
  const byComponent = new Map<number, Set<number>>();
  compiled.links.forEach((link, i) => {
    const owner = compiled.owner[i] as number;
    const component = compiled.component[link.from] as number;
    if (owner === AXIOM || component !== compiled.component[link.to] || !isOrderLink(compiled, active, i)) return;
    if (!reaches(compiled, active, link.to, link.from)) return;
    const members = byComponent.get(component) ?? new Set();
    members.add(owner);
    byComponent.set(component, members);
  });
  return [...byComponent.values()]
    .map((members) => [...members].sort((a, b) => a - b))
    .filter((members) => members.some((one) => compiled.network.statements[one]?.order === 'order'));
}

/** True where a moment is reached from another along zero links of order. */
function reaches(compiled: Compiled, active: Active, from: number, to: number): boolean {
  const stack = [from];
  const visited = new Set(stack);
  for (let moment = stack.pop(); moment !== undefined; moment = stack.pop()) {
    if (moment === to) return true;
    for (let k = compiled.outStart[moment] as number; k < (compiled.outStart[moment + 1] as number); k += 1) {
      const link = compiled.outList[k] as number;
      const target = compiled.to[link] as number;
      if (visited.has(target) || !isOrderLink(compiled, active, link)) continue;
      visited.add(target);
      stack.push(target);
    }
  }
  return false;
}

function isOrder(compiled: Compiled, active: Active, link: number): boolean {
  const owner = compiled.owner[link] as number;
  return (
    owner !== AXIOM && isOrderLink(compiled, active, link) && compiled.network.statements[owner]?.order === 'order'
  );
}

function isOrderLink(compiled: Compiled, active: Active, link: number): boolean {
  if (compiled.days[link] !== 0) return false;
  const owner = compiled.owner[link] as number;
  if (owner === AXIOM) return true;
  return active[owner] === 1 && compiled.network.statements[owner]?.order !== undefined;
}
