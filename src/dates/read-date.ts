import { parse as parseEdtf } from 'edtf';
import { oncePerBoth } from '../base/once.ts';
import { type Atom, readAtom } from './atom.ts';
import type { Calendar, CalendarName } from './calendars/calendar.ts';
import { calendarOf } from './calendars/calendars.ts';
import type { DayRange } from './day.ts';
import {
  ALL_TIME,
  coarsest,
  type DateExpression,
  type DateProblem,
  type DateSettings,
  type DateShape,
  mergeRanges,
} from './expression.ts';
import { problem } from './problems.ts';

/** Calendars whose dates have the shape of EDTF, so that the EDTF parser can judge them. */
const JUDGED: readonly CalendarName[] = ['gregorian', 'julian'];

/** Longest text that is looked at as a date, in characters: a set of fifty days is shorter. */
const LONGEST = 600;

/**
 * Reads a date expression: ISO 8601-2 / EDTF levels 0 to 2, in any of the fourteen calendars.
 * Returns the days it covers, or the problem with its mend. Whether a Gregorian or Julian text is
 * EDTF at all is judged by the npm package `edtf`; the days are ours (see docs/methods.md).
 *
 * @example readDate('[1925..1931]', 'gregorian', settings) // one member, 1925-01-01 to 1931-12-31
 */
export function readDate(
  written: string,
  calendarName: CalendarName,
  settings: DateSettings,
): DateExpression | DateProblem {
  return readOnce(settings, `${calendarName} ${written.trim()}`);
}

/** The same few dates stand in many places, and are asked for again by every computation of a preview. */
const readOnce = oncePerBoth((settings: DateSettings, named: string) => {
  const space = named.indexOf(' ');
  return readText(named.slice(space + 1), named.slice(0, space) as CalendarName, settings);
});

function readText(text: string, calendarName: CalendarName, settings: DateSettings): DateExpression | DateProblem {
  const calendar = calendarOf(calendarName);
  const tooLong = text.length > LONGEST;
  if (tooLong) return problem.notEdtf(text, calendarName);
  if (JUDGED.includes(calendarName) && !isEdtf(text)) {
    // The shape of a day that the month does not have: "1926-04-31".
    return /^\d{4}-(?:0[1-9]|1[0-2])-(?:3[01]|2[89])[?~%]?$/.test(text)
      ? problem.noSuchDay(text, calendarName)
      : problem.notEdtf(text, calendarName);
  }
  const read = readShape(text, calendar, settings);
  if ('code' in read) return read;
  const sunset = calendar.beginsAtSunset && settings.sunsetDays > 0;
  const widening = sunset ? settings.sunsetDays : 0;
  return {
    text,
    calendar: calendarName,
    shape: widenShape(read.shape, widening),
    precision: coarsest(read.atoms.map((atom) => atom.precision)),
    approximate: read.atoms.some((atom) => atom.approximate),
    uncertain: read.atoms.some((atom) => atom.uncertain),
    sunset,
    warnings: read.atoms.flatMap((atom) => atom.warnings),
  };
}

/** True where the result of `readDate` is a problem. */
export function isDateProblem(result: DateExpression | DateProblem): result is DateProblem {
  return 'mend' in result;
}

/** A year, a month or a day, perhaps with a qualifier: most dates are, and need no parser. Days that some month lacks go to it. */
const PLAIN = /^\d{4}(?:-(?:0[1-9]|1[0-2])(?:-(?:0[1-9]|1\d|2[0-8]))?)?[?~%]?$/;

/**
 * True where a text is EDTF. The parser refuses some qualifiers that the standard allows (`193X~`,
 * `1950S2~`, those inside sets) and seasons beside years; there each date is judged by itself.
 */
function isEdtf(text: string): boolean {
  if (PLAIN.test(text)) return true;
  if (acceptsAny(text)) return true;
  const inner = /^[[{](.*)[\]}]$/.exec(text)?.[1];
  const dates = inner !== undefined ? inner.split(',').flatMap((part) => part.trim().split('..')) : text.split('/');
  const written = dates.filter((date) => date !== '' && date !== '..');
  return written.length > 0 && written.every((date) => acceptsAny(date) || acceptsAny(date.replace(/[~?%]$/, '')));
}

function acceptsAny(text: string): boolean {
  return accepts(text, {}) || accepts(text, { seasonIntervals: true, seasonUncertainty: true });
}

/** The season options alone make the parser fail on an interval whose first end is missing. */
function accepts(text: string, options: NonNullable<Parameters<typeof parseEdtf>[1]>): boolean {
  try {
    parseEdtf(text, options);
    return true;
  } catch {
    return false;
  }
}

interface ReadShape {
  readonly shape: DateShape;
  readonly atoms: readonly Atom[];
}

function readShape(text: string, calendar: Calendar, settings: DateSettings): ReadShape | DateProblem {
  if (/^\[.*\]$/.test(text)) return readMembers(text, 'one', calendar, settings);
  if (/^\{.*\}$/.test(text)) return readMembers(text, 'each', calendar, settings);
  if (text.includes('/')) return readInterval(text, calendar, settings);
  const atom = readAtom(text, calendar, settings.circa);
  if ('code' in atom) return atom;
  return { shape: { kind: 'one', members: [atom.range] }, atoms: [atom] };
}

function readMembers(
  text: string,
  kind: 'one' | 'each',
  calendar: Calendar,
  settings: DateSettings,
): ReadShape | DateProblem {
  const members: DayRange[] = [];
  const atoms: Atom[] = [];
  for (const part of text.slice(1, -1).split(',')) {
    const ends = part.trim().split('..');
    const [from, to] = [ends[0] as string, ends.at(-1) as string].map((end) =>
      end === '' ? null : readAtom(end, calendar, settings.circa),
    ) as [Atom | DateProblem | null, Atom | DateProblem | null];
    if (from && 'code' in from) return from;
    if (to && 'code' in to) return to;
    if (!from && !to) return problem.notEdtf(text, calendar.name);
    const member = {
      first: (from?.range ?? ALL_TIME).first,
      last: (to?.range ?? ALL_TIME).last,
    };
    if (member.first > member.last) return problem.reversed(part);
    members.push(member);
    for (const atom of ends.length === 1 ? [from] : [from, to]) if (atom) atoms.push(atom);
  }
  return { shape: { kind, members: kind === 'one' ? mergeRanges(members) : members }, atoms };
}

function readInterval(text: string, calendar: Calendar, settings: DateSettings): ReadShape | DateProblem {
  const ends = text.split('/');
  if (ends.length !== 2) return problem.notEdtf(text, calendar.name);
  const atoms: Atom[] = [];
  const ranges: DayRange[] = [];
  for (const end of ends) {
    if (end === '' || end === '..') {
      ranges.push(ALL_TIME);
      continue;
    }
    const atom = readAtom(end, calendar, settings.circa);
    if ('code' in atom) return atom;
    atoms.push(atom);
    ranges.push(atom.range);
  }
  const shape = lasted(ranges[0] as DayRange, ranges[1] as DayRange);
  return shape ? { shape, atoms } : problem.reversed(text);
}

/** An extent from somewhere in `a` to somewhere in `b`, each end cut by the other; null if reversed. */
function lasted(a: DayRange, b: DayRange): DateShape | null {
  const end = { first: Math.max(a.first, b.first), last: b.last };
  const begin = { first: a.first, last: Math.min(a.last, b.last) };
  if (begin.first > begin.last || end.first > end.last) return null;
  return { kind: 'lasted', a: begin, b: end };
}

function widenShape(shape: DateShape, days: number): DateShape {
  if (days === 0) return shape;
  const widen = (range: DayRange): DayRange => ({
    first: range.first - days,
    last: range.last + days,
  });
  if (shape.kind === 'lasted') return { kind: 'lasted', a: widen(shape.a), b: widen(shape.b) };
  return {
    kind: shape.kind,
    members: shape.kind === 'one' ? mergeRanges(shape.members.map(widen)) : shape.members.map(widen),
  };
}
