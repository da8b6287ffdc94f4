import { dayOf } from './day.ts';

/** A length in calendar units as written: ISO 8601 `P2Y`, `P6M`, `P10D`, `P1Y2M3D`, `P3W`. */
export interface Duration {
  readonly text: string;
  readonly months: number;
  readonly days: number;
}

const SHAPE = /^P(?=\d)(?:(\d+)Y)?(?:(\d+)M)?(?:(\d+)W)?(?:(\d+)D)?$/;

/** Parses whole, non-negative years, months, weeks and days; null where the text is none. */
export function parseDuration(text: string): Duration | null {
  const found = SHAPE.exec(text.trim());
  if (!found) return null;
  const [years, months, weeks, days] = found.slice(1).map((part) => Number(part ?? 0)) as [
    number,
    number,
    number,
    number,
  ];
  const total = { months: years * 12 + months, days: weeks * 7 + days };
  if (total.months > 120_000 || total.days > 40_000_000) return null;
  return { text: text.trim(), ...total };
}

/** Months and days of the Gregorian cycle of 400 years. */
const [CYCLE_MONTHS, CYCLE_DAYS] = [4800, 146_097];

/** First days of the months of one cycle; those of the others are whole cycles away. */
const MONTH_STARTS = Int32Array.from({ length: CYCLE_MONTHS }, (_, i) => dayOf(Math.floor(i / 12), (i % 12) + 1, 1));

/** Least and greatest number of days that so many months can be. */
function spansOf(months: number): { readonly short: number; readonly long: number } {
  const rest = months % CYCLE_MONTHS;
  let short = Number.POSITIVE_INFINITY;
  let long = 0;
  for (let i = 0; i < CYCLE_MONTHS; i += 1) {
    const end = i + rest;
    const isNext = end >= CYCLE_MONTHS;
    const distance =
      (MONTH_STARTS[isNext ? end - CYCLE_MONTHS : end] as number) +
      (isNext ? CYCLE_DAYS : 0) -
      (MONTH_STARTS[i] as number);
    if (distance < short) short = distance;
    if (distance > long) long = distance;
  }
  const whole = Math.floor(months / CYCLE_MONTHS) * CYCLE_DAYS;
  return { short: short + whole, long: long + whole };
}

/**
 * Least distance in days that the duration can mean, over the 4,800 months of the Gregorian
 * cycle: P1M 28, P6M 181, P1Y 365, P4Y 1460, P10Y 3651, P100Y 36524.
 */
export function shortestDays(duration: Duration): number {
  return spansOf(duration.months).short + duration.days;
}

/** Greatest distance in days that the duration can mean: P1M 31, P6M 184, P1Y 366, P10Y 3653. */
export function longestDays(duration: Duration): number {
  return spansOf(duration.months).long + duration.days;
}

/** A number of calendar units of one size. */
export interface DurationUnit {
  readonly count: number;
  readonly unit: 'year' | 'month' | 'week' | 'day';
}

/** The units that a length is written in, the largest first; none for P0D. */
export function durationUnits(duration: Duration): readonly DurationUnit[] {
  const found = SHAPE.exec(duration.text) ?? [];
  return (['year', 'month', 'week', 'day'] as const)
    .map((unit, i) => ({ unit, count: Number(found[i + 1] ?? 0) }))
    .filter(({ count }) => count > 0);
}
