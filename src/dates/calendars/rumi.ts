import { dayOf, gregorianMonthLength } from '../day.ts';
import { type Calendar, TWELVE } from './calendar.ts';
import { julian, julianToDay } from './julian.ts';

const FROM_MARCH = [3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 1, 2] as const;
const FIRST_YEAR = 1256;
const LAST_YEAR = 1341;

/** Gregorian or Julian year in which a month of the Rumi year fell. */
function commonYear(year: number, month: number): number {
  if (year >= 1334) return year + 584;
  return month >= 3 ? year + 584 : year + 585;
}

function months(year: number): readonly number[] {
  if (year < FIRST_YEAR || year > LAST_YEAR) return [];
  if (year >= 1334) return TWELVE;
  return year === 1333 ? FROM_MARCH.slice(0, 10) : FROM_MARCH;
}

function monthLength(year: number, month: number): number {
  if (!months(year).includes(month)) return 0;
  if (year === 1332 && month === 2) return 15;
  const inYear = commonYear(year, month);
  return year >= 1333 ? gregorianMonthLength(inYear, month) : julian.monthLength(inYear, month);
}

/**
 * The Ottoman fiscal calendar, 1256 to 1341. Months carry the number of their Julian name
 * (Kanunusani 1, Mart 3); the year began on 1 March until 1332, went over to Gregorian days after
 * 15 February 1332 (28 February 1917), and began on 1 January from 1334 (1918).
 * Check rows: 1 Mart 1256 = 1840-03-13; 15 Subat 1332 = 1917-02-28, the next day 1 Mart 1333.
 */
export const rumi: Calendar = {
  name: 'rumi',
  beginsAtSunset: false,
  months,
  monthLength,
  toDay: (year, month, day) =>
    year >= 1333 ? dayOf(commonYear(year, month), month, day) : julianToDay(commonYear(year, month), month, day),
};
