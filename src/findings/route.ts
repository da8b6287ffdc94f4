import { rankOf } from '../base/grade.ts';
import { type Entry, isOfType } from '../model/entry.ts';
import { isWithin, namedWhole, smallestPieces } from '../model/pieces.ts';
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
  /** The pieces that went this way, as far as what it rests on says. */
  readonly pieces: readonly string[];
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
 * place to the next one that does. A leg that some event tells of a piece is not inferred for it a second time; of the other pieces
 * that event tells nothing.
 */
export function findRoute(file: CaseFile): Route {
  const legs = new Map<string, Leg>();
  const add = (
    from: PlacePoint | null,
    to: PlacePoint | null,
    { is, pieces, rests }: Pick<Leg, 'is' | 'pieces' | 'rests'>,
  ): void => {
    if (!from || !to || samePoint(from, to)) return;
    const told = is === 'told' ? [] : (legs.get(keyOf(from, to, 'told'))?.pieces ?? []);
    const left = pieces.filter((piece) => !told.some((one) => isWithin(piece, one)));
    if (left.length === 0 && pieces.length > 0) return;
    const key = keyOf(from, to, is);
    const known = legs.get(key);
    legs.set(key, {
      from,
      to,
      is,
      pieces: [...new Set([...(known?.pieces ?? []), ...left])],
      rests: [...new Set([...(known?.rests ?? []), ...rests])],
    });
  };
  const point = (id: string | undefined): PlacePoint | null => (id === undefined ? null : pointOf(file, id));
  const inOrder = eventsInOrder(file).filter((event) => event.keys.to !== undefined);
  for (const is of ['told', 'inferred'] as const) {
    for (const event of inOrder.filter((one) => isTold(file, one) === (is === 'told')))
      add(point(event.keys.place), point(event.keys.to), {
        is,
        pieces: (event.keys.objects ?? []).flatMap((id) => smallestWithin(file, id)),
        rests: [event.id],
      });
  }
  for (const { object, panels, holdings } of findChains(file)) {
    const own = panels.length === 0 ? [object.id] : panels.map((panel) => `${object.id}/${panel}`);
    const placed = holdings.filter(({ holding }) => point(holding.keys.place));
    for (const [i, { holding }] of placed.slice(1).entries()) {
      const before = placed[i]?.holding;
      const start = before ? point(before.keys.place) : null;
      const end = point(holding.keys.place);
      if (!before || !start || !end || samePoint(start, end)) continue;
      for (const piece of own.flatMap((id) => smallestWithin(file, id)))
        add(arrivedFrom(start, piece, legs), end, {
          is: 'inferred',
          pieces: [piece],
          rests: [before.id, holding.id],
        });
    }
  }
  const used = new Set(file.catalogue.entries.flatMap((entry) => placesNamed(entry)));
  const places = file.catalogue.ofType('place').filter((one) => used.has(one.id));
  const points = distinct(places.flatMap((one) => pointOf(file, one.id) ?? []));
  return {
    points,
    legs: [...legs.values()].map((leg) => ({ ...leg, pieces: namedWhole(file.catalogue, leg.pieces) })),
    unplaced: places.filter((one) => !pointOf(file, one.id)),
  };
}

/** Where a piece had come by what events tell of it from a place on; that place, where they tell nothing. */
function arrivedFrom(start: PlacePoint, piece: string, legs: ReadonlyMap<string, Leg>): PlacePoint {
  let at = start;
  const seen = new Set<Leg>();
  const next = (): Leg | undefined =>
    [...legs.values()].find(
      (leg) => leg.is === 'told' && !seen.has(leg) && samePoint(leg.from, at) && leg.pieces.includes(piece),
    );
  for (let leg = next(); leg; leg = next()) {
    seen.add(leg);
    at = leg.to;
  }
  return at;
}

function keyOf(from: PlacePoint, to: PlacePoint, is: Leg['is']): string {
  return [from, to].map((one) => `${one.longitude} ${one.latitude}`).join(' ') + is;
}

/** The smallest pieces of what an id names. */
function smallestWithin({ catalogue }: CaseFile, id: string): readonly string[] {
  return smallestPieces(catalogue, id.split('/')[0] as string).filter((piece) => isWithin(piece, id));
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
