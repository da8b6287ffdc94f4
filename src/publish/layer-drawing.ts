import type { ElkNode } from 'elkjs/lib/elk.bundled.js';
import { allOf, inRow, named, type Said } from '../base/said.ts';
import type { LayerOrder } from '../physical/layer-order.ts';

/** A box of a layer diagram: units that are one, with their titles. */
export interface LayerBox {
  /** Place of the box in the order's `boxes`. */
  readonly box: number;
  readonly units: readonly string[];
  readonly titles: readonly string[];
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly onLoop: boolean;
}

/** A layer diagram laid out, in pixels; the earliest at the foot. */
export interface LayerDrawing {
  readonly width: number;
  readonly height: number;
  readonly boxes: readonly LayerBox[];
  readonly lines: readonly { readonly points: readonly (readonly [number, number])[]; readonly words: Said }[];
  /** Units without any relation; they are named, not drawn. */
  readonly apart: readonly string[];
}

const LETTER = 6.7;
const LINE = 17;
const PADDING = 9;

/**
 * Lays out an order of layers with the layered method of the Eclipse Layout Kernel (elkjs): lines orthogonal and never
 * through a box, a box no higher than what lies over it lets it be. The kernel is deterministic, its seed fixed.
 */
export async function layOutLayers(order: LayerOrder, titleOf: (unit: string) => string): Promise<LayerDrawing | null> {
  if (order.lines.length === 0) return null;
  const related = new Set([...order.lines.flatMap(({ upper, lower }) => [upper, lower]), ...order.loops.flat()]);
  const depth = depths(order);
  const shown = order.boxes.flatMap((units, box) => {
    if (!related.has(box)) return [];
    const titles = units.map((unit) => shorten(titleOf(unit)));
    const longest = Math.max(...titles.map((title) => title.length), ...units.map((unit) => unit.length * 0.86));
    return [
      {
        box,
        units,
        titles,
        width: Math.ceil(longest * LETTER + 2 * PADDING),
        height: units.length * 2 * LINE + PADDING,
      },
    ];
  });
  const graph: ElkNode = {
    id: 'layers',
    layoutOptions: {
      'elk.algorithm': 'layered',
      'elk.direction': 'DOWN',
      'elk.edgeRouting': 'ORTHOGONAL',
      'elk.partitioning.activate': 'true',
      'elk.randomSeed': '1',
      'elk.spacing.nodeNode': '22',
      'elk.layered.spacing.nodeNodeBetweenLayers': '30',
      'elk.layered.spacing.edgeNodeBetweenLayers': '12',
    },
    children: shown.map(({ box, width, height }) => ({
      id: String(box),
      width,
      height,
      layoutOptions: { 'elk.partitioning.partition': String(depth[box] ?? 0) },
    })),
    edges: order.lines.map(({ upper, lower }, i) => ({
      id: `line ${i}`,
      sources: [String(upper)],
      targets: [String(lower)],
    })),
  };
  // Large, and only wanted where there are layers.
  const { default: elk } = await import('elkjs/lib/elk.bundled.js');
  const laid = await new elk.default().layout(graph);
  const places = new Map((laid.children ?? []).map((node) => [node.id, node]));
  const loops = new Set(order.loops.flat());
  return {
    width: Math.ceil(laid.width ?? 0),
    height: Math.ceil(laid.height ?? 0),
    boxes: shown.map((one) => ({
      ...one,
      x: places.get(String(one.box))?.x ?? 0,
      y: places.get(String(one.box))?.y ?? 0,
      onLoop: loops.has(one.box),
    })),
    lines: (laid.edges ?? []).map((edge, i) => {
      const line = order.lines[i];
      const points = (edge.sections ?? []).flatMap(({ startPoint, bendPoints = [], endPoint }) =>
        [startPoint, ...bendPoints, endPoint].map(({ x, y }) => [x, y] as const),
      );
      const name = (box = 0): string => (order.boxes[box] ?? []).join(' = ');
      const kinds = allOf((line?.kinds ?? []).map(named));
      return { points, words: inRow([name(line?.upper), kinds, name(line?.lower)], ' ') };
    }),
    apart: order.boxes.flatMap((units, box) => (related.has(box) ? [] : units)),
  };
}

/** How many boxes lie above each, at most; boxes of a loop count from what is ordered about them. */
function depths({ boxes, lines }: LayerOrder): readonly number[] {
  const depth = boxes.map(() => 0);
  const below = boxes.map(() => [] as number[]);
  const waiting = boxes.map(() => 0);
  for (const { upper, lower } of lines) {
    below[upper]?.push(lower);
    waiting[lower] = (waiting[lower] ?? 0) + 1;
  }
  const ready = boxes.flatMap((_, box) => (waiting[box] === 0 ? [box] : []));
  for (let next = 0; next < ready.length; next += 1) {
    const upper = ready[next] as number;
    for (const lower of below[upper] ?? []) {
      depth[lower] = Math.max(depth[lower] ?? 0, (depth[upper] ?? 0) + 1);
      waiting[lower] = (waiting[lower] ?? 0) - 1;
      if (waiting[lower] === 0) ready.push(lower);
    }
  }
  return depth;
}

function shorten(title: string): string {
  return title.length > 44 ? `${title.slice(0, 43).trimEnd()}…` : title;
}
