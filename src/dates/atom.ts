import { phrase } from '../base/said.ts';
import { type Calendar, LEAP_MONTH } from './calendars/calendar.ts';
import { eraDays, parseEraDate } from './calendars/japanese-era.ts';
import type { Day, DayRange } from './day.ts';
import type { CircaWidths, DateProblem, DateWarning, Precision } from './expression.ts';
import { problem } from './problems.ts';
import { readSeason } from './season.ts';

/** One simple date inside an expression: its days and how it was qualified. */
export interface Atom {
  readonly range: DayRange;
  readonly precision: Precision;
  readonly approximate: boolean;
  readonly uncertain: boolean;
  readonly warnings: readonly DateWarning[];
}

/** Unit in which a circa width is counted. */
type Unit = 'year' | 'decade' | 'century' | 'month' | 'day';

interface Parts {
  readonly year: string;
  readonly significant: string | undefined;
  readonly month: string | undefined;
  readonly day: string | undefined;
  /** Qualifier of each component, those to the left of a trailing one included. */
  readonly marks: { readonly year: string; readonly month: string; readonly day: string };
  readonly time: boolean;
}

interface Point {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

const SHAPE =
  /^([?~%]?)(Y-?\d+(?:E\d+)?|-?[\dX]{1,4})(S\d+)?([?~%]?)(?:-([?~%]?)([\dX]{1,2}L?)([?~%]?)(?:-([?~%]?)([\dX]{1,2})([?~%]?))?)?(T.*)?$/;

/** Reads one simple date in a calendar; a problem where it is none. */
export function readAtom(text: string, calendar: Calendar, circa: CircaWidths): Atom | DateProblem {
  const era = calendar.name === 'japanese' ? parseEraDate(text) : null;
  if (era) {
    const range = eraDays(era);
    if (!range) return problem.era(text);
    const precision = era.day !== undefined ? 'day' : era.month !== undefined ? 'month' : 'year';
    return { range, precision, approximate: false, uncertain: false, warnings: [] };
  }
  const parts = partsOf(text);
  if (!parts) return problem.notEdtf(text, calendar.name);
  if (parts.month !== undefined && Number(parts.month) >= 20 && parts.day === undefined) {
    return readSeasonAtom(text, parts, calendar, circa);
  }
  return readCalendarAtom(text, parts, calendar, circa);
}

function partsOf(text: string): Parts | null {
  const found = SHAPE.exec(text);
  if (!found) return null;
  const [, beforeYear, year, significant, afterYear, beforeMonth, month, afterMonth] = found;
  const [beforeDay, day, afterDay, time] = found.slice(8);
  return {
    year: year as string,
    significant,
    month,
    day,
    marks: {
      year: [beforeYear, afterYear, afterMonth, afterDay].join(''),
      month: [beforeMonth, afterMonth, afterDay].join(''),
      day: [beforeDay, afterDay].join(''),
    },
    time: time !== undefined,
  };
}

function readSeasonAtom(text: string, parts: Parts, calendar: Calendar, circa: CircaWidths): Atom | DateProblem {
  const season = Number(parts.month);
  const range = readSeason(Number(parts.year), season, calendar);
  if (range === 'crosses the year') return problem.winter(text);
  if (range === null || Number.isNaN(Number(parts.year))) return problem.notEdtf(text, calendar.name);
  const marks = parts.marks.year + parts.marks.month;
  const widened = widen(range.from, range.to, /[~%]/.test(marks) ? 'month' : null, calendar, circa);
  if ('code' in widened) return widened;
  return {
    ...qualities(marks),
    range: widened,
    precision: 'month',
    warnings: seasonWarnings(text, Number(parts.year), season),
  };
}

/** `1926-27` is a season number to the standard, and two years to most people. */
function seasonWarnings(text: string, year: number, season: number): readonly DateWarning[] {
  if (season <= 24 && season !== (year + 1) % 100) return [];
  return [
    {
      code: 'date-season-or-years',
      text: phrase(
        '"{0}" is read as a part of the year {1} (number {2} of ISO 8601-2), not as two years',
        text,
        year,
        season,
      ),
    },
  ];
}

function readCalendarAtom(text: string, parts: Parts, calendar: Calendar, circa: CircaWidths): Atom | DateProblem {
  const years = yearRange(parts, countsLong(calendar));
  if (!years) return problem.notEdtf(text, calendar.name);
  if (calendar.name === 'japanese' && years.low < 1873) return problem.era(text);
  const from = extremePoint(calendar, parts, years, 1);
  const to = extremePoint(calendar, parts, years, -1);
  if (!from || !to) {
    const known = calendar.months(years.low).length > 0 || calendar.months(years.high).length > 0;
    return known ? problem.noSuchDay(text, calendar.name) : problem.calendarYear(text, calendar.name);
  }
  const unit = circaUnit(parts);
  const range = widen(from, to, unit, calendar, circa);
  if ('code' in range) return range;
  const marks = parts.marks.year + parts.marks.month + parts.marks.day;
  return {
    ...qualities(marks),
    range,
    precision: precisionOf(parts),
    warnings: warningsOf(text, parts, calendar),
  };
}

function qualities(marks: string): Pick<Atom, 'approximate' | 'uncertain'> {
  return { approximate: /[~%]/.test(marks), uncertain: /[?%]/.test(marks) };
}

function isWritten(component: string | undefined): component is string {
  return component !== undefined && !/^X+L?$/.test(component);
}

function precisionOf(parts: Parts): Precision {
  if (isWritten(parts.day)) return 'day';
  return isWritten(parts.month) ? 'month' : 'year';
}

/** The finest component that carries `~` or `%` decides in which unit the date is widened. */
function circaUnit(parts: Parts): Unit | null {
  const about = /[~%]/;
  if (about.test(parts.marks.day) && isWritten(parts.day)) return 'day';
  if (about.test(parts.marks.month) && isWritten(parts.month)) return 'month';
  if (!about.test(parts.marks.year + parts.marks.month + parts.marks.day)) return null;
  if (/^-?\d{3}$|^-?\d{3}X$/.test(parts.year)) return 'decade';
  return /^-?\d{2}$|X$/.test(parts.year) ? 'century' : 'year';
}

function warningsOf(text: string, parts: Parts, calendar: Calendar): readonly DateWarning[] {
  const warnings: DateWarning[] = [];
  const short = /^-?\d{2,3}$/.test(parts.year) && parts.month === undefined && countsLong(calendar);
  if (short) {
    const what = parts.year.replace('-', '').length === 2 ? 'century' : 'decade';
    warnings.push({ code: 'date-short-year', text: phrase('"{0}" means a whole {1}', text, what) });
  }
  if (parts.time)
    warnings.push({ code: 'date-time-of-day', text: phrase('the time of day in "{0}" is not used', text) });
  return warnings;
}

/** Calendars in whose ordinary use a year has four digits. */
function countsLong(calendar: Calendar): boolean {
  return !['roc', 'french-republican', 'japanese', 'coptic'].includes(calendar.name);
}

function yearRange(parts: Parts, shortMeansMore: boolean): { readonly low: number; readonly high: number } | null {
  const { year, significant } = parts;
  if (year.startsWith('Y')) {
    const [base, exponent] = year.slice(1).split('E');
    return roundedYears(Number(base) * 10 ** Number(exponent ?? 0), significant);
  }
  const negative = year.startsWith('-');
  const digits = negative ? year.slice(1) : year;
  if (significant !== undefined) return roundedYears(Number(year), significant);
  const short = shortMeansMore && parts.month === undefined ? digits.length : 4;
  const scale = short === 2 ? 100 : short === 3 ? 10 : 1;
  const low = Number(digits.replaceAll('X', '0')) * scale;
  const high = Number(digits.replaceAll('X', '9')) * scale + (scale - 1);
  return negative ? { low: -high, high: -low } : { low, high };
}

function roundedYears(
  year: number,
  significant: string | undefined,
): { readonly low: number; readonly high: number } | null {
  if (!Number.isSafeInteger(year) || Math.abs(year) > 2 ** 42) return null;
  if (significant === undefined) return { low: year, high: year };
  const digits = String(Math.abs(year)).length;
  const scale = 10 ** Math.max(0, digits - Number(significant.slice(1)));
  const low = Math.floor(Math.abs(year) / scale) * scale;
  return year < 0 ? { low: -(low + scale - 1), high: -low } : { low, high: low + scale - 1 };
}

/** First (step 1) or last (step -1) day that fits all written digits; null where there is none. */
function extremePoint(
  calendar: Calendar,
  parts: Parts,
  years: { readonly low: number; readonly high: number },
  step: 1 | -1,
): Point | null {
  const start = step === 1 ? years.low : years.high;
  const stop = step === 1 ? years.high : years.low;
  for (let year = start, tries = 0; (stop - year) * step >= 0 && tries < 10_000; year += step, tries += 1) {
    for (const month of directed(calendar.months(year), step)) {
      if (!fits(month, parts.month)) continue;
      const day = extremeDay(calendar.monthLength(year, month), parts.day, step);
      if (day !== null) return { year, month, day };
    }
  }
  return null;
}

function directed<Item>(items: readonly Item[], step: 1 | -1): readonly Item[] {
  return step === 1 ? items : [...items].reverse();
}

function extremeDay(length: number, pattern: string | undefined, step: 1 | -1): number | null {
  for (let i = 0; i < length; i += 1) {
    const day = step === 1 ? i + 1 : length - i;
    if (fits(day, pattern)) return day;
  }
  return null;
}

function fits(value: number, pattern: string | undefined): boolean {
  if (pattern === undefined || /^X+$/.test(pattern)) return true;
  const leap = pattern.endsWith('L');
  if (leap !== value > LEAP_MONTH) return false;
  const text = String(leap ? value - LEAP_MONTH : value).padStart(2, '0');
  const wanted = pattern.replace('L', '').padStart(2, '0');
  return [...wanted].every((letter, i) => letter === 'X' || letter === text[i]);
}

function widen(
  from: Point,
  to: Point,
  unit: Unit | null,
  calendar: Calendar,
  circa: CircaWidths,
): DayRange | DateProblem {
  const first = calendar.toDay(from.year, from.month, from.day);
  const last = calendar.toDay(to.year, to.month, to.day);
  if (unit === null) return { first, last };
  const width = circa[unit];
  if (width === undefined) return problem.circaUnset(unit);
  if (unit === 'day') return { first: first - width, last: last + width };
  return {
    first: shift(from, unit, -width, calendar, 'keep day'),
    last: shift(to, unit, width, calendar, isMonthEnd(to, calendar) ? 'month end' : 'keep day'),
  };
}

function isMonthEnd(point: Point, calendar: Calendar): boolean {
  return point.day === calendar.monthLength(point.year, point.month);
}

/** Moves a point by whole years or months of its calendar; the day is kept, or clamped to the month. */
function shift(point: Point, unit: Unit, width: number, calendar: Calendar, end: 'keep day' | 'month end'): Day {
  let { year, month } = point;
  if (unit === 'month') {
    let order = calendar.months(year).indexOf(month) + width;
    while (order < 0) {
      year -= 1;
      order += calendar.months(year).length || 12;
    }
    while (order >= (calendar.months(year).length || 12)) {
      order -= calendar.months(year).length || 12;
      year += 1;
    }
    month = calendar.months(year)[order] ?? month;
  } else {
    year += width;
    if (!calendar.months(year).includes(month)) {
      const months = calendar.months(year);
      month = (width < 0 ? months[0] : months.at(-1)) ?? month;
    }
  }
  const length = calendar.monthLength(year, month);
  const day = calendar.toDay(year, month, end === 'month end' ? length : Math.min(point.day, length));
  if (Number.isFinite(day) && length > 0) return day;
  // The calendar does not reach that far (Rumi, French Republican): count years of 365.2425 days.
  const unitDays = unit === 'month' ? 30.436875 : 365.2425;
  return calendar.toDay(point.year, point.month, point.day) + Math.round(width * unitDays);
}
