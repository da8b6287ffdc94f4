import type { CaseFile } from '../findings/case-file.ts';
import type { Registration } from '../geometry/registration.ts';
import { warpToFrame } from '../geometry/warp.ts';
import { keyOf, type PictureStore } from './picture-store.ts';
import { PHOTOGRAPH, type WrittenPicture } from './write-pictures.ts';

/** Longest side of a picture under a plan, in pixels. */
const LONGEST = 1400;

/**
 * Warps every registered figure that is shown into the frame of its panel, for the plan; returns the
 * addresses by entry id. The pictures written for the pages are the source, so nothing more of a
 * figure is shown than there.
 */
export async function writePlanPictures(
  file: CaseFile,
  pictures: ReadonlyMap<string, WrittenPicture>,
  store: PictureStore,
): Promise<ReadonlyMap<string, string>> {
  const written = new Map<string, string>();
  for (const { geometry } of file.physical.panels) {
    const [xs, ys] = [geometry.outline.map((p) => p[0]), geometry.outline.map((p) => p[1])];
    const [widthMm, heightMm] = [Math.max(...xs), Math.max(...ys)];
    for (const { figure, registration } of [...geometry.figures, ...geometry.back.figures]) {
      const source = pictures.get(figure.id);
      if (source === undefined) continue;
      const size = { widthMm, heightMm, perMm: Math.min(1, LONGEST / Math.max(widthMm, heightMm)) };
      const address = `plans/${figure.id}.jpg`;
      const key = keyOf(source.key, JSON.stringify([registration.matrix, size]));
      await store.put(address, key, async (to, fileOf) =>
        layIntoFrame(await fileOf(source.address), to, registration, { ...size, pixelScale: source.scale }),
      );
      written.set(figure.id, address);
    }
  }
  return written;
}

async function layIntoFrame(
  from: string,
  to: string,
  registration: Registration,
  size: Parameters<typeof warpToFrame>[2],
): Promise<void> {
  const { default: sharp } = await import('sharp');
  const { data, info } = await sharp(from)
    .removeAlpha()
    .toColourspace('srgb')
    .raw()
    .toBuffer({ resolveWithObject: true });
  const warped = warpToFrame({ width: info.width, height: info.height, data }, registration, size);
  await sharp(warped.data, { raw: { width: warped.width, height: warped.height, channels: 3 } })
    .jpeg(PHOTOGRAPH)
    .toFile(to);
}
