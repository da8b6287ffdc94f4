import type { Diagnostic } from '../base/diagnostic.ts';
import { phrase } from '../base/said.ts';
import type { Path, Point } from '../geometry/point.ts';
import type { Catalogue } from '../model/catalogue.ts';
import type { Entry } from '../model/entry.ts';
import { type RegisteredFigure, registerFigures } from './registered-figures.ts';
import { counterClockwise, problem, ringFault, shapesOf } from './trace-shapes.ts';

export type { RegisteredFigure };

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

/** Panels that have a size, with the shapes on their fronts and backs; and what is wrong with shapes and control points. */
export function findPanelShapes(catalogue: Catalogue): {
  readonly panels: readonly PanelGeometry[];
  readonly problems: readonly Diagnostic[];
} {
  const problems: Diagnostic[] = [];
  const registered = registerFigures(catalogue, problems);
  const reading = { catalogue, registered, problems };
  const panels = catalogue.ofType('object').flatMap((object) =>
    (object.keys.panels ?? []).flatMap((panel): readonly PanelGeometry[] => {
      const ring = panel.outline?.ring as Path | undefined;
      if (!ring && !(panel.width && panel.height)) return [];
      const outline = ring ?? rectangle(panel.width ?? 0, panel.height ?? 0);
      const fault = ringFault(outline);
      if (fault) {
        problems.push(problem(object, ['panels'], phrase('the outline of panel {0} {1}', panel.id, fault)));
        return [];
      }
      const traces = catalogue
        .onObject('evidence', object.id)
        .filter((trace) => trace.keys.object === object.id && trace.keys.panel === panel.id);
      const front = counterClockwise(outline);
      const turned = turn(front);
      const shapesOn = (faces: readonly string[], frame: Path): readonly PanelShape[] =>
        traces
          .filter((trace) => faces.includes(trace.keys.face ?? 'front'))
          .flatMap((trace) => shapesOf(trace, frame, reading));
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
