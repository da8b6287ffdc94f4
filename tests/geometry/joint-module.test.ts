import { describe, expect, it } from 'vitest';
import { findModule } from '../../src/geometry/joint-module.ts';
import { seededNormal, seededRandom } from '../../src/geometry/seeded-random.ts';

describe('joint spacing (checks/values.md 4.4; own cases)', () => {
  it('lines 0, 1, 2, 3, 5, 6 and 8 times a module, off by 5 mm: the right module nearly always', () => {
    const normal = seededNormal(1);
    let right = 0;
    for (let trial = 0; trial < 60; trial += 1) {
      const positions = [0, 1, 2, 3, 5, 6, 8].map((k) => 37 + 210 * k + 5 * normal());
      const found = findModule(positions, trial);
      if (found?.isRegular && Math.abs(found.module - 210) < 6) right += 1;
    }
    expect(right).toBeGreaterThanOrEqual(57);
  });

  it('random lines are seldom called regular', () => {
    const random = seededRandom(2);
    let called = 0;
    for (let trial = 0; trial < 60; trial += 1) {
      const positions = Array.from({ length: 7 }, () => random() * 1700);
      if (findModule(positions, trial)?.isRegular) called += 1;
    }
    expect(called).toBeLessThanOrEqual(3);
  });

  it('with fewer than five lines nothing is said', () => {
    expect(findModule([0, 100, 200, 300])).toBe(null);
  });

  it('is the same every time, and scales with its unit', () => {
    const positions = [0, 199, 401, 598, 1003, 1201];
    const [a, b] = [findModule(positions), findModule(positions.map((x) => x / 10))];
    expect(findModule(positions)).toEqual(a);
    expect((a?.module ?? 0) / (b?.module ?? 1)).toBeCloseTo(10, 1);
  });
});
