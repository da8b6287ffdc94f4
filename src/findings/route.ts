import { rankOf } from '../base/grade.ts';
import { type Entry, isOfType } from '../model/entry.ts';
import type { CaseFile } from './case-file.ts';
import { findChains } from './custody-chains.ts';
import { eventsInOrder } from './event-order.ts';

/** A place with the coordinates that it, or the nearest place around it, may show. */
export interface PlacePoint {
  readonly place: Entry<'place'>;
  /** Degrees east and north. */
  readonly longitude: number;
  readonly latitude: number;
}

/** A way from one place to another, with what says so. */
export interface Leg {
  readonly from: PlacePoint;
  readonly to: PlacePoint;
  /** `told`: an event says so on probable statements or better; `inferred`: only from who had it next, or on weaker ones. */
  readonly is: 'told' | 'inferred';
  /** Events or holdings that it rests on. */
  readonly rests: readonly string[];
}

/** The way that the pieces went, and places that cannot be put on a map. */
export interface Route {
  readonly points: readonly PlacePoint[];
  readonly legs: readonly Leg[];
  /** Places whose coordinates are not known or not shown. */
  readonly unplaced: readonly Entry<'place'>[];
}

/**
 * The way of all pieces: transports, exports, imports and returns that name both ends; and from each holding that names a
 * place to the next one that does. A leg that some event tells is not inferred a second time.
 */
export function findRoute(file: CaseFile): Route {
  const legs = new Map<string, { from: PlacePoint; to: PlacePoint; is: Leg['is']; rests: string[] }>();
  const add = (from: PlacePoint | null, to: PlacePoint | null, is: Leg['is'], rests: readonly string[]): void => {
    if (!from || !to || samePoint(from, to)) return;
    const key = [from, to].map((one) => `${one.longitude} ${one.latitude}`).join(' ');
    const known = legs.get(key);
    if (!known) legs.set(key, { from, to, is, rests: [...rests] });
    else if (known.is === is || is === 'told') {
      known.is = is;
      known.rests.push(...rests.filter((id) => !known.rests.includes(id)));
    }
  };
  const point = (id: string | undefined): PlacePoint | null => (id === undefined ? null : pointOf(file, id));
  for (const event of eventsInOrder(file)) {
    if (event.keys.to !== undefined)
      add(point(event.keys.place), point(event.keys.to), isTold(file, event) ? 'told' : 'inferred', [event.id]);
  }
  for (const { holdings } of findChains(file)) {
    const placed = holdings.filter(({ holding }) => point(holding.keys.place));
    for (const [i, { holding }] of placed.slice(1).entries()) {
      const before = placed[i]?.holding;
      if (before) add(point(before.keys.place), point(holding.keys.place), 'inferred', [before.id, holding.id]);
    }
  }
  const used = new Set(file.catalogue.entries.flatMap((entry) => placesNamed(entry)));
  const places = file.catalogue.ofType('place').filter((one) => used.has(one.id));
  const points = distinct(places.flatMap((one) => pointOf(file, one.id) ?? []));
  return {
    points,
    legs: [...legs.values()],
    unplaced: places.filter((one) => !pointOf(file, one.id)),
  };
}

/** Places at which something happened or was held. */
function placesNamed(entry: Entry): readonly string[] {
  if (isOfType(entry, 'event')) return [entry.keys.place, entry.keys.to].filter((id) => id !== undefined);
  return isOfType(entry, 'holding') && entry.keys.place !== undefined ? [entry.keys.place] : [];
}

function pointOf(file: CaseFile, id: string): PlacePoint | null {
  const seen = new Set<string>();
  for (let at: string | undefined = id; at !== undefined && !seen.has(at); ) {
    seen.add(at);
    const place: Entry | undefined = file.catalogue.get(at);
    if (!place || !isOfType(place, 'place')) return null;
    if (place.keys.coordinates) return { place, ...place.keys.coordinates };
    at = place.keys.within;
  }
  return null;
}

function samePoint(a: PlacePoint, b: PlacePoint): boolean {
  return a.longitude === b.longitude && a.latitude === b.latitude;
}

function distinct(points: readonly PlacePoint[]): readonly PlacePoint[] {
  return points.filter((one, i) => points.findIndex((other) => samePoint(one, other)) === i);
}

/** True where something that is used says so on probable statements or better. */
function isTold(file: CaseFile, event: Entry<'event'>): boolean {
  return file.statementsAbout(event.id).some((one) => one.notUsed === null && rankOf(one.grade) <= rankOf('probable'));
}
