import { readFile, realpath } from 'node:fs/promises';
import path from 'node:path';
import { phrase } from '../base/said.ts';
import type { CaseFile } from '../findings/case-file.ts';
import type { Step } from './effects.ts';
import { keyOf, type PictureStore } from './picture-store.ts';

/** Widest picture that a page shows, in pixels. */
const WIDEST = 1600;

/** How photographs are written: what would make them a tenth smaller takes three times as long. */
export const PHOTOGRAPH = { quality: 82, mozjpeg: true, trellisQuantisation: false, optimizeScans: false } as const;

/** A picture of the site: its address, and pixels of it a pixel of the file. */
export interface WrittenPicture {
  readonly address: string;
  readonly scale: number;
  /** What it was made from, for the store of pictures. */
  readonly key: string;
  /** The file that it was made from, and its size in pixels, upright. */
  readonly source: string;
  readonly size: { readonly width: number; readonly height: number };
}

/**
 * Puts the pictures of figure entries into a store, scaled and without any metadata (EXIF, GPS); returns
 * their addresses and scales by entry id. Figures whose file is missing, is no picture, or lies outside the workspace have none.
 */
export async function writePictures(
  file: CaseFile,
  folder: string,
  store: PictureStore,
  progress?: (step: Step) => void,
): Promise<ReadonlyMap<string, WrittenPicture>> {
  const figures = file.catalogue.ofType('figure').filter((figure) => !(figure.withheld ?? []).includes('image'));
  const pictures = new Map<string, WrittenPicture>();
  if (figures.length === 0) return pictures;
  const { default: sharp } = await import('sharp');
  const inside = await realpath(path.join(folder, 'entries')).catch(() => folder);
  for (const [done, figure] of figures.entries()) {
    progress?.({ what: phrase('Pictures'), done: done + 1, all: figures.length });
    const source = path.join(folder, path.dirname(figure.file), figure.keys.file);
    const real = await realpath(source).catch(() => null);
    if (real === null || !real.startsWith(inside + path.sep)) continue;
    const address = `figures/${figure.id}.jpg`;
    const found = await sharp(real)
      .metadata()
      .catch(() => null);
    if (found === null) continue;
    const { width = 0, height = 0, orientation = 1 } = found;
    const key = keyOf(await readFile(real), String(WIDEST));
    await store.put(address, key, (to) =>
      sharp(real)
        .rotate()
        .resize({ width: WIDEST, withoutEnlargement: true })
        .flatten({ background: '#ffffff' })
        .jpeg(PHOTOGRAPH)
        .toFile(to),
    );
    // Orientations 5 to 8 stand on their side in the file.
    const size = orientation >= 5 ? { width: height, height: width } : { width, height };
    pictures.set(figure.id, { address, scale: Math.min(1, WIDEST / size.width), key, source: real, size });
  }
  return pictures;
}
