import type { Diagnostic } from '../base/diagnostic.ts';
import { nearest } from '../base/nearest.ts';
import { phrase, type Said } from '../base/said.ts';
import { type Entry, isOfType } from '../model/entry.ts';

/** Width and height of a picture file in pixels, upright. */
export interface PictureSize {
  readonly width: number;
  readonly height: number;
}

/** What loading found of a picture file: its size, or why it has none. */
export type FoundPicture = PictureSize | 'outside' | 'not a picture';

/** Pictures below `entries/`, by file. */
export type FoundPictures = ReadonlyMap<string, FoundPicture>;

/** The size of the picture that a figure names; null where there is no such picture. */
export function pictureOf(figure: Entry<'figure'>, pictures: FoundPictures): PictureSize | null {
  const found = pictures.get(besideEntry(figure.file, figure.keys.file));
  return typeof found === 'object' ? found : null;
}

/** Figures whose picture is missing, lies outside the workspace, or is no picture. */
export function checkFigurePictures(entries: readonly Entry[], pictures: FoundPictures): readonly Diagnostic[] {
  return entries.flatMap((figure): readonly Diagnostic[] => {
    if (!isOfType(figure, 'figure')) return [];
    const name = figure.keys.file;
    const file = besideEntry(figure.file, name);
    const found = file.startsWith('entries/') ? pictures.get(file) : 'outside';
    if (typeof found === 'object') return [];
    const report = (
      code: string,
      severity: Diagnostic['severity'],
      message: Said,
      mend: Said,
    ): readonly Diagnostic[] => [{ code, severity, place: figure.placeOf(['file']), entry: figure.id, message, mend }];
    if (found === 'outside')
      return report(
        'picture-outside',
        'error',
        phrase('the picture "{0}" lies outside the folder entries/, so it is not shown', name),
        phrase('copy the picture itself into entries/, and write its path from this entry'),
      );
    if (found === 'not a picture')
      return report(
        'picture-not-read',
        'error',
        phrase('the file "{0}" cannot be read as a picture', name),
        phrase('save it anew as JPEG, PNG, TIFF, WebP or SVG; a file that was renamed keeps its old format'),
      );
    const [near] = nearest(file, pictures.keys(), 1);
    return report(
      'picture-missing',
      'doubt',
      phrase('the picture "{0}" does not stand where this entry says, so none is shown', name),
      near === undefined || !figure.file.startsWith(near.slice(0, near.lastIndexOf('/') + 1))
        ? phrase('put it there ({0}), or correct its name; capital and small letters count', file)
        : phrase('did you mean "{0}"? else put it there ({1})', near.slice(near.lastIndexOf('/') + 1), file),
    );
  });
}

/** A path from the folder of an entry; one that leads above the workspace keeps its dots. */
export function besideEntry(file: string, name: string): string {
  const parts = file.split('/').slice(0, -1);
  for (const part of name.split('/')) {
    if (part === '..') {
      if (parts.length === 0) return name;
      parts.pop();
    } else if (part !== '.' && part !== '') parts.push(part);
  }
  return parts.join('/');
}
