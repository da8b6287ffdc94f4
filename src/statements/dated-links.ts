import { type Link, ORIGIN } from '../chronology/chronology.ts';
import type { DayRange } from '../dates/day.ts';
import { type DateShape, hullOf } from '../dates/expression.ts';
import type { Sense } from '../dates/sense.ts';
import type { Span } from './file-statement.ts';

/** What a dated statement means in links; or why it means nothing. */
export interface DatedLinks {
  readonly links: readonly Link[];
  readonly choice?: readonly (readonly Link[])[];
  readonly trouble: 'interval-on-moment' | 'interval-refused' | 'all-of-refused' | 'bounds-nothing' | null;
}

const notBefore = (moment: number, day: number): readonly Link[] =>
  Number.isFinite(day) ? [{ from: ORIGIN, to: moment, days: day, role: 'dated-from' }] : [];

const notAfter = (moment: number, day: number): readonly Link[] =>
  Number.isFinite(day) ? [{ from: moment, to: ORIGIN, days: -day, role: 'dated-to' }] : [];

/** Senses in which a date with gaps has to be split into its members; the others use the hull exactly. */
const SPLITTING: readonly Sense[] = ['within', 'began', 'ended', 'under-way'];

/** Translates sense and date into links, by the table of senses in docs/methods.md. */
export function datedLinks(span: Span, sense: Sense, shape: DateShape): DatedLinks {
  if (shape.kind === 'one') return oneDay(span, sense, shape.members);
  if (shape.kind === 'lasted') return lasted(span, sense, shape.a, shape.b);
  return eachOf(span, sense, shape.members);
}

function forRange(span: Span, sense: Sense, { first, last }: DayRange): readonly Link[] {
  switch (sense) {
    case 'within':
      return [...notBefore(span.start, first), ...notAfter(span.end, last)];
    case 'by':
      return notAfter(span.end, last);
    case 'not-before':
    case 'not-yet':
      return notBefore(span.start, first);
    case 'under-way':
      return [...notAfter(span.start, last), ...notBefore(span.end, first)];
    case 'began':
      return [...notBefore(span.start, first), ...notAfter(span.start, last)];
    case 'ended':
      return [...notBefore(span.end, first), ...notAfter(span.end, last)];
  }
}

function oneDay(span: Span, sense: Sense, members: readonly DayRange[]): DatedLinks {
  const links = forRange(span, sense, hullOf(members));
  const splits = members.length > 1 && SPLITTING.includes(sense);
  if (!splits) return checked(links);
  return { links, choice: members.map((member) => memberLinks(span, sense, member)), trouble: null };
}

/** Links of one member; an open end stands as an infinite bound, so that all members have one shape. */
function memberLinks(span: Span, sense: Sense, { first, last }: DayRange): readonly Link[] {
  const lower = (moment: number): Link => ({ from: ORIGIN, to: moment, days: first, role: 'dated-from' });
  const upper = (moment: number): Link => ({ from: moment, to: ORIGIN, days: -last, role: 'dated-to' });
  if (sense === 'under-way') return [upper(span.start), lower(span.end)];
  if (sense === 'began') return [lower(span.start), upper(span.start)];
  if (sense === 'ended') return [lower(span.end), upper(span.end)];
  return [lower(span.start), upper(span.end)];
}

function lasted(span: Span, sense: Sense, a: DayRange, b: DayRange): DatedLinks {
  const hull = { first: a.first, last: b.last };
  if (span.single && sense === 'under-way') return { links: [], trouble: 'interval-refused' };
  if (sense === 'began' || sense === 'ended' || (span.single && sense === 'within')) {
    const links = forRange(span, sense, hull);
    return { links, trouble: links.length === 0 ? 'bounds-nothing' : 'interval-on-moment' };
  }
  switch (sense) {
    case 'within':
      return checked([
        ...notBefore(span.start, a.first),
        ...notAfter(span.start, a.last),
        ...notBefore(span.end, b.first),
        ...notAfter(span.end, b.last),
      ]);
    case 'by':
      return checked(notAfter(span.end, b.last));
    case 'not-before':
      return checked(notBefore(span.start, a.first));
    case 'under-way':
      return checked([...notAfter(span.start, a.last), ...notBefore(span.end, b.first)]);
    case 'not-yet':
      return checked(notBefore(span.start, b.first));
  }
}

function eachOf(span: Span, sense: Sense, members: readonly DayRange[]): DatedLinks {
  if (sense === 'not-yet') return checked(notBefore(span.start, Math.max(...members.map((one) => one.first))));
  if (sense !== 'under-way' || span.single) return { links: [], trouble: 'all-of-refused' };
  return checked([
    ...notAfter(span.start, Math.min(...members.map((one) => one.last))),
    ...notBefore(span.end, Math.max(...members.map((one) => one.first))),
  ]);
}

function checked(links: readonly Link[]): DatedLinks {
  return { links, trouble: links.length === 0 ? 'bounds-nothing' : null };
}
