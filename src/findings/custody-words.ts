import { measured, phrase, type Said } from '../base/said.ts';
import { civilOf } from '../dates/day.ts';
import { sayCount, sayDay } from '../language/date-words.ts';
import type { Gap, Stretch } from './chain.ts';

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
}: {
  readonly throughout: Stretch | null;
  readonly recorded: Stretch | null;
}): Said {
  if (throughout) return phrase('throughout {0}', sayExactly(throughout));
  if (!recorded) return phrase('no known stretch');
  const [from, to] = yearsOf(recorded);
  if (from === null && to === null) return phrase('at a time without a known limit');
  if (to === null) return phrase('at some time from {0} on', from as Said);
  if (from === null) return phrase('at some time until {0}', to);
  return from.year === to.year ? phrase('at some time in {0}', from) : phrase('at some time from {0} to {1}', from, to);
}

/** Days as years and days in round words; the exact number of days stands beside it. */
export function sayLength(days: number): Said {
  if (days < 62) return sayCount(days, 'day');
  if (days < 730) return sayCount(Math.round(days / 30.44), 'month');
  return phrase('{0} years', measured(days / 365.25, 1));
}

/** How long the gap is: by the network, not by printed ranges. */
export function sayGap({ least, most }: Pick<Gap, 'least' | 'most'>): Said {
  if (most === null) return least > 0 ? phrase('at least {0}', sayLength(least)) : phrase('length not known');
  if (least === 0) return phrase('up to {0}', sayLength(most));
  return least === most ? sayLength(most) : phrase('{0} to {1}', sayLength(least), sayLength(most), 'length', 'length');
}

/** What is known of how it passed: who says that it was direct, or from what that is taken; nothing more where nothing is. */
export function sayPassed({ passedOn }: Pick<Gap, 'passedOn'>): Said {
  if (passedOn?.atDeath) return phrase('estate');
  if (passedOn?.is !== 'direct') return phrase('no record known to this museum');
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
