import { type Calendar, TWELVE } from './calendar.ts';

function isLeap(year: number): boolean {
  return year % 4 === 0;
}

function monthLength(year: number, month: number): number {
  if (month < 1 || month > 12) return 0;
  if (month === 2) return isLeap(year) ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}

/**
 * Day number of a Julian date; years are astronomical (0 is 1 BCE).
 * Julian 1582-10-05 is Gregorian 1582-10-15 (Reingold and Dershowitz, ch. 3).
 */
export function julianToDay(year: number, month: number, day: number): number {
  const y = year - 1;
  const correction = month <= 2 ? 0 : isLeap(year) ? -1 : -2;
  return -2 + 365 * y + Math.floor(y / 4) + Math.floor((367 * month - 362) / 12) + correction + day;
}

/** The Julian calendar ("old style"): leap year every fourth year; year begins 1 January. */
export const julian: Calendar = {
  name: 'julian',
  beginsAtSunset: false,
  months: () => TWELVE,
  monthLength,
  toDay: julianToDay,
};
