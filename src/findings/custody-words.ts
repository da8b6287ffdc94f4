import { civilOf } from '../dates/day.ts';
import { formatDay } from '../dates/wording.ts';
import type { Gap, Stretch } from './chain.ts';

/** A stretch in words: "1933 to 1936", "until 1938", "from 1951 on", "not bounded". */
export function sayStretch({ first, last }: Stretch): string {
  const [from, to] = [first, last].map((day) => (Number.isFinite(day) ? formatDay(day, 'year') : null));
  if (from && to) return from === to ? from : `${from} to ${to}`;
  return from ? `from ${from} on` : to ? `until ${to}` : 'not bounded';
}

/** A certain stretch, never longer than it is: in years where it is of whole years, else to the day. */
export function sayExactly({ first, last }: Stretch): string {
  if (first === last) return formatDay(first, 'day');
  const [from, to] = [civilOf(first), civilOf(last)];
  const isWhole = from.month === 1 && from.day === 1 && to.month === 12 && to.day === 31;
  if (isWhole) return sayStretch({ first, last });
  return `${formatDay(first, 'day')} to ${formatDay(last, 'day')}`;
}

/** When somebody certainly had it: "throughout 1938 to 1951", "at some time in 1936", or that nothing says so. */
export function sayCertain({
  throughout,
  recorded,
}: {
  readonly throughout: Stretch | null;
  readonly recorded: Stretch | null;
}): string {
  if (throughout) return `throughout ${sayExactly(throughout)}`;
  return recorded ? sayWithin(recorded).replace('some time', 'at some time') : 'no stretch that is certain';
}

/** Days as years and days in round words; the exact number of days stands beside it. */
export function sayLength(days: number): string {
  if (days < 62) return `${days} ${days === 1 ? 'day' : 'days'}`;
  if (days < 730) return `${Math.round(days / 30.44)} months`;
  return `${(days / 365.25).toFixed(1)} years`;
}

/** How long the gap is: by the network, not by printed ranges. */
export function sayGap({ least, most }: Pick<Gap, 'least' | 'most'>): string {
  if (most === null) return least > 0 ? `at least ${sayLength(least)}` : 'length not known';
  if (least === 0) return `up to ${sayLength(most)}`;
  return least === most ? sayLength(most) : `${sayLength(least)} to ${sayLength(most)}`;
}

/** When a gap lies, as the end of a sentence: "some time from 1936 to 1938", "some time until 1936". */
export function sayWithin(within: Stretch): string {
  const words = sayStretch(within);
  if (words === 'not bounded') return 'at a time that nothing bounds';
  return `some time ${/^(?:from|until)/.test(words) ? words : / to /.test(words) ? `from ${words}` : `in ${words}`}`;
}
