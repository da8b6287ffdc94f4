import type { Path } from './point.ts';

/** What is being traced. */
export type ShapeKind = 'point' | 'line' | 'area' | 'arc';

/** Fewest points that make a shape of a kind. */
export const LEAST_SHAPE_POINTS: Readonly<Record<ShapeKind, number>> = { point: 1, line: 2, area: 3, arc: 3 };

/**
 * Writes a shape as it stands in an entry, on one line; empty while it has too few points. Points are
 * given in pixels of the figure and rounded to a tenth.
 * @example formatShape('line', [[0, 738], [915, 731.5]], 'FI-A-uv', 2)
 * // shape: { in: FI-A-uv, error: 2, line: [[0, 738], [915, 731.5]] }
 */
export function formatShape(kind: ShapeKind, points: Path, figure: string, errorMm: number): string {
  if (points.length < LEAST_SHAPE_POINTS[kind]) return '';
  const pairs = points.map(([x, y]) => `[${Math.round(x * 10) / 10}, ${Math.round(y * 10) / 10}]`);
  const list = `[${pairs.join(', ')}]`;
  const body = {
    point: `point: ${pairs[0]}`,
    line: `line: ${list}`,
    area: `area: { ring: ${list} }`,
    arc: `arc: ${list}`,
  };
  return `shape: { in: ${figure}, error: ${errorMm}, ${body[kind]} }`;
}
