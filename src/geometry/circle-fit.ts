import type { Path, Point } from './point.ts';

/** A circle, in the unit of its points. */
export interface Circle {
  readonly centre: Point;
  readonly radius: number;
}

/**
 * Taubin's fit (IEEE PAMI 13, 1991), by Newton's method on the characteristic polynomial in the form
 * that Chernov gives (Circular and Linear Regression, 2010, section 5.10). It does not depend on where the origin lies and
 * does not shrink short arcs as the plain algebraic fit (Kåsa's) does. Null for fewer than three points or
 * points on a line.
 */
export function fitTaubin(points: Path): Circle | null {
  const n = points.length;
  if (n < 3) return null;
  const mx = points.reduce((sum, [x]) => sum + x, 0) / n;
  const my = points.reduce((sum, [, y]) => sum + y, 0) / n;
  let [xx, yy, xy, xz, yz, zz] = [0, 0, 0, 0, 0, 0];
  for (const [px, py] of points) {
    const [x, y] = [px - mx, py - my];
    const z = x * x + y * y;
    xx += x * x;
    yy += y * y;
    xy += x * y;
    xz += x * z;
    yz += y * z;
    zz += z * z;
  }
  [xx, yy, xy, xz, yz, zz] = [xx / n, yy / n, xy / n, xz / n, yz / n, zz / n];
  const z = xx + yy;
  const cov = xx * yy - xy * xy;
  if (cov <= 1e-12 * z * z) return null;
  const a3 = 4 * z;
  const a2 = -3 * z * z - zz;
  const a1 = zz * z + 4 * cov * z - xz * xz - yz * yz - z * z * z;
  const a0 = xz * xz * yy + yz * yz * xx - zz * cov - 2 * xz * yz * xy + z * z * cov;
  let root = 0;
  let value = a0;
  for (let step = 0; step < 60; step += 1) {
    const slope = a1 + root * (2 * a2 + 3 * a3 * root);
    const next = root - value / slope;
    if (!Number.isFinite(next) || next === root) break;
    const nextValue = a0 + next * (a1 + next * (a2 + next * a3));
    if (Math.abs(nextValue) >= Math.abs(value)) break;
    [root, value] = [next, nextValue];
  }
  const det = root * root - root * z + cov;
  const cx = (xz * (yy - root) - yz * xy) / det / 2;
  const cy = (yz * (xx - root) - xz * xy) / det / 2;
  const radius = Math.sqrt(cx * cx + cy * cy + z);
  return Number.isFinite(radius) ? { centre: [cx + mx, cy + my], radius } : null;
}

/**
 * The geometric fit: least sum of squared distances from the circle, from Taubin's circle by the method of Levenberg and
 * Marquardt (Gander, Golub and Strebel, BIT 34, 1994, give the problem and an example).
 */
export function fitCircle(points: Path): Circle | null {
  let circle = fitTaubin(points);
  if (!circle) return null;
  let damping = 1e-3;
  let squares = sumOfSquares(points, circle);
  for (let step = 0; step < 200 && damping < 1e12; step += 1) {
    const { centre, radius }: Circle = circle;
    const change = stepFrom(points, circle, damping);
    if (!change) break;
    const [dx, dy, dr] = change;
    const next: Circle = { centre: [centre[0] + dx, centre[1] + dy], radius: radius + dr };
    const nextSquares = sumOfSquares(points, next);
    if (nextSquares <= squares) {
      const small = Math.hypot(dx, dy, dr) < 1e-12 * (1 + radius);
      [circle, squares, damping] = [next, nextSquares, damping / 10];
      if (small) break;
    } else damping *= 10;
  }
  return circle;
}

/** The damped step of Gauss and Newton from a circle: the 3 x 3 normal equations, solved by elimination; null where they are singular. */
function stepFrom(points: Path, { centre, radius }: Circle, damping: number): readonly [number, number, number] | null {
  let [xx, xy, yy, x1, y1, xm, ym, m1] = [0, 0, 0, 0, 0, 0, 0, 0];
  for (const [px, py] of points) {
    const [ax, ay] = [px - centre[0], py - centre[1]];
    const d = Math.sqrt(ax * ax + ay * ay) || 1e-12;
    const [x, y, miss] = [ax / d, ay / d, d - radius];
    xx += x * x;
    xy += x * y;
    yy += y * y;
    x1 += x;
    y1 += y;
    xm += x * miss;
    ym += y * miss;
    m1 += miss;
  }
  const n = points.length;
  const more = damping * n;
  [xx, yy] = [xx + more, yy + more];
  const nn = n + more;
  // The radius goes out first, then one of the centre's coordinates.
  const [axx, axy, ayy] = [xx - (x1 * x1) / nn, xy - (x1 * y1) / nn, yy - (y1 * y1) / nn];
  const [bx, by] = [xm - (x1 * m1) / nn, ym - (y1 * m1) / nn];
  const det = axx * ayy - axy * axy;
  if (!(det > 1e-18 * axx * ayy)) return null;
  const [dx, dy] = [(ayy * bx - axy * by) / det, (axx * by - axy * bx) / det];
  return [dx, dy, (m1 - x1 * dx - y1 * dy) / nn];
}

/** Sum of squared distances of points from a circle. */
export function sumOfSquares(points: Path, { centre, radius }: Circle): number {
  let sum = 0;
  for (const [x, y] of points) {
    const [dx, dy] = [x - centre[0], y - centre[1]];
    const miss = Math.sqrt(dx * dx + dy * dy) - radius;
    sum += miss * miss;
  }
  return sum;
}

/** Degrees of the circle that the points cover: 360 less the widest gap between neighbours as seen from its centre. */
export function arcDegrees(points: Path, { centre }: Circle): number {
  const angles = points
    .map(([x, y]) => (Math.atan2(y - centre[1], x - centre[0]) * 180) / Math.PI)
    .sort((a, b) => a - b);
  const gaps = angles.map(
    (angle, i) => (i + 1 < angles.length ? (angles[i + 1] as number) : (angles[0] as number) + 360) - angle,
  );
  return 360 - Math.max(...gaps);
}
