import { leastSquares } from './linear.ts';
import { distance, type Path, type Point } from './point.ts';

/** A point of a figure in pixels (y down) and the same point in millimetres of the panel's frame (y up). */
export interface ControlPoint {
  readonly pixel: Point;
  readonly mm: Point;
}

/** How a figure is brought into the frame: turned and scaled; also sheared; also seen from an angle. */
export type MapKind = 'similarity' | 'affine' | 'projective';

/** A registration: the map, its inverse, and how well the control points agree with it. */
export interface Registration {
  readonly kind: MapKind;
  /** Row by row: mm = (m0 x + m1 y + m2, m3 x + m4 y + m5) / (m6 x + m7 y + 1). */
  readonly matrix: readonly number[];
  toMm(pixel: Point): Point;
  toPixel(mm: Point): Point;
  /** Distance in millimetres between each control point and where the map puts it. */
  readonly residualsMm: readonly number[];
  readonly rootMeanSquareMm: number;
  /**
   * What a point may be off by, judged from the residuals and the points to spare: the root of their sum of squares by (points - parameters / 2).
   * Null without a point to spare, when the residuals tell nothing.
   */
  readonly errorMm: number | null;
  /** True where the map turns the picture over as in a mirror, so that x or y is counted the wrong way. */
  readonly isMirrored: boolean;
}

/** Why control points give no map. */
export interface RegistrationFault {
  readonly fault: 'too-few' | 'repeated' | 'on-a-line';
  /** Control points that it concerns, counted from 1. */
  readonly points: readonly number[];
}

/** Fewest control points for a kind of map. */
export const LEAST_POINTS: Readonly<Record<MapKind, number>> = { similarity: 2, affine: 3, projective: 4 };

/**
 * Registers a figure by its control points, by least squares where there are more than are needed.
 * A photograph is upside down beside the frame (y down against y up); a similarity takes that into account.
 * Pixels and millimetres are first moved to their middle and scaled (Hartley 1997, normalisation), so that
 * the result does not depend on the unit. For the projective map the sum of squared distances in
 * millimetres is then made least by Gauss-Newton steps.
 */
export function register(points: readonly ControlPoint[], kind: MapKind): Registration | RegistrationFault {
  if (points.length < LEAST_POINTS[kind]) return { fault: 'too-few', points: points.map((_, i) => i + 1) };
  const repeated = findRepeated(points);
  if (repeated.length > 0) return { fault: 'repeated', points: repeated };
  const [from, to] = [normaliser(points.map((one) => one.pixel)), normaliser(points.map((one) => one.mm))];
  const pairs = points.map(({ pixel, mm }) => ({ p: from.apply(pixel), q: to.apply(mm) }));
  if (
    kind !== 'similarity' &&
    isOnLine(
      pairs.map(({ p }) => p),
      kind,
    )
  )
    return onLine(points);
  if (
    kind !== 'similarity' &&
    isOnLine(
      pairs.map(({ q }) => q),
      kind,
    )
  )
    return onLine(points);
  const normal = kind === 'similarity' ? similarity(pairs) : kind === 'affine' ? affine(pairs) : projective(pairs);
  if (!normal) return onLine(points);
  const matrix = scaled(multiply(to.inverse, multiply(normal, from.matrix)));
  const inverse = invert(matrix);
  if (!inverse) return onLine(points);
  const residualsMm = points.map(({ pixel, mm }) => distance(applyMap(matrix, pixel), mm));
  const squares = residualsMm.reduce((sum, r) => sum + r * r, 0);
  const spare = points.length - LEAST_POINTS[kind];
  return {
    kind,
    matrix,
    toMm: (pixel) => applyMap(matrix, pixel),
    toPixel: (mm) => applyMap(inverse, mm),
    residualsMm,
    rootMeanSquareMm: Math.sqrt(squares / residualsMm.length),
    errorMm: spare > 0 ? Math.sqrt(squares / spare) : null,
    isMirrored: mirrors(matrix, points),
  };
}

/** A picture has y downwards, the frame upwards: a map that keeps the sense of turning shows it in a mirror. */
function mirrors(matrix: readonly number[], points: readonly ControlPoint[]): boolean {
  const [x, y] = points.reduce(
    ([sx, sy], { pixel }) => [sx + pixel[0] / points.length, sy + pixel[1] / points.length],
    [0, 0],
  ) as [number, number];
  const [o, u, v] = [
    [x, y],
    [x + 1, y],
    [x, y + 1],
  ].map((one) => applyMap(matrix, one as unknown as Point)) as [Point, Point, Point];
  return (u[0] - o[0]) * (v[1] - o[1]) - (u[1] - o[1]) * (v[0] - o[0]) > 0;
}

/** True where a registration could not be made. */
export function isRegistrationFault(result: Registration | RegistrationFault): result is RegistrationFault {
  return 'fault' in result;
}

function onLine(points: readonly ControlPoint[]): RegistrationFault {
  return { fault: 'on-a-line', points: points.map((_, i) => i + 1) };
}

function findRepeated(points: readonly ControlPoint[]): readonly number[] {
  for (let i = 0; i < points.length; i += 1) {
    for (let j = i + 1; j < points.length; j += 1) {
      const [a, b] = [points[i] as ControlPoint, points[j] as ControlPoint];
      if (distance(a.pixel, b.pixel) === 0 || distance(a.mm, b.mm) === 0) return [i + 1, j + 1];
    }
  }
  return [];
}

/**
 * True where the points, of about unit size, lie so near to one line that the map is not settled: for an
 * affine map all of them; for a projective map all but one.
 */
function isOnLine(points: Path, kind: MapKind): boolean {
  if (kind === 'affine') return thickness(points) < 1e-6;
  return points.some((_, left) => thickness(points.filter((_, i) => i !== left)) < 1e-6);
}

/** Least spread of points about a line, in their unit (the smaller root of their scatter). */
function thickness(points: Path): number {
  const [mx, my] = middle(points);
  let [xx, xy, yy] = [0, 0, 0];
  for (const [x, y] of points) {
    xx += (x - mx) ** 2;
    xy += (x - mx) * (y - my);
    yy += (y - my) ** 2;
  }
  const half = (xx + yy) / 2;
  return Math.sqrt(Math.max(0, half - Math.hypot((xx - yy) / 2, xy)) / points.length);
}

interface Pair {
  readonly p: Point;
  readonly q: Point;
}

/** x' = a x + b y + c, y' = b x - a y + d: turned, scaled and set upright, since pixels run downwards. */
function similarity(pairs: readonly Pair[]): readonly number[] | null {
  const rows = pairs.flatMap(({ p: [x, y] }) => [
    [x, y, 1, 0],
    [-y, x, 0, 1],
  ]);
  const solved = leastSquares(
    rows,
    pairs.flatMap(({ q }) => q),
  );
  if (!solved) return null;
  const [a, b, c, d] = solved as [number, number, number, number];
  return [a, b, c, b, -a, d, 0, 0, 1];
}

function affine(pairs: readonly Pair[]): readonly number[] | null {
  const rows = pairs.map(({ p: [x, y] }) => [x, y, 1]);
  const [first, second] = [0, 1].map((axis) =>
    leastSquares(
      rows,
      pairs.map(({ q }) => q[axis] as number),
    ),
  );
  return first && second ? [...first, ...second, 0, 0, 1] : null;
}

/** The direct linear solution, then Gauss-Newton on the distances themselves. */
function projective(pairs: readonly Pair[]): readonly number[] | null {
  const rows = pairs.flatMap(({ p: [x, y], q: [u, v] }) => [
    [x, y, 1, 0, 0, 0, -u * x, -u * y],
    [0, 0, 0, x, y, 1, -v * x, -v * y],
  ]);
  let m = leastSquares(
    rows,
    pairs.flatMap(({ q }) => q),
  );
  for (let step = 0; m && step < 20; step += 1) {
    const matrix: readonly number[] = [...m, 1];
    const jacobian = pairs.flatMap(({ p: [x, y] }) => {
      const [u, v] = applyMap(matrix, [x, y]);
      const w = (matrix[6] as number) * x + (matrix[7] as number) * y + 1;
      return [
        [x / w, y / w, 1 / w, 0, 0, 0, (-u * x) / w, (-u * y) / w],
        [0, 0, 0, x / w, y / w, 1 / w, (-v * x) / w, (-v * y) / w],
      ];
    });
    const misses = pairs.flatMap(({ p, q }) => {
      const [u, v] = applyMap(matrix, p);
      return [q[0] - u, q[1] - v];
    });
    const change = leastSquares(jacobian, misses);
    if (!change) break;
    m = m.map((value, i) => value + (change[i] as number));
    if (Math.hypot(...change) < 1e-13) break;
  }
  return m ? [...m, 1] : null;
}

function middle(points: Path): Point {
  const n = points.length;
  return [points.reduce((sum, [x]) => sum + x, 0) / n, points.reduce((sum, [, y]) => sum + y, 0) / n];
}

/** Moves points to their middle and scales their mean distance from it to the root of two. */
function normaliser(points: Path): { matrix: readonly number[]; inverse: readonly number[]; apply(p: Point): Point } {
  const [mx, my] = middle(points);
  const mean = points.reduce((sum, p) => sum + distance(p, [mx, my]), 0) / points.length || 1;
  const s = Math.SQRT2 / mean;
  const matrix = [s, 0, -s * mx, 0, s, -s * my, 0, 0, 1];
  return {
    matrix,
    inverse: [1 / s, 0, mx, 0, 1 / s, my, 0, 0, 1],
    apply: (p) => applyMap(matrix, p),
  };
}

/** Where a map, given row by row, puts a point. */
export function applyMap(m: readonly number[], [x, y]: Point): Point {
  // One by one, not taken apart: this runs for every pixel of a picture.
  const n = m as Nine;
  const w = n[6] * x + n[7] * y + n[8];
  return [(n[0] * x + n[1] * y + n[2]) / w, (n[3] * x + n[4] * y + n[5]) / w];
}

type Nine = readonly [number, number, number, number, number, number, number, number, number];

function multiply(a: readonly number[], b: readonly number[]): readonly number[] {
  return Array.from({ length: 9 }, (_, i) => {
    const [row, column] = [Math.floor(i / 3), i % 3];
    return [0, 1, 2].reduce((sum, k) => sum + (a[3 * row + k] as number) * (b[3 * k + column] as number), 0);
  });
}

/** The same map with its last number 1. */
function scaled(m: readonly number[]): readonly number[] {
  return m.map((value) => value / (m[8] as number));
}

function invert(m: readonly number[]): readonly number[] | null {
  const [a, b, c, d, e, f, g, h, i] = m as Nine;
  const det = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
  if (!Number.isFinite(det) || det === 0) return null;
  return scaled(
    [
      e * i - f * h,
      c * h - b * i,
      b * f - c * e,
      f * g - d * i,
      a * i - c * g,
      c * d - a * f,
      d * h - e * g,
      b * g - a * h,
      a * e - b * d,
    ].map((value) => value / det),
  );
}
