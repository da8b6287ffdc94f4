import { GRADES } from '../base/grade.ts';
import { findModule, type JointModule, LEAST_JOINTS } from '../geometry/joint-module.ts';
import { type DanglingEnd, divideOutline } from '../geometry/planar-faces.ts';
import type { Path, Point } from '../geometry/point.ts';
import { isInside } from '../geometry/ring.ts';
import type { PanelGeometry, PanelShape } from './panel-shapes.ts';

/** A piece in which a panel travelled, as its joints show it. */
export interface Section {
  /** Numbered as one reads: from the top, from the left. */
  readonly number: number;
  readonly ring: Path;
  readonly squareMm: number;
  /** Least rectangle along the panel's sides. */
  readonly width: number;
  readonly height: number;
  readonly at: Point;
}

/** The section in which a place lies; null outside of all. */
export function sectionAt(sections: readonly Section[], at: readonly number[] | undefined): Section | null {
  const point = at as Point | undefined;
  return point === undefined ? null : (sections.find((one) => isInside(one.ring, point)) ?? null);
}

/** The sections of a panel, the joints that make them, and joints that end inside a section. */
export interface Sections {
  readonly sections: readonly Section[];
  readonly joints: readonly PanelShape[];
  readonly dangling: readonly { readonly joint: PanelShape; readonly at: Point }[];
  /** Spacing of upright and of level joints; null where there are too few to tell. */
  readonly upright: JointModule | null;
  readonly level: JointModule | null;
  readonly tooFew: boolean;
}

/** Ends of joints may be this much too short or too long, in mm. */
const TOLERANCE = 3;

/**
 * The pieces that the joints taken for section joints make of a panel's outline. A line counts where the
 * best-graded inference says "section joint"; day joins and scaffold joins are kept apart.
 */
export function findSections(panel: PanelGeometry): Sections {
  const joints = panel.shapes.filter((one) => one.kind === 'line' && isSectionJoint(one));
  const { faces, dangling } = divideOutline(
    panel.outline,
    joints.map((one) => one.path),
    TOLERANCE,
  );
  const boxes = faces.map(({ ring, area }) => ({ ring, area, box: boxOf(ring) }));
  const band = Math.max(1, ...panel.outline.map(([, y]) => y)) / 20;
  boxes.sort((a, b) =>
    Math.abs(b.box.top - a.box.top) > band ? b.box.top - a.box.top : a.box.left - b.box.left || b.box.top - a.box.top,
  );
  const positions = (upright: boolean): readonly number[] =>
    joints.flatMap(({ path }) => {
      const { left, right, top, bottom } = boxOf(path);
      const isUpright = top - bottom > right - left;
      return isUpright === upright ? [upright ? (left + right) / 2 : (top + bottom) / 2] : [];
    });
  const [across, along] = [positions(true), positions(false)];
  return {
    sections: boxes.map(({ ring, area, box }, i) => ({
      number: i + 1,
      ring,
      squareMm: area,
      width: box.right - box.left,
      height: box.top - box.bottom,
      at: [(box.left + box.right) / 2, (box.top + box.bottom) / 2],
    })),
    joints,
    dangling: dangling.map(({ line, at }: DanglingEnd) => ({ joint: joints[line] as PanelShape, at })),
    upright: findModule(across),
    level: findModule(along),
    tooFew: across.length < LEAST_JOINTS && along.length < LEAST_JOINTS,
  };
}

/** True where the best-graded inference takes the line for a section joint. */
function isSectionJoint({ trace }: PanelShape): boolean {
  const inferred = trace.keys.inferred ?? [];
  const best = Math.min(...inferred.map((one) => GRADES.indexOf(one.grade)));
  return inferred.some((one) => GRADES.indexOf(one.grade) === best && /section joint|transport joint/.test(one.as));
}

function boxOf(path: Path): {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
} {
  const [xs, ys] = [path.map((p) => p[0]), path.map((p) => p[1])];
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.max(...ys), bottom: Math.min(...ys) };
}
