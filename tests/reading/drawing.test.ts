import { describe, expect, it } from 'vitest';
import { readDrawing } from '../../src/reading/drawing.ts';
import { inEnglish } from '../spoken.ts';
import { computeFiles, entries } from '../workspace.ts';

const NS = 'xmlns="http://www.w3.org/2000/svg"';

/** A file with a panel of 500 x 400 mm, a photograph of 500 x 400 pixels (as the loader of the tests says) and a drawing over it. */
function fileWith(svg: string, trace = 'kind: loss'): Record<string, string> {
  return {
    ...entries({
      'OB-m': 'type: object\ntitle: A panel\npanels: [{ id: A, width: 500, height: 400 }]',
      'FI-m': `type: figure
title: A photograph
file: photo.jpg
alternative: a wall
object: OB-m
panel: A
shapes: drawn.svg
control-points:
  - { pixel: [0, 0], mm: [0, 400] }
  - { pixel: [500, 0], mm: [500, 400] }
  - { pixel: [500, 400], mm: [500, 0] }
  - { pixel: [0, 400], mm: [0, 0] }`,
      'PE-m': `type: evidence\n${trace}\ntitle: A trace\nobject: OB-m\npanel: A`,
    }),
    'entries/photo.jpg': '',
    'entries/drawn.svg': svg,
  };
}

function shapesOf(svg: string, trace?: string) {
  const { file, problems } = computeFiles(fileWith(svg, trace));
  const wrong = problems.filter((one) => one.severity === 'error');
  return { shapes: file.physical.panels[0]?.geometry.shapes ?? [], wrong };
}

describe('drawings over a photograph', () => {
  it.each([
    [
      'in pixels of the photograph',
      `<svg ${NS} viewBox="0 0 500 400"><path id="PE-m" d="M100 100H200V200H100Z"/></svg>`,
    ],
    [
      'a page of another unit',
      `<svg ${NS} width="250mm" height="200mm" viewBox="0 0 250 200"><path id="PE-m" d="M50 50h50v50h-50z"/></svg>`,
    ],
    [
      'a page that begins elsewhere',
      `<svg ${NS} viewBox="-10 -20 500 400"><rect id="PE-m" x="90" y="80" width="100" height="100"/></svg>`,
    ],
    [
      'with the photograph in it, moved and scaled',
      `<svg ${NS} viewBox="0 0 900 900"><g transform="translate(40 60)"><image href="photo.jpg" width="1000" height="800"/><polygon id="PE-m" points="200,200 400,200 400,400 200,400"/></g></svg>`,
    ],
    [
      'with the photograph turned by a right angle',
      `<svg ${NS} viewBox="0 0 900 900"><g transform="rotate(90)"><image href="photo.jpg" width="500" height="400"/></g><path id="PE-m" d="M-100 100V200H-200V100Z"/></svg>`,
    ],
    [
      'a layer by its label',
      `<svg ${NS} xmlns:inkscape="x" viewBox="0 0 500 400"><g id="layer3" inkscape:label="PE-m"><path d="M100 100H200V200H100Z"/></g></svg>`,
    ],
    [
      'the name in other letters, and a transform in a group',
      `<svg ${NS} viewBox="0 0 500 400"><g transform="matrix(2 0 0 2 0 0)"><path id="pe-M_1" d="M50 50H100V100H50Z" transform="translate(0 0)"/></g></svg>`,
    ],
  ])('%s: the area is 100 mm by 100 mm at the same place', (_, svg) => {
    const { shapes, wrong } = shapesOf(svg);
    expect(wrong).toEqual([]);
    expect(shapes).toHaveLength(1);
    const [xs, ys] = [shapes[0]?.path.map((p) => p[0]) ?? [], shapes[0]?.path.map((p) => p[1]) ?? []];
    expect([Math.min(...xs), Math.max(...xs)].map((v) => Math.round(v * 10) / 10)).toEqual([100, 200]);
    expect([Math.min(...ys), Math.max(...ys)].map((v) => Math.round(v * 10) / 10)).toEqual([200, 300]);
    expect(shapes[0]?.kind).toBe('area');
  });

  it('what is closed is an area, what is open a line, what is said after an underscore counts, a sample is a point', () => {
    const kind = (svg: string, trace?: string) =>
      shapesOf(`<svg ${NS} viewBox="0 0 500 400">${svg}</svg>`, trace).shapes[0]?.kind;
    expect(kind('<path id="PE-m" d="M0 0L10 10L20 0"/>')).toBe('line');
    expect(kind('<path id="PE-m_arc" d="M0 0L10 10L20 0"/>')).toBe('arc');
    expect(kind('<path id="PE-m_line" d="M0 0L10 10L20 0Z"/>')).toBe('line');
    expect(kind('<circle id="PE-m" cx="50" cy="50" r="4"/>', 'kind: sample')).toBe('point');
    expect(kind('<circle id="PE-m" cx="50" cy="50" r="40"/>')).toBe('area');
  });

  it('several elements of one name, or a layer with several lines, are parts of one trace', () => {
    const { shapes } = shapesOf(
      `<svg ${NS} viewBox="0 0 500 400"><path id="PE-m" d="M10 10H20"/><path id="PE-m_2" d="M10 30H20"/></svg>`,
      'kind: crack',
    );
    expect(shapes.map((one) => one.kind)).toEqual(['line', 'line']);
  });

  it('a circle is met to a twenty-thousandth of the width', () => {
    const drawing = readDrawing(`<svg ${NS} viewBox="0 0 500 400"><circle id="c" cx="250" cy="200" r="150"/></svg>`);
    if ('fault' in drawing) throw new Error(inEnglish(drawing.fault));
    const points = drawing.elements[0]?.paths[0]?.points ?? [];
    expect(points.length).toBeGreaterThan(20);
    for (const [i, [x, y]] of points.entries()) {
      expect(Math.abs(Math.hypot(x - 250, y - 200) - 150)).toBeLessThan(0.1);
      const [u, v] = points[(i + 1) % points.length] as readonly [number, number];
      expect(150 - Math.hypot((x + u) / 2 - 250, (y + v) / 2 - 200)).toBeLessThan(0.15);
    }
  });

  it('closed lines of one element that lie in each other are an area with its hole', () => {
    const { shapes } = shapesOf(
      `<svg ${NS} viewBox="0 0 500 400"><path id="PE-m" d="M100 100H200V200H100Z M125 125V175H175V125Z"/></svg>`,
    );
    expect(shapes).toHaveLength(1);
    expect(shapes[0]?.holes).toHaveLength(1);
  });

  it('layers that are switched off are not read; a layer that bears the name of a line in it counts once', () => {
    const off = shapesOf(
      `<svg ${NS} viewBox="0 0 500 400"><g style="display:none"><path id="PE-m" d="M0 0H9V9Z"/></g></svg>`,
    );
    expect(off.shapes).toEqual([]);
    const twice = shapesOf(
      `<svg ${NS} viewBox="0 0 500 400"><g id="PE-m"><path id="PE-m_1" d="M0 0L90 90"/></g></svg>`,
      'kind: crack',
    );
    expect(twice.shapes).toHaveLength(1);
  });

  it('names as some programs escape them, and transforms written as style', () => {
    expect(
      shapesOf(`<svg ${NS} viewBox="0 0 500 400"><path id="PE-m_x5F_arc" d="M0 0L10 10L20 0"/></svg>`).shapes[0]?.kind,
    ).toBe('arc');
    const moved = shapesOf(
      `<svg ${NS} viewBox="0 0 500 400"><path id="PE-m" style="transform: translate(100px, 0)" d="M0 0L10 0L0 10Z"/></svg>`,
    );
    expect(Math.min(...(moved.shapes[0]?.path.map((p) => p[0]) ?? []))).toBeCloseTo(100, 6);
  });

  it('fine curves are met in a drawing of few units, too', () => {
    const drawing = readDrawing(`<svg ${NS} viewBox="0 0 16 12"><circle id="c" cx="8" cy="6" r="1"/></svg>`);
    if ('fault' in drawing) throw new Error(inEnglish(drawing.fault));
    const points = drawing.elements[0]?.paths[0]?.points ?? [];
    const area = points.reduce((sum, [x, y], i) => {
      const [u, v] = points[(i + 1) % points.length] as readonly [number, number];
      return sum + (x * v - u * y) / 2;
    }, 0);
    expect(Math.abs(Math.abs(area) / Math.PI - 1)).toBeLessThan(0.003);
  });

  it('another photograph is refused, a logo beside the photograph is passed over', () => {
    const other = shapesOf(
      `<svg ${NS} viewBox="0 0 500 400"><image href="other.jpg" width="500" height="400"/><path id="PE-m" d="M0 0H9V9Z"/></svg>`,
    );
    expect(inEnglish(other.wrong[0]?.message ?? '')).toContain('lies over the picture "other.jpg"');
    const logo = shapesOf(
      `<svg ${NS} viewBox="0 0 500 400"><image href="logo.png" width="50" height="40"/><image href="./photo.jpg" width="500" height="400"/><path id="PE-m" d="M100 100H200V200H100Z"/></svg>`,
    );
    expect(Math.max(...(logo.shapes[0]?.path.map((p) => p[0]) ?? []))).toBeCloseTo(200, 6);
  });

  it('a drawing without a single known name is told', () => {
    const { problems } = computeFiles(
      fileWith(`<svg ${NS} viewBox="0 0 500 400"><path id="Loss 1" d="M0 0H9V9Z"/></svg>`),
    );
    expect(problems.map((one) => inEnglish(one.message)).join()).toContain(
      'no name is the id of a trace; its names are "Loss 1"',
    );
  });

  it('a shape in the entry itself comes first', () => {
    const { file, problems } = computeFiles(
      fileWith(
        `<svg ${NS} viewBox="0 0 500 400"><path id="PE-m" d="M0 0H10V10Z"/></svg>`,
        'kind: loss\nshape: { point: [7, 7] }',
      ),
    );
    expect(file.physical.panels[0]?.geometry.shapes.map((one) => one.path)).toEqual([[[7, 7]]]);
    expect(problems.map((one) => one.code)).toContain('drawn-twice');
  });

  it.each([
    [
      'a script and a link',
      `<svg ${NS} viewBox="0 0 500 400" onload="alert(1)"><script>alert(1)</script><a href="javascript:alert(1)"><path id="PE-m" d="M0 0H10V10Z"/></a></svg>`,
    ],
    [
      'entities that grow',
      `<!DOCTYPE svg [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;">]><svg ${NS} viewBox="0 0 500 400"><title>&b;</title><path id="PE-m" d="M0 0H10V10Z"/></svg>`,
    ],
    [
      'an entity that names a file',
      `<!DOCTYPE svg [<!ENTITY f SYSTEM "file:///etc/passwd">]><svg ${NS} viewBox="0 0 500 400"><desc>&f;</desc><path id="PE-m" d="M0 0H10V10Z"/></svg>`,
    ],
  ])('%s: only the lines are taken', (_, svg) => {
    const { shapes, wrong } = shapesOf(svg);
    expect(wrong).toEqual([]);
    expect(shapes).toHaveLength(1);
    expect(JSON.stringify(computeFiles(fileWith(svg)).file.catalogue.get('PE-m')?.keys)).not.toMatch(/alert|root|aaaa/);
  });

  it.each([
    ['broken XML', '<svg><path id="PE-m"', /cannot be read, at its line 1/],
    ['no SVG', '<html></html>', /holds no svg element/],
    [
      'another shape than the photograph',
      `<svg ${NS} viewBox="0 0 400 400"><path id="PE-m" d="M0 0H10V10Z"/></svg>`,
      /1\.000 times as wide as high, its photograph 1\.250 times/,
    ],
    ['no extent', `<svg ${NS}><path id="PE-m" d="M0 0H10V10Z"/></svg>`, /has no extent/],
  ])('%s is told, and nothing is drawn', (_, svg, words) => {
    const { shapes, wrong } = shapesOf(svg);
    expect(shapes).toEqual([]);
    expect(wrong.map((one) => one.code)).toEqual(['drawing-not-usable']);
    expect(inEnglish(wrong[0]?.message ?? '')).toMatch(words);
  });

  it('a drawing never brings back what an audience may not see', () => {
    const svg = `<svg ${NS} viewBox="0 0 500 400"><path id="PE-m" d="M0 0H10V10Z"/></svg>`;
    const hidden = { ...fileWith(svg) };
    hidden['entries/PE-m.md'] = (hidden['entries/PE-m.md'] ?? '').replace('title:', 'access: restricted\ntitle:');
    expect(computeFiles(hidden, 'public').file.physical.panels[0]?.geometry.shapes).toEqual([]);
    const figure = { ...fileWith(svg) };
    figure['entries/FI-m.md'] = (figure['entries/FI-m.md'] ?? '').replace('title:', 'access: restricted\ntitle:');
    expect(computeFiles(figure, 'public').file.catalogue.get('PE-m')).toBeDefined();
    expect(computeFiles(figure, 'public').file.physical.panels[0]?.geometry.shapes).toEqual([]);
    const withheld = { ...fileWith(svg) };
    withheld['entries/PE-m.md'] = (withheld['entries/PE-m.md'] ?? '').replace('title:', 'withhold: [shape]\ntitle:');
    expect(computeFiles(withheld, 'public').file.physical.panels[0]?.geometry.shapes).toEqual([]);
  });
});
