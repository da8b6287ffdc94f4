import { oncePer } from '../base/once.ts';
import { civilOf, type DayRange } from '../dates/day.ts';
import { hullOfExpression } from '../dates/expression.ts';
import { isDateProblem, readDate } from '../dates/read-date.ts';
import type { Entry } from '../model/entry.ts';
import type { CaseFile } from './case-file.ts';
import type { ChainHolding, Stretch } from './chain.ts';
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
  /** The days from which and until which it was possibly held, infinite where there is no limit. */
  readonly possibly: Stretch;
  readonly looks: readonly {
    readonly search: Entry<'search'>;
    /** Whole years looked through; null where the search does not say, or covers no whole year. */
    readonly years: Years | null;
  }[];
  /** Years of the holding that no search with access covers; null where that cannot be told. */
  readonly uncovered: readonly Years[] | null;
}

/** Each holding once, in the order of the chains: which searches concern it, which of its years nobody has looked through. */
export const searchCoverage = oncePer((file: CaseFile): readonly HoldingCoverage[] => {
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
      possibly,
      looks,
      uncovered: years === null ? null : uncoveredOf(years, looks),
    };
  });
});

/** Years that no search with access covers; null where one may have: nobody wrote its years. */
function uncoveredOf(years: Years, looks: HoldingCoverage['looks']): readonly Years[] | null {
  const open = looks.filter(({ search }) => search.keys.outcome !== 'no access');
  const covered = open.flatMap((one) => one.years ?? []);
  return covered.length < open.length ? null : without(years, covered);
}

/** Whole years only: what was looked through to the middle of a year leaves that year open. */
function yearsOf(file: CaseFile, { keys }: Entry<'search'>): Years | null {
  const days = (text: string | undefined): DayRange | null => {
    if (text === undefined) return null;
    const read = readDate(text, 'gregorian', file.settings.dates);
    return isDateProblem(read) ? null : hullOfExpression(read);
  };
  const from = days(keys.scope?.from);
  const to = days(keys.scope?.to) ?? from;
  if (!from || !to) return null;
  const first = civilOf(from.first - 1).year + 1;
  const last = civilOf(to.last + 1).year - 1;
  return first <= last ? { first, last } : null;
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
