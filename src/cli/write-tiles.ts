import { mkdir, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import type { TiledPicture } from '../../site/context.ts';
import { keyOf, type PictureStore } from './picture-store.ts';
import type { WrittenPicture } from './write-pictures.ts';

/** A picture whose longer side has more pixels than this is cut into tiles. */
const LARGE = 2000;

const TILE = 512;

/**
 * Cuts large figures into static tiles as the IIIF Image API 3 describes its level 0 (with `sizes` and `full/max`, which a
 * plain tiler leaves out), without metadata. `info.json` needs an absolute address, so it is written only where the
 * workspace has a `base-url`; the pages of the site do not need it.
 */
export async function writeTiles(
  pictures: ReadonlyMap<string, WrittenPicture>,
  baseUrl: string | null,
  store: PictureStore,
): Promise<ReadonlyMap<string, TiledPicture>> {
  const tiled = new Map<string, TiledPicture>();
  for (const [figure, picture] of pictures) {
    const { width, height } = picture.size;
    if (Math.max(width, height) <= LARGE) continue;
    const address = `tiles/${figure}`;
    const scaleFactors = Array.from(
      { length: Math.ceil(Math.log2(Math.max(width, height) / TILE)) + 1 },
      (_, i) => 2 ** i,
    );
    const sizes = scaleFactors
      .map((factor) => ({ width: Math.ceil(width / factor), height: Math.ceil(height / factor) }))
      .filter((size) => size.width <= 1600)
      .reverse();
    await store.put(address, keyOf(picture.key, String(baseUrl), String(TILE)), (to) =>
      cutTiles(picture.source, to, { width, height, scaleFactors, sizes }, baseUrl),
    );
    tiled.set(figure, { address, width, height, tileSize: TILE, scaleFactors, sizes });
  }
  return tiled;
}

async function cutTiles(
  source: string,
  folder: string,
  { width, height, scaleFactors, sizes }: Omit<TiledPicture, 'address' | 'tileSize'>,
  baseUrl: string | null,
): Promise<void> {
  const { default: sharp } = await import('sharp');
  const base = baseUrl?.replace(/\/$/, '') ?? null;
  const upright = sharp(source).rotate().flatten({ background: '#ffffff' }).jpeg({ quality: 82 });
  await upright
    .clone()
    .tile({ size: TILE, layout: 'iiif3', ...(base === null ? {} : { id: `${base}/tiles` }) })
    .toFile(folder);
  // It holds the time of the build and everything that the photograph says of itself; it stands inside or beside the folder.
  for (const place of [folder, path.dirname(folder)])
    await rm(path.join(place, 'vips-properties.xml'), { force: true });
  await writeWhole(upright, folder, 'max');
  for (const size of sizes)
    await writeWhole(upright.clone().resize(size.width, size.height), folder, `${size.width},${size.height}`);
  const info = path.join(folder, 'info.json');
  if (base === null) return rm(info, { force: true });
  const described = {
    '@context': 'http://iiif.io/api/image/3/context.json',
    id: `${base}/tiles/${path.basename(folder)}`,
    type: 'ImageService3',
    protocol: 'http://iiif.io/api/image',
    profile: 'level0',
    width,
    height,
    tiles: [{ width: TILE, height: TILE, scaleFactors }],
    sizes,
  };
  await writeFile(info, `${JSON.stringify(described, null, 1)}\n`);
}

async function writeWhole(image: import('sharp').Sharp, folder: string, size: string): Promise<void> {
  const place = path.join(folder, 'full', size, '0');
  await mkdir(place, { recursive: true });
  await image.clone().toFile(path.join(place, 'default.jpg'));
}
