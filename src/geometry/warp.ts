import type { Registration } from './registration.ts';

/** A picture as bytes: three a pixel (red, green, blue), row by row from the top. */
export interface RawPicture {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

/**
 * Lays a registered picture into the frame of its panel: each pixel of the result is looked up in the
 * picture (bilinear). `pixelScale`: pixels of the file a pixel of the control points, where the picture was scaled.
 * White where the picture does not reach.
 * @param widthMm, heightMm size of the panel; @param perMm pixels of the result a millimetre
 */
export function warpToFrame(
  picture: RawPicture,
  registration: Registration,
  size: { readonly widthMm: number; readonly heightMm: number; readonly perMm: number; readonly pixelScale: number },
): RawPicture {
  const width = Math.max(1, Math.round(size.widthMm * size.perMm));
  const height = Math.max(1, Math.round(size.heightMm * size.perMm));
  const data = new Uint8Array(width * height * 3).fill(255);
  for (let row = 0; row < height; row += 1) {
    for (let column = 0; column < width; column += 1) {
      const [x, y] = registration.toPixel([(column + 0.5) / size.perMm, size.heightMm - (row + 0.5) / size.perMm]);
      sample(picture, x * size.pixelScale - 0.5, y * size.pixelScale - 0.5, data, (row * width + column) * 3);
    }
  }
  return { width, height, data };
}

function sample({ width, height, data }: RawPicture, x: number, y: number, into: Uint8Array, at: number): void {
  if (x < -0.5 || y < -0.5 || x > width - 0.5 || y > height - 0.5) return;
  const x0 = Math.max(0, Math.floor(x));
  const y0 = Math.max(0, Math.floor(y));
  const fx = Math.max(0, x - x0);
  const fy = Math.max(0, y - y0);
  const left = (y0 * width + x0) * 3;
  const right = x0 + 1 < width ? 3 : 0;
  const below = y0 + 1 < height ? width * 3 : 0;
  for (let colour = 0; colour < 3; colour += 1) {
    const a = left + colour;
    const upper = (data[a] as number) * (1 - fx) + (data[a + right] as number) * fx;
    const lower = (data[a + below] as number) * (1 - fx) + (data[a + below + right] as number) * fx;
    into[at + colour] = Math.round(upper * (1 - fy) + lower * fy);
  }
}
