import type { Active } from './bounds.ts';
import type { Compiled } from './compiled.ts';
import { RANKS } from './network.ts';

/** The statements of one grade or better, those of them in dispute, and those that ranges rest on. */
export interface KeptSet {
  readonly all: Active;
  readonly kept: Active;
  readonly disputed: ReadonlySet<number>;
}

/**
 * The kept set at each rank: what the next better grade kept, and the statements of this grade or
 * better that are not in dispute at it. It is consistent and only grows, so ranges only narrow.
 */
export function keptSets(
  compiled: Compiled,
  usable: Active,
  disputed: readonly ReadonlySet<number>[],
): readonly KeptSet[] {
  const sets: KeptSet[] = [];
  for (let rank = 0; rank < RANKS; rank += 1) {
    const all = usable.map((on, i) => (on && (compiled.network.statements[i]?.rank ?? 0) <= rank ? 1 : 0));
    const inDispute = disputed[rank] ?? new Set<number>();
    const better = sets[rank - 1]?.kept;
    const kept = all.map((on, i) => (on && (better?.[i] || !inDispute.has(i)) ? 1 : 0));
    sets.push({ all, kept, disputed: inDispute });
  }
  return sets;
}
