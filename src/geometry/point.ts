/** A point in millimetres of a panel's frame (origin at the lower left of the front, y up) or in pixels of a figure. */
export type Point = readonly [x: number, y: number];

/** Points joined in order; a ring joins its last point to its first. */
export type Path = readonly Point[];

/** Distance between two points, in their unit. */
export function distance([ax, ay]: Point, [bx, by]: Point): number {
  return Math.hypot(bx - ax, by - ay);
}

/** Length of an open path, in its unit; 0 for fewer than two points. */
export function pathLength(path: Path): number {
  return path.slice(1).reduce((sum, point, i) => sum + distance(path[i] as Point, point), 0);
}

/** Twice the signed area of a triangle: positive where a, b, c turn to the left. */
export function turn([ax, ay]: Point, [bx, by]: Point, [cx, cy]: Point): number {
  return (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
}
