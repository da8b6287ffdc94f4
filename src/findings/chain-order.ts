import { FOR_ANOTHER } from '../custody/capacities.ts';
import type { Catalogue } from '../model/catalogue.ts';
import type { Entry } from '../model/entry.ts';
import type { ChainHolding } from './chain.ts';
import { comesFrom } from './passed-on.ts';

/**
 * Parts those who had it one after the other from those who had it meanwhile: a loan does not end the lender's time
 * and leaves no gap. Who passed it on (somebody had it from them, by an entry or an act) stands in the chain in whatever capacity.
 */
export function partAside(
  catalogue: Catalogue,
  holdings: readonly Entry<'holding'>[],
): {
  readonly main: readonly Entry<'holding'>[];
  readonly aside: readonly Entry<'holding'>[];
} {
  const passedOn = new Set(holdings.map((one) => comesFrom(catalogue, one)));
  const isAside = (one: Entry<'holding'>): boolean => FOR_ANOTHER.includes(one.keys.capacity) && !passedOn.has(one.id);
  return { main: holdings.filter((one) => !isAside(one)), aside: holdings.filter(isAside) };
}

/** By what was said to come from what; else by when it had begun, or had not ended, or began at the earliest. */
export function inOrder(catalogue: Catalogue, holdings: readonly ChainHolding[]): readonly ChainHolding[] {
  const from = new Map(holdings.map(({ holding }) => [holding.id, comesFrom(catalogue, holding)]));
  const comesAfter = (id: string, other: string): boolean => {
    const seen = new Set<string>();
    for (let at = from.get(id); at !== undefined && !seen.has(at); at = from.get(at)) {
      if (at === other) return true;
      seen.add(at);
    }
    return false;
  };
  const key = ({ begunBy, notEndedBefore, possibly }: ChainHolding): number =>
    [begunBy, notEndedBefore, possibly.first].find(Number.isFinite) ?? Number.MAX_SAFE_INTEGER;
  const sorted: ChainHolding[] = [];
  for (const one of [...holdings].sort((a, b) => key(a) - key(b))) {
    const place = sorted.findIndex((other) => comesAfter(other.holding.id, one.holding.id));
    if (place === -1) sorted.push(one);
    else sorted.splice(place, 0, one);
  }
  return sorted;
}
