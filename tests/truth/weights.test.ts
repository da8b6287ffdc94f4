import { describe, expect, it } from 'vitest';
import { panelsReport } from '../../src/findings/panels-report.ts';
import { sayWeight } from '../../src/physical/panel-weight.ts';
import { inEnglish } from '../spoken.ts';
import { computeFiles, filesOf, ROOT } from '../workspace.ts';

/** Every value below a key, wherever it stands. */
function valuesUnder(key: string, value: unknown): readonly unknown[] {
  if (Array.isArray(value)) return value.flatMap((one) => valuesUnder(key, one));
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([name, one]) => [...(name === key ? [one] : []), ...valuesUnder(key, one)]);
}

const WORKSPACE = '---\nid: workspace\ntype: workspace\ntitle: A file\ninstitution: A museum\n---\n';
const object = (panel: string): string => `---\nid: OB-x\ntype: object\ntitle: A panel\npanels: [${panel}]\n---\n`;

const weightOf = (panel: string, files: Readonly<Record<string, string>> = {}) =>
  computeFiles({ 'entries/workspace.md': WORKSPACE, 'entries/OB-x.md': object(panel), ...files }).file.physical
    .panels[0]?.weight;

describe('weights in outputs', () => {
  it.each(['public', 'internal', 'restricted'] as const)('none is ever 0 kg, for %s readers', (audience) => {
    const { file } = computeFiles(filesOf(ROOT), audience);
    const report = panelsReport(file);
    const figures = ['calculatedKg', 'weighedKg', 'planKg', 'kg'].flatMap((key) => valuesUnder(key, report));
    expect(figures.length).toBeGreaterThan(10);
    expect(figures.filter((one) => one === 0 || (one as { most?: number } | null)?.most === 0)).toEqual([]);
    // Where something was calculated of all layers, the figure to plan for stands beside it.
    const whole = valuesUnder('weight', report).filter((one) => (one as { planKg: unknown }).planKg !== null);
    if (audience !== 'public') expect(whole.length).toBeGreaterThan(0);
  });

  it('what a scale said of the only section of a panel was said of the panel, and stands first', () => {
    const weight = weightOf('{ id: A, width: 1000, height: 1000, sections: [{ id: "1", weighed: 255 kg }] }');
    expect(weight).toMatchObject({ weighed: { least: 255, most: 255 }, kg: null, planKg: 255 });
    expect(inEnglish(sayWeight(weight as NonNullable<typeof weight>))).toMatch(/^by a scale 255\.0 kg; /);
  });

  it('of two sections one was weighed: that is no weight of the panel', () => {
    const weight = weightOf(
      '{ id: A, width: 1000, height: 1000, sections: [{ id: "1", weighed: 255 kg }, { id: "2" }] }',
    );
    expect(weight).toMatchObject({ weighed: null, kg: null, planKg: null });
  });
});
