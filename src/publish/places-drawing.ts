import { geoAzimuthalEqualArea, geoGraticule, geoPath } from 'd3-geo';
import type { LineString, MultiPoint } from 'geojson';
import { feature } from 'topojson-client';
import type { GeometryCollection, Topology } from 'topojson-specification';
import type { Leg, PlacePoint, Route } from '../findings/route.ts';

/** Land of the earth without borders, as TopoJSON. */
export type Land = Topology<{ land: GeometryCollection }>;

/** A place as it is drawn: a point, and where its name stands. */
export interface DrawnPlace {
  readonly point: PlacePoint;
  readonly x: number;
  readonly y: number;
  readonly labelX: number;
  readonly labelY: number;
  readonly anchor: 'start' | 'end' | 'middle';
}

/** A leg as it is drawn: its path, and where its number stands. */
export interface DrawnLeg {
  readonly leg: Leg;
  readonly path: string;
  readonly x: number;
  readonly y: number;
  /** Where the middle of the leg is, which the number may stand off. */
  readonly middleY: number;
}

/** A map of the way, in drawing units. */
export interface PlacesDrawing {
  readonly width: number;
  readonly height: number;
  readonly land: string;
  readonly grid: string;
  readonly places: readonly DrawnPlace[];
  readonly legs: readonly DrawnLeg[];
}

const WIDTH = 1000;
const HEIGHT = 560;

/** Room around the outermost places, for their names. */
const MARGIN = 110;

/** The earth is never drawn larger than this: about 400 km across the drawing. */
const MOST_SCALE = 16_000;

/** Width of a letter of a name, in drawing units. */
const LETTER = 7.2;

/**
 * Lays a route out on the earth (Lambert's azimuthal equal-area projection, centred on the places); legs follow great
 * circles, since the true way is not known. Null where no place has coordinates.
 */
export function layOutPlaces(
  { points, legs }: Route,
  land: Land,
  nameOf: (point: PlacePoint) => string,
): PlacesDrawing | null {
  if (points.length === 0) return null;
  const spots: MultiPoint = {
    type: 'MultiPoint',
    coordinates: points.map(({ longitude, latitude }) => [longitude, latitude]),
  };
  const [east, north] = middleOf(points);
  const projection = geoAzimuthalEqualArea()
    .rotate([-east, -north])
    .fitExtent(
      [
        [MARGIN, 70],
        [WIDTH - MARGIN, HEIGHT - 70],
      ],
      spots,
    );
  if (!(projection.scale() < MOST_SCALE)) projection.scale(MOST_SCALE).translate([WIDTH / 2, HEIGHT / 2]);
  projection.clipExtent([
    [0, 0],
    [WIDTH, HEIGHT],
  ]);
  const draw = geoPath(projection).digits(1);
  const at = ({ longitude, latitude }: PlacePoint): readonly [number, number] =>
    (projection([longitude, latitude]) ?? [0, 0]).map((one) => Math.round(one * 10) / 10) as [number, number];
  const drawnLegs = legs.flatMap((leg): readonly DrawnLeg[] => {
    const path = draw(lineOf(leg));
    const middle = draw.centroid(lineOf(leg));
    return path
      ? [{ leg, path, x: Math.round(middle[0]), y: Math.round(middle[1]), middleY: Math.round(middle[1]) }]
      : [];
  });
  return {
    width: WIDTH,
    height: HEIGHT,
    land: draw(feature(land, land.objects.land)) ?? '',
    grid: draw(geoGraticule().step([10, 10])()) ?? '',
    places: placeNames(points.map((point) => ({ point, at: at(point), name: nameOf(point) }))),
    legs: spreadNumbers(drawnLegs, points.map(at)),
  };
}

function lineOf({ from, to }: Leg): LineString {
  return {
    type: 'LineString',
    coordinates: [
      [from.longitude, from.latitude],
      [to.longitude, to.latitude],
    ],
  };
}

/** The middle of the places on the sphere: the mean of their unit vectors. */
function middleOf(points: readonly PlacePoint[]): readonly [number, number] {
  const radians = Math.PI / 180;
  let [x, y, z] = [0, 0, 0];
  for (const { longitude, latitude } of points) {
    x += Math.cos(latitude * radians) * Math.cos(longitude * radians);
    y += Math.cos(latitude * radians) * Math.sin(longitude * radians);
    z += Math.sin(latitude * radians);
  }
  return [Math.atan2(y, x) / radians, Math.atan2(z, Math.hypot(x, y)) / radians];
}

interface Box {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

/** Puts each name where it covers no point and no other name: right, left, above, below, and further off. */
function placeNames(
  list: readonly { readonly point: PlacePoint; readonly at: readonly [number, number]; readonly name: string }[],
): readonly DrawnPlace[] {
  const taken: Box[] = list.map(({ at: [x, y] }) => ({ x1: x - 5, y1: y - 5, x2: x + 5, y2: y + 5 }));
  return list.map(({ point, at: [x, y], name }) => {
    const width = name.length * LETTER;
    const choices = [0, 16, 32].flatMap((off) => [
      { labelX: x + 10, labelY: y + 5 + off, anchor: 'start' as const, left: x + 10 },
      { labelX: x - 10, labelY: y + 5 + off, anchor: 'end' as const, left: x - 10 - width },
      { labelX: x + 10, labelY: y + 5 - off, anchor: 'start' as const, left: x + 10 },
      { labelX: x - 10, labelY: y + 5 - off, anchor: 'end' as const, left: x - 10 - width },
      { labelX: x, labelY: y - 12 - off, anchor: 'middle' as const, left: x - width / 2 },
      { labelX: x, labelY: y + 22 + off, anchor: 'middle' as const, left: x - width / 2 },
    ]);
    const boxOf = ({ left, labelY }: (typeof choices)[number]): Box => ({
      x1: left,
      y1: labelY - 13,
      x2: left + width,
      y2: labelY + 4,
    });
    const isFree = (box: Box): boolean =>
      box.x1 > 2 &&
      box.x2 < WIDTH - 2 &&
      box.y1 > 2 &&
      box.y2 < HEIGHT - 2 &&
      !taken.some((other) => touches(box, other));
    const chosen = choices.find((one) => isFree(boxOf(one))) ?? (choices[0] as (typeof choices)[number]);
    taken.push(boxOf(chosen));
    return { point, x, y, labelX: chosen.labelX, labelY: chosen.labelY, anchor: chosen.anchor };
  });
}

function touches(a: Box, b: Box): boolean {
  return a.x1 < b.x2 && b.x1 < a.x2 && a.y1 < b.y2 && b.y1 < a.y2;
}

/** Numbers of legs stand apart from each other and from the places. */
function spreadNumbers(legs: readonly DrawnLeg[], points: readonly (readonly [number, number])[]): readonly DrawnLeg[] {
  const taken: (readonly [number, number])[] = [...points];
  return legs.map((one) => {
    let { y } = one;
    while (taken.some(([x, other]) => Math.abs(x - one.x) < 30 && Math.abs(other - y) < 30) && y > 20) y -= 10;
    taken.push([one.x, y]);
    return { ...one, y };
  });
}
