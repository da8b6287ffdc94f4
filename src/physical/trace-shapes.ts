import type { Diagnostic } from '../base/diagnostic.ts';
import { phrase, type Said } from '../base/said.ts';
import type { Path, Point } from '../geometry/point.ts';
import { findRingFault, isInside, signedArea } from '../geometry/ring.ts';
import type { Catalogue } from '../model/catalogue.ts';
import type { Entry } from '../model/entry.ts';
import type { PanelShape } from './panel-shapes.ts';
import type { RegisteredFigure } from './registered-figures.ts';

/** Tracing error where the entry states none, in mm. */
const USUAL_ERROR = 2;

/** Kinds of trace that have extent, so that an open line says too little of them. */
const WITH_EXTENT: readonly string[] = ['loss', 'fill', 'addition', 'retouching'];

/** What the shapes of traces are read with. */
export interface ShapeReading {
  readonly catalogue: Catalogue;
  readonly registered: ReadonlyMap<string, RegisteredFigure>;
  readonly problems: Diagnostic[];
}

/** The shapes of a trace in millimetres of the frame of its face; what cannot be used is told and left out. */
export function shapesOf(trace: Entry<'evidence'>, outline: Path, reading: ShapeReading): readonly PanelShape[] {
  const all = trace.keys.shape ?? [];
  return all.flatMap((shape, i) => shapeOf(trace, shape, i, outline, reading));
}

/** `at` is the place of the shape in the trace's list. */
function shapeOf(
  trace: Entry<'evidence'>,
  shape: NonNullable<Entry<'evidence'>['keys']['shape']>[number],
  at: number,
  outline: Path,
  { catalogue, registered, problems }: ShapeReading,
): readonly PanelShape[] {
  const figure = shape.in === undefined ? null : registered.get(shape.in);
  if (figure === undefined) {
    const named = catalogue.get(shape.in ?? '');
    // What is withheld of the figure is no fault of the trace.
    if ((named?.withheld ?? []).includes('control-points')) return [];
    const none = named !== undefined && !('control-points' in named.keys);
    problems.push({
      ...problem(
        trace,
        ['shape', at, 'in'],
        phrase(
          'the shape of {0} is in pixels of {1}, which has no control points that can be used',
          trace.id,
          shape.in,
        ),
      ),
      mend: none
        ? phrase(
            'give {0} control points: four points of the photograph in pixels, and the same in mm of the panel',
            shape.in,
          )
        : phrase('mend the control points of {0} first', shape.in),
    });
    return [];
  }
  if (figure && (figure.figure.keys.object !== trace.keys.object || figure.figure.keys.panel !== trace.keys.panel)) {
    problems.push({
      ...problem(
        trace,
        ['shape', at, 'in'],
        phrase('the shape of {0} is drawn over {1}, which shows another panel', trace.id, figure.figure.id),
      ),
      mend: phrase('draw it over a photograph of its own panel, or correct object and panel of one of them'),
    });
    return [];
  }
  if (WITH_EXTENT.includes(trace.keys.kind) && (shape.line || shape.arc)) {
    problems.push({
      ...problem(
        trace,
        ['shape', at],
        phrase('the shape of {0} is an open line, so that this {1} has no extent', trace.id, trace.keys.kind),
      ),
      code: 'shape-without-extent',
      severity: 'doubt',
      mend: phrase('draw its outline as an area, closed; a line is right only for what is as thin as a line'),
    });
  }
  // What is drawn on a picture of the other face lies mirrored in this frame.
  const mirrored = figure && ((figure.figure.keys.face ?? 'front') === 'back') !== (trace.keys.face === 'back');
  const right = Math.max(...outline.map(([x]) => x));
  const toMm = (path: readonly (readonly number[])[]): Path =>
    path.map((at): Point => {
      const point = at as unknown as Point;
      const [x, y] = figure ? figure.registration.toMm(point) : point;
      return mirrored ? [right - x, y] : [x, y];
    });
  const errorMm = Math.hypot(shape.error ?? USUAL_ERROR, figure?.registration.errorMm ?? 0);
  const make = (kind: PanelShape['kind'], path: Path, holes: readonly Path[] = []): readonly PanelShape[] => {
    if (path.some((point) => isFarOutside(outline, point))) {
      problems.push({
        ...problem(
          trace,
          ['shape', at],
          phrase('the shape of {0} lies outside its panel by more than 50 mm', trace.id),
        ),
        severity: 'doubt',
        mend: phrase(
          'check the panel and the frame: millimetres from the lower left corner, y upwards; or say "in:" with the figure',
        ),
      });
    }
    return [{ trace, kind, path, holes, errorMm }];
  };
  if (shape.point) return make('point', toMm([shape.point]));
  if (shape.line) return make('line', toMm(shape.line));
  if (shape.arc) return make('arc', toMm(shape.arc));
  if (!shape.area) return [];
  const ring = toMm(shape.area.ring);
  const fault = ringFault(ring);
  if (fault) {
    problems.push(problem(trace, ['shape', at, 'area'], phrase('the area of {0} {1}', trace.id, fault)));
    return [];
  }
  return make('area', counterClockwise(ring), (shape.area.holes ?? []).map(toMm));
}

export function problem(entry: Entry, path: readonly (string | number)[], message: Said): Diagnostic {
  return {
    code: 'shape-not-usable',
    severity: 'error',
    place: entry.placeOf([...path]),
    entry: entry.id,
    message,
    mend: phrase('draw it anew: points in order round the area, no side across another'),
  };
}

export function ringFault(ring: Path): Said | null {
  const fault = findRingFault(ring);
  if (!fault) return null;
  if (fault.kind === 'too-few') return phrase('has fewer than three points');
  if (fault.kind === 'no-area') return phrase('has no extent');
  return phrase(
    'crosses itself at ({0}), where side {1} meets side {2}',
    fault.at.map((value) => Math.round(value * 10) / 10).join(', '),
    fault.sides[0],
    fault.sides[1],
  );
}

export function counterClockwise(ring: Path): Path {
  return signedArea(ring) < 0 ? [...ring].reverse() : ring;
}

function isFarOutside(outline: Path, [x, y]: Point): boolean {
  if (isInside(outline, [x, y])) return false;
  const [xs, ys] = [outline.map((p) => p[0]), outline.map((p) => p[1])];
  const margin = 50;
  return (
    x < Math.min(...xs) - margin ||
    x > Math.max(...xs) + margin ||
    y < Math.min(...ys) - margin ||
    y > Math.max(...ys) + margin
  );
}
