import { ticks } from 'd3-array';
import { GRADE_LETTER, GRADES, type Grade } from '../base/grade.ts';
import { named, phrase, type Said } from '../base/said.ts';
import { civilOf, dayOf } from '../dates/day.ts';
import type { PrintedBound } from '../dates/printed-bound.ts';
import { type GradedRange, sayRange } from '../findings/printed-range.ts';
import { type EntryRanges, shownRank } from '../findings/range-changes.ts';

/** A day with a name: a reference date. */
export interface NamedDay {
  readonly day: number;
  readonly name: string;
}

/** A stretch of a row in drawing units; `open` ends run to the edge. */
export interface Bar {
  readonly grade: Grade;
  readonly x1: number;
  readonly x2: number;
  readonly openLeft: boolean;
  readonly openRight: boolean;
}

/** One event as a row. */
export interface Row {
  readonly id: string;
  readonly title: string;
  readonly bars: readonly Bar[];
  /** Certainly under way, from latest start to earliest end at the printed grade. */
  readonly core: { readonly x1: number; readonly x2: number } | null;
  /** The two bounds that cross where statements cannot all be right. */
  readonly crossing: { readonly left: number; readonly right: number } | null;
  readonly years: Said;
  readonly letter: string;
  /** Lies before (after) the stretch of time that is drawn. */
  readonly outside: 'before' | 'after' | null;
  readonly sentence: Said;
}

/** A line of the ruling: a decade or a reference date. */
export interface Rule {
  readonly x: number;
  readonly label: string;
}

/** A reference date, with the place of its name at the head. */
export interface ReferenceRule extends Rule {
  readonly labelX: number;
}

/** The ruling on which all rows are drawn: one scale, decades, reference dates. */
export interface Ruling {
  readonly window: Window;
  readonly decades: readonly Rule[];
  readonly references: readonly ReferenceRule[];
  readonly format: DrawingFormat;
}

/** Widths in drawing units: the whole, the ends of the time axis; most letters of a title and of a name at the head. */
export interface DrawingFormat {
  readonly width: number;
  readonly left: number;
  readonly right: number;
  readonly title: number;
  readonly name: number;
}

/** For a page of its own. */
export const WIDE: DrawingFormat = { width: 1160, left: 330, right: 960, title: 44, name: 40 };

/** For a place beside a list. */
export const NARROW: DrawingFormat = { width: 800, left: 250, right: 662, title: 34, name: 34 };

/** Clusters of days further apart than this are not drawn on one axis. */
const MOST_GAP_DAYS = 60 * 365;

/** The stretch of time that is drawn, in days. */
export interface Window {
  readonly first: number;
  readonly last: number;
}

/** Lays out the ruling for some events: the same scale for all rows. */
export function layOutRuling(
  events: readonly EntryRanges[],
  references: readonly NamedDay[],
  format: DrawingFormat = WIDE,
): Ruling {
  return ruleWindow(windowOf(daysOf(events)), references, format);
}

/** The ruling for a stretch of time. */
export function ruleWindow(window: Window, references: readonly NamedDay[], format: DrawingFormat): Ruling {
  const inside = (day: number): boolean => day >= window.first && day <= window.last;
  const x = (day: number): number => place({ window, format }, day);
  const years = ticks(civilOf(window.first).year, civilOf(window.last).year, Math.round(format.width / 145)).filter(
    Number.isInteger,
  );
  return {
    window,
    decades: years
      .map((year) => ({ day: dayOf(year, 1, 1), label: String(year) }))
      .filter(({ day }) => inside(day))
      .map(({ day, label }) => ({ x: x(day), label })),
    references: spread(
      references.flatMap(({ day, name }) =>
        inside(day) ? [{ x: x(day), label: `${civilOf(day).year}  ${name}` }] : [],
      ),
    ),
    format,
  };
}

/** What places a day across the drawing. */
type Scale = Pick<Ruling, 'window' | 'format'>;

/** Where a day stands across the drawing; days outside the stretch stand at its edge. */
export function place({ window, format: { left, right } }: Scale, day: number): number {
  const share = (day - window.first) / (window.last - window.first);
  return Math.round((left + Math.max(0, Math.min(1, share)) * (right - left)) * 10) / 10;
}

function daysOf(events: readonly EntryRanges[]): readonly number[] {
  return events
    .flatMap(({ starts, ends }) => [...starts, ...ends].flatMap((one) => [one.earliest?.day, one.latest?.day]))
    .filter((day) => day !== undefined);
}

/**
 * The stretch of time that is drawn. Where the known days fall into clusters more than sixty years
 * apart, the fullest cluster is drawn, and rows outside it say so in words.
 */
export function windowOf(unsorted: readonly number[]): Window {
  const days = [...unsorted].sort((a, b) => a - b);
  if (days.length === 0) return { first: dayOf(1900, 1, 1), last: dayOf(2000, 1, 1) };
  const clusters: number[][] = [];
  for (const day of days) {
    const cluster = clusters.at(-1);
    if (cluster && day - (cluster.at(-1) as number) <= MOST_GAP_DAYS) cluster.push(day);
    else clusters.push([day]);
  }
  const fullest = clusters.reduce((best, one) => (one.length > best.length ? one : best));
  const first = civilOf(fullest[0] as number).year;
  const last = civilOf(fullest.at(-1) as number).year;
  const pad = Math.max(2, Math.round((last - first) * 0.03));
  return { first: dayOf(first - pad, 1, 1), last: dayOf(last + 1 + pad, 1, 1) };
}

/**
 * Lays out one row: four ranges one inside the other. A range that runs beyond the stretch that is
 * drawn ends in an arrow, as one that is not bounded does.
 */
export function layOutRow(event: EntryRanges, scale: Scale, printedGrade: Grade): Row {
  const { window } = scale;
  const { starts, ends, title } = event;
  const bars = GRADES.map((grade, rank): Bar => {
    const first = starts[rank]?.earliest?.day ?? Number.NEGATIVE_INFINITY;
    const last = ends[rank]?.latest?.day ?? Number.POSITIVE_INFINITY;
    const x1 = place(scale, first);
    return {
      grade,
      x1,
      x2: Math.max(place(scale, last), x1 + 5),
      openLeft: first < window.first,
      openRight: last > window.last,
    };
  });
  const shown = shownRank(printedGrade, starts, ends);
  const range = { earliest: starts[shown]?.earliest ?? null, latest: ends[shown]?.latest ?? null };
  const outside =
    range.latest && range.latest.day < window.first
      ? 'before'
      : range.earliest && range.earliest.day > window.last
        ? 'after'
        : null;
  return {
    id: event.id,
    title,
    bars: outside ? [] : bars,
    core: outside ? null : coreOf(starts[shown], ends[shown], scale),
    crossing: crossingOf(event, scale),
    years: sayYears(range),
    letter: GRADE_LETTER[GRADES[shown] as Grade],
    outside,
    sentence: phrase('{0}: {1}, on {2} statements', title, sayRange(range), named(GRADES[shown] as Grade)),
  };
}

/** Names at the head stand at least this far apart. */
const NAME_STEP = 17;

function spread(rules: readonly Rule[]): readonly ReferenceRule[] {
  let last = Number.NEGATIVE_INFINITY;
  return rules.map((rule) => {
    last = Math.max(rule.x, last + NAME_STEP);
    return { ...rule, labelX: last };
  });
}

/** A range in years only, for the column beside the drawing. */
function sayYears({ earliest, latest }: Pick<GradedRange, 'earliest' | 'latest'>): Said {
  const coarse = (bound: PrintedBound | null): PrintedBound | null => bound && { ...bound, precision: 'year' };
  return sayRange({ earliest: coarse(earliest), latest: coarse(latest) });
}

function coreOf(start: GradedRange | undefined, end: GradedRange | undefined, scale: Scale): Row['core'] {
  const from = start?.latest?.day;
  const to = end?.earliest?.day;
  if (from === undefined || to === undefined || from >= to) return null;
  return { x1: place(scale, from), x2: place(scale, to) };
}

function crossingOf({ crossing }: EntryRanges, scale: Scale): Row['crossing'] {
  if (!crossing || !Number.isFinite(crossing.earliest) || !Number.isFinite(crossing.latest)) return null;
  const left = place(scale, crossing.latest);
  return { left, right: Math.max(place(scale, crossing.earliest), left + 8) };
}
