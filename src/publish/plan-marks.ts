import { GRADES } from '../base/grade.ts';
import type { Path, Point } from '../geometry/point.ts';
import type { PanelShape } from '../physical/panel-shapes.ts';

/** A shape on the plan with its number in the key and the mark by which it is drawn. */
export interface NumberedShape {
  readonly number: number;
  readonly shape: PanelShape;
  readonly mark: Mark;
}

/** The marks of a plan: by kind of trace, lines also by what they are taken for. */
export type Mark =
  | 'cut-edge'
  | 'section-joint'
  | 'plaster-join'
  | 'crack'
  | 'fill'
  | 'addition'
  | 'retouching'
  | 'loss'
  | 'delamination'
  | 'coating'
  | 'armature'
  | 'fixing'
  | 'label'
  | 'sample'
  | 'motif'
  | 'other';

/** What each mark means, for the legend. */
export const MARK_WORDS: Readonly<Record<Mark, string>> = {
  'cut-edge': 'cut or broken edge',
  'section-joint': 'section joint',
  'plaster-join': 'day join or scaffold join',
  crack: 'crack',
  fill: 'fill',
  addition: 'later addition',
  retouching: 'retouching',
  loss: 'loss',
  delamination: 'loose from the wall or bed',
  coating: 'coating or residue',
  armature: 'armature, behind',
  fixing: 'fixing',
  label: 'label or mark',
  sample: 'sample',
  motif: 'motif, and its circle continued',
  other: 'other trace',
};

/** Shapes in the order in which the eye meets them: from the top, from the left; the parts of one trace share a number. */
export function numberShapes(shapes: readonly PanelShape[]): readonly NumberedShape[] {
  const place = ({ path }: PanelShape): Point => {
    const top = Math.max(...path.map((p) => p[1]));
    return [Math.min(...path.map((p) => p[0])), top];
  };
  const sorted = [...shapes].sort((a, b) => place(b)[1] - place(a)[1] || place(a)[0] - place(b)[0]);
  const traces = [...new Set(sorted.map((shape) => shape.trace.id))];
  return sorted.map((shape) => ({ number: traces.indexOf(shape.trace.id) + 1, shape, mark: markOf(shape) }));
}

/** Kinds of trace whose mark has another name. */
const MARK_OF_KIND: Readonly<Record<string, Mark>> = {
  'cut-edge': 'cut-edge',
  crack: 'crack',
  fill: 'fill',
  addition: 'addition',
  retouching: 'retouching',
  loss: 'loss',
  armature: 'armature',
  delamination: 'delamination',
  fixing: 'fixing',
  sample: 'sample',
  'label-or-mark': 'label',
  inscription: 'label',
  'coating-or-residue': 'coating',
};

/** By kind; a line or joint by the best-graded reading. */
export function markOf({ kind, trace }: PanelShape): Mark {
  if (kind === 'arc') return 'motif';
  if (trace.keys.kind !== 'line-or-joint') return MARK_OF_KIND[trace.keys.kind] ?? 'other';
  const inferred = [...(trace.keys.inferred ?? [])].sort((a, b) => GRADES.indexOf(a.grade) - GRADES.indexOf(b.grade));
  if (/section|transport/.test(inferred[0]?.as ?? '')) return 'section-joint';
  return /day|scaffold|giornata|pontata/.test(inferred[0]?.as ?? '') ? 'plaster-join' : 'other';
}

/** Where the numbers stand: on their shapes, no two on each other where there is another place. */
export function placeNumbers(
  shapes: readonly NumberedShape[],
  flip: (p: Point) => Point,
  size: number,
): readonly { readonly one: NumberedShape; readonly at: Point }[] {
  const taken: Point[] = [];
  const isFree = ([x, y]: Point): boolean =>
    taken.every(([u, v]) => Math.abs(u - x) > size * 1.5 || Math.abs(v - y) > size * 1.1);
  return shapes.map((one) => {
    const candidates = numberPlaces(one.shape.path.map(flip), one.shape.kind, size);
    const at = candidates.find(isFree) ?? (candidates[0] as Point);
    taken.push(at);
    return { one, at };
  });
}

function numberPlaces(path: Path, kind: PanelShape['kind'], size: number): readonly Point[] {
  if (kind === 'area') {
    const n = path.length;
    const x = path.reduce((sum, p) => sum + p[0], 0) / n;
    const y = path.reduce((sum, p) => sum + p[1], 0) / n + size * 0.35;
    return [-0, -1.4, 1.4, -2.8, 2.8].map((step): Point => [x + step * size, y - Math.abs(step) * size * 0.9]);
  }
  const along = (share: number): Point => {
    const at = share * (path.length - 1);
    const [from, to] = [path[Math.floor(at)] as Point, path[Math.min(path.length - 1, Math.floor(at) + 1)] as Point];
    const t = at - Math.floor(at);
    return [from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1]) - size * 0.6];
  };
  return [0.5, 0.25, 0.75, 0.1, 0.9].map(along);
}
