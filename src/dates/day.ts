/**
 * A day as a whole number: days of the proleptic Gregorian calendar counted from
 * 1 January of year 1 = day 1 (the "fixed day" of Reingold and Dershowitz, Calendrical
 * Calculations). Infinities stand for open ends. Year 0 is 1 BCE.
 */
export type Day = number;

/** A range of days, both ends included; either may be infinite. */
export interface DayRange {
  readonly first: Day;
  readonly last: Day;
}

/** Year, month 1-12 and day 1-31 of the proleptic Gregorian calendar. */
export interface CivilDate {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

/** True for a leap year of the Gregorian calendar. */
export function isGregorianLeapYear(year: number): boolean {
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
}

/** Length in days of a Gregorian month (1-12). */
export function gregorianMonthLength(year: number, month: number): number {
  if (month === 2) return isGregorianLeapYear(year) ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}

/** Day number of a Gregorian date. `dayOf(1970, 1, 1)` is 719163. */
export function dayOf(year: number, month: number, day: number): Day {
  const y = year - 1;
  const correction = month <= 2 ? 0 : isGregorianLeapYear(year) ? -1 : -2;
  return (
    365 * y +
    Math.floor(y / 4) -
    Math.floor(y / 100) +
    Math.floor(y / 400) +
    Math.floor((367 * month - 362) / 12) +
    correction +
    day
  );
}

/** Gregorian date of a finite day number. */
export function civilOf(day: Day): CivilDate {
  let year = Math.floor((day - 1) / 365.2425) + 1;
  while (dayOf(year, 1, 1) > day) year -= 1;
  while (dayOf(year + 1, 1, 1) <= day) year += 1;
  let month = 12;
  while (dayOf(year, month, 1) > day) month -= 1;
  return { year, month, day: day - dayOf(year, month, 1) + 1 };
}

/** ISO 8601 text of a finite day; years beyond 0-9999 carry a sign and six digits or more. */
export function formatIsoDay(day: Day): string {
  const { year, month, day: dayOfMonth } = civilOf(day);
  const plain = year >= 0 && year <= 9999;
  const yearText = plain
    ? String(year).padStart(4, '0')
    : `${year < 0 ? '-' : '+'}${String(Math.abs(year)).padStart(6, '0')}`;
  return `${yearText}-${String(month).padStart(2, '0')}-${String(dayOfMonth).padStart(2, '0')}`;
}
