/** A range of days, both ends included. */
interface Days {
  readonly first: number;
  readonly last: number;
}

/** The days of a reference date: from when, and to when if it ended; each may be uncertain. */
export interface ReferenceDays {
  readonly from: Days;
  readonly to: Days | null;
}

/** The least and the greatest day of a moment; infinite where nothing bounds it. */
export interface MomentDays {
  readonly earliest: number;
  readonly latest: number;
}

/** How an event lies to a reference date. The order of dates only: no word on whether an act was lawful. */
export type OrderToReference = 'before' | 'within' | 'after' | 'partly' | 'undetermined';

/**
 * How something that lasted from `start` to `end` lies to a reference date or period, if that is
 * certain. The day itself belongs to the time from it on. `within`: wholly inside a period; `partly`:
 * certainly reaching into it (or across the day) and certainly not wholly inside.
 */
export function orderToReference({ from, to }: ReferenceDays, start: MomentDays, end: MomentDays): OrderToReference {
  if (end.latest < from.first) return 'before';
  if (to === null) {
    if (start.earliest >= from.last) return 'after';
    return start.latest < from.first && end.earliest >= from.last ? 'partly' : 'undetermined';
  }
  if (start.earliest > to.last) return 'after';
  if (start.earliest >= from.last && end.latest <= to.first) return 'within';
  const reachesIn = end.earliest >= from.last && start.latest <= to.first;
  const reachesOut = start.latest < from.first || end.earliest > to.last;
  return reachesIn && reachesOut ? 'partly' : 'undetermined';
}

/** How somebody's time with a piece lies to a reference date or period. */
export type HeldAtReference = 'throughout' | 'part' | 'possibly' | 'open' | 'not';

/**
 * Whether a piece was held throughout a reference date or period: begun by its first day and not
 * ended before its last. `part`: certainly held on some day inside a period. `not`: certainly ended before it or begun after it. `open`: only not excluded,
 * since nothing bounds its beginning, or its end, on the side that matters; that says nothing of the holder.
 */
export function heldAtReference({ from, to }: ReferenceDays, begins: MomentDays, ends: MomentDays): HeldAtReference {
  const last = to ?? from;
  if (ends.latest < from.first || begins.earliest > last.last) return 'not';
  const [begun, lasted] = [begins.latest <= from.first, ends.earliest >= last.last];
  if (begun && lasted) return 'throughout';
  // Certainly held on some day that certainly lies inside.
  const inner = { first: Math.max(begins.latest, from.last), last: Math.min(ends.earliest, last.first) };
  if (to !== null && inner.first <= inner.last) return 'part';
  const beginOpen = !begun && begins.earliest === Number.NEGATIVE_INFINITY;
  const endOpen = !lasted && ends.latest === Number.POSITIVE_INFINITY;
  return beginOpen || endOpen ? 'open' : 'possibly';
}
