import { allOf, oneOf, phrase, type Said, type SaidDate, sameSaid } from '../base/said.ts';
import { civilOf, type Day, type DayRange } from '../dates/day.ts';
import { type Duration, type DurationUnit, durationUnits } from '../dates/duration.ts';
import { coarsest, type DateExpression, type Precision } from '../dates/expression.ts';
import type { PrintedBound } from '../dates/printed-bound.ts';

/** A day, no finer than the precision: 14 March 1926, March 1926, 1926. */
export function sayDay(day: Day, precision: Precision): SaidDate {
  const civil = civilOf(day);
  return {
    year: civil.year,
    month: precision === 'year' ? null : civil.month,
    day: precision === 'day' ? civil.day : null,
  };
}

/** A bound; `about 1900` where it rests on a circa. */
export function sayDateOf({ day, precision, about }: PrintedBound): Said {
  const date = sayDay(day, precision);
  return about ? phrase('about {0}', date) : date;
}

/** A date, how fine it is (`about` for a circa), and the date alone: a language chooses its words around it by these. */
function around(bound: PrintedBound): readonly [Said, string, Said] {
  const { day, precision, about } = bound;
  return [sayDateOf(bound), about ? 'about' : precision, sayDay(day, precision)];
}

/**
 * A range: `1926–1931`, `about 1900–1920`, `from 1926 on`, `until 1931`, `no limit known`.
 * Null stands for an open end. Both ends are printed at one precision, the coarser of the two, so that no range reads as
 * ending before it began.
 */
export function sayBounds(earliest: PrintedBound | null, latest: PrintedBound | null): Said {
  if (!earliest && !latest) return phrase('no limit known');
  if (!earliest) return phrase('until {0}', ...around(latest as PrintedBound));
  if (!latest) return phrase('from {0} on', ...around(earliest));
  const precision = coarsest([earliest.precision, latest.precision]);
  const [from, to] = [earliest, latest].map((one) => ({ ...one, precision })) as [PrintedBound, PrintedBound];
  const first = sayDateOf(from);
  const last = sayDateOf({ ...to, about: to.about && !from.about });
  if (sameSaid(first, last) || sameSaid(sayDay(from.day, from.precision), last)) return first;
  const ofYears = precision === 'year' && [from, to].every((one) => civilOf(one.day).year > 0);
  return ofYears ? phrase('{0}–{1}', first, last) : phrase('{0} – {1}', first, last);
}

/** A stretch of days, at a precision. */
export function sayDays({ first, last }: DayRange, precision: Precision): Said {
  const bound = (day: Day): PrintedBound | null => (Number.isFinite(day) ? { day, precision, about: false } : null);
  return sayBounds(bound(first), bound(last));
}

/** What a date expression covers: `1925–1931`, `1925 or 1931`, `1921 to 1938`. */
export function sayExpression(date: DateExpression): Said {
  const { shape, precision } = date;
  if (shape.kind === 'lasted') {
    const [first, last] = [shape.a.first, shape.b.last];
    return phrase(
      '{0} to {1}',
      Number.isFinite(first) ? sayDay(first, precision) : phrase('an unknown beginning'),
      Number.isFinite(last) ? sayDay(last, precision) : phrase('an unknown end'),
      Number.isFinite(first) ? precision : 'unknown',
      Number.isFinite(last) ? precision : 'unknown',
    );
  }
  const members = shape.members.map((member) => sayDays(member, precision));
  const joined = shape.kind === 'one' ? oneOf(members) : allOf(members);
  return date.approximate ? phrase('about {0}', joined) : joined;
}

const UNITS: Readonly<Record<DurationUnit['unit'], (count: number) => Said>> = {
  year: (count) => phrase('{0, plural, one {# year} other {# years}}', count),
  month: (count) => phrase('{0, plural, one {# month} other {# months}}', count),
  week: (count) => phrase('{0, plural, one {# week} other {# weeks}}', count),
  day: (count) => phrase('{0, plural, one {# day} other {# days}}', count),
};

/** A number of years, months, weeks or days. */
export function sayCount(count: number, unit: DurationUnit['unit']): Said {
  return UNITS[unit](count);
}

/** A length: `2 weeks`, `1 year and 6 months`, `no time at all` for P0D. */
export function sayDuration(duration: Duration): Said {
  const parts = durationUnits(duration).map(({ count, unit }) => sayCount(count, unit));
  return parts.length === 0 ? phrase('no time at all') : allOf(parts);
}
