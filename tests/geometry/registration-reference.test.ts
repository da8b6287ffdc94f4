import { Matrix, SingularValueDecomposition, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { distance, type Point } from '../../src/geometry/point.ts';
import { type ControlPoint, isRegistrationFault, register } from '../../src/geometry/registration.ts';
import { seededNormal, seededRandom } from '../../src/geometry/seeded-random.ts';

/*
 * The same least squares by a general library (ml-matrix, MIT), set up from the textbook equations: affine as two linear systems,
 * similarity as one, the projective map by the homogeneous linear system (direct linear transform, Hartley and Zisserman, Multiple View
 * Geometry, 2nd edition 2003, section 4.1; from memory) solved by singular values.
 */

const PROBES: readonly Point[] = [
  [0, 0],
  [3000, 100],
  [1500, 1900],
  [2800, 2000],
];

function controlPoints(seed: number, noiseMm: number): readonly ControlPoint[] {
  const random = seededRandom(seed);
  const normal = seededNormal(seed + 100);
  return Array.from({ length: 12 }, (): ControlPoint => {
    const pixel: Point = [random() * 3000, random() * 2000];
    const w = 1 + 1e-5 * pixel[0] - 2e-5 * pixel[1];
    return {
      pixel,
      mm: [
        (0.41 * pixel[0] + 0.05 * pixel[1] + 12) / w + noiseMm * normal(),
        (-0.02 * pixel[0] - 0.39 * pixel[1] + 880) / w + noiseMm * normal(),
      ],
    };
  });
}

function ours(points: readonly ControlPoint[], kind: 'similarity' | 'affine' | 'projective') {
  const found = register(points, kind);
  if (isRegistrationFault(found)) throw new Error(found.fault);
  return found;
}

describe('registration beside a general least-squares library', () => {
  it.each([1, 2, 3, 4, 5, 6, 7, 8])('affine, noisy points, seed %i: the same map', (seed) => {
    const points = controlPoints(seed, 3);
    const rows = new Matrix(points.map(({ pixel: [x, y] }) => [x, y, 1]));
    const across = solve(rows, Matrix.columnVector(points.map(({ mm }) => mm[0])), true);
    const along = solve(rows, Matrix.columnVector(points.map(({ mm }) => mm[1])), true);
    const found = ours(points, 'affine');
    for (const [x, y] of PROBES) {
      const row = new Matrix([[x, y, 1]]);
      expect(distance(found.toMm([x, y]), [row.mmul(across).get(0, 0), row.mmul(along).get(0, 0)])).toBeLessThan(1e-6);
    }
  });

  it.each([1, 2, 3, 4, 5, 6, 7, 8])('similarity, noisy points, seed %i: the same map', (seed) => {
    const points = controlPoints(seed, 3);
    // mm = (a x + b y + c, b x - a y + d): turned, scaled, and upside down.
    const rows = new Matrix(
      points.flatMap(({ pixel: [x, y] }) => [
        [x, y, 1, 0],
        [-y, x, 0, 1],
      ]),
    );
    const right = Matrix.columnVector(points.flatMap(({ mm }) => [mm[0], mm[1]]));
    const [a = 0, b = 0, c = 0, d = 0] = solve(rows, right, true).to1DArray();
    const found = ours(points, 'similarity');
    for (const [x, y] of PROBES)
      expect(distance(found.toMm([x, y]), [a * x + b * y + c, b * x - a * y + d])).toBeLessThan(1e-6);
  });

  it.each([1, 2, 3, 4])('projective, exact points, seed %i: the same map as by singular values', (seed) => {
    const points = controlPoints(seed, 0);
    const rows = points.flatMap(({ pixel: [x, y], mm: [u, v] }) => [
      [x / 1000, y / 1000, 1, 0, 0, 0, (-u * x) / 1000, (-u * y) / 1000, -u],
      [0, 0, 0, x / 1000, y / 1000, 1, (-v * x) / 1000, (-v * y) / 1000, -v],
    ]);
    const h = new SingularValueDecomposition(new Matrix(rows)).rightSingularVectors.getColumn(8);
    const apply = ([x, y]: Point): Point => {
      const [p, q] = [x / 1000, y / 1000];
      const dot = (i: number): number => (h[i] ?? 0) * p + (h[i + 1] ?? 0) * q + (h[i + 2] ?? 0);
      return [dot(0) / dot(6), dot(3) / dot(6)];
    };
    const found = ours(points, 'projective');
    for (const probe of PROBES) expect(distance(found.toMm(probe), apply(probe))).toBeLessThan(1e-4);
  });

  it.each([1, 2, 3, 4])(
    'projective, noisy points, seed %i: misses the points by less than the linear solution',
    (seed) => {
      const points = controlPoints(seed, 3);
      const rows = points.flatMap(({ pixel: [x, y], mm: [u, v] }) => [
        [x / 1000, y / 1000, 1, 0, 0, 0, (-u * x) / 1000, (-u * y) / 1000, -u],
        [0, 0, 0, x / 1000, y / 1000, 1, (-v * x) / 1000, (-v * y) / 1000, -v],
      ]);
      const h = new SingularValueDecomposition(new Matrix(rows)).rightSingularVectors.getColumn(8);
      const linear = points.reduce((sum, { pixel: [x, y], mm }) => {
        const dot = (i: number): number => ((h[i] ?? 0) * x) / 1000 + ((h[i + 1] ?? 0) * y) / 1000 + (h[i + 2] ?? 0);
        return sum + distance(mm, [dot(0) / dot(6), dot(3) / dot(6)]) ** 2;
      }, 0);
      const found = ours(points, 'projective');
      expect(found.residualsMm.reduce((sum, r) => sum + r * r, 0)).toBeLessThanOrEqual(linear * (1 + 1e-9));
    },
  );
});
