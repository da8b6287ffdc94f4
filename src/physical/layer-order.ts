import { naturalOrder } from '../base/natural-order.ts';
import { strongComponents } from '../base/strong-components.ts';

/** One unit above another; `kind` is the word of the entry. */
export interface LayerRelation {
  readonly upper: string;
  readonly lower: string;
  readonly kind: 'over' | 'cuts' | 'fills';
}

/** The order of layers, for a diagram. */
export interface LayerOrder {
  /** Units, those said to be the same in one box; in natural order. */
  readonly boxes: readonly (readonly string[])[];
  /** Relations between boxes (by place) that no other way already says: the transitive reduction. */
  readonly lines: readonly { readonly upper: number; readonly lower: number; readonly kinds: readonly string[] }[];
  /** Relations left out of the diagram, since others say them; all of them still bound dates. */
  readonly redundant: readonly LayerRelation[];
  /** Boxes that lie on a loop: each above the next and the last above the first. */
  readonly loops: readonly (readonly number[])[];
}

/**
 * Orders units by superposition and succession (Harris, World Archaeology 11, 1979; his two laws of horizontality and continuity do
 * not carry over to walls). Units that are the same share a box; a loop is told and left out of the reduction. The reduction of
 * an order without loops is unique (Aho, Garey and Ullman, SIAM Journal on Computing 1, 1972). Units without an order
 * to each other stay so.
 */
export function orderLayers(
  units: readonly string[],
  relations: readonly LayerRelation[],
  same: readonly (readonly [string, string])[],
): LayerOrder {
  const boxOf = joined(units, same);
  const boxes: string[][] = [];
  const numbers = new Map<string, number>();
  for (const unit of [...units].sort(naturalOrder)) {
    const root = boxOf(unit);
    const known = numbers.get(root);
    if (known === undefined) {
      numbers.set(root, boxes.length);
      boxes.push([unit]);
    } else (boxes[known] as string[]).push(unit);
  }
  const place = (unit: string): number => numbers.get(boxOf(unit)) as number;
  const byPair = new Map<string, { upper: number; lower: number; list: LayerRelation[] }>();
  for (const relation of relations) {
    const [upper, lower] = [place(relation.upper), place(relation.lower)];
    if (upper === undefined || lower === undefined) continue;
    const key = `${upper} ${lower}`;
    const pair = byPair.get(key) ?? { upper, lower, list: [] };
    pair.list.push(relation);
    byPair.set(key, pair);
  }
  const pairs = [...byPair.values()];
  const loops = findLoops(boxes.length, pairs);
  const looping = new Map(loops.flatMap((loop, i) => loop.map((box) => [box, i] as const)));
  const inOrder = pairs.filter(
    ({ upper, lower }) => upper !== lower && (!looping.has(upper) || looping.get(upper) !== looping.get(lower)),
  );
  const kept = reduce(boxes.length, inOrder);
  const isKept = new Set(kept);
  return {
    boxes,
    lines: kept.map(({ upper, lower, list }) => ({ upper, lower, kinds: [...new Set(list.map((one) => one.kind))] })),
    redundant: inOrder.filter((pair) => !isKept.has(pair)).flatMap((pair) => pair.list),
    loops,
  };
}

interface Pair {
  readonly upper: number;
  readonly lower: number;
  readonly list: readonly LayerRelation[];
}

function joined(units: readonly string[], same: readonly (readonly [string, string])[]): (unit: string) => string {
  const parent = new Map(units.map((unit) => [unit, unit]));
  const root = (unit: string): string => {
    let at = unit;
    for (let up = parent.get(at); up !== undefined && up !== at; up = parent.get(at)) at = up;
    return at;
  };
  for (const [a, b] of same) if (parent.has(a) && parent.has(b)) parent.set(root(a), root(b));
  return root;
}

function listsOf(count: number, pairs: readonly Pair[]): readonly (readonly number[])[] {
  const below: number[][] = Array.from({ length: count }, () => []);
  for (const { upper, lower } of pairs) (below[upper] as number[]).push(lower);
  return below;
}

/** Groups of boxes each above all others of the group, and boxes above themselves. */
function findLoops(count: number, pairs: readonly Pair[]): readonly (readonly number[])[] {
  const below = listsOf(count, pairs);
  return strongComponents(count, (box, k) => below[box]?.[k]).filter(
    ([first = 0, ...rest]) => rest.length > 0 || below[first]?.includes(first),
  );
}

/**
 * Keeps a pair only where no longer way leads from upper to lower. Boxes are taken from the lowest up; each keeps the set of
 * what lies below it as bits. Pairs inside a loop were taken out before, so an order of all boxes exists except
 * where a loop's members lie above and below each other through others, which cannot be.
 */
function reduce(count: number, pairs: readonly Pair[]): readonly Pair[] {
  const below = listsOf(count, pairs);
  const level = levels(count, below);
  const order = Array.from({ length: count }, (_, i) => i).sort((a, b) => (level[a] as number) - (level[b] as number));
  const words = Math.ceil(count / 32);
  const reach: Int32Array[] = [];
  const kept = new Set<string>();
  for (const box of order) {
    const bits = new Int32Array(words);
    const lowers = [...new Set(below[box])].sort((a, b) => (level[b] as number) - (level[a] as number));
    for (const lower of lowers) {
      if (((bits[lower >> 5] as number) >> (lower & 31)) & 1) continue;
      kept.add(`${box} ${lower}`);
      bits[lower >> 5] = (bits[lower >> 5] as number) | (1 << (lower & 31));
      const further = reach[lower];
      if (further) for (let w = 0; w < words; w += 1) bits[w] = (bits[w] as number) | (further[w] as number);
    }
    reach[box] = bits;
  }
  return pairs.filter(({ upper, lower }) => kept.has(`${upper} ${lower}`));
}

/** How many boxes lie one below the other under each, at most; 0 at the foot. From the foot upwards (Kahn 1962). */
function levels(count: number, below: readonly (readonly number[])[]): Int32Array {
  const level = new Int32Array(count);
  const waiting = Int32Array.from(below, (list) => list.length);
  const above: number[][] = Array.from({ length: count }, () => []);
  below.forEach((list, box) => {
    for (const lower of list) (above[lower] as number[]).push(box);
  });
  const ready = Array.from({ length: count }, (_, i) => i).filter((box) => waiting[box] === 0);
  for (let next = 0; next < ready.length; next += 1) {
    const box = ready[next] as number;
    for (const upper of above[box] as number[]) {
      level[upper] = Math.max(level[upper] as number, (level[box] as number) + 1);
      waiting[upper] = (waiting[upper] as number) - 1;
      if (waiting[upper] === 0) ready.push(upper);
    }
  }
  return level;
}
