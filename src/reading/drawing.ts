import { parseXml, type XmlDocument, XmlElement, XmlError } from '@rgrove/parse-xml';
import svgpath from 'svgpath';
import { phrase, type Said } from '../base/said.ts';

/** An element of a drawing that carries a name, in the drawing's own units. */
export interface DrawnElement {
  /** Id or layer name as it stands in the drawing. */
  readonly name: string;
  readonly paths: readonly DrawnPath[];
}

/** A line of a drawing, its curves made straight to within a twenty-thousandth of the drawing's width. */
export interface DrawnPath {
  readonly points: readonly (readonly [number, number])[];
  readonly closed: boolean;
  /** The element that it was drawn by: closed lines of one element may be holes of each other. */
  readonly element: object;
}

/** A drawing over a photograph: its named elements, and where the photograph lies in it. */
export interface Drawing {
  readonly elements: readonly DrawnElement[];
  /** Pictures in the drawing: the address (empty where the picture itself is inside) and the place. */
  readonly images: readonly { readonly href: string; readonly place: Placing }[];
  /** The page of the drawing; null where it has none. */
  readonly extent: Placing | null;
}

/** Where a picture of one by one lies: u = a x + c y + e, v = b x + d y + f. */
export type Placing = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

/** Why a drawing cannot be read, with the line of the SVG where that is known. */
export interface DrawingFault {
  readonly fault: Said;
  readonly line: number;
  readonly column: number;
}

/** How far a straight piece may lie from its curve, as a share of the drawing's width. */
const FLATNESS = 1 / 20_000;

/**
 * Reads an SVG as a vector editor writes it. Every element with an id, and every layer with a label, is kept by
 * name with all lines below it; transforms are applied. Links, scripts, styles and entities are never followed.
 */
export function readDrawing(text: string): Drawing | DrawingFault {
  let document: XmlDocument;
  try {
    document = parseXml(text, { ignoreUndefinedEntities: true });
  } catch (error) {
    const known = error instanceof XmlError ? error : { message: String(error), line: 1, column: 1 };
    return { fault: known.message.split('\n')[0] ?? '', line: known.line, column: known.column };
  }
  const root = document.root;
  if (root?.name.replace(/^.*:/, '') !== 'svg')
    return { fault: phrase('the file holds no svg element'), line: 1, column: 1 };
  const elements: DrawnElement[] = [];
  const images: { readonly href: string; readonly place: Placing }[] = [];
  const extent = extentOf(root);
  const flatness = (extent ? Math.hypot(extent[0], extent[1]) : 1000) * FLATNESS;
  const visit = (element: XmlElement, transforms: readonly string[]): readonly DrawnPath[] => {
    const kind = element.name.replace(/^.*:/, '');
    if (['defs', 'clipPath', 'mask', 'symbol', 'pattern', 'marker', 'metadata'].includes(kind)) return [];
    if (isHidden(element)) return [];
    const own =
      element.attributes.transform ??
      /(?:^|;)\s*transform:\s*([^;]+)/.exec(element.attributes.style ?? '')?.[1]?.replaceAll('px', '');
    const here = own === undefined || own === '' ? transforms : [own, ...transforms];
    if (kind === 'image') {
      const place = placeOfImage(element, here);
      const href = element.attributes['xlink:href'] ?? element.attributes.href ?? '';
      if (place) images.push({ href: href.startsWith('data:') ? '' : href, place });
    }
    const below = element.children.flatMap((child) => (child instanceof XmlElement ? visit(child, here) : []));
    const data = pathDataOf(kind, element.attributes);
    const paths = [...(data === '' ? [] : straighten(data, here, flatness, element)), ...below];
    const names = new Set(
      [element.attributes.id, element.attributes['inkscape:label'], element.attributes['data-name']].map(unescaped),
    );
    for (const name of names) if (name && paths.length > 0) elements.push({ name, paths });
    return paths;
  };
  for (const child of root.children) if (child instanceof XmlElement) visit(child, []);
  return { elements, images, extent };
}

/** Layers that are switched off are not drawn, so they are not read. */
function isHidden({ attributes }: XmlElement): boolean {
  const style = attributes.style ?? '';
  return (
    attributes.display === 'none' ||
    attributes.visibility === 'hidden' ||
    /(?:display:\s*none|visibility:\s*hidden)/.test(style)
  );
}

/** Some programs write signs that XML names may not hold as `_x5F_`. */
function unescaped(name: string | undefined): string {
  return (name ?? '').replace(/_x([0-9A-F]{2})_/g, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)));
}

/** The path data that draws an element; empty for what draws nothing. */
function pathDataOf(kind: string, at: Readonly<Record<string, string>>): string {
  const value = (key: string): number => Number.parseFloat(at[key] ?? '') || 0;
  switch (kind) {
    case 'path':
      return at.d ?? '';
    case 'line':
      return `M${value('x1')} ${value('y1')}L${value('x2')} ${value('y2')}`;
    case 'polyline':
    case 'polygon': {
      const numbers = (at.points ?? '').match(/-?\d*\.?\d+(?:e[-+]?\d+)?/gi) ?? [];
      return numbers.length < 4 ? '' : `M${numbers.join(' ')}${kind === 'polygon' ? 'Z' : ''}`;
    }
    case 'rect':
      return `M${value('x')} ${value('y')}h${value('width')}v${value('height')}h${-value('width')}Z`;
    case 'circle':
    case 'ellipse': {
      const [rx, ry] = kind === 'circle' ? [value('r'), value('r')] : [value('rx'), value('ry')];
      return `M${value('cx') - rx} ${value('cy')}a${rx} ${ry} 0 1 0 ${2 * rx} 0a${rx} ${ry} 0 1 0 ${-2 * rx} 0Z`;
    }
    default:
      return '';
  }
}

type Pair = readonly [number, number];

/** Subpaths as points; Wang's bound gives the number of pieces of a curve (cited in Farin, Curves and Surfaces for CAGD; from memory). */
function straighten(
  data: string,
  transforms: readonly string[],
  flatness: number,
  element: object,
): readonly DrawnPath[] {
  let path = svgpath(data);
  for (const one of transforms) path = path.transform(one);
  const found: { points: Pair[]; closed: boolean }[] = [];
  let current: { points: Pair[]; closed: boolean } | null = null;
  let at: Pair = [0, 0];
  let start: Pair = [0, 0];
  path
    .abs()
    .unarc()
    .unshort()
    .iterate((segment) => {
      const [command, ...numbers] = segment as [string, ...number[]];
      if (command === 'M') {
        start = [numbers[0] ?? 0, numbers[1] ?? 0];
        at = start;
        current = { points: [at], closed: false };
        found.push(current);
        return;
      }
      if (command === 'Z') {
        if (current) current.closed = true;
        at = start;
        current = null;
        return;
      }
      if (current === null) {
        current = { points: [at], closed: false };
        found.push(current);
      }
      if (command === 'H') at = [numbers[0] ?? 0, at[1]];
      else if (command === 'V') at = [at[0], numbers[0] ?? 0];
      else if (command === 'L') at = [numbers[0] ?? 0, numbers[1] ?? 0];
      else {
        const controls = [at, ...pairs(numbers)];
        current.points.push(...alongCurve(controls, flatness).slice(1, -1));
        at = controls.at(-1) as Pair;
      }
      current.points.push(at);
    });
  return found
    .map((one) => ({ ...one, element }))
    .filter((one) => one.points.length > 1 && one.points.every(([x, y]) => Number.isFinite(x) && Number.isFinite(y)));
}

function pairs(numbers: readonly number[]): readonly Pair[] {
  return Array.from({ length: Math.floor(numbers.length / 2) }, (_, i) => [
    numbers[2 * i] ?? 0,
    numbers[2 * i + 1] ?? 0,
  ]);
}

/** Points along a Bezier curve of second or third degree, ends included. */
function alongCurve(controls: readonly Pair[], flatness: number): readonly Pair[] {
  const degree = controls.length - 1;
  const bends = controls.slice(0, -2).map(([x, y], i) => {
    const [[x1, y1], [x2, y2]] = [controls[i + 1] as Pair, controls[i + 2] as Pair];
    return Math.hypot(x - 2 * x1 + x2, y - 2 * y1 + y2);
  });
  const pieces = Math.min(
    200,
    Math.max(1, Math.ceil(Math.sqrt((degree * (degree - 1) * Math.max(...bends)) / (8 * flatness)))),
  );
  return Array.from({ length: pieces + 1 }, (_, i) => casteljau(controls, i / pieces));
}

function casteljau(controls: readonly Pair[], t: number): Pair {
  let level = controls;
  while (level.length > 1) {
    const above = level;
    level = above.slice(1).map(([x, y], i): Pair => {
      const [u, v] = above[i] as Pair;
      return [u + t * (x - u), v + t * (y - v)];
    });
  }
  return level[0] as Pair;
}

/** Where the corners of an image element lie: its box moved by all transforms. */
function placeOfImage(element: XmlElement, transforms: readonly string[]): Placing | null {
  const [x = 0, y = 0, width = 0, height = 0] = ['x', 'y', 'width', 'height'].map(
    (key) => Number.parseFloat(element.attributes[key] ?? '') || 0,
  );
  if (!(width > 0 && height > 0)) return null;
  const [box] = straighten(`M${x} ${y}h${width}v${height}`, transforms, 1, element);
  const [o, u, w] = box?.points ?? [];
  if (!o || !u || !w) return null;
  return [u[0] - o[0], u[1] - o[1], w[0] - u[0], w[1] - u[1], o[0], o[1]];
}

/** The page of the drawing: its viewBox, else its width and height. */
function extentOf(root: XmlElement): Placing | null {
  const box = (root.attributes.viewBox ?? '')
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  const [x = 0, y = 0, width = 0, height = 0] =
    box.length === 4 && box.every(Number.isFinite)
      ? box
      : [0, 0, Number.parseFloat(root.attributes.width ?? ''), Number.parseFloat(root.attributes.height ?? '')];
  return width > 0 && height > 0 ? [width, 0, 0, height, x, y] : null;
}
