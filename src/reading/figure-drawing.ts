import type { Diagnostic } from '../base/diagnostic.ts';
import { phrase, type Said } from '../base/said.ts';
import type { Entry } from '../model/entry.ts';
import { type DrawnElement, type DrawnPath, readDrawing } from './drawing.ts';
import { besideEntry, type FoundPictures, pictureOf } from './figure-pictures.ts';
import type { TextFile } from './text-file.ts';

/** The named lines of a figure's drawing, all points in pixels of its picture. */
export function readFigureDrawing(
  figure: Entry<'figure'>,
  drawings: readonly TextFile[],
  pictures: FoundPictures,
  problems: Diagnostic[],
): readonly DrawnElement[] | null {
  const name = figure.keys.shapes ?? '';
  const refuse = (message: Said, mend: Said): null => {
    problems.push({
      code: 'drawing-not-usable',
      severity: 'error',
      place: figure.placeOf(['shapes']),
      entry: figure.id,
      message,
      mend,
    });
    return null;
  };
  const file = drawings.find((one) => one.file === besideEntry(figure.file, name));
  if (!file)
    return refuse(
      phrase('the drawing "{0}" does not stand beside this entry, or cannot be read as text', name),
      phrase(
        'put it there as plain SVG, not compressed (.svgz) and not in the format of the drawing program, or correct its name',
      ),
    );
  const drawing = readDrawing(file.text);
  if ('fault' in drawing)
    return refuse(
      phrase('the drawing "{0}" cannot be read, at its line {1}: {2}', name, drawing.line, drawing.fault),
      phrase('save it anew from the drawing program, as plain SVG'),
    );
  const size = pictureOf(figure, pictures);
  if (!size)
    return refuse(
      phrase('the picture "{0}" is missing, so nothing can be laid over it', figure.keys.file),
      phrase('put the picture beside this entry'),
    );
  const ours = baseName(figure.keys.file);
  const image =
    drawing.images.find((one) => baseName(one.href) === ours) ?? drawing.images.find((one) => one.href === '');
  const stranger = drawing.images[0];
  if (!image && stranger)
    return refuse(
      phrase('the drawing "{0}" lies over the picture "{1}", not over "{2}"', name, baseName(stranger.href), ours),
      phrase('draw over the picture of this figure, or name the drawing in the entry of the other figure'),
    );
  const placing = image?.place ?? drawing.extent;
  if (!placing)
    return refuse(
      phrase('the drawing "{0}" has no extent', name),
      phrase('save it anew with a page size, or with the photograph in it'),
    );
  const [a, b, c, d, e, f] = placing;
  const shown = Math.hypot(a, b) / Math.hypot(c, d);
  if (Math.abs(shown / (size.width / size.height) - 1) > PROPORTION)
    return refuse(
      phrase(
        'the drawing "{0}" is {1} times as wide as high, its photograph {2} times',
        name,
        shown.toFixed(3),
        (size.width / size.height).toFixed(3),
      ),
      phrase(
        'draw over the whole photograph, with the page as large as the photograph, or leave the photograph in the drawing',
      ),
    );
  const determinant = a * d - b * c;
  const toPixel = ([u, v]: readonly [number, number]): [number, number] => [
    ((d * (u - e) - c * (v - f)) / determinant) * size.width,
    ((a * (v - f) - b * (u - e)) / determinant) * size.height,
  ];
  const moved = new Map<DrawnPath, DrawnPath>();
  const inPixels = (path: DrawnPath): DrawnPath => {
    const known = moved.get(path) ?? { closed: path.closed, element: path.element, points: path.points.map(toPixel) };
    moved.set(path, known);
    return known;
  };
  return drawing.elements.map((one) => ({ name: one.name, paths: one.paths.map(inPixels) }));
}

/** By how much the proportions of drawing and photograph may differ: rounding of the page's size. */
const PROPORTION = 0.005;

function baseName(address: string): string {
  return (
    decodeURI(address.replace(/%(?![0-9a-f]{2})/gi, '%25'))
      .split(/[\\/]/)
      .at(-1) ?? ''
  );
}
