import { ticks } from 'd3-array';
import { GRADE_LETTER, GRADES, type Grade, rankOf } from '../base/grade.ts';
import { civilOf, dayOf } from '../dates/day.ts';
import { formatRange, type PrintedBound } from '../dates/wording.ts';
import type { CaseFile } from '../findings/case-file.ts';
import { eventsInOrder } from '../findings/event-order.ts';
import { type MomentBound, type MomentRange, sayRange } from '../findings/printed-range.ts';
import { chosenReferences } from '../findings/reference-dates.ts';
import { titleOf } from '../model/catalogue.ts';
import type { Entry } from '../model/entry.ts';

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

/** The chronology as numbers to draw. */
export interface ChronologyDrawing {
  readonly rows: readonly Row[];
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

interface Window {
  readonly first: number;
  readonly last: number;
}

/** Lays out the chronology: one row an event, the same scale for all, four ranges one inside the other. */
export function drawChronology(file: CaseFile): ChronologyDrawing {
  const events = eventsInOrder(file);
  const window = windowOf(file, events);
  const x = (day: number): number => {
    const share = (day - window.first) / (window.last - window.first);
    return Math.round((LEFT + Math.max(0, Math.min(1, share)) * (RIGHT - LEFT)) * 10) / 10;
  };
  const inside = (day: number): boolean => day >= window.first && day <= window.last;
  const years = ticks(civilOf(window.first).year, civilOf(window.last).year, 8).filter(Number.isInteger);
  return {
    rows: events.map((event) => rowOf(file, event, window, x)),
    decades: years
      .map((year) => ({ day: dayOf(year, 1, 1), label: String(year) }))
      .filter(({ day }) => inside(day))
      .map(({ day, label }) => ({ x: x(day), label })),
    references: spread(
      chosenReferences(file.catalogue).flatMap((one) =>
        one.from && inside(one.from.first)
          ? [{ x: x(one.from.first), label: `${civilOf(one.from.first).year}  ${one.title}` }]
          : [],
      ),
    ),
    width: WIDTH,
    left: LEFT,
    right: RIGHT,
  };
}

/**
 * The stretch of time that is drawn. Where the known days fall into clusters more than sixty years
 * apart, the fullest cluster is drawn, and rows outside it say so in words.
 */
function windowOf(file: CaseFile, events: readonly Entry<'event'>[]): Window {
  const days = events
    .flatMap((event) =>
      edgesOf(file, event).flatMap((ranges) => ranges.flatMap((one) => [one.earliest?.day, one.latest?.day])),
    )
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

function edgesOf(file: CaseFile, event: Entry<'event'>): readonly (readonly MomentRange[])[] {
  return (['start', 'end'] as const).flatMap((edge) => {
    const moment = file.statements.moments.momentOf(event.id, edge);
    return moment ? [file.rangesOf(moment)] : [];
  });
}

function rowOf(file: CaseFile, event: Entry<'event'>, window: Window, x: (day: number) => number): Row {
  const [starts = [], ends = []] = edgesOf(file, event);
  const title = titleOf(event, file.settings.languages);
  const bars = GRADES.map((grade, rank): Bar => {
    const first = starts[rank]?.earliest?.day;
    const last = ends[rank]?.latest?.day;
    return {
      grade,
      x1: first === undefined ? LEFT : x(first),
      x2: last === undefined ? RIGHT : Math.max(x(last), x(first ?? last) + 5),
      openLeft: first === undefined,
      openRight: last === undefined,
    };
  });
  const shown = shownRank(file, starts, ends);
  const range = { earliest: starts[shown]?.earliest ?? null, latest: ends[shown]?.latest ?? null };
  const outside =
    range.latest && range.latest.day < window.first
      ? 'before'
      : range.earliest && range.earliest.day > window.last
        ? 'after'
        : null;
  const letter = GRADE_LETTER[GRADES[shown] as Grade];
  return {
    id: event.id,
    title,
    bars: outside ? [] : bars,
    core: coreOf(starts[shown], ends[shown], x),
    crossing: crossingOf(file, event, x),
    years: sayYears(range),
    letter,
    outside,
    sentence: `${title}: ${sayRange(range)}, on ${GRADES[shown]} statements`,
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
function sayYears({ earliest, latest }: Pick<MomentRange, 'earliest' | 'latest'>): string {
  const coarse = (bound: MomentBound | null): PrintedBound | null => bound && { ...bound, precision: 'year' };
  return formatRange(coarse(earliest), coarse(latest));
}

/** The printed grade; where statements contradict each other there, the last grade at which none do. */
export function shownRank(file: CaseFile, starts: readonly MomentRange[], ends: readonly MomentRange[]): number {
  let rank = rankOf(file.settings.printedGrade);
  while (rank > 0 && !(starts[rank]?.consistent && ends[rank]?.consistent)) rank -= 1;
  return rank;
}

function coreOf(start: MomentRange | undefined, end: MomentRange | undefined, x: (day: number) => number): Row['core'] {
  const from = start?.latest?.day;
  const to = end?.earliest?.day;
  if (from === undefined || to === undefined || from >= to) return null;
  return { x1: x(from), x2: x(to) };
}

function crossingOf(file: CaseFile, event: Entry<'event'>, x: (day: number) => number): Row['crossing'] {
  for (const edge of ['start', 'end'] as const) {
    const moment = file.statements.moments.momentOf(event.id, edge);
    const crossed = moment ? file.chronology.crossing(3, moment.index) : null;
    if (crossed && Number.isFinite(crossed.earliest) && Number.isFinite(crossed.latest)) {
      return { left: x(crossed.latest), right: Math.max(x(crossed.earliest), x(crossed.latest) + 8) };
    }
  }
  return null;
}
