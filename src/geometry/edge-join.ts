import { distance, type Path, type Point, pathLength } from './point.ts';
import { seededRandom } from './seeded-random.ts';

/** How well two cut edges lie along each other. */
export interface EdgeJoin {
  /** Length over which they lie together, and the share of the shorter edge that this is. */
  readonly matched: number;
  readonly share: number;
  /** Root mean square of the distance between them, less the gap of the saw; in the unit of the edges. */
  readonly deviation: number;
  /** Distance between the edges that fits best: what the saw took away. */
  readonly gap: number;
  /** Where the second edge begins along the first. */
  readonly offset: number;
}

const STEP_SHARE = 1 / 60;

/** Least share of the shorter edge that must lie along the other. */
const LEAST_SHARE = 0.5;

/**
 * Lays the second edge along the first, at every offset at which at least half of the shorter lies along the other, and takes the
 * offset of least deviation. At each offset a straight difference is taken out (the angle between the pieces) and a constant one (the
 * gap). Both edges are read as height above the line through their ends, so the result does not depend on how the pieces lie; both
 * directions of drawing are tried. It says "may join", never "joins". Null for edges without length.
 */
export function bestJoin(first: Path, second: Path): EdgeJoin | null {
  const [one, other] = [laidAlong(first, second), laidAlong(first, [...second].reverse())];
  return one && other && scoreOf(other) < scoreOf(one) ? other : one;
}

function laidAlong(first: Path, second: Path): EdgeJoin | null {
  const [la, lb] = [pathLength(first), pathLength(second)];
  if (la === 0 || lb === 0) return null;
  const step = Math.min(la, lb) * STEP_SHARE;
  const [ra, rb] = [resampled(profile(first), la, step), resampled(profile(second), lb, step)];
  const least = Math.ceil(Math.min(ra.length, rb.length) * LEAST_SHARE);
  let best: EdgeJoin | null = null;
  for (let shift = least - rb.length; shift <= ra.length - least; shift += 1) {
    const from = Math.max(0, shift);
    const to = Math.min(ra.length, rb.length + shift);
    const differences: number[] = [];
    for (let i = from; i < to; i += 1) differences.push((ra[i] as number) - (rb[i - shift] as number));
    const { deviation, mean } = aboutLine(differences);
    const matched = Math.min((to - from) * step, la, lb);
    const join = { matched, share: matched / Math.min(la, lb), deviation, gap: Math.abs(mean), offset: shift * step };
    if (!best || scoreOf(join) < scoreOf(best)) best = join;
  }
  return best;
}

/** Of offsets that fit alike, the one that matches more is better. */
function scoreOf({ deviation, share }: EdgeJoin): number {
  return deviation / Math.sqrt(share);
}

/**
 * How often an edge of the same roughness does as well by chance: the second edge's steps are shuffled 500 times
 * (seeded) and laid along the first. 0 to 1.
 */
export function joinByChance(first: Path, second: Path, seed = 1): number {
  const real = bestJoin(first, second);
  if (!real) return 1;
  const random = seededRandom(seed);
  let asGood = 0;
  const trials = 500;
  for (let trial = 0; trial < trials; trial += 1) {
    const other = bestJoin(first, shuffledSteps(second, random));
    if (other && scoreOf(other) <= scoreOf(real)) asGood += 1;
  }
  return (asGood + 1) / (trials + 1);
}

function shuffledSteps(path: Path, random: () => number): Path {
  const steps = path.slice(1).map(([x, y], i) => [x - (path[i] as Point)[0], y - (path[i] as Point)[1]] as const);
  for (let i = steps.length - 1; i > 0; i -= 1) {
    const j = Math.floor(random() * (i + 1));
    [steps[i], steps[j]] = [steps[j] as (typeof steps)[number], steps[i] as (typeof steps)[number]];
  }
  const points: Point[] = [path[0] as Point];
  for (const [dx, dy] of steps) {
    const [x, y] = points.at(-1) as Point;
    points.push([x + dx, y + dy]);
  }
  return points;
}

/** Heights of the points above the line through the ends. */
function profile(path: Path): readonly number[] {
  const [a, b] = [path[0] as Point, path.at(-1) as Point];
  const length = distance(a, b) || 1;
  return path.map(([x, y]) => ((b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0])) / length);
}

function resampled(heights: readonly number[], length: number, step: number): readonly number[] {
  const count = Math.max(2, Math.round(length / step) + 1);
  return Array.from({ length: count }, (_, i) => {
    const at = (i / (count - 1)) * (heights.length - 1);
    const [low, share] = [Math.floor(at), at - Math.floor(at)];
    const [from, to] = [heights[low] as number, heights[Math.min(low + 1, heights.length - 1)] as number];
    return from + share * (to - from);
  });
}

/** Deviation about the best straight line through values at even steps, and their mean. */
function aboutLine(values: readonly number[]): { readonly deviation: number; readonly mean: number } {
  const n = values.length;
  const mean = values.reduce((a, b) => a + b, 0) / n;
  const middle = (n - 1) / 2;
  let [tt, tv] = [0, 0];
  values.forEach((value, t) => {
    tt += (t - middle) ** 2;
    tv += (t - middle) * (value - mean);
  });
  const slope = tt === 0 ? 0 : tv / tt;
  const squares = values.reduce((sum, value, t) => sum + (value - mean - slope * (t - middle)) ** 2, 0);
  return { deviation: Math.sqrt(squares / n), mean };
}
