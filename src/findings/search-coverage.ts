import { civilOf } from '../dates/day.ts';
import { isDateProblem, readDate } from '../dates/read-date.ts';
import { hullOfExpression } from '../dates/wording.ts';
import type { Entry } from '../model/entry.ts';
import type { CaseFile } from './case-file.ts';
import type { ChainHolding } from './chain.ts';
import { findChains } from './custody-chains.ts';
import { searchesFor } from './gap-searches.ts';

/** Whole years, both ends included. */
export interface Years {
  readonly first: number;
  readonly last: number;
}

/** A holding against the archives that were consulted for it. */
export interface HoldingCoverage {
  readonly holding: Entry<'holding'>;
  /** Years in which it was possibly held, on probable statements; null where nothing bounds both ends. */
  readonly years: Years | null;
  readonly looks: readonly {
    readonly search: Entry<'search'>;
    /** Years looked through; null where the search does not say. */
    readonly years: Years | null;
  }[];
  /** Years of the holding that no search with years covers; empty where its years are not bounded. */
  readonly uncovered: readonly Years[];
}

/** Each holding once, in the order of the chains: which searches concern it, which of its years nobody has looked through. */
export function searchCoverage(file: CaseFile): readonly HoldingCoverage[] {
  const seen = new Map<string, ChainHolding>();
  for (const chain of findChains(file))
    for (const one of [...chain.holdings, ...chain.meanwhile]) seen.set(one.holding.id, one);
  return [...seen.values()].map(({ holding, possibly }) => {
    const bounded = Number.isFinite(possibly.first) && Number.isFinite(possibly.last);
    const years = bounded ? { first: civilOf(possibly.first).year, last: civilOf(possibly.last).year } : null;
    const looks = searchesFor(file, [holding], possibly).map((search) => ({ search, years: yearsOf(file, search) }));
    return {
      holding,
      years,
      looks,
      uncovered: years
        ? without(
            years,
            looks.flatMap((one) => one.years ?? []),
          )
        : [],
    };
  });
}

function yearsOf(file: CaseFile, { keys }: Entry<'search'>): Years | null {
  const year = (text: string | undefined, side: 'first' | 'last'): number | null => {
    if (text === undefined) return null;
    const read = readDate(text, 'gregorian', file.settings.dates);
    return isDateProblem(read) ? null : civilOf(hullOfExpression(read)[side]).year;
  };
  const first = year(keys.scope?.from, 'first');
  const last = year(keys.scope?.to, 'last') ?? first;
  return first === null || last === null ? null : { first, last };
}

/** The years of a stretch that lie in none of the others. */
function without(whole: Years, covered: readonly Years[]): readonly Years[] {
  let left: readonly Years[] = [whole];
  for (const { first, last } of covered) {
    left = left.flatMap((one) => {
      if (last < one.first || first > one.last) return [one];
      const before = first > one.first ? [{ first: one.first, last: first - 1 }] : [];
      const after = last < one.last ? [{ first: last + 1, last: one.last }] : [];
      return [...before, ...after];
    });
  }
  return left;
}
