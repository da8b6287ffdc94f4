import { describe, expect, it } from 'vitest';
import { bestJoin, joinByChance } from '../../src/geometry/edge-join.ts';
import type { Path, Point } from '../../src/geometry/point.ts';
import { seededNormal, seededRandom } from '../../src/geometry/seeded-random.ts';

/** A rough edge: a walk of 40 steps of 20 mm. */
function rough(seed: number): Path {
  const normal = seededNormal(seed);
  let height = 0;
  return Array.from({ length: 41 }, (_, i): Point => {
    height = height * 0.9 + 6 * normal();
    return [i * 20, height];
  });
}

/** The other side of the same cut: run the other way, moved by the kerf, turned, and traced with an error. */
function facing(edge: Path, kerf: number, angle: number, seed: number): Path {
  const normal = seededNormal(seed);
  return [...edge].reverse().map(([x, y]): Point => {
    const [u, v] = [x, y - kerf + 0.8 * normal()];
    return [u * Math.cos(angle) - v * Math.sin(angle) + 300, u * Math.sin(angle) + v * Math.cos(angle) - 50];
  });
}

describe('edges that may join', () => {
  it('finds the two sides of one cut wherever the second piece lies', () => {
    for (const angle of [0, 0.4, 2.9]) {
      const edge = rough(3);
      const join = bestJoin(edge, facing(edge, 5, angle, 8));
      expect(join?.deviation).toBeLessThan(1.5);
      expect(join?.share).toBeGreaterThan(0.9);
      expect(joinByChance(edge, facing(edge, 5, angle, 8))).toBeLessThan(0.01);
    }
  });

  it('a part of the other side is found where it belongs', () => {
    const edge = rough(5);
    const part = facing(edge, 4, 0.2, 9).slice(8, 34);
    const join = bestJoin(edge, part);
    expect(join?.deviation).toBeLessThan(2);
  });

  it('edges that do not belong together are as good by chance', () => {
    let low = 0;
    for (let i = 0; i < 20; i += 1) {
      if (joinByChance(rough(100 + i), rough(200 + i), i) < 0.02) low += 1;
    }
    expect(low).toBeLessThanOrEqual(2);
  });

  it('straight edges tell nothing, and are never rarer than chance', () => {
    const random = seededRandom(1);
    const straight = (): Path => Array.from({ length: 20 }, (_, i): Point => [i * 30, 0.2 * random()]);
    expect(joinByChance(straight(), straight())).toBeGreaterThan(0.02);
    expect(
      bestJoin(
        [[0, 0]],
        [
          [1, 1],
          [2, 2],
        ],
      ),
    ).toBe(null);
  });
});
