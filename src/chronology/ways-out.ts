import { naturalOrder } from '../base/natural-order.ts';
import { compareIds, idOf } from './compare-ids.ts';
import type { Compiled } from './compiled.ts';
import { isConsistent } from './consistency.ts';
import { hittingSets } from './hitting-sets.ts';
import { RANKS } from './network.ts';
import { hasOrderLoop } from './order-loops.ts';
import { partOf } from './part-of-network.ts';

const MOST_WAYS = 20;

/** Largest cluster for which a second way out is sought where not all contradictions are listed. */
const MOST_FOR_TWO = 400;

/**
 * At most twenty ways out, those first that withdraw fewer statements of the better grades; each
 * checked by solving. Where not all contradictions could be listed, two are sought directly:
 * keeping the best grades first, and keeping the worst first.
 */
export function findWaysOut(
  compiled: Compiled,
  members: readonly { readonly kind: 'dates' | 'order'; readonly statements: readonly number[] }[],
  open: readonly (readonly number[])[],
): readonly (readonly number[])[] {
  const union = [...new Set([...members.flatMap((one) => one.statements), ...open.flat()])];
  const order = members.some((one) => one.kind === 'order');
  const part = partOf(compiled, union);
  const isMended = (active: Uint8Array): boolean =>
    isConsistent(part.compiled, active) && !(order && hasOrderLoop(part.compiled, active));
  const without = (way: readonly number[]): Uint8Array => Uint8Array.from(union, (one) => (way.includes(one) ? 0 : 1));
  const found = open.length === 0 ? hittingSets(members.map((one) => one.statements)).sets : [];
  const checked = found.filter((way) => isMended(without(way)));
  const rank = (one: number): number => compiled.network.statements[one]?.rank ?? 0;
  const byId = (a: number, b: number): number => naturalOrder(idOf(compiled, a), idOf(compiled, b));
  const bestFirst = union.toSorted((a, b) => rank(a) - rank(b) || byId(a, b));
  const orders = union.length > MOST_FOR_TWO ? [bestFirst] : [bestFirst, [...bestFirst].reverse()];
  const sought = checked.length > 0 ? [] : orders.map((inOrder) => greedyWayOut(union, inOrder, isMended));
  const ways = new Map([...checked, ...sought].map((way) => [way.toSorted((a, b) => a - b).join(','), way]));
  return [...ways.values()]
    .map((way) => way.toSorted(byId))
    .sort((a, b) => compareWays(compiled, a, b))
    .slice(0, MOST_WAYS);
}

/** One minimal way out without an enumeration: keep statements in this order while they agree. */
function greedyWayOut(
  union: readonly number[],
  inOrder: readonly number[],
  isMended: (active: Uint8Array) => boolean,
): readonly number[] {
  const place = new Map(union.map((one, i) => [one, i]));
  const kept = new Uint8Array(union.length);
  for (const one of inOrder) {
    const i = place.get(one) as number;
    kept[i] = 1;
    if (!isMended(kept)) kept[i] = 0;
  }
  return union.filter((_, i) => kept[i] === 0);
}

function compareWays(compiled: Compiled, a: readonly number[], b: readonly number[]): number {
  for (let rank = 0; rank < RANKS; rank += 1) {
    const difference = countOfRank(compiled, a, rank) - countOfRank(compiled, b, rank);
    if (difference !== 0) return difference;
  }
  return compareIds(compiled, a, b);
}

function countOfRank(compiled: Compiled, way: readonly number[], rank: number): number {
  return way.filter((one) => compiled.network.statements[one]?.rank === rank).length;
}
