import { describe, expect, it } from 'vitest';
import { arcDegrees, fitCircle, fitTaubin, sumOfSquares } from '../../src/geometry/circle-fit.ts';
import { circleInterval, reachBeyond } from '../../src/geometry/circle-interval.ts';
import type { Point } from '../../src/geometry/point.ts';
import { seededNormal } from '../../src/geometry/seeded-random.ts';

/** Gander, Golub and Strebel, BIT 34 (1994), 558-578: the example of six points (from memory, reproduced). */
const SIX: readonly Point[] = [
  [1, 7],
  [2, 6],
  [5, 8],
  [7, 7],
  [9, 5],
  [3, 7],
];

describe('Gander, Golub and Strebel 1994', () => {
  it('the geometric fit is the published circle: centre (4.7398, 2.9835), radius 4.7142, squares 1.2276', () => {
    const circle = fitCircle(SIX);
    expect(circle?.centre[0]).toBeCloseTo(4.7398, 4);
    expect(circle?.centre[1]).toBeCloseTo(2.9835, 4);
    expect(circle?.radius).toBeCloseTo(4.7142, 4);
    expect(circle && sumOfSquares(SIX, circle)).toBeCloseTo(1.2276, 4);
  });

  it("Taubin's fit: centre (4.6139, 2.7952), radius 4.8792", () => {
    const circle = fitTaubin(SIX);
    expect(circle?.centre[0]).toBeCloseTo(4.6139, 4);
    expect(circle?.centre[1]).toBeCloseTo(2.7952, 4);
    expect(circle?.radius).toBeCloseTo(4.8792, 4);
  });

  it('neither depends on where the origin lies (the unit-norm algebraic fit would)', () => {
    const moved = SIX.map(([x, y]): Point => [x + 10_000, y - 20_000]);
    expect(fitTaubin(moved)?.radius).toBeCloseTo(4.8792, 4);
    expect(fitCircle(moved)?.radius).toBeCloseTo(4.7142, 4);
    expect((fitCircle(moved)?.centre[0] ?? 0) - 10_000).toBeCloseTo(4.7398, 4);
  });
});

/** Twenty points along an arc of a circle of radius 100, each off by one on average. */
function arc(degrees: number, normal: () => number): readonly Point[] {
  return Array.from({ length: 20 }, (_, i) => {
    const angle = ((i / 19 - 0.5) * degrees * Math.PI) / 180;
    const r = 100 + normal();
    return [r * Math.cos(angle), r * Math.sin(angle)];
  });
}

const quantile = (list: readonly number[], share: number): number =>
  list.toSorted((a, b) => a - b)[Math.floor(share * list.length)] ?? Number.NaN;

/** Kåsa's plain algebraic fit, which shrinks short arcs; here only to show that ours does not. */
function kasaRadius(points: readonly Point[]): number {
  const n = points.length;
  const [mx, my] = [points.reduce((s, [x]) => s + x, 0) / n, points.reduce((s, [, y]) => s + y, 0) / n];
  let [xx, yy, xy, xz, yz, zz] = [0, 0, 0, 0, 0, 0];
  for (const [px, py] of points) {
    const [x, y] = [px - mx, py - my];
    const z = x * x + y * y;
    xx += x * x;
    yy += y * y;
    xy += x * y;
    xz += x * z;
    yz += y * z;
    zz += z;
  }
  const det = xx * yy - xy * xy;
  const a = (xz * yy - yz * xy) / det / 2;
  const b = (yz * xx - xz * xy) / det / 2;
  return Math.sqrt(a * a + b * b + zz / n);
}

describe('short arcs: the table of checks/values.md 4.3 (after Chernov and Lesort 2004, Al-Sharadqah and Chernov 2009)', () => {
  it.each([
    [180, 99, 101, 100.0],
    [120, 97.8, 102.3, 99.8],
    [90, 96, 104, 99.3],
    [60, 91, 111, 96.2],
    [45, 86, 121, 88.6],
    [30, 72, 163, 60.3],
  ])(
    '%i degrees: 95 per cent of radii between %d and %d; the median of the plain fit would be %d',
    (degrees, low, high, kasa) => {
      const normal = seededNormal(degrees);
      const samples = Array.from({ length: 2000 }, () => arc(degrees, normal));
      const radii = samples.map((points) => fitTaubin(points)?.radius ?? Number.POSITIVE_INFINITY);
      expect(Math.abs(quantile(radii, 0.025) / low - 1)).toBeLessThan(0.05);
      expect(Math.abs(quantile(radii, 0.975) / high - 1)).toBeLessThan(0.08);
      expect(Math.abs(quantile(radii, 0.5) - 100)).toBeLessThan(degrees < 40 ? 3 : 1);
      expect(Math.abs(quantile(samples.map(kasaRadius), 0.5) - kasa)).toBeLessThan(1.5);
    },
  );

  it('the geometric fit agrees with Taubin on all but the shortest', () => {
    const normal = seededNormal(4);
    for (let i = 0; i < 50; i += 1) {
      const points = arc(90, normal);
      expect(Math.abs((fitCircle(points)?.radius ?? 0) - (fitTaubin(points)?.radius ?? 0))).toBeLessThan(0.5);
    }
  });
});

describe('the interval', () => {
  it('is lopsided on short arcs, and has no upper end below 25 degrees', () => {
    const normal = seededNormal(11);
    const short = circleInterval(arc(40, normal), 1);
    if (!short?.radius?.most) throw new Error('no interval');
    expect(short.radius.most - short.circle.radius).toBeGreaterThan(short.circle.radius - short.radius.least);
    expect(circleInterval(arc(20, normal), 1)?.radius?.most).toBe(null);
  });

  it('is the same every time', () => {
    const points = arc(60, seededNormal(2));
    expect(circleInterval(points, 1)?.radius).toEqual(circleInterval(points, 1)?.radius);
  });

  it('points on a line are no circle', () => {
    expect(
      circleInterval(
        [
          [0, 0],
          [5, 5],
          [9, 9],
        ],
        1,
      ),
    ).toBe(null);
    expect(
      fitTaubin([
        [0, 0],
        [1, 0],
      ]),
    ).toBe(null);
  });

  it('sagitta: chord c and height s give the radius c²/8s + s/2 (any handbook)', () => {
    const [c, s] = [80, 12];
    expect(
      fitCircle([
        [-c / 2, 0],
        [0, s],
        [c / 2, 0],
      ])?.radius,
    ).toBeCloseTo((c * c) / (8 * s) + s / 2, 9);
  });

  it('arc and reach beyond an edge', () => {
    const half = [0, 30, 60, 90, 120, 150, 180].map((d): Point => {
      const a = (d * Math.PI) / 180;
      return [50 * Math.cos(a), 50 * Math.sin(a)];
    });
    const circle = fitCircle(half);
    if (!circle) throw new Error('no circle');
    expect(arcDegrees(half, circle)).toBeCloseTo(180, 6);
    // The upper half is seen; the edge is the x axis; the circle goes on for its radius below.
    expect(reachBeyond(circle, [-100, 0], [100, 0], [0, 50])).toBeCloseTo(50, 6);
    expect(reachBeyond(circle, [-100, -20], [100, -20], [0, 50])).toBeCloseTo(30, 6);
    expect(reachBeyond(circle, [-100, -60], [100, -60], [0, 50])).toBe(0);
  });
});
