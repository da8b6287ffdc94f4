import type { Said } from '../base/said.ts';
import type { CalendarName } from './calendars/calendar.ts';
import type { Day, DayRange } from './day.ts';

/** How fine a written date is; decades and centuries print as years. */
export type Precision = 'day' | 'month' | 'year';

/** The coarsest of some precisions; `day` for none. */
export function coarsest(precisions: readonly Precision[]): Precision {
  if (precisions.includes('year')) return 'year';
  return precisions.includes('month') ? 'month' : 'day';
}

/** What a date expression says in days. */
export type DateShape =
  /** One unknown day inside one of the members (apart from each other, in order). */
  | { readonly kind: 'one'; readonly members: readonly DayRange[] }
  /** Something that lasted: it began inside `a` and ended inside `b`; `open` marks a missing end. */
  | { readonly kind: 'lasted'; readonly a: DayRange; readonly b: DayRange }
  /** Each of the members, `{...}`. */
  | { readonly kind: 'each'; readonly members: readonly DayRange[] };

/** A date as read: the days it covers, how fine it was, and what was done to it. */
export interface DateExpression {
  readonly text: string;
  readonly calendar: CalendarName;
  readonly shape: DateShape;
  readonly precision: Precision;
  /** Carried `~` or `%`: widened by the workspace's circa. */
  readonly approximate: boolean;
  /** Carried `?` or `%`: the statement counts one grade lower. */
  readonly uncertain: boolean;
  /** Widened by a day each side, since the calendar's days begin at sunset. */
  readonly sunset: boolean;
  /** Things a reader should look at: codes with words. */
  readonly warnings: readonly DateWarning[];
}

/** Something that is allowed but easily a slip. */
export interface DateWarning {
  readonly code: 'date-short-year' | 'date-time-of-day' | 'date-season-or-years' | 'date-far-off';
  readonly text: Said;
}

/** Why a text is no date, with the mend. */
export interface DateProblem {
  readonly code:
    | 'date-not-edtf'
    | 'date-no-such-day'
    | 'date-winter'
    | 'date-circa-unset'
    | 'date-reversed'
    | 'date-era'
    | 'date-calendar-year';
  readonly message: Said;
  readonly mend: Said;
}

/** Years (or months, days) either side that a `~` stands for, by the precision of the date. */
export interface CircaWidths {
  readonly year?: number | undefined;
  readonly decade?: number | undefined;
  readonly century?: number | undefined;
  readonly month?: number | undefined;
  readonly day?: number | undefined;
}

/** Settings of the workspace that dates are read by. */
export interface DateSettings {
  readonly circa: CircaWidths;
  /** Days either side for calendars whose day begins at sunset; 1 unless the workspace says. */
  readonly sunsetDays: number;
}

/** The whole time line. */
export const ALL_TIME: DayRange = {
  first: Number.NEGATIVE_INFINITY,
  last: Number.POSITIVE_INFINITY,
};

/** Smallest range that holds all members; for none the empty range (last before first). */
export function hullOf(members: readonly DayRange[]): DayRange {
  return {
    first: Math.min(...members.map((one) => one.first)),
    last: Math.max(...members.map((one) => one.last)),
  };
}

/** First and last day of anything that an expression covers. */
export function hullOfExpression({ shape }: DateExpression): DayRange {
  return shape.kind === 'lasted' ? { first: shape.a.first, last: shape.b.last } : hullOf(shape.members);
}

/** Members in order, those that overlap or touch (next day) made one. */
export function mergeRanges(members: readonly DayRange[]): readonly DayRange[] {
  const sorted = [...members].sort((a, b) => compareDays(a.first, b.first) || compareDays(a.last, b.last));
  const merged: DayRange[] = [];
  for (const next of sorted) {
    const previous = merged.at(-1);
    if (previous && next.first <= previous.last + 1) {
      merged[merged.length - 1] = {
        first: previous.first,
        last: Math.max(previous.last, next.last),
      };
    } else merged.push(next);
  }
  return merged;
}

function compareDays(a: Day, b: Day): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
