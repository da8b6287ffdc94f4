import { describe, expect, it } from 'vitest';
import { cautionsFor } from '../../src/findings/cautions.ts';
import { coverageOf } from '../../src/physical/coverage.ts';
import { reasonsOfPanel } from '../../src/physical/measured-reasons.ts';
import { matchGlow, readUltraviolet } from '../../src/physical/ultraviolet.ts';
import { inEnglish } from '../spoken.ts';
import { computeFiles, entries, filesOf, ROOT } from '../workspace.ts';

describe('looks under ultraviolet', () => {
  // National Park Service, Conserve O Gram 1/10 (2000), as the shipped table has it.
  it.each([
    ['bright orange', 'strong', 'shellac'],
    ['lemon yellow', 'strong', 'zinc white'],
    ['yellow-green haze', 'medium', 'aged natural resin varnish'],
    ['greenish yellow', 'medium', 'cellulose nitrate adhesive'],
    ['bluish, milky', 'medium', 'PVAc adhesive'],
  ] as const)('%s, %s: %s is among what is known to look so', (colour, strength, material) => {
    expect(matchGlow(colour, strength).map((one) => one.material)).toContain(material);
  });

  it('a glow never names a material better than possible, and rows that reports differ on are not offered', () => {
    const all = (['none', 'weak', 'medium', 'strong'] as const).flatMap((strength) =>
      matchGlow('yellow green blue white orange pink red violet dark', strength),
    );
    expect(all.length).toBeGreaterThan(20);
    expect(new Set(all.map((one) => one.grade))).toEqual(new Set(['possible', 'conjectural']));
    expect(all.map((one) => one.material)).not.toContain('orpiment');
    expect(all.map((one) => one.material)).not.toContain('lime plaster, calcite');
    expect(matchGlow('orange', 'none').map((one) => one.material)).not.toContain('shellac');
    expect(matchGlow('of no colour that we name', 'weak')).toEqual([]);
  });

  it('lamp and filter come from the examination under ultraviolet, and from no other', () => {
    const file = entries({
      'OB-u': 'type: object\ntitle: A panel\npanels: [{ id: A, width: 500, height: 400 }]',
      'EX-uv': 'type: examination\ntitle: One\nobjects: [OB-u]\ntechnique: [ultraviolet]\nlamp: 365 nm',
      'EX-day': 'type: examination\ntitle: Two\nobjects: [OB-u]\ntechnique: [visible]\nlamp: daylight',
      'PE-1':
        'type: evidence\nkind: fill\ntitle: A\nobject: OB-u\npanel: A\nglow: { colour: orange, strength: strong, examination: EX-uv, grade: probable }',
      'PE-2':
        'type: evidence\nkind: fill\ntitle: B\nobject: OB-u\npanel: A\nexamination: EX-day\nglow: { colour: orange, strength: strong, grade: probable }',
    });
    const readings = readUltraviolet(computeFiles(file).file.catalogue);
    expect(readings.map((one) => one.lamp)).toEqual(['365 nm', null]);
  });
});

describe('what was looked at', () => {
  it('face by face: looked at, not accessible, not looked at, not recorded', () => {
    const file = entries({
      'OB-u': 'type: object\ntitle: A panel\npanels: [{ id: A, width: 500, height: 400 }, { id: B }]',
      'EX-1':
        'type: examination\ntitle: One\nobjects: [OB-u]\ntechnique: [visible]\ncovered: [{ panel: A, faces: [front, back] }, { panel: B }]',
      'PE-1':
        'type: evidence\nkind: backing\ntitle: A\nobject: OB-u\npanel: A\nface: back\nseen: not accessible\nexamination: EX-1',
      'PE-2':
        'type: evidence\nkind: deposit\ntitle: B\nobject: OB-u\npanel: A\nface: front\nseen: "looked for, not seen"\nexamination: EX-1',
    });
    const { catalogue } = computeFiles(file).file;
    const [one] = coverageOf(catalogue, 'OB-u', 'A');
    expect(one?.faces).toMatchObject({ front: 'looked at', back: 'not accessible', left: 'not looked at' });
    expect(one?.notSeen.map((trace) => trace.id)).toEqual(['PE-2']);
    expect(coverageOf(catalogue, 'OB-u', 'B')[0]?.faces.front).toBe('face not recorded');
  });
});

describe('reasons of measured results', () => {
  const { file } = computeFiles(filesOf(ROOT));

  it('every result has inputs that are in the file, a method, a source; a weight always its caution', () => {
    const reasons = file.physical.panels.flatMap((panel) =>
      reasonsOfPanel(panel, file.physical.joinsOf(panel.geometry.object.id, panel.geometry.panel)),
    );
    expect(reasons.length).toBeGreaterThan(15);
    for (const one of reasons) {
      expect(one.inputs.length, one.id).toBeGreaterThan(0);
      for (const id of one.inputs) expect(file.catalogue.get(id), id).toBeDefined();
      expect(inEnglish(one.method).length).toBeGreaterThan(20);
      expect(one.source).not.toBe('');
    }
    const weights = reasons.filter((one) => one.id === 'weight');
    expect(weights.length).toBeGreaterThan(0);
    for (const one of weights)
      expect(inEnglish(one.result)).toMatch(/plan for not less than \d+ kg; weigh before lifting/);
  });
});

describe('cautions', () => {
  it('stand beside ultraviolet, poisons, dust and residues, and nowhere else', () => {
    const { catalogue } = computeFiles(
      entries({
        'OB-u': 'type: object\ntitle: A panel',
        'PE-uv': 'type: evidence\nkind: fill\ntitle: A\nobject: OB-u\nseen-under: [ultraviolet]',
        'PE-lead':
          'type: evidence\nkind: paint-layer\ntitle: B\nobject: OB-u\nmaterials: [{ name: Red lead, identified-as: compound, belongs: made with the layer, grade: probable }]',
        'PE-plain': 'type: evidence\nkind: crack\ntitle: C\nobject: OB-u\nobserved: { text: fine, grade: probable }',
        'EV-s': 'type: event\nkind: sampling\ntitle: Sampling\nobjects: [OB-u]',
      }),
    ).file;
    const subjects = (id: string) => {
      const entry = catalogue.get(id);
      return entry ? [...new Set(cautionsFor(entry).map((one) => one.subject))] : null;
    };
    expect(subjects('PE-uv')).toEqual(['ultraviolet']);
    expect(subjects('PE-lead')).toEqual(['lead']);
    expect(subjects('EV-s')).toEqual(['silica dust']);
    expect(subjects('PE-plain')).toEqual([]);
  });
});
