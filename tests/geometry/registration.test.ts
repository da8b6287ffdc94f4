import { describe, expect, it } from 'vitest';
import { distance, type Point } from '../../src/geometry/point.ts';
import { type ControlPoint, isRegistrationFault, type MapKind, register } from '../../src/geometry/registration.ts';
import { seededNormal, seededRandom } from '../../src/geometry/seeded-random.ts';

/** A known map of each kind from pixels (y down) to millimetres (y up). */
const KNOWN: Readonly<Record<MapKind, (p: Point) => Point>> = {
  similarity: ([x, y]) => [0.4 * x + 0.03 * y + 12, 0.03 * x - 0.4 * y + 900],
  affine: ([x, y]) => [0.41 * x + 0.05 * y + 12, -0.02 * x - 0.39 * y + 880],
  projective: ([x, y]) => {
    const w = 1 + 2e-5 * x - 3e-5 * y;
    return [(0.4 * x + 0.05 * y + 12) / w, (-0.02 * x - 0.39 * y + 880) / w];
  },
};

const grid: readonly Point[] = [0, 1, 2, 3].flatMap((i) => [0, 1, 2].map((j): Point => [300 + i * 800, 200 + j * 900]));

function made(kind: MapKind, points: readonly ControlPoint[]) {
  const result = register(points, kind);
  if (isRegistrationFault(result)) throw new Error(result.fault);
  return result;
}

describe.each(['similarity', 'affine', 'projective'] as const)('%s', (kind) => {
  const map = KNOWN[kind];

  it('recovers a known map and its inverse from exact points', () => {
    const found = made(
      kind,
      grid.map((pixel) => ({ pixel, mm: map(pixel) })),
    );
    expect(found.rootMeanSquareMm).toBeLessThan(1e-8);
    for (const pixel of [
      [0, 0],
      [4000, 3000],
      [1234, 777],
    ] as const) {
      expect(distance(found.toMm(pixel), map(pixel))).toBeLessThan(1e-7);
      expect(distance(found.toPixel(found.toMm(pixel)), pixel)).toBeLessThan(1e-6);
    }
  });

  it('the residual is the planted noise, less what the map takes up', () => {
    const freedom = { similarity: 4, affine: 6, projective: 8 }[kind];
    const normal = seededNormal(3);
    let sum = 0;
    const trials = 200;
    for (let trial = 0; trial < trials; trial += 1) {
      const points = grid.map((pixel) => {
        const [x, y] = map(pixel);
        return { pixel, mm: [x + 0.8 * normal(), y + 0.8 * normal()] as Point };
      });
      sum += made(kind, points).residualsMm.reduce((total, r) => total + r * r, 0);
    }
    // Two coordinates a point, less the numbers that the map has.
    const expected = 0.8 ** 2 * (2 * grid.length - freedom);
    expect(sum / trials / expected).toBeGreaterThan(0.9);
    expect(sum / trials / expected).toBeLessThan(1.1);
  });

  it('the fit is the least: nudging any number of the map makes the squares larger', () => {
    const normal = seededNormal(5);
    const points = grid.map((pixel) => {
      const [x, y] = map(pixel);
      return { pixel, mm: [x + normal(), y + normal()] as Point };
    });
    const found = made(kind, points);
    const squares = (m: readonly number[]): number =>
      points.reduce((total, { pixel: [x, y], mm }) => {
        const w = (m[6] as number) * x + (m[7] as number) * y + 1;
        const at: Point = [
          ((m[0] as number) * x + (m[1] as number) * y + (m[2] as number)) / w,
          ((m[3] as number) * x + (m[4] as number) * y + (m[5] as number)) / w,
        ];
        return total + distance(at, mm) ** 2;
      }, 0);
    const free = { similarity: [2, 5], affine: [0, 1, 2, 3, 4, 5], projective: [0, 1, 2, 3, 4, 5, 6, 7] }[kind];
    const least = squares(found.matrix);
    for (const i of free)
      for (const step of [1e-5, -1e-5]) {
        const nudged = found.matrix.map((value, k) =>
          k === i ? value + step * Math.max(Math.abs(value), 1e-4) : value,
        );
        expect(squares(nudged)).toBeGreaterThanOrEqual(least - 1e-9);
      }
  });

  it('the unit changes nothing', () => {
    const random = seededRandom(9);
    const points = grid.map((pixel) => {
      const [x, y] = map(pixel);
      return { pixel, mm: [x + random(), y + random()] as Point };
    });
    const big = points.map(({ pixel: [x, y], mm: [u, v] }) => ({
      pixel: [x * 1000, y * 1000] as Point,
      mm: [u * 1000 + 5e6, v * 1000] as Point,
    }));
    expect(made(kind, big).rootMeanSquareMm / made(kind, points).rootMeanSquareMm).toBeCloseTo(1000, 3);
  });
});

describe('control points that settle nothing', () => {
  const on = (pixels: readonly Point[]): readonly ControlPoint[] =>
    pixels.map((pixel) => ({ pixel, mm: KNOWN.affine(pixel) }));

  it('too few, repeated, on a line', () => {
    expect(register(on([[0, 0]]), 'similarity')).toMatchObject({ fault: 'too-few' });
    expect(
      register(
        on([
          [0, 0],
          [1, 1],
          [2, 0],
        ]),
        'projective',
      ),
    ).toMatchObject({ fault: 'too-few' });
    expect(
      register(
        on([
          [0, 0],
          [9, 4],
          [9, 4],
        ]),
        'affine',
      ),
    ).toEqual({ fault: 'repeated', points: [2, 3] });
    expect(
      register(
        on([
          [0, 0],
          [10, 10],
          [25, 25],
        ]),
        'affine',
      ),
    ).toMatchObject({ fault: 'on-a-line' });
    expect(
      register(
        on([
          [0, 0],
          [10, 10],
          [25, 25],
          [3, 90],
        ]),
        'projective',
      ),
    ).toMatchObject({ fault: 'on-a-line' });
  });
});
