import { distance, type Path, type Point } from './point.ts';
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

/** From end to end, not along the zigzag. */
function lengthOf(path: Path): number {
  return path.length < 2 ? 0 : distance(path[0] as Point, path.at(-1) as Point);
}

function laidAlong(first: Path, second: Path): EdgeJoin | null {
  const [la, lb] = [lengthOf(first), lengthOf(second)];
  if (la === 0 || lb === 0) return null;
  const step = Math.min(la, lb) * STEP_SHARE;
  const [ra, rb] = [first, second].map(
    (path) => resampled(path, Math.max(2, Math.round(lengthOf(path) / step) + 1)).heights,
  ) as [readonly number[], readonly number[]];
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
 * How often an edge of the same roughness does as well by chance: 500 rivals of the second edge (seeded), each with the
 * amplitudes of its waves kept and their phases drawn anew (surrogates by phase randomisation: Theiler and others, Physica
 * D 58, 1992), are laid along the first. Between 1/501 and 1; the lowest value reads "fewer than one in 500".
 */
export function joinByChance(first: Path, second: Path, seed = 1): number {
  const real = bestJoin(first, second);
  if (!real) return 1;
  const random = seededRandom(seed);
  const rival = rivalsOf(second);
  let asGood = 0;
  for (let trial = 0; trial < JOIN_TRIALS; trial += 1) {
    const other = bestJoin(first, rival(random));
    if (other && scoreOf(other) <= scoreOf(real)) asGood += 1;
  }
  return (asGood + 1) / (JOIN_TRIALS + 1);
}

/** Rivals that an edge is set beside. */
export const JOIN_TRIALS = 500;

/** Root mean square height of an edge about its best line: what can be recognised of it at all. */
export function reliefOf(path: Path): number {
  const { heights } = resampled(path, RELIEF_SAMPLES);
  return heights.length < 2 ? 0 : aboutLine(heights).deviation;
}

const RELIEF_SAMPLES = 60;

/** Makes edges with the waves of one edge in other phases (a real Fourier series over evenly spaced heights). */
function rivalsOf(path: Path): (random: () => number) => Path {
  const { heights, length } = resampled(path, RELIEF_SAMPLES);
  const n = heights.length;
  const mean = heights.reduce((a, b) => a + b, 0) / n;
  const amplitudes = Array.from({ length: Math.floor(n / 2) }, (_, k) => {
    let [re, im] = [0, 0];
    heights.forEach((height, i) => {
      const angle = (2 * Math.PI * (k + 1) * i) / n;
      re += (height - mean) * Math.cos(angle);
      im += (height - mean) * Math.sin(angle);
    });
    return ((k + 1) * 2 === n ? 1 : 2) * (Math.hypot(re, im) / n);
  });
  return (random) => {
    const phases = amplitudes.map(() => 2 * Math.PI * random());
    return heights.map((_, i): Point => {
      const height = amplitudes.reduce(
        (sum, a, k) => sum + a * Math.cos((2 * Math.PI * (k + 1) * i) / n + (phases[k] as number)),
        0,
      );
      return [(i / (n - 1)) * length, height];
    });
  };
}

/**
 * Heights above the line through the ends, at even steps along that line. Where the edge runs back over itself the first crossing counts.
 */
function resampled(path: Path, count: number): { readonly heights: readonly number[]; readonly length: number } {
  const [a, b] = [path[0] as Point, path.at(-1) as Point];
  const length = distance(a, b);
  if (length === 0) return { heights: [], length };
  const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  const along = path.map(([x, y]) => ({ t: (x - a[0]) * ux + (y - a[1]) * uy, h: ux * (y - a[1]) - uy * (x - a[0]) }));
  let segment = 1;
  const heights = Array.from({ length: count }, (_, i) => {
    const t = (i / (count - 1)) * length;
    while (segment < along.length - 1 && (along[segment] as { t: number }).t < t) segment += 1;
    const [from, to] = [along[segment - 1] as { t: number; h: number }, along[segment] as { t: number; h: number }];
    const share = to.t === from.t ? 0 : Math.max(0, Math.min(1, (t - from.t) / (to.t - from.t)));
    return from.h + share * (to.h - from.h);
  });
  return { heights, length };
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
