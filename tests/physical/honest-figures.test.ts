import { describe, expect, it } from 'vitest';
import { bestJoin, joinByChance, reliefOf } from '../../src/geometry/edge-join.ts';
import type { Path, Point } from '../../src/geometry/point.ts';
import { seededNormal } from '../../src/geometry/seeded-random.ts';
import { sayWeight } from '../../src/physical/panel-weight.ts';
import { inEnglish } from '../spoken.ts';
import { computeFiles, entries } from '../workspace.ts';

const panel = (more = '') => `type: object\ntitle: A panel\npanels:\n  - { id: A, width: 1000, height: 1000${more} }`;
const layer = (more: string) => `type: evidence\nkind: backing\ntitle: A layer\nobject: OB-w\npanel: A\n${more}`;
const weightOf = (files: Record<string, string>) => {
  const found = computeFiles(entries(files)).file.physical.panels[0];
  if (!found) throw new Error('no panel');
  return found.weight;
};
const bed = layer('thickness: 10 mm\ndensity: lime mortar');

describe('a weight to plan for', () => {
  it('is the highest of what was calculated, weighed and stated', () => {
    // 1 m2 x 10 mm of lime mortar: 12.2 to 18.4 kg (EN 1991-1-1:2002 Annex A, nominal).
    expect(weightOf({ 'OB-w': panel(), 'PE-1': bed }).planKg).toBe(19);
    expect(weightOf({ 'OB-w': panel(', weighed: 90 kg'), 'PE-1': bed }).planKg).toBe(90);
    expect(weightOf({ 'OB-w': panel(', weighed: 9 kg'), 'PE-1': bed }).planKg).toBe(19);
  });

  it('is not given where something is not counted and nobody weighed it', () => {
    const unknown = layer('thickness: 40 mm');
    const weight = weightOf({ 'OB-w': panel(), 'PE-1': bed, 'PE-2': unknown });
    expect(weight.planKg).toBeNull();
    expect(inEnglish(sayWeight(weight))).toBe(
      'calculated 12 to 19 kg of what could be counted, which is not all; heavier than any figure here; weigh before lifting',
    );
    expect(inEnglish(sayWeight(weightOf({ 'OB-w': panel(', weighed: 90 kg'), 'PE-2': unknown })))).toBe(
      'by a scale 90.0 kg; plan for not less than 90 kg; weigh before lifting',
    );
  });

  it('nor where the layers make less than the stated thickness', () => {
    expect(weightOf({ 'OB-w': panel(', thickness: 62'), 'PE-1': bed }).planKg).toBeNull();
    expect(weightOf({ 'OB-w': panel(', thickness: 12'), 'PE-1': bed }).planKg).toBe(19);
  });

  it('counts a patch on the back by its own area', () => {
    const patch = layer(
      'face: back\nthickness: 10 mm\ndensity: lime mortar\nshape: { area: { ring: [[0, 0], [200, 0], [200, 200], [0, 200]] } }',
    );
    expect(weightOf({ 'OB-w': panel(), 'PE-1': patch }).kg?.most).toBeCloseTo(0.04 * 0.01 * 1835, 2);
  });
});

describe('for an audience that does not see every trace', () => {
  it('surface and weight are not told, and other panels keep theirs', () => {
    const files = entries({
      'OB-w': `${panel()}\n  - { id: B, width: 1000, height: 1000 }`,
      'PE-1': bed,
      'PE-2': `access: restricted\n${layer('thickness: 40 mm\ndensity: lime mortar')}`,
      'PE-3': layer('thickness: 10 mm\ndensity: lime mortar').replace('panel: A', 'panel: B'),
      'PE-4':
        'type: evidence\nkind: loss\ntitle: A loss\nobject: OB-w\npanel: A\nshape: { area: { ring: [[0, 0], [99, 0], [99, 99]] } }',
    });
    const [a, b] = computeFiles(files, 'public').file.physical.panels;
    expect(a).toMatchObject({ isCut: true, areas: [], weight: { parts: [], planKg: null } });
    expect(b).toMatchObject({ isCut: false, weight: { planKg: 19 } });
    expect(computeFiles(files, 'restricted').file.physical.panels[0]).toMatchObject({ isCut: false });
    expect(computeFiles(files, 'restricted').file.physical.panels[0]?.areas.length).toBeGreaterThan(0);
  });
});

describe('control points that cannot be right', () => {
  const figure = (points: string) =>
    `type: figure\ntitle: A photograph\nfile: a.jpg\nalternative: A panel.\nobject: OB-w\npanel: A\ncontrol-points: [${points}]`;
  const found = (points: string) =>
    computeFiles(entries({ 'OB-w': panel(), 'FI-w': figure(points) }))
      .problems.filter((one) => one.entry === 'FI-w')
      .map((one) => inEnglish(one.message));

  it('a mirror, centimetres, a slip', () => {
    const corner = (x: number, y: number, u: number, v: number) => `{ pixel: [${x}, ${y}], mm: [${u}, ${v}] }`;
    const good = [corner(0, 0, 0, 1000), corner(500, 0, 1000, 1000), corner(500, 500, 1000, 0), corner(0, 500, 0, 0)];
    expect(found(good.join(', '))).toEqual([]);
    expect(
      found(
        [corner(0, 0, 0, 0), corner(500, 0, 1000, 0), corner(500, 500, 1000, 1000), corner(0, 500, 0, 1000)].join(', '),
      )[0],
    ).toContain('in a mirror');
    expect(
      found(
        [corner(0, 0, 0, 100), corner(500, 0, 100, 100), corner(500, 500, 100, 0), corner(0, 500, 0, 0)].join(', '),
      )[0],
    ).toContain('span 10 %');
    expect(found([...good.slice(0, 3), corner(0, 500, 80, 0)].join(', '))[0]).toContain('missed by up to 20.0 mm');
  });

  it('the error of a registration is judged by the points to spare: none, nothing is told', () => {
    const panels = (points: string) =>
      computeFiles(entries({ 'OB-w': panel(), 'FI-w': figure(points) })).file.physical.panels[0]?.geometry.figures[0]
        ?.registration;
    expect(panels('{ pixel: [0, 0], mm: [0, 1000] }, { pixel: [500, 500], mm: [1000, 0] }')?.errorMm).toBeNull();
    const four = panels(
      '{ pixel: [0, 0], mm: [0, 1001] }, { pixel: [500, 0], mm: [1000, 1000] }, { pixel: [500, 500], mm: [1000, 0] }, { pixel: [0, 500], mm: [0, 0] }',
    );
    // Affine through four points leaves one point's worth to spare: root(4 x 0.25²) / 1.
    expect(four?.errorMm).toBeCloseTo(0.5, 6);
    expect(four?.rootMeanSquareMm).toBeCloseTo(0.25, 6);
  });

  it('a trace over a photograph of another panel is not used', () => {
    const { problems } = computeFiles(
      entries({
        'OB-w': panel(),
        'OB-v': panel(),
        'FI-w': figure(
          '{ pixel: [0, 0], mm: [0, 1000] }, { pixel: [500, 0], mm: [1000, 1000] }, { pixel: [500, 500], mm: [1000, 0] }',
        ),
        'PE-1':
          'type: evidence\nkind: crack\ntitle: A crack\nobject: OB-v\npanel: A\nshape: { in: FI-w, line: [[1, 1], [9, 9]] }',
      }),
    );
    expect(problems.map((one) => inEnglish(one.message)).join()).toContain('which shows another panel');
  });
});

describe('edges that may join, set beside fair rivals', () => {
  const edge = (seed: number, height: (i: number) => number, noise: number): Path => {
    const normal = seededNormal(seed);
    return Array.from({ length: 40 }, (_, i): Point => [i * 15, height(i) + noise * normal()]);
  };

  it('straight sawn edges have no relief above their tracing error', () => {
    for (let seed = 1; seed <= 40; seed += 1) expect(reliefOf(edge(seed, () => 0, 1))).toBeLessThan(1.5);
  });

  it('unrelated wandering edges pass in about one of twenty', () => {
    // Smooth breaks: a walk that forgets slowly, its steps smoothed; every edge of its own.
    const wandering = (seed: number): Path => {
      const normal = seededNormal(seed);
      let [height, slope] = [0, 0];
      return Array.from({ length: 40 }, (_, i): Point => {
        slope = 0.7 * slope + 2 * normal();
        height = 0.85 * height + slope;
        return [i * 15, height];
      });
    };
    let passed = 0;
    for (let seed = 1; seed <= 60; seed += 1)
      if (joinByChance(wandering(seed), wandering(seed + 1000), seed) < 0.05) passed += 1;
    // Sixty trials at one in twenty give three; seven or fewer in 98 of 100 such runs (binomial).
    expect(passed).toBeLessThanOrEqual(7);
  });

  it('points closer together on one half change nothing', () => {
    const rough = edge(7, (i) => 8 * Math.sin(i / 3) + 6 * Math.sin(i / 1.7), 1);
    const finer = rough.flatMap((point, i): readonly Point[] => {
      const next = rough[i + 1];
      if (i >= 20 || !next) return [point];
      return [0, 0.25, 0.5, 0.75].map(
        (t): Point => [point[0] + t * (next[0] - point[0]), point[1] + t * (next[1] - point[1])],
      );
    });
    expect(bestJoin(rough, finer)?.deviation).toBeLessThan(0.01);
    expect(bestJoin(rough, rough)?.matched).toBeLessThanOrEqual(585.1);
    expect(joinByChance(rough, finer)).toBeLessThan(0.01);
  });
});
