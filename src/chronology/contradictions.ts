import { naturalOrder } from '../base/natural-order.ts';
import { propagate } from './bounds.ts';
import type { Compiled } from './compiled.ts';
import { isConsistent, maskOf } from './consistency.ts';
import { hittingSets } from './hitting-sets.ts';
import { findIrreducibleSets } from './irreducible.ts';
import { RANKS } from './network.ts';
import { findOrderLoops } from './order-loops.ts';
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
  readonly kind: 'dates' | 'order';
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

/** Finds the contradictions among the statements that take part, at every grade. */
export function findDisagreements(compiled: Compiled, usable: Uint8Array): Disagreements {
  const sets = new Map<string, readonly number[]>();
  const unfinished = new Set<number>();
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
      for (const one of group.statements) {
        members.add(one);
        unfinished.add(one);
      }
    }
    disputed.push(members);
  }
  const order = findOrderLoops(compiled, usable).filter((set) => !sets.has(set.join(',')));
  const contradictions = [
    ...[...sets.values()].map((set) => contradiction(compiled, set, 'dates')),
    ...order.map((set) => contradiction(compiled, set, 'order')),
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
  unfinished: ReadonlySet<number>,
): readonly Cluster[] {
  const clusters: Cluster[] = [];
  for (const first of contradictions) {
    if (first.cluster !== 0) continue;
    const number = clusters.length + 1;
    const members = linkedWith(first, contradictions);
    for (const member of members) member.cluster = number;
    const sets = members.map((member) => member.statements);
    const complete = !sets.some((set) => set.some((one) => unfinished.has(one)));
    clusters.push({ number, kind: first.kind, complete, waysOut: waysOut(compiled, first.kind, sets, complete) });
  }
  return clusters;
}

function linkedWith(first: Contradiction, all: readonly Contradiction[]): readonly Contradiction[] {
  const members = new Set([first]);
  const shared = new Set(first.statements);
  for (let grown = true; grown; ) {
    grown = false;
    for (const one of all) {
      if (members.has(one) || one.kind !== first.kind || !one.statements.some((s) => shared.has(s))) continue;
      members.add(one);
      for (const statement of one.statements) shared.add(statement);
      grown = true;
    }
  }
  return [...members];
}

/** At most twenty ways out, those first that withdraw fewer statements of the better grades. */
function waysOut(
  compiled: Compiled,
  kind: Cluster['kind'],
  sets: readonly (readonly number[])[],
  complete: boolean,
): readonly (readonly number[])[] {
  const union = [...new Set(sets.flat())];
  const found = complete ? hittingSets(sets) : { sets: [], complete: false };
  const checked = found.sets.filter((way) => kind === 'order' || leavesConsistent(compiled, union, way));
  const ways = checked.length > 0 ? checked : [greedyWayOut(compiled, union)];
  return ways
    .map((way) => way.toSorted((a, b) => naturalOrder(idOf(compiled, a), idOf(compiled, b))))
    .sort((a, b) => compareWays(compiled, a, b))
    .slice(0, MOST_WAYS);
}

function leavesConsistent(compiled: Compiled, union: readonly number[], way: readonly number[]): boolean {
  const rest = union.filter((one) => !way.includes(one));
  const part = partOf(compiled, rest);
  return isConsistent(part.compiled, new Uint8Array(rest.length).fill(1));
}

/** One minimal way out without a full enumeration: keep statements, best grade first, while they agree. */
function greedyWayOut(compiled: Compiled, union: readonly number[]): readonly number[] {
  const rank = (one: number): number => compiled.network.statements[one]?.rank ?? 0;
  const sorted = union.toSorted((a, b) => rank(a) - rank(b) || naturalOrder(idOf(compiled, a), idOf(compiled, b)));
  const kept: number[] = [];
  for (const one of sorted) {
    const active = maskOf(compiled.network.statements.length, [...kept, one]);
    if (isConsistent(compiled, active)) kept.push(one);
  }
  return union.filter((one) => !kept.includes(one));
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
