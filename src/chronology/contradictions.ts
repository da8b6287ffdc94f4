import { naturalOrder } from '../base/natural-order.ts';
import { propagate } from './bounds.ts';
import type { Compiled } from './compiled.ts';
import { isConsistent } from './consistency.ts';
import { hittingSets } from './hitting-sets.ts';
import { findIrreducibleSets } from './irreducible.ts';
import { RANKS } from './network.ts';
import { findOrderLoops, hasOrderLoop } from './order-loops.ts';
import { partOf } from './part-of-network.ts';
import { findSuspects } from './suspects.ts';

/** Statements that cannot all be right; nothing can be taken out without mending it. */
export interface Contradiction {
  /** Rank of the lowest grade among its members. */
  readonly rank: number;
  readonly kind: 'dates' | 'order';
  /** In natural order of their ids. */
  readonly statements: readonly number[];
  /** Moments through which it passes. */
  readonly moments: readonly number[];
  cluster: number;
}

/** Contradictions that share statements, and the ways out of all of them together. */
export interface Cluster {
  readonly number: number;
  readonly complete: boolean;
  readonly waysOut: readonly (readonly number[])[];
}

/** Everything in which a file disagrees with itself. */
export interface Disagreements {
  readonly contradictions: readonly Contradiction[];
  readonly clusters: readonly Cluster[];
  /** At each rank, the statements in dispute. */
  readonly disputed: readonly ReadonlySet<number>[];
}

const MOST_WAYS = 20;

/** Largest cluster for which a second way out is sought where not all contradictions are listed. */
const MOST_FOR_TWO = 400;

/** Finds the contradictions among the statements that take part, at every grade. */
export function findDisagreements(compiled: Compiled, usable: Uint8Array): Disagreements {
  const sets = new Map<string, readonly number[]>();
  const unfinished: (readonly number[])[] = [];
  const disputed: ReadonlySet<number>[] = [];
  for (let rank = 0; rank < RANKS; rank += 1) {
    const active = usable.map((on, i) => (on && (compiled.network.statements[i]?.rank ?? 0) <= rank ? 1 : 0));
    const members = new Set<number>();
    for (const group of findSuspects(compiled, active)) {
      const { links } = group;
      const part = partOf(compiled, group.statements, links ? (link) => links.has(link) : undefined);
      const result = findIrreducibleSets(part.compiled);
      for (const set of result.sets) {
        const whole = set.map((one) => part.statements[one] as number);
        sets.set(whole.join(','), whole);
        for (const one of whole) members.add(one);
      }
      if (result.complete) continue;
      unfinished.push(group.statements);
      for (const one of group.statements) members.add(one);
    }
    disputed.push(members);
  }
  const order = findOrderLoops(compiled, usable);
  const loops = order.sets.filter((set) => !sets.has(set.join(',')));
  if (!order.complete) unfinished.push([...new Set(order.sets.flat())]);
  const contradictions = [
    ...[...sets.values()].map((set) => contradiction(compiled, set, 'dates')),
    ...loops.map((set) => contradiction(compiled, set, 'order')),
  ].sort((a, b) => compareContradictions(compiled, a, b));
  return { contradictions, clusters: clustersOf(compiled, contradictions, unfinished), disputed };
}

/** Moments through which any contradiction of the active statements passes. */
export function contradictedMoments(compiled: Compiled, active: Uint8Array): readonly number[] {
  const moments = new Set<number>();
  for (const group of findSuspects(compiled, active)) {
    const { links } = group;
    const part = partOf(compiled, group.statements, links ? (link) => links.has(link) : undefined);
    for (const set of findIrreducibleSets(part.compiled).sets) {
      for (const moment of momentsOf(
        compiled,
        set.map((one) => part.statements[one] as number),
      ))
        moments.add(moment);
    }
  }
  return [...moments];
}

function contradiction(compiled: Compiled, set: readonly number[], kind: Contradiction['kind']): Contradiction {
  const statements = [...set].sort((a, b) => naturalOrder(idOf(compiled, a), idOf(compiled, b)));
  const rank = Math.max(...set.map((one) => compiled.network.statements[one]?.rank ?? 0));
  return { rank, kind, statements, moments: kind === 'dates' ? momentsOf(compiled, set) : [], cluster: 0 };
}

/** Moments on the crossing of an irreducible set; all that it touches where only gaps make it one. */
export function momentsOf(compiled: Compiled, set: readonly number[]): readonly number[] {
  const part = partOf(compiled, set);
  const all = new Uint8Array(set.length).fill(1);
  const { earliest, latest, loops } = propagate(part.compiled, all);
  const crossed = part.moments.filter(
    (_, local) =>
      (earliest[local] as number) > (latest[local] as number) ||
      loops.includes(part.compiled.component[local] as number),
  );
  return (crossed.length > 0 ? crossed : touchedBy(compiled, set)).toSorted((a, b) => a - b);
}

function touchedBy(compiled: Compiled, set: readonly number[]): readonly number[] {
  const links = set.flatMap((one) => compiled.network.statements[one]?.links ?? []);
  return [...new Set(links.flatMap((link) => [link.from, link.to]))].filter((moment) => moment >= 0);
}

function idOf(compiled: Compiled, statement: number): string {
  return compiled.network.statements[statement]?.id ?? '';
}

function compareContradictions(compiled: Compiled, a: Contradiction, b: Contradiction): number {
  return (
    (a.kind === b.kind ? 0 : a.kind === 'dates' ? -1 : 1) ||
    a.rank - b.rank ||
    a.statements.length - b.statements.length ||
    compareIds(compiled, a.statements, b.statements)
  );
}

function compareIds(compiled: Compiled, a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < Math.min(a.length, b.length); i += 1) {
    const difference = naturalOrder(idOf(compiled, a[i] as number), idOf(compiled, b[i] as number));
    if (difference !== 0) return difference;
  }
  return a.length - b.length;
}

/** Numbers the clusters (1, 2, ...) in the order of their first contradiction and finds the ways out. */
function clustersOf(
  compiled: Compiled,
  contradictions: readonly Contradiction[],
  unfinished: readonly (readonly number[])[],
): readonly Cluster[] {
  const clusters: Cluster[] = [];
  for (const first of contradictions) {
    if (first.cluster !== 0) continue;
    const number = clusters.length + 1;
    const members = linkedWith(first, contradictions);
    for (const member of members) member.cluster = number;
    const sets = members.map((member) => member.statements);
    const open = unfinished.filter((group) => sets.some((set) => set.some((one) => group.includes(one))));
    clusters.push({ number, complete: open.length === 0, waysOut: waysOut(compiled, members, open) });
  }
  return clusters;
}

function linkedWith(first: Contradiction, all: readonly Contradiction[]): readonly Contradiction[] {
  const members = new Set([first]);
  const shared = new Set(first.statements);
  for (let grown = true; grown; ) {
    grown = false;
    for (const one of all) {
      if (members.has(one) || !one.statements.some((s) => shared.has(s))) continue;
      members.add(one);
      for (const statement of one.statements) shared.add(statement);
      grown = true;
    }
  }
  return [...members];
}

/**
 * At most twenty ways out, those first that withdraw fewer statements of the better grades; each
 * checked by solving. Where not all contradictions could be listed, two are sought directly:
 * keeping the best grades first, and keeping the worst first.
 */
function waysOut(
  compiled: Compiled,
  members: readonly Contradiction[],
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
