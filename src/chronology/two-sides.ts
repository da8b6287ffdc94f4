import { propagate } from './bounds.ts';
import { AXIOM, type Compiled } from './compiled.ts';
import { partOf } from './part-of-network.ts';
import { findChains, type Side } from './reasons.ts';

/** One side of a contradiction: a day, and the statements of the set that lead to it. */
export interface OneSide {
  readonly day: number;
  readonly statements: readonly number[];
}

/** A moment that a set of statements puts both after and before itself. */
export interface TwoSides {
  readonly moment: number;
  readonly earliest: OneSide;
  readonly latest: OneSide;
}

/**
 * Tells the two sides of an irreducible set: the moment at which its earliest day lies after its
 * latest, and which statements lead to each; of several such moments the one where each side needs
 * about as many statements as the other, then the first. Null where no two days cross: in a circle
 * of order, or where only the gaps of a date exclude each other.
 */
export function twoSidesOf(compiled: Compiled, set: readonly number[]): TwoSides | null {
  const part = partOf(compiled, set);
  const all = new Uint8Array(set.length).fill(1);
  const bounds = propagate(part.compiled, all);
  if (bounds.loops.length > 0) return null;
  const chains = {
    earliest: findChains(part.compiled, all, bounds, 'earliest'),
    latest: findChains(part.compiled, all, bounds, 'latest'),
  };
  const side = (name: Side, local: number): OneSide => ({
    day: bounds[name][local] as number,
    statements: [...new Set(chains[name].chainOf(local).map((step) => step.owner))]
      .filter((owner) => owner !== AXIOM)
      .map((owner) => part.statements[owner] as number),
  });
  const crossed = part.moments.flatMap((moment, local): readonly TwoSides[] => {
    if ((bounds.earliest[local] as number) <= (bounds.latest[local] as number)) return [];
    return [{ moment, earliest: side('earliest', local), latest: side('latest', local) }];
  });
  const uneven = ({ earliest, latest }: TwoSides): number =>
    Math.abs(earliest.statements.length - latest.statements.length);
  return crossed.sort((a, b) => uneven(a) - uneven(b) || a.moment - b.moment)[0] ?? null;
}
