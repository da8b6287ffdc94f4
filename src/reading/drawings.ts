import type { Diagnostic } from '../base/diagnostic.ts';
import { nearest } from '../base/nearest.ts';
import type { Entry, Keys } from '../model/entry.ts';
import { isOfType } from '../model/entry.ts';
import { type Drawing, type DrawnPath, readDrawing } from './drawing.ts';
import type { TextFile } from './text-file.ts';

/** Width and height of a picture file in pixels, upright. */
export interface PictureSize {
  readonly width: number;
  readonly height: number;
}

type Shape = NonNullable<Keys<'evidence'>['shape']>[number];

/** Kinds of trace that a small closed mark stands for as a point. */
const POINT_KINDS: readonly string[] = ['sample', 'fixing'];

/**
 * Gives traces the shapes that are drawn over photographs: under `shapes` a figure names an SVG, and an element or
 * layer whose name is the id of a trace is its shape, in pixels of the figure. After an underscore a name may
 * say what it is (`PE-medallion_arc`); a number there is what editors add to a name that is used twice. A
 * shape in the trace's own entry comes first.
 */
export function addDrawnShapes(
  entries: readonly Entry[],
  drawings: readonly TextFile[],
  pictures: ReadonlyMap<string, PictureSize>,
): { readonly entries: readonly Entry[]; readonly problems: readonly Diagnostic[] } {
  const problems: Diagnostic[] = [];
  const traces = new Map(
    entries.flatMap((entry) => (isOfType(entry, 'evidence') ? [[entry.id.toLowerCase(), entry] as const] : [])),
  );
  const shapes = new Map<string, Shape[]>();
  for (const figure of entries) {
    if (!isOfType(figure, 'figure') || figure.keys.shapes === undefined) continue;
    const drawing = readFigureDrawing(figure, drawings, pictures, problems);
    for (const { name, paths } of drawing?.elements ?? []) {
      const [id = '', suffix = ''] = name.split('_');
      const trace = traces.get(id.toLowerCase());
      if (!trace) problems.push(...unknownName(figure, name, id, traces));
      else if (trace.keys.shape !== undefined) problems.push(drawnTwice(figure, trace));
      else {
        const made = paths.flatMap((path) => shapeOf(path, trace, suffix, figure.id));
        shapes.set(trace.id, [...(shapes.get(trace.id) ?? []), ...made]);
      }
    }
  }
  if (shapes.size === 0) return { entries, problems };
  const drawn = entries.map((entry) => {
    const shape = shapes.get(entry.id);
    return shape && isOfType(entry, 'evidence') ? { ...entry, keys: { ...entry.keys, shape } } : entry;
  });
  return { entries: drawn, problems };
}

/** The figure's drawing with all points in pixels of its picture. */
function readFigureDrawing(
  figure: Entry<'figure'>,
  drawings: readonly TextFile[],
  pictures: ReadonlyMap<string, PictureSize>,
  problems: Diagnostic[],
): Drawing | null {
  const name = figure.keys.shapes ?? '';
  const refuse = (message: string, mend: string): null => {
    problems.push({
      code: 'drawing-not-usable',
      severity: 'error',
      place: figure.placeOf(['shapes']),
      entry: figure.id,
      message,
      mend,
    });
    return null;
  };
  const file = drawings.find((one) => one.file === besideEntry(figure.file, name));
  if (!file)
    return refuse(
      `the drawing "${name}" does not stand beside this entry`,
      'put the SVG file there, or correct its name',
    );
  const drawing = readDrawing(file.text);
  if ('fault' in drawing)
    return refuse(
      `the drawing "${name}" cannot be read, at its line ${drawing.line}: ${drawing.fault}`,
      'save it anew from the drawing program, as plain SVG',
    );
  const size = pictures.get(besideEntry(figure.file, figure.keys.file));
  if (!size)
    return refuse(
      `the picture "${figure.keys.file}" is missing, so nothing can be laid over it`,
      'put the picture beside this entry',
    );
  if (!drawing.picture)
    return refuse(`the drawing "${name}" has no extent`, 'save it anew with a page size, or with the photograph in it');
  const [a, b, c, d, e, f] = drawing.picture;
  const shown = Math.hypot(a, b) / Math.hypot(c, d);
  if (Math.abs(shown / (size.width / size.height) - 1) > 0.02)
    return refuse(
      `the drawing "${name}" is ${shown.toFixed(3)} times as wide as high, its photograph ${(size.width / size.height).toFixed(3)} times`,
      'draw over the whole photograph, with the page as large as the photograph, or leave the photograph in the drawing',
    );
  const determinant = a * d - b * c;
  const toPixel = ([u, v]: readonly [number, number]): [number, number] => [
    ((d * (u - e) - c * (v - f)) / determinant) * size.width,
    ((a * (v - f) - b * (u - e)) / determinant) * size.height,
  ];
  return {
    ...drawing,
    elements: drawing.elements.map(({ name: own, paths }) => ({
      name: own,
      paths: paths.map(({ points, closed }) => ({ closed, points: points.map(toPixel) })),
    })),
  };
}

function shapeOf(
  { points, closed }: DrawnPath,
  trace: Entry<'evidence'>,
  suffix: string,
  figure: string,
): readonly Shape[] {
  const path = points.map(([x, y]) => [round(x), round(y)]);
  if (suffix === 'point' || (suffix !== 'area' && closed && POINT_KINDS.includes(trace.keys.kind))) {
    const [xs, ys] = [path.map((p) => p[0] as number), path.map((p) => p[1] as number)];
    const middle = (list: readonly number[]): number => round((Math.min(...list) + Math.max(...list)) / 2);
    return [{ in: figure, point: [middle(xs), middle(ys)] }];
  }
  if (suffix === 'arc') return [{ in: figure, arc: path }];
  if (suffix === 'area' || (closed && suffix !== 'line'))
    return path.length < 3 ? [] : [{ in: figure, area: { ring: withoutLast(path) } }];
  return [{ in: figure, line: path }];
}

/** A ring does not say its first point again. */
function withoutLast(path: readonly number[][]): number[][] {
  const [first, last] = [path[0], path.at(-1)];
  return first && last && first[0] === last[0] && first[1] === last[1] ? path.slice(0, -1) : [...path];
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}

function besideEntry(file: string, name: string): string {
  const parts = file.split('/').slice(0, -1);
  for (const part of name.split('/')) {
    if (part === '..') parts.pop();
    else if (part !== '.' && part !== '') parts.push(part);
  }
  return parts.join('/');
}

/** Names that editors give of themselves ("path12", "layer1") are passed over; those close to an id are told. */
function unknownName(
  figure: Entry<'figure'>,
  name: string,
  id: string,
  traces: ReadonlyMap<string, Entry<'evidence'>>,
): readonly Diagnostic[] {
  const near = nearest(id.toLowerCase(), traces.keys(), 1)[0];
  if (near === undefined || !/^[a-z]+-/i.test(id)) return [];
  const trace = traces.get(near) as Entry<'evidence'>;
  return [
    {
      code: 'drawing-unknown-name',
      severity: 'doubt',
      place: figure.placeOf(['shapes']),
      entry: figure.id,
      message: `in the drawing "${figure.keys.shapes}" stands the name "${name}", which is the id of no trace`,
      mend: `the nearest is ${trace.id}; name the element or its layer by the id of the trace that it shows`,
    },
  ];
}

function drawnTwice(figure: Entry<'figure'>, trace: Entry<'evidence'>): Diagnostic {
  return {
    code: 'drawn-twice',
    severity: 'doubt',
    place: figure.placeOf(['shapes']),
    entry: figure.id,
    message: `the trace ${trace.id} has a shape in its own entry and is drawn in "${figure.keys.shapes}" too`,
    mend: 'keep one of them; the shape in the entry is used',
    related: [{ place: trace.placeOf(['shape']), text: 'its own shape' }],
  };
}
