import { Temporal } from 'temporal-polyfill/full';
import { type Day, dayOf } from '../day.ts';
import { type Calendar, type CalendarName, LEAP_MONTH } from './calendar.ts';

interface Naming {
  /** Month number of an entry to the month code of the library, given the year's codes. */
  toCode(month: number, codes: readonly string[]): string | null;
  toNumber(code: string, codes: readonly string[]): number;
}

/** Months by their place in the library's code; the leap month of 5 (M05L) is 105. */
const plainNaming: Naming = {
  toCode: (month) => (month > LEAP_MONTH ? `M${pad(month - LEAP_MONTH)}L` : month > 0 ? `M${pad(month)}` : null),
  toNumber: (code) => Number(code.slice(1, 3)) + (code.endsWith('L') ? LEAP_MONTH : 0),
};

/** Hebrew months counted from Nisan = 1, Tishri = 7; 12 is Adar or Adar I, 13 Adar II. */
const hebrewNaming: Naming = {
  toCode: (month, codes) => {
    const leap = codes.includes('M05L');
    if (month >= 1 && month <= 6) return `M${pad(month + 6)}`;
    if (month >= 7 && month <= 11) return `M${pad(month - 6)}`;
    if (month === 12) return leap ? 'M05L' : 'M06';
    return month === 13 && leap ? 'M06' : null;
  },
  toNumber: (code, codes) => {
    if (code === 'M05L') return 12;
    const number = Number(code.slice(1, 3));
    if (number === 6) return codes.includes('M05L') ? 13 : 12;
    return number > 6 ? number - 6 : number + 6;
  },
};

/**
 * A calendar taken from the Temporal library (its `full` entry; the plain one knows ISO only).
 * Years outside -9999 to 9999 are given back as years without months.
 */
export function throughTemporal(
  name: CalendarName,
  beginsAtSunset: boolean,
  naming: Naming = name === 'hebrew' ? hebrewNaming : plainNaming,
): Calendar {
  const codesOf = (year: number): readonly string[] => monthCodes(name, year);
  const length = (year: number, month: number): number => {
    const codes = codesOf(year);
    const code = naming.toCode(month, codes);
    if (code === null || !codes.includes(code)) return 0;
    return plainDate(name, year, code, 1)?.daysInMonth ?? 0;
  };
  return {
    name,
    beginsAtSunset,
    months: (year) => codesOf(year).map((code, _, codes) => naming.toNumber(code, codes)),
    monthLength: length,
    toDay: (year, month, day) => {
      const code = naming.toCode(month, codesOf(year)) ?? 'M00';
      const date = plainDate(name, year, code, day);
      return date ? isoDay(date) : Number.NaN;
    },
  };
}

function monthCodes(calendar: string, year: number): readonly string[] {
  if (Math.abs(year) > 9999) return [];
  const first = plainDate(calendar, year, 'M01', 1);
  if (!first) return [];
  return Array.from({ length: first.monthsInYear }, (_, i) => first.with({ month: i + 1, day: 1 }).monthCode);
}

function plainDate(calendar: string, year: number, monthCode: string, day: number): Temporal.PlainDate | null {
  try {
    return Temporal.PlainDate.from({ calendar, year, monthCode, day }, { overflow: 'reject' });
  } catch {
    return null;
  }
}

/** Day number of a date of any calendar of the library. */
export function isoDay(date: Temporal.PlainDate): Day {
  const iso = date.withCalendar('iso8601');
  return dayOf(iso.year, iso.month, iso.day);
}

function pad(number: number): string {
  return String(number).padStart(2, '0');
}
