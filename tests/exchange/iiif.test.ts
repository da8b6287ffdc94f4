import { describe, expect, it } from 'vitest';
import { iiifManifest } from '../../src/exchange/iiif-manifest.ts';
import { computeFiles, filesOf, ROOT } from '../workspace.ts';

/* IIIF Presentation API 3.0 (iiif.io/api/presentation/3.0): required properties of each class, sections 3 and 5. */

type Node = Record<string, unknown> & { id: string; type: string; items: Node[]; annotations: Node[] };

describe('IIIF Presentation 3 manifest', () => {
  const { file } = computeFiles(filesOf(ROOT));
  const object = file.catalogue.ofType('object').find((one) => one.id === 'OB-lerakos');
  if (!object) throw new Error('no object');
  const pictures = new Map(file.catalogue.ofType('figure').map((one) => [one.id, `plans/${one.id}.jpg`]));
  const manifest = iiifManifest(file, object, 'https://museum.example/lerakos', pictures) as Node;

  it('has the required properties of Manifest, Canvas, AnnotationPage and Annotation, with absolute and unique ids', () => {
    expect(manifest['@context']).toBe('http://iiif.io/api/presentation/3/context.json');
    expect(manifest.type).toBe('Manifest');
    expect(manifest.id).toBe('https://museum.example/lerakos/iiif/OB-lerakos.json');
    expect(manifest.label).toEqual({ none: [expect.any(String)] });
    expect(manifest.items.length).toBeGreaterThan(2);
    const ids: string[] = [manifest.id];
    for (const canvas of manifest.items) {
      expect(canvas.type).toBe('Canvas');
      expect(Number.isInteger(canvas.width) && Number.isInteger(canvas.height)).toBe(true);
      expect(canvas.label).toBeDefined();
      ids.push(canvas.id);
      for (const page of [...canvas.items, ...canvas.annotations]) {
        expect(page.type).toBe('AnnotationPage');
        ids.push(page.id);
        for (const one of page.items) {
          expect(one.type).toBe('Annotation');
          expect(['painting', 'commenting']).toContain(one.motivation);
          const target = one.target as string | { source: string };
          expect(typeof target === 'string' ? target : target.source).toBe(canvas.id);
          ids.push(one.id);
        }
      }
    }
    expect(ids.every((id) => /^https:\/\//.test(id))).toBe(true);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('paints the photographs, several as a choice, and every trace of the plan is an annotation inside the canvas', () => {
    const front = manifest.items[0] as Node;
    const body = front.items[0]?.items[0]?.body as { type: string; items: { type: string; id: string }[] };
    expect(body.type).toBe('Choice');
    expect(body.items.length).toBe(3);
    const panel = file.physical.panels[0];
    const traces = (front.annotations[0] as Node).items;
    expect(traces).toHaveLength(panel?.geometry.shapes.length ?? 0);
    for (const one of traces) {
      const { selector } = one.target as { selector: { type: string; value: string } };
      expect(selector.type).toBe('SvgSelector');
      const numbers = [...(/ d="([^"]+)"/.exec(selector.value)?.[1] ?? '').matchAll(/-?[\d.]+/g)].map(Number);
      expect(numbers.length).toBeGreaterThan(3);
      // A tenth of the canvas beyond its edge: shapes may run over the cut.
      const [width, height] = [front.width as number, front.height as number];
      numbers.forEach((value, i) => {
        expect(value).toBeGreaterThan(-0.1 * width);
        expect(value).toBeLessThan(1.1 * (i % 2 === 0 ? width : height));
      });
    }
  });

  it('there is none where no photograph is laid into the frame', () => {
    expect(iiifManifest(file, object, 'https://museum.example', new Map())).toBe(null);
  });
});
