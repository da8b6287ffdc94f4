import type { Day } from '../day.ts';

/** The fourteen calendars in which a date may be written. */
export const CALENDARS = [
  'gregorian',
  'julian',
  'islamic-civil',
  'islamic-umalqura',
  'rumi',
  'hebrew',
  'persian',
  'coptic',
  'ethiopic',
  'chinese',
  'roc',
  'japanese',
  'buddhist',
  'french-republican',
] as const;

/** Name of a calendar as an entry writes it. */
export type CalendarName = (typeof CALENDARS)[number];

/** Offset that marks a leap month of the Chinese calendar: leap month 5 is 105. */
export const LEAP_MONTH = 100;

/**
 * A calendar as counted days.
 * `months(year)`: the month numbers of a year in the order in which they came; empty where the
 * calendar has no such year. `monthLength` is 0 where there is no such month.
 */
export interface Calendar {
  readonly name: CalendarName;
  readonly beginsAtSunset: boolean;
  months(year: number): readonly number[];
  monthLength(year: number, month: number): number;
  toDay(year: number, month: number, day: number): Day;
}

/** The numbers 1 to 12. */
export const TWELVE: readonly number[] = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];
