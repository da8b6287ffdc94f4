import { describe, expect, it } from 'vitest';
import type { Path, Point } from '../../src/geometry/point.ts';
import { difference, innerBoundary, intersection, regionArea, regionOf, union } from '../../src/geometry/region.ts';
import { findRingFault } from '../../src/geometry/ring.ts';
import { seededRandom } from '../../src/geometry/seeded-random.ts';

const box = (x: number, y: number, w: number, h: number): Path => [
  [x, y],
  [x + w, y],
  [x + w, y + h],
  [x, y + h],
];

describe('exact areas (checks/values.md 4.1)', () => {
  const a = regionOf(box(0, 0, 1000, 600));

  it('two overlapping rectangles', () => {
    const b = regionOf(box(400, 200, 1000, 700));
    expect(regionArea(intersection(a, b))).toBeCloseTo(240_000, 6);
    expect(regionArea(union([a, b]))).toBeCloseTo(1_060_000, 6);
    expect(regionArea(difference(a, b))).toBeCloseTo(360_000, 6);
  });

  it('a shared edge, the same twice, a touching corner, one inside the other', () => {
    const beside = regionOf(box(1000, 0, 1000, 600));
    expect(regionArea(intersection(a, beside))).toBe(0);
    expect(regionArea(union([a, beside]))).toBeCloseTo(1_200_000, 6);
    expect(regionArea(union([a, a]))).toBeCloseTo(600_000, 6);
    expect(regionArea(difference(a, a))).toBe(0);
    expect(regionArea(intersection(a, regionOf(box(1000, 600, 10, 10))))).toBe(0);
    const hole = difference(a, regionOf(box(100, 100, 200, 100)));
    expect(regionArea(hole)).toBeCloseTo(580_000, 6);
    expect(innerBoundary(hole, box(0, 0, 1000, 600))).toBeCloseTo(600, 6);
    // A loss at the edge: only its side inside the panel may be off.
    expect(innerBoundary(intersection(a, regionOf(box(0, 0, 100, 200))), box(0, 0, 1000, 600))).toBeCloseTo(300, 6);
  });

  it('nothing at all', () => {
    expect(union([])).toEqual([]);
    expect(intersection(a, [])).toEqual([]);
    expect(difference([], a)).toEqual([]);
  });
});

describe('thousands of random pairs', () => {
  /** A ring about a middle, whose corners go round once: never self-crossing. */
  function star(random: () => number): Path {
    const [x, y] = [random() * 600, random() * 600];
    const corners = 3 + Math.floor(random() * 9);
    return Array.from({ length: corners }, (_, i): Point => {
      const angle = ((i + 0.8 * random()) / corners) * 2 * Math.PI;
      const r = 60 + random() * 300;
      return [x + r * Math.cos(angle), y + r * Math.sin(angle)];
    });
  }

  it('|A and B| + |A without B| = |A|, and |A or B| + |A and B| = |A| + |B|', () => {
    const random = seededRandom(6);
    let overlapping = 0;
    for (let i = 0; i < 3000; i += 1) {
      const [p, q] = [star(random), star(random)];
      expect(findRingFault(p)).toBe(null);
      const [a, b] = [regionOf(p), regionOf(q)];
      const both = regionArea(intersection(a, b));
      if (both > 0) overlapping += 1;
      // Slivers below one square millimetre are dropped, so a few of these may be missing.
      expect(Math.abs(both + regionArea(difference(a, b)) - regionArea(a))).toBeLessThan(4);
      expect(Math.abs(regionArea(union([a, b])) + both - regionArea(a) - regionArea(b))).toBeLessThan(4);
    }
    expect(overlapping).toBeGreaterThan(1000);
  });
});
