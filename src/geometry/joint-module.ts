import { seededRandom } from './seeded-random.ts';

/** Whether lines stand at a regular distance. */
export interface JointModule {
  /** The distance that fits best, and where the first line would stand, in the unit of the positions. */
  readonly module: number;
  readonly start: number;
  /** Root mean square distance of the lines from the regular places. */
  readonly deviation: number;
  /** Variance about the places as a share of that of lines anywhere (module squared / 12). */
  readonly score: number;
  /** How often lines placed at random over the same width do as well: 0 to 1. */
  readonly byChance: number;
  /** True where the score is far better than chance gives: below 0.05, and by chance in under one case of a hundred. */
  readonly isRegular: boolean;
}

/** Fewest lines from which a module is sought. */
export const LEAST_JOINTS = 5;

const TRIALS = 400;

/**
 * Looks for a module: positions = start + k x module + error, whole numbers k, some lines missing. Modules from a
 * quarter of the least spacing's scale to the greatest spacing are scanned; for each the lines take their nearest
 * places and a straight line is fitted. The same search on random lines (seeded) tells how often
 * chance does as well. Null for fewer than five lines ("too few"). The largest module that fits as well as the best
 * is taken, since every part of a module fits too.
 */
export function findModule(positions: readonly number[], seed = 1): JointModule | null {
  if (positions.length < LEAST_JOINTS) return null;
  const best = bestModule(positions);
  if (!best) return null;
  const random = seededRandom(seed);
  const [low, high] = [Math.min(...positions), Math.max(...positions)];
  let asGood = 0;
  for (let trial = 0; trial < TRIALS; trial += 1) {
    const lines = [low, high, ...positions.slice(2).map(() => low + random() * (high - low))];
    if ((bestModule(lines)?.score ?? 1) <= best.score) asGood += 1;
  }
  const byChance = (asGood + 1) / (TRIALS + 1);
  return { ...best, byChance, isRegular: best.score < 0.05 && byChance < 0.01 };
}

function bestModule(positions: readonly number[]): Omit<JointModule, 'byChance' | 'isRegular'> | null {
  const sorted = [...positions].sort((a, b) => a - b);
  const gaps = sorted.slice(1).map((position, i) => position - (sorted[i] as number));
  const greatest = Math.max(...gaps);
  const width = (sorted.at(-1) as number) - (sorted[0] as number);
  if (width <= 0) return null;
  // No module finer than would give more places than four times the lines: anything fits a fine enough comb.
  const least = Math.max(width / (sorted.length * 4), greatest / 6);
  const steps = Math.ceil((greatest * 1.05 - least) / (least / (4 * sorted.length)));
  const fits = Array.from({ length: steps + 1 }, (_, i) =>
    fitAt(sorted, least + (i * (greatest * 1.05 - least)) / steps),
  );
  const found = fits.filter((fit) => fit !== null);
  if (found.length === 0) return null;
  const lowest = Math.min(...found.map((fit) => fit.score));
  const adequate = found.filter((fit) => fit.score <= Math.max(lowest * 1.5, lowest + 0.002));
  return adequate.reduce((a, b) =>
    b.module > a.module * 1.2 || (b.score < a.score && b.module > a.module / 1.2) ? b : a,
  );
}

/** Rounds the lines to their nearest places and fits module and start by least squares, twice over. */
function fitAt(sorted: readonly number[], guess: number): Omit<JointModule, 'byChance' | 'isRegular'> | null {
  const n = sorted.length;
  let meanPosition = 0;
  for (const position of sorted) meanPosition += position;
  meanPosition /= n;
  let [module, start] = [guess, sorted[0] as number];
  for (let round = 0; round < 3; round += 1) {
    let meanPlace = 0;
    for (const position of sorted) meanPlace += Math.round((position - start) / module);
    meanPlace /= n;
    let [pp, px] = [0, 0];
    for (const position of sorted) {
      const place = Math.round((position - start) / module) - meanPlace;
      pp += place * place;
      px += place * (position - meanPosition);
    }
    if (pp === 0 || px <= 0) return null;
    module = px / pp;
    start = meanPosition - module * meanPlace;
  }
  let squares = 0;
  for (const position of sorted) {
    const off = position - start - module * Math.round((position - start) / module);
    squares += off * off;
  }
  const variance = squares / Math.max(1, n - 2);
  return { module, start, deviation: Math.sqrt(squares / n), score: variance / (module ** 2 / 12) };
}
