import polygonClipping, { type MultiPolygon } from 'polygon-clipping';
import type { Path, Point } from './point.ts';
import { signedArea } from './ring.ts';

/** An area of one or more pieces, each an outer ring and holes; empty for no pieces. */
export type Region = readonly (readonly Path[])[];

/** Shapes are rounded to this when they enter, in mm, so that nearly equal corners are equal. */
const ROUNDING = 0.01;

/** Pieces smaller than this are slivers of rounding and are dropped, in square millimetres. */
export const SLIVER = 1;

/** The region inside a ring, without its holes. The ring must be simple (see `findRingFault`). */
export function regionOf(ring: Path, holes: readonly Path[] = []): Region {
  return [[ring, ...holes].map(rounded)];
}

function rounded(ring: Path): Path {
  return ring.map(([x, y]): Point => [Math.round(x / ROUNDING) * ROUNDING, Math.round(y / ROUNDING) * ROUNDING]);
}

/** Everything that lies in one of the regions at least; overlaps count once. */
export function union(regions: readonly Region[]): Region {
  const [first, ...rest] = regions.map(outward);
  return first ? withoutSlivers(polygonClipping.union(first, ...rest)) : [];
}

/** What lies in both regions. */
export function intersection(a: Region, b: Region): Region {
  return a.length === 0 || b.length === 0 ? [] : withoutSlivers(polygonClipping.intersection(outward(a), outward(b)));
}

/** What lies in the first region and in none of the others. */
export function difference(a: Region, ...others: readonly Region[]): Region {
  const taken = others.filter((one) => one.length > 0).map(outward);
  if (a.length === 0 || taken.length === 0) return a;
  return withoutSlivers(polygonClipping.difference(outward(a), ...taken));
}

/** Area of a region: outer rings less their holes; in its unit squared. */
export function regionArea(region: Region): number {
  return region.reduce((sum, piece) => sum + pieceArea(piece), 0);
}

/** Length of a region's boundary that does not run along an outline; what lies within half a unit of it does. */
export function innerBoundary(region: Region, outline: Path): number {
  const sides = outline.map((a, i) => [a, outline[(i + 1) % outline.length] as Point] as const);
  const isOnOutline = (p: Point): boolean => sides.some(([a, b]) => distanceToSegment(p, a, b) < 0.5);
  return region.flat().reduce(
    (sum, ring) =>
      sum +
      ring.reduce((length, a, i) => {
        const b = ring[(i + 1) % ring.length] as Point;
        const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
        return [a, middle, b].every(isOnOutline) ? length : length + Math.hypot(b[0] - a[0], b[1] - a[1]);
      }, 0),
    0,
  );
}

function distanceToSegment([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): number {
  const squared = (bx - ax) ** 2 + (by - ay) ** 2;
  const t = squared === 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / squared));
  return Math.hypot(x - ax - t * (bx - ax), y - ay - t * (by - ay));
}

function pieceArea([outer = [], ...holes]: readonly Path[]): number {
  return Math.abs(signedArea(outer)) - holes.reduce((sum, hole) => sum + Math.abs(signedArea(hole)), 0);
}

function withoutSlivers(region: MultiPolygon): Region {
  // Rings come back with their first point at the end again.
  const open = region.map((piece) => piece.map((ring): Path => ring.slice(0, -1)));
  return open.filter((piece) => pieceArea(piece) >= SLIVER);
}

function outward(region: Region): MultiPolygon {
  return region.map((piece) => piece.map((ring) => ring.map(([x, y]): [number, number] => [x, y])));
}
