import { arcDegrees, type Circle, fitCircle, fitTaubin } from './circle-fit.ts';
import { distance, type Path, type Point } from './point.ts';
import { seededNormal } from './seeded-random.ts';

/** A circle with how far its radius is settled by the arc that is seen. */
export interface CircleInterval {
  readonly circle: Circle;
  /** Degrees of arc that the points cover. */
  readonly arc: number;
  /** Root mean square distance of the points from the circle. */
  readonly deviation: number;
  /** 95 per cent interval of the radius; no upper end where the arc is too short to give one. */
  readonly radius: { readonly least: number; readonly most: number | null };
  /** The error of a point that the interval rests on: the stated one or that of the fit, whichever is greater. */
  readonly error: number;
}

/** Below this arc only a lower bound of the radius is given. */
export const SHORTEST_ARC = 25;

const TRIALS = 2000;

/**
 * Fits a circle to points along an arc and tells how far its radius is settled: the fit is made 2,000
 * times on points scattered about the fitted circle by the error (seeded, so the same every time), and the
 * middle 95 per cent of the radii are kept. Short arcs give a lopsided interval; below 25 degrees
 * only a lower bound. Points along one drawn line err together, so that the interval may be too
 * narrow. `statedError`: the tracing error of a point, one deviation, in the unit of the points.
 */
export function circleInterval(points: Path, statedError: number, seed = 1): CircleInterval | null {
  const circle = fitCircle(points);
  if (!circle) return null;
  const squares = points.reduce((sum, point) => sum + (distance(point, circle.centre) - circle.radius) ** 2, 0);
  const deviation = Math.sqrt(squares / points.length);
  const spare = Math.max(1, points.length - 3);
  const error = Math.max(statedError, Math.sqrt(squares / spare));
  const arc = arcDegrees(points, circle);
  const radii = trialsOf(points, circle, error, seed).map((one) => one?.radius ?? Number.POSITIVE_INFINITY);
  return { circle, arc, deviation, error, radius: middle95(radii, arc) };
}

/**
 * How far the full circle would go on beyond a line, as far as the arc settles it: 95 per cent of the same trials; no upper end for
 * an arc below 25 degrees. 0 at least.
 */
export function reachInterval(
  points: Path,
  { circle, error, arc }: CircleInterval,
  a: Point,
  b: Point,
  seen: Point,
  seed = 1,
): { readonly least: number; readonly most: number | null } {
  const reaches = trialsOf(points, circle, error, seed).map((one) =>
    one ? reachBeyond(one, a, b, seen) : Number.POSITIVE_INFINITY,
  );
  return middle95(reaches, arc);
}

function middle95(values: readonly number[], arc: number): { readonly least: number; readonly most: number | null } {
  const sorted = [...values].sort((x, y) => x - y);
  const at = (share: number): number =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] as number;
  const most = arc < SHORTEST_ARC || !Number.isFinite(at(0.975)) ? null : at(0.975);
  return { least: at(0.025), most };
}

/** Circles fitted to points scattered about a circle; null for a trial that gives none. */
function trialsOf(points: Path, { centre, radius }: Circle, error: number, seed: number): readonly (Circle | null)[] {
  const normal = seededNormal(seed);
  const angles = points.map(([x, y]) => Math.atan2(y - centre[1], x - centre[0]));
  return Array.from({ length: TRIALS }, () => {
    const scattered = angles.map((angle): Point => {
      const r = radius + error * normal();
      return [centre[0] + r * Math.cos(angle), centre[1] + r * Math.sin(angle)];
    });
    return fitTaubin(scattered);
  });
}

/**
 * How far a circle reaches beyond an edge (a line through two points, the painting on the side of the
 * circle's seen points): 0 where it does not cross. In the unit of the points.
 */
export function reachBeyond({ centre, radius }: Circle, a: Point, b: Point, seen: Point): number {
  const length = distance(a, b);
  const side = (point: Point): number =>
    ((b[0] - a[0]) * (point[1] - a[1]) - (b[1] - a[1]) * (point[0] - a[0])) / length;
  const inward = Math.sign(side(seen)) || 1;
  return Math.max(0, radius - inward * side(centre));
}
