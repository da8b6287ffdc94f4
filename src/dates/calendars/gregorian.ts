import { dayOf, gregorianMonthLength } from '../day.ts';
import { type Calendar, TWELVE } from './calendar.ts';

/** The Gregorian calendar, carried back before 1582 (proleptic), as ISO 8601 does. */
export const gregorian: Calendar = {
  name: 'gregorian',
  beginsAtSunset: false,
  months: () => TWELVE,
  monthLength: (year, month) => (month >= 1 && month <= 12 ? gregorianMonthLength(year, month) : 0),
  toDay: dayOf,
};
