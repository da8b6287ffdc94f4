import { measured, phrase, type Said } from '../base/said.ts';
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
    const fit = circleInterval(shape.path, shape.errorMm, { together: true });
    if (!fit) return [];
    const middle = shape.path[Math.floor(shape.path.length / 2)] as Point;
    const beyond = sidesOf(panel.outline).flatMap(({ side, a, b }) => {
      const reach = reachInterval(shape.path, fit, a, b, middle);
      return reach && reach.least > 0 ? [{ side, ...reach }] : [];
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

/** How far the radius of a motif is settled: `210 mm to 240 mm`, `210 mm or more`, or that nothing settles it. */
export function sayRadius({ radius }: CircleInterval): Said {
  if (radius === null) return phrase('no interval: the error of its points is not stated');
  const [least, most] = [measured(radius.least, 0), radius.most === null ? null : measured(radius.most, 0)];
  return most === null ? phrase('{0} mm or more', least) : phrase('{0} mm to {1} mm', least, most);
}
