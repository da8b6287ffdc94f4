import { groupBy } from '../base/group-by.ts';
import { naturalOrder } from '../base/natural-order.ts';
import { propagate } from './bounds.ts';
import { compareIds, idOf } from './compare-ids.ts';
import type { Compiled } from './compiled.ts';
import { findIrreducibleSets } from './irreducible.ts';
import { RANKS } from './network.ts';
import { findOrderLoops } from './order-loops.ts';
import { partOf } from './part-of-network.ts';
import { findSuspects, type SuspectGroup } from './suspects.ts';
import { findWaysOut } from './ways-out.ts';

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

/** Contradictions that share statements, and the ways out of all of them together (sought when asked for). */
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
  /** Groups of statements in which not every contradiction could be listed; empty as a rule. */
  readonly unfinished: readonly (readonly number[])[];
}

/** Irreducible sets as they were found, before they are graded and linked. */
interface FoundSets {
  readonly dates: readonly (readonly number[])[];
  readonly order: readonly (readonly number[])[];
  readonly disputed: readonly ReadonlySet<number>[];
  readonly unfinished: readonly (readonly number[])[];
}

/**
 * Finds the contradictions among the statements that take part, at every grade. `known`: what was
 * found with more statements taking part, or with other grades. A set that cannot be spared a
 * statement stays so whatever else is withdrawn and whatever its grades, so nothing is sought anew.
 */
export function findDisagreements(
  compiled: Compiled,
  usable: Uint8Array,
  known: Disagreements | null = null,
): Disagreements {
  const found = known && known.unfinished.length === 0 ? narrowed(compiled, usable, known) : search(compiled, usable);
  const contradictions = [
    ...found.dates.map((set) => contradiction(compiled, set, 'dates')),
    ...found.order.map((set) => contradiction(compiled, set, 'order')),
  ].sort((a, b) => compareContradictions(compiled, a, b));
  const { disputed, unfinished } = found;
  return { contradictions, clusters: clustersOf(compiled, contradictions, unfinished), disputed, unfinished };
}

function narrowed(compiled: Compiled, usable: Uint8Array, known: Disagreements): FoundSets {
  const left = known.contradictions.filter((one) => one.statements.every((statement) => usable[statement]));
  const sets = (kind: Contradiction['kind']): readonly (readonly number[])[] =>
    left.filter((one) => one.kind === kind).map((one) => one.statements);
  const dates = sets('dates');
  return { dates, order: sets('order'), disputed: disputedIn(compiled, dates), unfinished: [] };
}

/** At each rank, the members of the sets of that rank or better. */
export function disputedIn(compiled: Compiled, sets: readonly (readonly number[])[]): readonly ReadonlySet<number>[] {
  return Array.from(
    { length: RANKS },
    (_, rank) => new Set(sets.filter((set) => rankOfSet(compiled, set) <= rank).flat()),
  );
}

function rankOfSet(compiled: Compiled, set: readonly number[]): number {
  return Math.max(...set.map((one) => compiled.network.statements[one]?.rank ?? 0));
}

/**
 * Searches with all statements first: where that lists everything, the sets of the better grades
 * are among them. Else each grade is searched for itself, since a smaller search may end.
 */
function search(compiled: Compiled, usable: Uint8Array): FoundSets {
  const sets = new Map<string, readonly number[]>();
  const unfinished: (readonly number[])[] = [];
  const disputed: ReadonlySet<number>[] = [];
  for (let rank = RANKS - 1; rank >= 0; rank -= 1) {
    const active = usable.map((on, i) => (on && (compiled.network.statements[i]?.rank ?? 0) <= rank ? 1 : 0));
    const members = new Set<number>();
    for (const group of findSuspects(compiled, active)) {
      const result = setsOfGroup(compiled, group);
      for (const set of result.sets) {
        sets.set(set.join(','), set);
        for (const one of set) members.add(one);
      }
      if (result.complete) continue;
      unfinished.push(group.statements);
      for (const one of group.statements) members.add(one);
    }
    disputed[rank] = members;
    if (rank === RANKS - 1 && unfinished.length === 0) break;
  }
  const order = findOrderLoops(compiled, usable);
  if (!order.complete) unfinished.push([...new Set(order.sets.flat())]);
  const dates = [...sets.values()];
  return {
    dates,
    order: order.sets.filter((set) => !sets.has(set.join(','))),
    disputed: disputed[0] ? disputed : disputedIn(compiled, dates),
    unfinished,
  };
}

/** The irreducible sets of one suspect group, in statements of the whole network. */
function setsOfGroup(
  compiled: Compiled,
  { statements, links }: SuspectGroup,
): { readonly sets: readonly (readonly number[])[]; readonly complete: boolean } {
  const part = partOf(compiled, statements, links ? (link) => links.has(link) : undefined);
  const { sets, complete } = findIrreducibleSets(part.compiled);
  return { sets: sets.map((set) => set.map((one) => part.statements[one] as number)), complete };
}

/** Moments through which any contradiction of the active statements passes. */
export function contradictedMoments(compiled: Compiled, active: Uint8Array): readonly number[] {
  const moments = new Set<number>();
  for (const group of findSuspects(compiled, active)) {
    for (const set of setsOfGroup(compiled, group).sets) {
      for (const moment of momentsOf(compiled, set)) moments.add(moment);
    }
  }
  return [...moments];
}

function contradiction(compiled: Compiled, set: readonly number[], kind: Contradiction['kind']): Contradiction {
  const statements = [...set].sort((a, b) => naturalOrder(idOf(compiled, a), idOf(compiled, b)));
  return {
    rank: rankOfSet(compiled, set),
    kind,
    statements,
    moments: kind === 'dates' ? momentsOf(compiled, set) : [],
    cluster: 0,
  };
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

function compareContradictions(compiled: Compiled, a: Contradiction, b: Contradiction): number {
  return (
    (a.kind === b.kind ? 0 : a.kind === 'dates' ? -1 : 1) ||
    a.rank - b.rank ||
    a.statements.length - b.statements.length ||
    compareIds(compiled, a.statements, b.statements)
  );
}

/** Numbers the clusters (1, 2, ...) in the order of their first contradiction. */
function clustersOf(
  compiled: Compiled,
  contradictions: readonly Contradiction[],
  unfinished: readonly (readonly number[])[],
): readonly Cluster[] {
  const clusters: Cluster[] = [];
  const byStatement = groupBy(
    contradictions.flatMap((one) => one.statements.map((statement) => ({ statement, one }))),
    ({ statement }) => statement,
  );
  for (const first of contradictions) {
    if (first.cluster !== 0) continue;
    const number = clusters.length + 1;
    const members = linkedWith(first, byStatement);
    for (const member of members) member.cluster = number;
    const statements = new Set(members.flatMap((member) => member.statements));
    const open = unfinished.filter((group) => group.some((one) => statements.has(one)));
    let ways: Cluster['waysOut'] | null = null;
    clusters.push({
      number,
      complete: open.length === 0,
      get waysOut() {
        ways ??= findWaysOut(compiled, members, open);
        return ways;
      },
    });
  }
  return clusters;
}

/** Contradictions that share a statement with the first, or with one that does, and so on; in their own order. */
function linkedWith(
  first: Contradiction,
  byStatement: ReadonlyMap<number, readonly { readonly one: Contradiction }[]>,
): readonly Contradiction[] {
  const members = new Set([first]);
  for (const member of members)
    for (const statement of member.statements) for (const { one } of byStatement.get(statement) ?? []) members.add(one);
  return [...members];
}
