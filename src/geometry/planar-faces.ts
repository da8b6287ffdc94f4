import { distance, type Path, type Point } from './point.ts';
import { meet, signedArea } from './ring.ts';

/** A piece into which lines divide an outline. */
export interface Face {
  readonly ring: Path;
  /** In the unit of the points, squared. */
  readonly area: number;
}

/** A line that ends inside a piece and divides nothing. */
export interface DanglingEnd {
  /** Which of the lines given, counted from 0. */
  readonly line: number;
  readonly at: Point;
}

/** The pieces of a divided outline, and the lines that end inside one. */
export interface Division {
  readonly faces: readonly Face[];
  readonly dangling: readonly DanglingEnd[];
}

interface Node {
  readonly point: Point;
  /** Neighbours in the order of their direction, counter-clockwise. */
  next: number[];
}

interface Segment {
  readonly a: Point;
  readonly b: Point;
  /** -1 for the outline. */
  readonly line: number;
}

/** An end as near as this to a line lies on it, in the unit of the points: shapes are rounded so when they are read. */
const NEAR = 0.01;

/** Crossings as near as this to each other are one node. */
const GRID = 1e-4;

/**
 * Divides an outline by lines into the faces of the planar graph that they make. Ends of lines are
 * lengthened by the tolerance where that makes them meet a line or the outline; all crossings become nodes on a
 * fine grid; ends that still lead nowhere are cut off and told; what is left is walked round, face by face,
 * always taking the next edge to the right. Works for any directions of the lines.
 */
export function divideOutline(outline: Path, lines: readonly Path[], tolerance: number): Division {
  const fixed = segmentsOf(outline, -1, true);
  const drawn = lines.flatMap((line, i) => segmentsOf(lengthened(line, i, outline, lines, tolerance), i, false));
  const { nodes, owner } = graphOf([...fixed, ...drawn]);
  const dangling = prune(nodes, owner, lines, tolerance);
  const faces = walkFaces(nodes).filter((face) => face.area > 1e-6);
  return { faces, dangling };
}

function segmentsOf(path: Path, line: number, closed: boolean): readonly Segment[] {
  return path.flatMap((a, i) => {
    const b = i + 1 < path.length ? path[i + 1] : closed ? path[0] : undefined;
    return b && distance(a, b) > 0 ? [{ a, b, line }] : [];
  });
}

/** A line whose ends reach on by the tolerance where something is met there. */
function lengthened(line: Path, index: number, outline: Path, lines: readonly Path[], tolerance: number): Path {
  if (line.length < 2) return line;
  const others = [
    ...segmentsOf(outline, -1, true),
    ...lines.flatMap((other, i) => (i === index ? [] : segmentsOf(other, i, false))),
  ];
  const end = (tip: Point, before: Point): Point => {
    const length = distance(before, tip);
    const reach = (length + tolerance) / length;
    const far: Point = [before[0] + (tip[0] - before[0]) * reach, before[1] + (tip[1] - before[1]) * reach];
    const back = Math.max(0, length - tolerance) / length;
    const near: Point = [before[0] + (tip[0] - before[0]) * back, before[1] + (tip[1] - before[1]) * back];
    return others.some(({ a, b }) => meet(near, far, a, b)) ? far : tip;
  };
  const first = end(line[0] as Point, line[1] as Point);
  const last = end(line.at(-1) as Point, line.at(-2) as Point);
  return [first, ...line.slice(1, -1), last];
}

/** Nodes at all ends and crossings; the owner of an edge is the first line that ran along it. */
function graphOf(segments: readonly Segment[]): { readonly nodes: Node[]; readonly owner: Map<string, number> } {
  const nodes: Node[] = [];
  const byPlace = new Map<string, number>();
  const nodeAt = (point: Point): number => {
    const rounded: Point = [Math.round(point[0] / GRID) * GRID, Math.round(point[1] / GRID) * GRID];
    const key = `${Math.round(point[0] / GRID)},${Math.round(point[1] / GRID)}`;
    const known = byPlace.get(key);
    if (known !== undefined) return known;
    byPlace.set(key, nodes.length);
    nodes.push({ point: rounded, next: [] });
    return nodes.length - 1;
  };
  const owner = new Map<string, number>();
  const cuts = cutsOf(segments);
  segments.forEach((segment, i) => {
    const along = [segment.a, ...(cuts[i] ?? []), segment.b].sort(
      (p, q) => distance(segment.a, p) - distance(segment.a, q),
    );
    for (let k = 0; k + 1 < along.length; k += 1) {
      const [from, to] = [nodeAt(along[k] as Point), nodeAt(along[k + 1] as Point)];
      const key = edgeKey(from, to);
      if (from === to || owner.has(key)) continue;
      owner.set(key, segment.line);
      (nodes[from] as Node).next.push(to);
      (nodes[to] as Node).next.push(from);
    }
  });
  return { nodes, owner };
}

function edgeKey(a: number, b: number): string {
  return a < b ? `${a} ${b}` : `${b} ${a}`;
}

/** Points at which each segment is met by others: a sweep over their left ends keeps the pairs few. */
function cutsOf(segments: readonly Segment[]): readonly (readonly Point[])[] {
  const cuts: Point[][] = segments.map(() => []);
  const box = segments.map(({ a, b }) => ({
    left: Math.min(a[0], b[0]) - NEAR,
    right: Math.max(a[0], b[0]) + NEAR,
    low: Math.min(a[1], b[1]) - NEAR,
    high: Math.max(a[1], b[1]) + NEAR,
  }));
  const order = segments.map((_, i) => i).sort((a, b) => (box[a]?.left ?? 0) - (box[b]?.left ?? 0));
  let open: number[] = [];
  for (const i of order) {
    const here = box[i] as (typeof box)[number];
    open = open.filter((j) => (box[j]?.right ?? 0) >= here.left);
    for (const j of open) {
      const there = box[j] as (typeof box)[number];
      if (there.low > here.high || there.high < here.low) continue;
      const [one, other] = [segments[i] as Segment, segments[j] as Segment];
      for (const point of meetings(one, other)) {
        (cuts[i] as Point[]).push(point);
        (cuts[j] as Point[]).push(point);
      }
    }
    open.push(i);
  }
  return cuts;
}

/** Where two segments meet: one point, both ends of an overlap, or an end that lies within the grid of the other. */
function meetings(one: Segment, other: Segment): readonly Point[] {
  const near = [...[one.a, one.b].filter((p) => isNear(p, other)), ...[other.a, other.b].filter((p) => isNear(p, one))];
  if (near.length > 0) return near;
  const at = meet(one.a, one.b, other.a, other.b);
  return at ? [at] : [];
}

function isNear(point: Point, { a, b }: Segment): boolean {
  const length2 = (b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2;
  const t = Math.max(0, Math.min(1, ((point[0] - a[0]) * (b[0] - a[0]) + (point[1] - a[1]) * (b[1] - a[1])) / length2));
  return distance(point, [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]) <= NEAR;
}

/** Cuts off ends that lead nowhere; tells those longer than the tolerance. */
function prune(nodes: Node[], owner: Map<string, number>, lines: readonly Path[], tolerance: number): DanglingEnd[] {
  const dangling: DanglingEnd[] = [];
  const ends = nodes.flatMap((node, i) => (node.next.length === 1 ? [i] : []));
  for (const end of ends) {
    let [at, length, line] = [end, 0, -1];
    for (let node = nodes[at] as Node; node.next.length === 1; node = nodes[at] as Node) {
      const next = node.next[0] as number;
      length += distance(node.point, (nodes[next] as Node).point);
      line = owner.get(edgeKey(at, next)) ?? -1;
      node.next = [];
      const other = nodes[next] as Node;
      other.next = other.next.filter((one) => one !== at);
      at = next;
    }
    if (length > tolerance * 2 && line >= 0 && lines[line]) {
      dangling.push({ line, at: (nodes[end] as Node).point });
    }
  }
  return dangling;
}

/** Walks round every face once; the outside, which runs clockwise, is left out. */
function walkFaces(nodes: readonly Node[]): readonly Face[] {
  for (const node of nodes) {
    const angle = (to: number): number => {
      const other = nodes[to] as Node;
      return Math.atan2(other.point[1] - node.point[1], other.point[0] - node.point[0]);
    };
    node.next.sort((a, b) => angle(a) - angle(b));
  }
  const walked = new Set<string>();
  const faces: Face[] = [];
  nodes.forEach((node, from) => {
    for (const to of node.next) {
      if (walked.has(`${from} ${to}`)) continue;
      const ring: Point[] = [];
      for (let [a, b] = [from, to]; !walked.has(`${a} ${b}`); ) {
        walked.add(`${a} ${b}`);
        ring.push((nodes[a] as Node).point);
        const around = (nodes[b] as Node).next;
        const turnTo = around[(around.indexOf(a) + around.length - 1) % around.length] as number;
        [a, b] = [b, turnTo];
      }
      const area = signedArea(ring);
      if (area > 0) faces.push({ ring, area });
    }
  });
  return faces;
}
