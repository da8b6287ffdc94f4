import type { Precision } from '../dates/expression.ts';
import type { Entry } from '../model/entry.ts';
import type { PassedOn } from './passed-on.ts';
import type { ChosenReference } from './reference-dates.ts';
import type { TitleDispute } from './title-disputes.ts';

/** Days of a stretch of time; infinite where nothing bounds it. */
export interface Stretch {
  readonly first: number;
  readonly last: number;
}

/** A holding with when it certainly was, on the statements of a grade, and when it may have been. */
export interface ChainHolding {
  readonly holding: Entry<'holding'>;
  /** From the latest beginning to the earliest end; null where that is empty: it may have been a moment. */
  readonly throughout: Stretch | null;
  /** How fine the two bounds of that stretch are. */
  readonly precision: Precision;
  /** From the earliest beginning to the latest end. */
  readonly possibly: Stretch;
  /** Where it was held throughout no stretch that is known: one in which it was held at some time; null where nothing says so. */
  readonly recorded: Stretch | null;
  /** The day by which it had begun, and the day before which it had not ended; infinite where nothing says so. */
  readonly begunBy: number;
  readonly notEndedBefore: number;
}

/** What lies between two holdings that follow each other. */
export interface Gap {
  readonly before: Entry<'holding'>;
  readonly after: Entry<'holding'>;
  /** Length in days, least and greatest, by the network and not by the printed ranges; null where nothing ties it. */
  readonly least: number;
  readonly most: number | null;
  /** How fine the dates of its two ends are: a length is told no finer. */
  readonly precision: Precision;
  /** When it may have begun and ended. */
  readonly within: Stretch;
  readonly passage: 'direct' | 'not direct' | 'unknown';
  /** Who says so, or from what it is inferred; null where nothing says how it passed. */
  readonly passedOn: PassedOn | null;
  /** Looks in archives that concern one of its sides, or an event between them. */
  readonly searches: readonly Entry<'search'>[];
  /** Chosen periods that it may reach into. */
  readonly periods: readonly ChosenReference[];
}

/** Who had a piece, one after the other. */
export interface Chain {
  readonly object: Entry<'object'>;
  /** Panels that share this chain; empty for an object without panels. */
  readonly panels: readonly string[];
  readonly holdings: readonly ChainHolding[];
  /** Borrowers, depositaries, consignees and the like, from whom nobody got it: they had it while somebody else possessed it. */
  readonly meanwhile: readonly ChainHolding[];
  readonly gaps: readonly Gap[];
  readonly titles: readonly Entry<'title'>[];
  /** Where somebody disputes the title. */
  readonly disputes: readonly TitleDispute[];
}

/** Rank of "probable", the usual grade of print. */
export const PRINTED_RANK = 1;
