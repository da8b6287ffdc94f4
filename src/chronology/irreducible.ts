import type { Active } from './bounds.ts';
import type { Compiled } from './compiled.ts';
import { isConsistent } from './consistency.ts';

/** What an enumeration of irreducible sets found, in statements of the network given. */
export interface IrreducibleSets {
  readonly sets: readonly (readonly number[])[];
  /** Minimal sets whose withdrawal leaves the rest consistent; only where `complete`. */
  readonly corrections: readonly (readonly number[])[];
  /** False where a cap cut the enumeration off. */
  readonly complete: boolean;
}

const MOST_SETS = 200;
const MOST_NODES = 20_000;

/** Most links that all tests of one enumeration may look at together; keeps large files quick. */
const MOST_WORK = 30_000_000;

/**
 * Lists the irreducible inconsistent sets of statements by a tree of withdrawals
 * (Reiter, Artificial Intelligence 32, 1987, with the labels shrunk by a deletion filter):
 * a node withdraws some statements; if the rest is inconsistent, one irreducible set of it labels
 * the node, and each of its members is withdrawn in turn. Every irreducible set labels some node,
 * since a path that withdraws only members of other sets can end in no other way.
 */
export function findIrreducibleSets(compiled: Compiled): IrreducibleSets {
  const ranks = compiled.network.statements.map((statement) => statement.rank);
  const cost = compiled.links.length + compiled.lowers.length + compiled.uppers.length + compiled.moments + 1;
  return findIrreducible(ranks, (active) => isConsistent(compiled, active), Math.ceil(MOST_WORK / cost));
}

/** The same for any test that stays true when statements are withdrawn; `ranks` has one rank a statement. */
export function findIrreducible(
  ranks: readonly number[],
  test: (active: Active) => boolean,
  mostTests = MOST_NODES * 10,
): IrreducibleSets {
  let tests = 0;
  const isFine = (active: Active): boolean => {
    tests += 1;
    return test(active);
  };
  const sets: number[][] = [];
  const corrections: (readonly number[])[] = [];
  const seen = new Set<string>(['']);
  let level: (readonly number[])[] = [[]];
  let nodes = 0;
  while (level.length > 0) {
    const next: (readonly number[])[] = [];
    for (const withdrawn of level) {
      nodes += 1;
      if (nodes > MOST_NODES || tests > mostTests || sets.length > MOST_SETS) {
        return { sets: sets.slice(0, MOST_SETS), corrections, complete: false };
      }
      if (corrections.some((smaller) => smaller.every((one) => withdrawn.includes(one)))) continue;
      const label = labelOf(ranks, isFine, withdrawn, sets);
      if (!label) {
        corrections.push(withdrawn);
        continue;
      }
      for (const member of label) {
        const more = [...withdrawn, member].sort((a, b) => a - b);
        const key = more.join(',');
        if (!seen.has(key)) {
          seen.add(key);
          next.push(more);
        }
      }
    }
    level = next;
  }
  return { sets, corrections, complete: true };
}

function labelOf(
  ranks: readonly number[],
  isFine: (active: Active) => boolean,
  withdrawn: readonly number[],
  sets: number[][],
): readonly number[] | null {
  const known = sets.find((set) => !set.some((member) => withdrawn.includes(member)));
  if (known) return known;
  const active = new Uint8Array(ranks.length).fill(1);
  for (const member of withdrawn) active[member] = 0;
  if (isFine(active)) return null;
  const fresh = shrink(ranks, isFine, active);
  sets.push(fresh);
  return fresh;
}

/** Takes statements out of an inconsistent set, worst grade first, as long as it stays inconsistent. */
function shrink(ranks: readonly number[], isFine: (active: Active) => boolean, active: Active): number[] {
  const kept = active.slice();
  const members = [...kept.keys()].filter((index) => kept[index] === 1);
  const rank = (index: number): number => ranks[index] ?? 0;
  members.sort((a, b) => rank(b) - rank(a) || b - a);
  for (let size = Math.ceil(members.length / 4); size >= 1; size = size === 1 ? 0 : Math.ceil(size / 4)) {
    for (let from = 0; from < members.length; from += size) {
      const chunk = members.slice(from, from + size).filter((index) => kept[index] === 1);
      if (chunk.length === 0) continue;
      for (const index of chunk) kept[index] = 0;
      if (isFine(kept)) for (const index of chunk) kept[index] = 1;
    }
  }
  return [...kept.keys()].filter((index) => kept[index] === 1);
}
