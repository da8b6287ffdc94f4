import { civilOf, type Day, type DayRange } from './day.ts';
import { type DateExpression, hullOf, type Precision } from './expression.ts';

const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

/** A day in words, no finer than the precision: `14 March 1926`, `March 1926`, `1926`. */
export function formatDay(day: Day, precision: Precision): string {
  const { year, month, day: dayOfMonth } = civilOf(day);
  const yearText = year > 0 ? String(year) : `${1 - year} BCE`;
  if (precision === 'year') return yearText;
  const monthText = `${MONTHS[month - 1]} ${yearText}`;
  return precision === 'month' ? monthText : `${dayOfMonth} ${monthText}`;
}

/** A bound as it may be printed. */
export interface PrintedBound {
  readonly day: Day;
  readonly precision: Precision;
  /** Rests on an "about". */
  readonly about: boolean;
}

/** A bound in words; `about 1900` where it rests on a circa. */
export function formatBound(bound: PrintedBound): string {
  const text = formatDay(bound.day, bound.precision);
  return bound.about ? `about ${text}` : text;
}

/**
 * A range in words: `1926–1931`, `about 1900–1920`, `from 1926 on`, `until 1931`, `not bounded`.
 * Null stands for an open end. Both ends are printed no finer than their own coarsest input.
 */
export function formatRange(from: PrintedBound | null, to: PrintedBound | null): string {
  if (!from && !to) return 'not bounded';
  if (!from) return `until ${formatBound(to as PrintedBound)}`;
  if (!to) return `from ${formatBound(from)} on`;
  const first = formatBound(from);
  const last = formatBound({ ...to, about: to.about && !from.about });
  if (first === last || formatDay(from.day, from.precision) === last) return first;
  const bare = formatDay(from.day, from.precision) + formatDay(to.day, to.precision);
  return /\s/.test(bare) ? `${first} – ${last}` : `${first}–${last}`;
}

/** A stretch of days in words, at a precision. */
export function formatDays({ first, last }: DayRange, precision: Precision): string {
  const bound = (day: Day): PrintedBound | null => (Number.isFinite(day) ? { day, precision, about: false } : null);
  return formatRange(bound(first), bound(last));
}

/** What a date expression covers, in words: `1925–1931`, `1925 or 1931`, `1921 to 1938`. */
export function formatExpression(date: DateExpression): string {
  const { shape, precision } = date;
  if (shape.kind === 'lasted') {
    const [first, last] = [shape.a.first, shape.b.last];
    const [from, to] = [first, last].map((day) => (Number.isFinite(day) ? formatDay(day, precision) : null));
    return `${from ?? 'an unknown beginning'} to ${to ?? 'an unknown end'}`;
  }
  const members = shape.members.map((member) => formatDays(member, precision));
  const joined = members.join(shape.kind === 'one' ? ' or ' : ' and ');
  return date.approximate ? `about ${joined}` : joined;
}

/** First and last day of anything that an expression covers. */
export function hullOfExpression(date: DateExpression): DayRange {
  return date.shape.kind === 'lasted'
    ? { first: date.shape.a.first, last: date.shape.b.last }
    : hullOf(date.shape.members);
}
