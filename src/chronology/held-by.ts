import type { Chronology, Trial, Tried } from './chronology.ts';
import type { Reason } from './reason-finder.ts';
import type { Side } from './reasons.ts';
import type { WorthFinder } from './worth.ts';

/** What holds a bound: the statements of its reason without which it gives way, and those that have company. */
export interface HeldBy {
  /** Statements of the reason whose withdrawal alone moves the bound, out or in. */
  readonly sole: readonly number[];
  /** For each other statement of the reason, the best reason that gives the same day without it. */
  readonly also: readonly {
    readonly statement: number;
    readonly instead: Reason;
    /** True where that reason rests on what is set aside as long as the statement stands. */
    readonly freed: boolean;
  }[];
}

/**
 * Tells which statements of a reason hold a bound alone. A statement that does not is held up by
 * another reason for the same day: the best one that avoids it. `trial` computes the chronology
 * without a statement.
 */
export function findHeldBy(
  chronology: Chronology,
  worth: WorthFinder,
  trial: (trial: Trial) => Tried,
  { rank, moment, side }: { readonly rank: number; readonly moment: number; readonly side: Side },
): HeldBy {
  const { statements } = chronology.reason(rank, moment, side);
  const day = chronology.day(rank, moment, side);
  const isSole = (statement: number): boolean =>
    worth.of(statement).bounds.some((one) => one.rank === rank && one.moment === moment && one.side === side);
  const sole = statements.filter(isSole);
  const also = statements
    .filter((statement) => !sole.includes(statement))
    .flatMap((statement) => {
      const without = trial({ withdrawn: new Set([statement]) });
      if (without.day(rank, moment, side) !== day) return [];
      const instead = without.reason(rank, moment, side);
      const freed = instead.statements.some((one) => !chronology.grades[rank]?.kept[one]);
      return [{ statement, instead, freed }];
    });
  return { sole, also };
}
