import type { Diagnostic } from '../base/diagnostic.ts';
import type { Path, Point } from '../geometry/point.ts';
import { isRegistrationFault, type MapKind, type Registration, register } from '../geometry/registration.ts';
import { findRingFault, isInside, signedArea } from '../geometry/ring.ts';
import type { Catalogue } from '../model/catalogue.ts';
import type { Entry } from '../model/entry.ts';

/** A trace's shape in millimetres of its panel's frame. */
export interface PanelShape {
  readonly trace: Entry<'evidence'>;
  readonly kind: 'point' | 'line' | 'area' | 'arc';
  /** The point, the line, the arc, or the outer ring (counter-clockwise). */
  readonly path: Path;
  readonly holes: readonly Path[];
  /** How far the tracing may be off, in mm. */
  readonly errorMm: number;
}

/** A panel with everything on it that has a shape. */
export interface PanelGeometry {
  readonly object: Entry<'object'>;
  readonly panel: string;
  readonly label: string;
  /** Counter-clockwise; a rectangle of the stated width and height where none is traced. */
  readonly outline: Path;
  readonly outlineTraced: boolean;
  /** On the front, or within and drawn as seen from the front. */
  readonly shapes: readonly PanelShape[];
  /** Photographs of the front. */
  readonly figures: readonly RegisteredFigure[];
  /** The back as one sees it when the panel is turned, in its own frame, with what lies within. */
  readonly back: {
    readonly outline: Path;
    readonly shapes: readonly PanelShape[];
    readonly figures: readonly RegisteredFigure[];
  };
}

/** A figure that control points bring into the frame of its panel. */
export interface RegisteredFigure {
  readonly figure: Entry<'figure'>;
  readonly registration: Registration;
}

/** Tracing error where the entry states none, in mm. */
const USUAL_ERROR = 2;

/** Panels that have a size, with the shapes on their fronts and backs; and what is wrong with shapes and control points. */
export function findPanelShapes(catalogue: Catalogue): {
  readonly panels: readonly PanelGeometry[];
  readonly problems: readonly Diagnostic[];
} {
  const problems: Diagnostic[] = [];
  const registered = new Map<string, RegisteredFigure>();
  for (const figure of catalogue.ofType('figure')) {
    const found = registerFigure(figure, problems);
    if (found) registered.set(figure.id, { figure, registration: found });
  }
  const panels = catalogue.ofType('object').flatMap((object) =>
    (object.keys.panels ?? []).flatMap((panel): readonly PanelGeometry[] => {
      const ring = panel.outline?.ring as Path | undefined;
      if (!ring && !(panel.width && panel.height)) return [];
      const outline = ring ?? rectangle(panel.width ?? 0, panel.height ?? 0);
      const fault = ringFault(outline);
      if (fault) {
        problems.push(problem(object, ['panels'], `the outline of panel ${panel.id} ${fault}`));
        return [];
      }
      const traces = catalogue
        .ofType('evidence')
        .filter((trace) => trace.keys.object === object.id && trace.keys.panel === panel.id);
      const front = counterClockwise(outline);
      const turned = turn(front);
      const shapesOn = (faces: readonly string[], frame: Path): readonly PanelShape[] =>
        traces
          .filter((trace) => faces.includes(trace.keys.face ?? 'front'))
          .flatMap((trace) => shapesOf(trace, frame, registered, problems));
      const within = shapesOn(['within'], front);
      const figuresOf = (face: string): readonly RegisteredFigure[] =>
        [...registered.values()].filter(
          ({ figure: { keys } }) =>
            keys.object === object.id && keys.panel === panel.id && (keys.face ?? 'front') === face,
        );
      return [
        {
          object,
          panel: panel.id,
          label: panel.label ?? '',
          outline: front,
          outlineTraced: ring !== undefined,
          shapes: [...shapesOn(['front'], front), ...within],
          figures: figuresOf('front'),
          back: {
            outline: turned,
            shapes: [...shapesOn(['back'], turned), ...within.map((shape) => turnShape(shape, turned))],
            figures: figuresOf('back'),
          },
        },
      ];
    }),
  );
  return { panels, problems };
}

/** A shape inside the panel as it would be seen from behind. */
function turnShape(shape: PanelShape, turned: Path): PanelShape {
  const right = Math.max(...turned.map(([x]) => x));
  const mirror = (path: Path): Path => path.map(([x, y]): Point => [right - x, y]);
  return { ...shape, path: mirror(shape.path), holes: shape.holes.map(mirror) };
}

/** An outline as it is seen from behind: mirrored across, within the same extent. */
function turn(outline: Path): Path {
  const right = Math.max(...outline.map(([x]) => x));
  return counterClockwise(outline.map(([x, y]): Point => [right - x, y]));
}

function rectangle(width: number, height: number): Path {
  return [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ];
}

/** By the number of points: one more than is needed at least, so that a residual can be told. */
function kindOf(points: number): MapKind {
  if (points >= 6) return 'projective';
  return points >= 4 ? 'affine' : 'similarity';
}

function registerFigure(figure: Entry<'figure'>, problems: Diagnostic[]): Registration | null {
  const points = figure.keys['control-points'];
  if (!points) return null;
  const pairs = points.map(({ pixel, mm }) => ({ pixel: pixel as unknown as Point, mm: mm as unknown as Point }));
  const result = register(pairs, figure.keys.registration ?? kindOf(pairs.length));
  if (!isRegistrationFault(result)) return result;
  const words = {
    'too-few': 'are too few for this kind of map',
    repeated: `say two things of one point (${result.points.join(' and ')})`,
    'on-a-line': 'lie on a line, or nearly, so that they settle nothing across it',
  }[result.fault];
  problems.push({
    code: 'control-points',
    severity: 'error',
    place: figure.placeOf(['control-points']),
    entry: figure.id,
    message: `the control points of ${figure.id} ${words}`,
    mend: 'give four points or more, near the corners of the panel',
  });
  return null;
}

function shapesOf(
  trace: Entry<'evidence'>,
  outline: Path,
  registered: ReadonlyMap<string, RegisteredFigure>,
  problems: Diagnostic[],
): readonly PanelShape[] {
  const all = trace.keys.shape ?? [];
  return all.flatMap((shape, i) => shapeOf(trace, shape, i, outline, registered, problems));
}

/** `at` is the place of the shape in the trace's list. */
function shapeOf(
  trace: Entry<'evidence'>,
  shape: NonNullable<Entry<'evidence'>['keys']['shape']>[number],
  at: number,
  outline: Path,
  registered: ReadonlyMap<string, RegisteredFigure>,
  problems: Diagnostic[],
): readonly PanelShape[] {
  const figure = shape.in === undefined ? null : registered.get(shape.in);
  if (figure === undefined) {
    problems.push(
      problem(
        trace,
        ['shape', at, 'in'],
        `the shape is in pixels of ${shape.in}, which has no control points that can be used`,
      ),
    );
    return [];
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
  const errorMm = Math.hypot(shape.error ?? USUAL_ERROR, figure?.registration.rootMeanSquareMm ?? 0);
  const make = (kind: PanelShape['kind'], path: Path, holes: readonly Path[] = []): readonly PanelShape[] => {
    if (path.some((point) => isFarOutside(outline, point))) {
      problems.push({
        ...problem(trace, ['shape', at], `the shape of ${trace.id} lies outside its panel by more than 50 mm`),
        severity: 'doubt',
        mend: 'check the panel and the frame: millimetres from the lower left corner, y upwards; or say "in:" with the figure',
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
    problems.push(problem(trace, ['shape', at, 'area'], `the area of ${trace.id} ${fault}`));
    return [];
  }
  return make('area', counterClockwise(ring), (shape.area.holes ?? []).map(toMm));
}

function problem(entry: Entry, path: readonly (string | number)[], message: string): Diagnostic {
  return {
    code: 'shape-not-usable',
    severity: 'error',
    place: entry.placeOf([...path]),
    entry: entry.id,
    message,
    mend: 'draw it anew: points in order round the area, no side across another',
  };
}

function ringFault(ring: Path): string | null {
  const fault = findRingFault(ring);
  if (!fault) return null;
  if (fault.kind === 'too-few') return 'has fewer than three points';
  if (fault.kind === 'no-area') return 'has no extent';
  return `crosses itself at (${fault.at.map((value) => Math.round(value * 10) / 10).join(', ')}), where side ${fault.sides[0]} meets side ${fault.sides[1]}`;
}

function counterClockwise(ring: Path): Path {
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
