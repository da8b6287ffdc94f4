import { dayOf, gregorianMonthLength } from '../day.ts';
import { type Calendar, TWELVE } from './calendar.ts';

const FROM_APRIL = [4, 5, 6, 7, 8, 9, 10, 11, 12, 1, 2, 3] as const;
const LAST_APRIL_YEAR = 2483;

/** Thai Buddhist years began on 1 April until 2482; 2483 (1940) had nine months. */
function commonYear(year: number, month: number): number {
  const afterNewYear = year < LAST_APRIL_YEAR && month < 4;
  return year - 543 + (afterNewYear ? 1 : 0);
}

function months(year: number): readonly number[] {
  if (year > LAST_APRIL_YEAR) return TWELVE;
  return year === LAST_APRIL_YEAR ? FROM_APRIL.slice(0, 9) : FROM_APRIL;
}

/** The Thai Buddhist era over Gregorian months; January to March before 1941 fall in the year begun in April. */
export const buddhist: Calendar = {
  name: 'buddhist',
  beginsAtSunset: false,
  months,
  monthLength: (year, month) =>
    months(year).includes(month) ? gregorianMonthLength(commonYear(year, month), month) : 0,
  toDay: (year, month, day) => dayOf(commonYear(year, month), month, day),
};
