import { dayOf } from '../day.ts';
import type { Calendar } from './calendar.ts';

const MONTHS = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13] as const;
const LEAP_YEARS = [3, 7, 11];
const LAST_YEAR = 14;
const EPOCH = dayOf(1792, 9, 22);

function monthLength(year: number, month: number): number {
  if (year < 1 || year > LAST_YEAR || month < 1 || month > 13) return 0;
  if (month < 13) return 30;
  return LEAP_YEARS.includes(year) ? 6 : 5;
}

/**
 * The French Republican calendar as it was in use, years I to XIV; month 13 holds the
 * complementary days; years III, VII and XI were leap years.
 * Check rows: 9 Thermidor II = 1794-07-27, 10 Nivose XIV = 1805-12-31.
 */
export const frenchRepublican: Calendar = {
  name: 'french-republican',
  beginsAtSunset: false,
  months: (year) => (year >= 1 && year <= LAST_YEAR ? MONTHS : []),
  monthLength,
  toDay: (year, month, day) => {
    const leapDays = LEAP_YEARS.filter((leap) => leap < year).length;
    return EPOCH + 365 * (year - 1) + leapDays + 30 * (month - 1) + day - 1;
  },
};
