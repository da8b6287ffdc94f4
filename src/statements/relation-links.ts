import type { Link } from '../chronology/chronology.ts';
import { type Duration, longestDays, shortestDays } from '../dates/duration.ts';
import type { RelationName } from '../model/types/event.ts';
import type { Span } from './file-statement.ts';

/** Bounds on the distance between two events. */
export interface Gap {
  readonly min: Duration | null;
  readonly max: Duration | null;
}

const link = (from: number, to: number, days: number, role: string): Link => ({ from, to, days, role });

/** Equality of two moments: two links. */
function same(a: number, b: number): readonly Link[] {
  return [link(a, b, 0, 'same'), link(b, a, 0, 'same')];
}

/**
 * Translates a relation between two spans into links. Same day is possible; `strict` turns every
 * "not after" into "at least one day before". Names after Allen (1983).
 */
export function relationLinks(name: RelationName, x: Span, y: Span, strict: boolean, gap: Gap): readonly Link[] {
  const least = strict ? 1 : 0;
  const notAfter = (a: number, b: number, role: string): Link => link(a, b, least, role);
  switch (name) {
    case 'after':
      return follows(y.end, x.start, least, gap);
    case 'before':
      return follows(x.end, y.start, least, gap);
    case 'during':
      return [notAfter(y.start, x.start, 'inside'), notAfter(x.end, y.end, 'inside')];
    case 'contains':
      return [notAfter(x.start, y.start, 'inside'), notAfter(y.end, x.end, 'inside')];
    case 'meets':
      return same(x.end, y.start);
    case 'met-by':
      return same(x.start, y.end);
    case 'same-as':
      return [...same(x.start, y.start), ...(x.single && y.single ? [] : same(x.end, y.end))];
    case 'overlaps':
      return [
        notAfter(x.start, y.start, 'overlap'),
        notAfter(y.start, x.end, 'overlap'),
        notAfter(x.end, y.end, 'overlap'),
      ];
    case 'overlapped-by':
      return [
        notAfter(y.start, x.start, 'overlap'),
        notAfter(x.start, y.end, 'overlap'),
        notAfter(y.end, x.end, 'overlap'),
      ];
    case 'starts':
      return [...same(x.start, y.start), notAfter(x.end, y.end, 'inside')];
    case 'started-by':
      return [...same(x.start, y.start), notAfter(y.end, x.end, 'inside')];
    case 'finishes':
      return [...same(x.end, y.end), notAfter(y.start, x.start, 'inside')];
    case 'finished-by':
      return [...same(x.end, y.end), notAfter(x.start, y.start, 'inside')];
    case 'bonded-with':
      return [];
  }
}

function follows(earlierEnd: number, laterStart: number, least: number, gap: Gap): readonly Link[] {
  const min = Math.max(least, gap.min ? shortestDays(gap.min) : 0);
  const links = [link(earlierEnd, laterStart, min, min > least || gap.min ? 'gap-min' : 'order')];
  if (gap.max) links.push(link(laterStart, earlierEnd, 0 - longestDays(gap.max), 'gap-max'));
  return links;
}

/**
 * Links of a length: the end lies between the least and the greatest length after the start.
 * A least length with a month or year part loses one day: 1 January to 30 June is six months.
 */
export function lengthLinks(span: Span, gap: Gap): readonly Link[] {
  const links: Link[] = [];
  if (gap.min) {
    const days = shortestDays(gap.min) - (gap.min.months > 0 ? 1 : 0);
    links.push(link(span.start, span.end, days, 'lasts-min'));
  }
  if (gap.max) links.push(link(span.end, span.start, 0 - longestDays(gap.max), 'lasts-max'));
  return links;
}

/** Links of a passage from one holding to the next (docs/methods.md, passage). */
export function passageLinks(
  from: Span,
  to: Span,
  how: { readonly direct: boolean; readonly sameCapacity: boolean; readonly lagDays: number },
): readonly Link[] {
  const { direct, sameCapacity, lagDays } = how;
  if (!sameCapacity) {
    return [
      link(from.start, to.start, 0 - lagDays, 'passage-inside'),
      link(to.start, from.end, 0 - lagDays, 'passage-inside'),
    ];
  }
  const links = [link(from.end, to.start, 0 - lagDays, 'passage-after')];
  if (direct) links.push(link(to.start, from.end, 0 - Math.max(lagDays, 1), 'passage-direct'));
  return links;
}
