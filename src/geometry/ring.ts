import { type Path, type Point, turn } from './point.ts';

/** Signed area of a ring (shoelace): positive where it runs counter-clockwise; in its unit squared. */
export function signedArea(ring: Path): number {
  let sum = 0;
  for (let i = 0; i < ring.length; i += 1) {
    const [ax, ay] = ring[i] as Point;
    const [bx, by] = ring[(i + 1) % ring.length] as Point;
    sum += ax * by - bx * ay;
  }
  return sum / 2;
}

/** Why a ring is no area, with the point to look at where there is one. */
export type RingFault =
  | { readonly kind: 'too-few'; readonly points: number }
  | { readonly kind: 'no-area' }
  | { readonly kind: 'crossing'; readonly at: Point; readonly sides: readonly [number, number] };

/**
 * Finds what is wrong with a ring: fewer than three points, no area, or two sides that cross or touch.
 * Null where it is a simple ring. Sides are counted from 1, side n runs from point n to the next.
 */
export function findRingFault(ring: Path): RingFault | null {
  const points = withoutRepeats(ring);
  if (points.length < 3) return { kind: 'too-few', points: points.length };
  for (let i = 0; i < points.length; i += 1) {
    for (let j = i + 1; j < points.length; j += 1) {
      const at = crossingOf(points, i, j);
      if (at) return { kind: 'crossing', at, sides: [i + 1, j + 1] };
    }
  }
  return Math.abs(signedArea(points)) < 1e-9 ? { kind: 'no-area' } : null;
}

/** A ring without points that repeat the one before; a last point equal to the first is left out. */
export function withoutRepeats(ring: Path): Path {
  return ring.filter((point, i) => {
    const before = ring[(i + ring.length - 1) % ring.length] as Point;
    return ring.length === 1 || point[0] !== before[0] || point[1] !== before[1];
  });
}

/** Where two sides meet other than at a shared end of neighbours; null where they do not. */
function crossingOf(ring: Path, i: number, j: number): Point | null {
  const n = ring.length;
  const [a, b] = [ring[i] as Point, ring[(i + 1) % n] as Point];
  const [c, d] = [ring[j] as Point, ring[(j + 1) % n] as Point];
  if (j === i + 1) return foldsBack(a, b, d) ? b : null;
  if (i === 0 && j === n - 1) return foldsBack(c, d, b) ? a : null;
  return meet(a, b, c, d);
}

/** True where the side b-c runs back over the side a-b. */
function foldsBack(a: Point, b: Point, c: Point): boolean {
  const back = (a[0] - b[0]) * (c[0] - b[0]) + (a[1] - b[1]) * (c[1] - b[1]);
  return turn(a, b, c) === 0 && back > 0;
}

/** Where two segments meet; for segments on one line an end of the overlap; null where they do not meet. */
export function meet(a: Point, b: Point, c: Point, d: Point): Point | null {
  const [o1, o2, o3, o4] = [turn(a, b, c), turn(a, b, d), turn(c, d, a), turn(c, d, b)];
  if (o1 === 0 && within(a, b, c)) return c;
  if (o2 === 0 && within(a, b, d)) return d;
  if (o3 === 0 && within(c, d, a)) return a;
  if (o4 === 0 && within(c, d, b)) return b;
  if (o1 > 0 === o2 > 0 || o3 > 0 === o4 > 0 || o1 === 0 || o2 === 0 || o3 === 0 || o4 === 0) return null;
  const t = o3 / (o3 - o4);
  return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
}

function within(a: Point, b: Point, p: Point): boolean {
  return (
    Math.min(a[0], b[0]) <= p[0] &&
    p[0] <= Math.max(a[0], b[0]) &&
    Math.min(a[1], b[1]) <= p[1] &&
    p[1] <= Math.max(a[1], b[1])
  );
}

/** True where a point lies inside a ring or on it. */
export function isInside(ring: Path, [x, y]: Point): boolean {
  let inside = false;
  for (let i = 0; i < ring.length; i += 1) {
    const [ax, ay] = ring[i] as Point;
    const [bx, by] = ring[(i + 1) % ring.length] as Point;
    if (turn([ax, ay], [bx, by], [x, y]) === 0 && within([ax, ay], [bx, by], [x, y])) return true;
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
  }
  return inside;
}
