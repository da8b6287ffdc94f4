import { arcDegrees, type Circle, fitCircle } from './circle-fit.ts';
import { leastSquares } from './linear.ts';
import { distance, type Path, type Point } from './point.ts';
import { studentSquared } from './student.ts';

/** From a least to a greatest value; open above where the arc does not settle it. */
export interface Interval {
  readonly least: number;
  readonly most: number | null;
}

/** A circle with how far its radius is settled by the arc that is seen. */
export interface CircleInterval {
  readonly circle: Circle;
  /** Degrees of arc that the points cover. */
  readonly arc: number;
  /** Root mean square distance of the points from the circle. */
  readonly deviation: number;
  /** 95 per cent interval of the radius; null where nothing settles one (no stated error and few points, or points that err together). */
  readonly radius: Interval | null;
  /** The error of a point that the interval rests on: the stated one or that of the fit, whichever is greater. */
  readonly error: number;
  /** By how much the sum of squares may exceed the least one, for a quantity that moves the points so. */
  readonly allowed: ((gradient: readonly number[]) => number) | null;
}

/** Below this arc only a lower bound of the radius is given. */
export const SHORTEST_ARC = 25;

/** Fewest points from whose own scatter an interval is made. */
const FEWEST_POINTS = 5;

/** Chi squared of one degree of freedom that 95 per cent lie below. */
const CHI_SQUARED = 3.841459;

/** What is known of the errors of the points. */
export interface PointErrors {
  /** True for points along one drawn line, which may all be off in one way. */
  readonly together?: boolean;
  /** False where only `allowed` is asked for, which spares the search for the ends of the interval. */
  readonly radius?: boolean;
}

/**
 * Fits a circle to points along an arc and tells how far its radius is settled: all radii for which the best circle fits not much
 * worse than the best of all (the profile of the sum of squares). With a stated error s of a point, "not much" is
 * s² chi²(.95; 1); without one (0) it is SSRmin F(.95; 1, n - 3) / (n - 3), for 5 points or more. Points along one line err together:
 * then the stated error counts as if all were off in the way that moves the radius most, and without it there is no
 * interval. Open above where a straight line fits well enough, and below 25 degrees of arc. Simulated: tests/geometry/circle-interval.test.ts.
 *
 * @param statedError the error of a point, one deviation, in the unit of the points; 0 where none is stated
 */
export function circleInterval(
  points: Path,
  statedError: number,
  { together = false, radius = true }: PointErrors = {},
): CircleInterval | null {
  const circle = fitCircle(points);
  if (!circle) return null;
  const squares = points.reduce((sum, point) => sum + (distance(point, circle.centre) - circle.radius) ** 2, 0);
  const n = points.length;
  const ofFit = Math.sqrt(squares / Math.max(1, n - 3));
  const error = Math.max(statedError, n >= FEWEST_POINTS || statedError === 0 ? ofFit : 0);
  const arc = arcDegrees(points, circle);
  const allowed = allowedSquares(points, circle, { squares, statedError, error, together });
  const settled = {
    circle,
    arc,
    deviation: Math.sqrt(squares / n),
    error,
    allowed,
  };
  return {
    ...settled,
    radius: allowed === null || !radius ? null : radiusInterval(points, circle, arc, squares + allowed([0, 0, 1])),
  };
}

/** By how much the sum of squares may exceed the least one; null where nothing says so. */
function allowedSquares(
  points: Path,
  circle: Circle,
  known: { readonly squares: number; readonly statedError: number; readonly error: number; readonly together: boolean },
): CircleInterval['allowed'] {
  const spare = points.length - 3;
  if (known.statedError > 0) {
    const usual = known.error ** 2 * CHI_SQUARED;
    return known.together ? (gradient) => usual * worstTogether(points, circle, gradient) : () => usual;
  }
  if (known.together || points.length < FEWEST_POINTS) return null;
  const most = (known.squares * studentSquared(spare)) / spare;
  return () => most;
}

/**
 * How much more than independent errors the same error of every point can move a quantity, squared: (sum |u|)² for the
 * direction u in which the points move it (its gradient in centre x, centre y and radius), at least 1.
 */
function worstTogether(points: Path, { centre }: Circle, gradient: readonly number[]): number {
  const rows = points.map(([x, y]) => {
    const angle = Math.atan2(y - centre[1], x - centre[0]);
    return [Math.cos(angle), Math.sin(angle), 1];
  });
  // w = J (J'J)^-1 h: the minimum-norm solution of J'w = h, found from its normal equations.
  const normal = [0, 1, 2].map((i) =>
    [0, 1, 2].map((j) => rows.reduce((sum, row) => sum + (row[i] as number) * (row[j] as number), 0)),
  );
  const solved = leastSquares(normal, gradient);
  if (!solved) return points.length;
  const w = rows.map((row) => row.reduce((sum, value, j) => sum + value * (solved[j] as number), 0));
  const norm = Math.hypot(...w) || 1;
  return Math.max(1, (w.reduce((sum, value) => sum + Math.abs(value), 0) / norm) ** 2);
}

/** The least sum of squares of any circle of a radius, found from a circle near by. */
export function squaresWithRadius(points: Path, near: Circle, radius: number): number {
  const middle = middleOf(points);
  return bestWithCurvature(points, middle, 1 / radius, placedAt(near, middle)).squares;
}

function placedAt({ centre, radius }: Circle, middle: Point): Placed {
  const [dx, dy] = [centre[0] - middle[0], centre[1] - middle[1]];
  return { turn: Math.atan2(dy, dx), shift: Math.hypot(dx, dy) - radius };
}

/** All radii whose best circle fits within a sum of squares. */
function radiusInterval(points: Path, circle: Circle, arc: number, limit: number): Interval {
  const middle = middleOf(points);
  const start = placedAt(circle, middle);
  const best = 1 / circle.radius;
  // The curvature is followed down through the straight line and on to the other side, where a short arc may lead.
  const [low, high] = [-1, 1].map((sign) => {
    let at = start;
    return edgeOf(
      best,
      sign * best * 0.05,
      (curvature) => {
        const found = bestWithCurvature(points, middle, curvature, at);
        at = found.at;
        return found.squares;
      },
      limit,
    );
  }) as [number, number];
  const least = 1 / Math.max(high, -low);
  return { least, most: low <= 0 || arc < SHORTEST_ARC ? null : 1 / low };
}

interface Placed {
  /** Direction from the middle of the points towards the centre. */
  readonly turn: number;
  /** How far the circle passes beyond the middle of the points, towards the centre. */
  readonly shift: number;
}

/** The best circle of a curvature (0: a line; below 0: curved the other way), from a start. */
function bestWithCurvature(
  points: Path,
  middle: Point,
  curvature: number,
  start: Placed,
): { readonly at: Placed; readonly squares: number } {
  const missesAt = ([turn, shift]: readonly number[]): readonly number[] => {
    const [nx, ny] = [Math.cos(turn as number), Math.sin(turn as number)];
    const [ax, ay] = [middle[0] + nx * (shift as number), middle[1] + ny * (shift as number)];
    return points.map(([x, y]) => missOf(x - ax, y - ay, nx, ny, curvature));
  };
  const { at, squares } = leastOf(missesAt, [start.turn, start.shift], [1e-6, 1e-6 * sizeOf(points)]);
  return { at: { turn: at[0] as number, shift: at[1] as number }, squares };
}

/**
 * How far a point lies outside a circle that passes through the origin with its centre at n / curvature: in a form that holds
 * for a straight line too.
 */
function missOf(x: number, y: number, nx: number, ny: number, curvature: number): number {
  const t = curvature * (x * x + y * y) - 2 * (x * nx + y * ny);
  return t / (1 + Math.sqrt(Math.max(0, 1 + curvature * t)));
}

/**
 * How far the full circle would go on beyond a line, as far as the arc settles it, as `circleInterval` settles the radius; no upper end
 * for an arc below 25 degrees. 0 at least.
 */
export function reachInterval(
  points: Path,
  { circle, arc, allowed }: CircleInterval,
  a: Point,
  b: Point,
  seen: Point,
): Interval | null {
  if (allowed === null) return null;
  const length = distance(a, b);
  const along: Point = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  const across = (point: Point): number => along[0] * (point[1] - a[1]) - along[1] * (point[0] - a[0]);
  const inward = Math.sign(across(seen)) || 1;
  const squares = points.reduce((sum, point) => sum + (distance(point, circle.centre) - circle.radius) ** 2, 0);
  const limit = squares + allowed([along[1] * inward, -along[0] * inward, 1]);
  // Every circle that goes on by g beyond the line: its farthest point at u along it, g beyond it, with some curvature.
  const placed = points.map(
    (point): Point => [along[0] * (point[0] - a[0]) + along[1] * (point[1] - a[1]), inward * across(point)],
  );
  const centreAlong = along[0] * (circle.centre[0] - a[0]) + along[1] * (circle.centre[1] - a[1]);
  const best = circle.radius - inward * across(circle.centre);
  const size = sizeOf(points);
  const [least, most] = [-1, 1].map((sign) => {
    let at: readonly number[] = [centreAlong, Math.log(circle.radius)];
    return edgeOf(
      best,
      sign * Math.max(size * 0.02, Math.abs(best) * 0.05),
      (reach) => {
        const found = leastOf(
          ([u, logRadius]) =>
            placed.map(([x, y]) => missOf(x - (u as number), y + reach, 0, 1, Math.exp(-(logRadius as number)))),
          at,
          [1e-6 * size, 1e-6],
        );
        at = found.at;
        return found.squares;
      },
      limit,
    );
  }) as [number, number];
  return {
    least: Math.max(0, least),
    most: arc < SHORTEST_ARC || !Number.isFinite(most) ? null : Math.max(0, most),
  };
}

/** The value farthest from the best one, in one direction, at which the sum of squares still lies within a limit; infinite where none is. */
function edgeOf(best: number, firstStep: number, squaresAt: (value: number) => number, limit: number): number {
  let inside = best;
  let step = firstStep;
  let outside = best + step;
  for (let i = 0; squaresAt(outside) <= limit; i += 1) {
    if (i > 60) return Math.sign(firstStep) * Number.POSITIVE_INFINITY;
    inside = outside;
    step *= 1.5;
    outside += step;
  }
  for (let i = 0; i < 40 && Math.abs(outside - inside) > 1e-7 * Math.abs(outside); i += 1) {
    const between = (inside + outside) / 2;
    if (squaresAt(between) <= limit) inside = between;
    else outside = between;
  }
  return inside;
}

/** The least sum of squares over two unknowns, by the method of Levenberg and Marquardt with differences for slopes. */
function leastOf(
  missesAt: (at: readonly number[]) => readonly number[],
  start: readonly number[],
  steps: readonly number[],
): { readonly at: readonly number[]; readonly squares: number } {
  const sum = (misses: readonly number[]): number => misses.reduce((total, one) => total + one * one, 0);
  let at = start;
  let misses = missesAt(at);
  let squares = sum(misses);
  for (let round = 0, damping = 1e-4; round < 40 && damping < 1e10; round += 1) {
    const [slopeA, slopeB] = [0, 1].map((k) => {
      const step = steps[k] as number;
      return missesAt(at.map((one, i) => (i === k ? one + step : one))).map(
        (one, i) => (one - (misses[i] as number)) / step,
      );
    }) as unknown as [readonly number[], readonly number[]];
    let [aa, ab, bb, ra, rb] = [0, 0, 0, 0, 0];
    for (let i = 0; i < misses.length; i += 1) {
      const [a, b, miss] = [slopeA[i] as number, slopeB[i] as number, misses[i] as number];
      aa += a * a;
      ab += a * b;
      bb += b * b;
      ra += a * miss;
      rb += b * miss;
    }
    const [da, db] = [aa * (1 + damping), bb * (1 + damping)];
    const det = da * db - ab * ab;
    if (det === 0 || !Number.isFinite(det)) break;
    const next = [(at[0] as number) - (db * ra - ab * rb) / det, (at[1] as number) - (da * rb - ab * ra) / det];
    const nextMisses = missesAt(next);
    const nextSquares = sum(nextMisses);
    if (nextSquares < squares) {
      const isSmall = squares - nextSquares < 1e-10 * squares;
      [at, misses, squares, damping] = [next, nextMisses, nextSquares, damping / 10];
      if (isSmall) break;
    } else damping *= 10;
  }
  return { at, squares };
}

function middleOf(points: Path): Point {
  return [0, 1].map(
    (i) => points.reduce((sum, point) => sum + (point[i] as number), 0) / points.length,
  ) as unknown as Point;
}

/** The greatest distance of a point from the middle. */
function sizeOf(points: Path): number {
  const middle = middleOf(points);
  return Math.max(...points.map((point) => distance(point, middle)));
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
