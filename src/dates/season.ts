import type { Calendar } from './calendars/calendar.ts';

interface Point {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

type Span = readonly [fromMonth: number, fromDay: number, toMonth: number, toDay: number];

/**
 * Spans of the sub-year numbers of ISO 8601-2. The standard gives no days to seasons: these
 * envelopes cover both the meteorological and the astronomical season (our own decision).
 * Quarters, thirds and halves are calendar months.
 */
const SPANS: Readonly<Record<number, Span>> = {
  21: [3, 1, 6, 21],
  22: [6, 1, 9, 23],
  23: [9, 1, 12, 22],
  25: [3, 1, 6, 21],
  26: [6, 1, 9, 23],
  27: [9, 1, 12, 22],
  29: [9, 1, 12, 22],
  31: [3, 1, 6, 21],
  32: [6, 1, 9, 23],
  33: [1, 1, 3, 31],
  34: [4, 1, 6, 30],
  35: [7, 1, 9, 30],
  36: [10, 1, 12, 31],
  37: [1, 1, 4, 30],
  38: [5, 1, 8, 31],
  39: [9, 1, 12, 31],
  40: [1, 1, 6, 30],
  41: [7, 1, 12, 31],
};

/** Seasons that reach over the turn of the year: winter in the north, summer in the south. */
const CROSSING = [24, 28, 30];

/** First and last day of a season of a year; only the Gregorian and Julian calendars have them. */
export function readSeason(
  year: number,
  season: number,
  calendar: Calendar,
): { readonly from: Point; readonly to: Point } | 'crosses the year' | null {
  if (calendar.name !== 'gregorian' && calendar.name !== 'julian') return null;
  if (CROSSING.includes(season)) return 'crosses the year';
  const span = SPANS[season];
  if (!span) return null;
  const [fromMonth, fromDay, toMonth, toDay] = span;
  return {
    from: { year, month: fromMonth, day: fromDay },
    to: { year, month: toMonth, day: toDay },
  };
}
