import { rankOf } from '../base/grade.ts';
import { phrase, type Said, sameSaid } from '../base/said.ts';
import { civilOf } from '../dates/day.ts';
import type { Precision } from '../dates/expression.ts';
import { sayCount, sayDay } from '../language/date-words.ts';
import { type Gap, PRINTED_RANK, type Stretch } from './chain.ts';

/** A stretch in years: "1933 to 1936", "until 1938", "from 1951 on", "no limit known". */
export function sayStretch({ first, last }: Stretch): Said {
  const [from, to] = yearsOf({ first, last });
  if (from !== null && to !== null) return from.year === to.year ? from : between(from, to);
  if (from !== null) return phrase('from {0} on', from, 'year');
  return to === null ? phrase('no limit known') : phrase('until {0}', to, 'year');
}

function yearsOf({ first, last }: Stretch): readonly [SaidYear | null, SaidYear | null] {
  const year = (day: number): SaidYear | null => (Number.isFinite(day) ? sayDay(day, 'year') : null);
  return [year(first), year(last)];
}

type SaidYear = ReturnType<typeof sayDay>;

function between(from: Said, to: Said, finest: 'year' | 'day' = 'year'): Said {
  return phrase('{0} to {1}', from, to, finest, finest);
}

/** A certain stretch, never longer than it is: in years where it is of whole years, else to the day. */
export function sayExactly({ first, last }: Stretch): Said {
  if (first === last) return sayDay(first, 'day');
  const [from, to] = [civilOf(first), civilOf(last)];
  const isWhole = from.month === 1 && from.day === 1 && to.month === 12 && to.day === 31;
  return isWhole ? sayStretch({ first, last }) : between(sayDay(first, 'day'), sayDay(last, 'day'), 'day');
}

/**
 * When somebody had it on the statements asked about, whatever the true dates are: "throughout 1938 to 1951", "at some time in
 * 1936", or that nothing says so. "Certainly" is for established statements alone, so it is not said here.
 */
export function sayCertain({
  throughout,
  recorded,
  precision = 'day',
}: {
  readonly throughout: Stretch | null;
  readonly recorded: Stretch | null;
  /** How fine the bounds of the stretch are; to the day where nothing is said. */
  readonly precision?: Precision;
}): Said {
  if (throughout && precision === 'day') return phrase('throughout {0}', sayExactly(throughout));
  if (throughout)
    return phrase(
      'from {0} at the latest until {1} at least',
      sayDay(throughout.first, precision),
      sayDay(throughout.last, precision),
    );
  if (!recorded) return phrase('no known stretch');
  const [from, to] = yearsOf(recorded);
  if (from === null && to === null) return phrase('at a time without a known limit');
  if (to === null) return phrase('at some time from {0} on', from as Said);
  if (from === null) return phrase('at some time until {0}', to);
  return from.year === to.year ? phrase('at some time in {0}', from) : phrase('at some time from {0} to {1}', from, to);
}

/**
 * A length of time, no finer than the coarser of its two ends: from months, months; from years, years. From days it is told in
 * days up to two months, in months up to three years; a long one is told in years, about.
 * @param round how a part of a month counts: a least length is not made longer, a greatest not shorter
 */
function sayLength(days: number, precision: Precision, round: (count: number) => number): Said {
  if (precision === 'day' && days < 62) return sayCount(days, 'day');
  if (precision !== 'year' && days < 36 * MONTH) return sayCount(Math.max(0, round(days / MONTH)), 'month');
  const years = Math.round(days / 365.2425);
  return years === 0 ? phrase('less than a year') : phrase('about {0, plural, one {# year} other {# years}}', years);
}

/** Days of a month on average (Gregorian calendar). */
const MONTH = 30.436875;

/** How long the gap is: by the network, not by printed ranges, and no finer than its ends. */
export function sayGap({ least, most, precision }: Pick<Gap, 'least' | 'most' | 'precision'>): Said {
  const atLeast = sayLength(least, precision, (months) => Math.floor(months + 0.01));
  const isNone = least < (precision === 'year' ? 183 : precision === 'month' ? 28 : 1);
  if (most === null) return isNone ? phrase('length not known') : phrase('at least {0}', atLeast);
  const atMost = sayLength(most, precision, (months) => Math.ceil(months - 0.01));
  if (isNone) return most < 183 && precision === 'year' ? atMost : phrase('up to {0}', atMost);
  return sameSaid(atLeast, atMost) ? atMost : phrase('{0} to {1}', atLeast, atMost, 'length', 'length');
}

/** What is known of how it passed: who says that it was direct, or from what that is taken; nothing more where nothing is. */
export function sayPassed({ passedOn }: Pick<Gap, 'passedOn'>): Said {
  if (passedOn?.atDeath) return phrase('estate');
  if (passedOn?.is !== 'direct') return phrase('no record known to this museum');
  if (rankOf(passedOn.grade) > PRINTED_RANK)
    return passedOn.why === null ? phrase('possibly direct') : phrase('possibly direct, because {0}', passedOn.why);
  if (passedOn.source !== null) return phrase('said to be direct');
  return passedOn.why === null ? phrase('taken to be direct') : phrase('taken to be direct, because {0}', passedOn.why);
}

/** When a gap lies, as the end of a sentence: "some time from 1936 to 1938", "some time until 1936". */
export function sayWithin(within: Stretch): Said {
  const [from, to] = yearsOf(within);
  if (from === null && to === null) return phrase('at a time without a known limit');
  if (to === null) return phrase('some time from {0} on', from as Said);
  if (from === null) return phrase('some time until {0}', to);
  return from.year === to.year ? phrase('some time in {0}', from) : phrase('some time from {0} to {1}', from, to);
}
