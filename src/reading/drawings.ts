import type { Diagnostic } from '../base/diagnostic.ts';
import { nearest } from '../base/nearest.ts';
import { oncePerBoth } from '../base/once.ts';
import { phrase } from '../base/said.ts';
import { isInside } from '../geometry/ring.ts';
import type { Entry, Keys } from '../model/entry.ts';
import { isOfType } from '../model/entry.ts';
import type { DrawnPath } from './drawing.ts';
import { readFigureDrawing } from './figure-drawing.ts';
import type { FoundPictures } from './figure-pictures.ts';
import type { TextFile } from './text-file.ts';

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
  pictures: FoundPictures,
): { readonly entries: readonly Entry[]; readonly problems: readonly Diagnostic[] } {
  const problems: Diagnostic[] = [];
  const traces = new Map(
    entries.flatMap((entry) => (isOfType(entry, 'evidence') ? [[entry.id.toLowerCase(), entry] as const] : [])),
  );
  const shapes = new Map<string, Shape[]>();
  for (const figure of entries) {
    if (!isOfType(figure, 'figure') || figure.keys.shapes === undefined) continue;
    const drawing = readFigureDrawing(figure, drawings, pictures, problems);
    if (!drawing) continue;
    const found = new Map<string, ReadonlySet<DrawnPath>>();
    // The inner names come first, so a layer that bears the name of a line inside it adds nothing twice.
    for (const { name, paths } of drawing) {
      const [id = '', suffix = ''] = name.split('_');
      const trace = traces.get(id.toLowerCase());
      if (!trace) {
        problems.push(...unknownName(figure, name, id, traces));
        continue;
      }
      const before = found.get(trace.id) ?? new Set<DrawnPath>();
      const fresh = paths.filter((path) => !before.has(path));
      found.set(trace.id, new Set([...before, ...fresh]));
      if (trace.keys.shape !== undefined) {
        if (before.size === 0) problems.push(drawnTwice(figure, trace));
      } else shapes.set(trace.id, [...(shapes.get(trace.id) ?? []), ...shapesFrom(fresh, trace, suffix, figure.id)]);
    }
    if (found.size === 0)
      problems.push(
        nothingFound(
          figure,
          drawing.map((one) => one.name),
        ),
      );
  }
  if (shapes.size === 0) return { entries, problems };
  const drawn = entries.map((entry) => {
    const shape = shapes.get(entry.id);
    return shape && isOfType(entry, 'evidence')
      ? { ...entry, keys: drawnKeys(entry.keys, JSON.stringify(shape)) }
      : entry;
  });
  return { entries: drawn, problems };
}

/** The same keys with the same drawing are the same object, so that what was found in them is found again. */
const drawnKeys = oncePerBoth(
  (keys: Keys<'evidence'>, shape: string): Keys<'evidence'> => ({ ...keys, shape: JSON.parse(shape) as Shape[] }),
);

/** Shapes of lines; closed lines of one element that lie in each other are an area with holes. */
function shapesFrom(
  paths: readonly DrawnPath[],
  trace: Entry<'evidence'>,
  suffix: string,
  figure: string,
): readonly Shape[] {
  const isArea = (path: DrawnPath): boolean =>
    suffix === 'area' || (path.closed && suffix === '') || (path.closed && /^\d+$/.test(suffix));
  const areas = paths.filter(
    (path) => isArea(path) && !POINT_KINDS.includes(trace.keys.kind) && path.points.length >= 3,
  );
  const outerOf = (path: DrawnPath): readonly DrawnPath[] =>
    areas.filter(
      (other) =>
        other !== path &&
        other.element === path.element &&
        isInside(other.points, path.points[0] as readonly [number, number]),
    );
  const holesOf = (path: DrawnPath): number[][][] =>
    areas
      .filter((other) => outerOf(other).length === outerOf(path).length + 1 && outerOf(other).includes(path))
      .map((other) => withoutLast(rounded(other)));
  return paths.flatMap((path): readonly Shape[] => {
    if (!areas.includes(path)) return shapeOf(path, trace, suffix, figure);
    if (outerOf(path).length % 2 === 1) return [];
    const holes = holesOf(path);
    return [{ in: figure, area: { ring: withoutLast(rounded(path)), ...(holes.length > 0 ? { holes } : {}) } }];
  });
}

function rounded({ points }: DrawnPath): number[][] {
  return points.map(([x, y]) => [round(x), round(y)]);
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
      message: phrase(
        'in the drawing "{0}" stands the name "{1}", which is the id of no trace',
        figure.keys.shapes,
        name,
      ),
      mend: phrase('the nearest is {0}; name the element or its layer by the id of the trace that it shows', trace.id),
    },
  ];
}

/** A drawing without a single known name was mostly named in another way. */
function nothingFound(figure: Entry<'figure'>, names: readonly string[]): Diagnostic {
  const given = [...new Set(names)].slice(0, 5).map((name) => `"${name}"`);
  return {
    code: 'drawing-unknown-name',
    severity: 'doubt',
    place: figure.placeOf(['shapes']),
    entry: figure.id,
    message: phrase(
      'in the drawing "{0}" no name is the id of a trace{1}',
      figure.keys.shapes,
      given.length > 0 ? phrase('; its names are {0}', given.join(', ')) : '',
    ),
    mend: phrase('name each line, or its layer, by the id of the trace that it shows, as PE-joint-1'),
  };
}

function drawnTwice(figure: Entry<'figure'>, trace: Entry<'evidence'>): Diagnostic {
  return {
    code: 'drawn-twice',
    severity: 'doubt',
    place: figure.placeOf(['shapes']),
    entry: figure.id,
    message: phrase(
      'the trace {0} has a shape in its own entry and is drawn in "{1}" too',
      trace.id,
      figure.keys.shapes,
    ),
    mend: phrase('keep one of them; the shape in the entry is used'),
    related: [{ place: trace.placeOf(['shape']), text: phrase('its own shape') }],
  };
}
