import type { CircleInterval } from '../geometry/circle-interval.ts';
import { circleInterval, reachInterval } from '../geometry/circle-interval.ts';
import type { Path, Point } from '../geometry/point.ts';
import type { PanelGeometry, PanelShape } from './panel-shapes.ts';

/** A round motif that an edge of the panel may cut. */
export interface CutMotif {
  readonly shape: PanelShape;
  readonly fit: CircleInterval;
  /** Sides of the outline beyond which a full circle would go on, and how far, in mm. */
  readonly beyond: readonly {
    readonly side: 'top' | 'right' | 'bottom' | 'left';
    readonly least: number;
    readonly most: number | null;
  }[];
}

/**
 * Fits a circle to every arc on a panel: "if the motif was a full circle, the painting went on at least so
 * far beyond the edge". Arcs through which no circle can be laid are left out.
 */
export function findCutMotifs(panel: PanelGeometry): readonly CutMotif[] {
  return panel.shapes.flatMap((shape): readonly CutMotif[] => {
    if (shape.kind !== 'arc') return [];
    const fit = circleInterval(shape.path, shape.errorMm);
    if (!fit) return [];
    const middle = shape.path[Math.floor(shape.path.length / 2)] as Point;
    const beyond = sidesOf(panel.outline).flatMap(({ side, a, b }) => {
      const reach = reachInterval(shape.path, fit, a, b, middle);
      return reach.least > 0 ? [{ side, ...reach }] : [];
    });
    return [{ shape, fit, beyond }];
  });
}

/** The four sides of the least rectangle about an outline. */
function sidesOf(outline: Path): readonly {
  readonly side: CutMotif['beyond'][number]['side'];
  readonly a: Point;
  readonly b: Point;
}[] {
  const [xs, ys] = [outline.map((p) => p[0]), outline.map((p) => p[1])];
  const [left, right, bottom, top] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  return [
    { side: 'top', a: [left, top], b: [right, top] },
    { side: 'right', a: [right, top], b: [right, bottom] },
    { side: 'bottom', a: [right, bottom], b: [left, bottom] },
    { side: 'left', a: [left, bottom], b: [left, top] },
  ];
}
