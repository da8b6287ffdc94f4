import { ticks } from 'd3-array';
import { GRADE_LETTER, GRADES, type Grade, rankOf } from '../base/grade.ts';
import { civilOf, dayOf } from '../dates/day.ts';
import { formatRange, type PrintedBound } from '../dates/wording.ts';

/** The range of a moment at one grade, as far as it is drawn. */
export interface DrawnRange {
  readonly earliest: PrintedBound | null;
  readonly latest: PrintedBound | null;
  readonly consistent: boolean;
}

/** What is drawn of an event: its beginning and its end at the four grades. */
export interface DrawnEvent {
  readonly id: string;
  readonly title: string;
  readonly starts: readonly DrawnRange[];
  readonly ends: readonly DrawnRange[];
  /** The two days that cross where statements cannot all be right. */
  readonly crossing: { readonly earliest: number; readonly latest: number } | null;
}

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
  readonly years: string;
  readonly letter: string;
  /** Lies before (after) the stretch of time that is drawn. */
  readonly outside: 'before' | 'after' | null;
  readonly sentence: string;
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
  readonly width: number;
  readonly left: number;
  readonly right: number;
}

/** Widths in drawing units: the whole, the column of names, the column of years. */
const WIDTH = 1160;
const LEFT = 330;
const RIGHT = 960;

/** Clusters of days further apart than this are not drawn on one axis. */
const MOST_GAP_DAYS = 60 * 365;

/** The stretch of time that is drawn, in days. */
export interface Window {
  readonly first: number;
  readonly last: number;
}

/** Lays out the ruling for some events: the same scale for all rows. */
export function layOutRuling(events: readonly DrawnEvent[], references: readonly NamedDay[]): Ruling {
  const window = windowOf(events);
  const inside = (day: number): boolean => day >= window.first && day <= window.last;
  const years = ticks(civilOf(window.first).year, civilOf(window.last).year, 8).filter(Number.isInteger);
  return {
    window,
    decades: years
      .map((year) => ({ day: dayOf(year, 1, 1), label: String(year) }))
      .filter(({ day }) => inside(day))
      .map(({ day, label }) => ({ x: place(window, day), label })),
    references: spread(
      references.flatMap(({ day, name }) =>
        inside(day) ? [{ x: place(window, day), label: `${civilOf(day).year}  ${name}` }] : [],
      ),
    ),
    width: WIDTH,
    left: LEFT,
    right: RIGHT,
  };
}

/** Where a day stands across the drawing; days outside the stretch stand at its edge. */
function place(window: Window, day: number): number {
  const share = (day - window.first) / (window.last - window.first);
  return Math.round((LEFT + Math.max(0, Math.min(1, share)) * (RIGHT - LEFT)) * 10) / 10;
}

/**
 * The stretch of time that is drawn. Where the known days fall into clusters more than sixty years
 * apart, the fullest cluster is drawn, and rows outside it say so in words.
 */
function windowOf(events: readonly DrawnEvent[]): Window {
  const days = events
    .flatMap(({ starts, ends }) => [...starts, ...ends].flatMap((one) => [one.earliest?.day, one.latest?.day]))
    .filter((day): day is number => day !== undefined)
    .sort((a, b) => a - b);
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
export function layOutRow(event: DrawnEvent, window: Window, printedGrade: Grade): Row {
  const { starts, ends, title } = event;
  const bars = GRADES.map((grade, rank): Bar => {
    const first = starts[rank]?.earliest?.day ?? Number.NEGATIVE_INFINITY;
    const last = ends[rank]?.latest?.day ?? Number.POSITIVE_INFINITY;
    const x1 = place(window, first);
    return {
      grade,
      x1,
      x2: Math.max(place(window, last), x1 + 5),
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
    core: outside ? null : coreOf(starts[shown], ends[shown], window),
    crossing: crossingOf(event, window),
    years: sayYears(range),
    letter: GRADE_LETTER[GRADES[shown] as Grade],
    outside,
    sentence: `${title}: ${formatRange(range.earliest, range.latest)}, on ${GRADES[shown]} statements`,
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
function sayYears({ earliest, latest }: Pick<DrawnRange, 'earliest' | 'latest'>): string {
  const coarse = (bound: PrintedBound | null): PrintedBound | null => bound && { ...bound, precision: 'year' };
  return formatRange(coarse(earliest), coarse(latest));
}

/** The printed grade; where statements contradict each other there, the last grade at which none do. */
export function shownRank(printedGrade: Grade, starts: readonly DrawnRange[], ends: readonly DrawnRange[]): number {
  let rank = rankOf(printedGrade);
  while (rank > 0 && !(starts[rank]?.consistent && ends[rank]?.consistent)) rank -= 1;
  return rank;
}

function coreOf(start: DrawnRange | undefined, end: DrawnRange | undefined, window: Window): Row['core'] {
  const from = start?.latest?.day;
  const to = end?.earliest?.day;
  if (from === undefined || to === undefined || from >= to) return null;
  return { x1: place(window, from), x2: place(window, to) };
}

function crossingOf({ crossing }: DrawnEvent, window: Window): Row['crossing'] {
  if (!crossing || !Number.isFinite(crossing.earliest) || !Number.isFinite(crossing.latest)) return null;
  const left = place(window, crossing.latest);
  return { left, right: Math.max(place(window, crossing.earliest), left + 8) };
}
