import type { Path } from '../geometry/point.ts';
import type { CutMotif } from '../physical/panel-motifs.ts';
import type { PanelShape, RegisteredFigure } from '../physical/panel-shapes.ts';
import type { PanelFindings } from '../physical/panels.ts';

/** One face of a panel as a plan shows it, in its own frame in millimetres. */
export interface PanelFace {
  readonly face: 'front' | 'back';
  readonly panel: string;
  readonly object: string;
  readonly outline: Path;
  readonly shapes: readonly PanelShape[];
  readonly figures: readonly RegisteredFigure[];
  readonly motifs: readonly CutMotif[];
}

/** The front, and the back where something of it is drawn or photographed. */
export function facesOf({ geometry, motifs }: PanelFindings): readonly PanelFace[] {
  const { object, panel, outline, shapes, figures, back } = geometry;
  const front: PanelFace = { face: 'front', panel, object: object.id, outline, shapes, figures, motifs };
  if (back.shapes.length === 0 && back.figures.length === 0) return [front];
  return [front, { face: 'back', panel, object: object.id, ...back, motifs: [] }];
}

/** Width and height of a path from the origin of its frame, in mm. */
export function extentOf(path: Path): { readonly width: number; readonly height: number } {
  return { width: Math.max(...path.map(([x]) => x)), height: Math.max(...path.map(([, y]) => y)) };
}
