import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openPictureStore } from '../../src/cli/picture-store.ts';
import { writeTiles } from '../../src/cli/write-tiles.ts';

/*
 * IIIF Image API 3.0 (iiif.io, 2020): section 4.7 (canonical URIs of an image), 5.3 to 5.5 (info.json, sizes, tiles), section 6 and the compliance
 * document (level 0: full/max, and whatever sizes and tiles are listed), implementation notes for static tiles.
 */

let folder: string;
const WIDTH = 2731;
const HEIGHT = 1999;

beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'kerfmark-tiles-'));
  await sharp({ create: { width: WIDTH, height: HEIGHT, channels: 3, background: '#884422' } })
    .withExif({ IFD0: { Artist: 'CANARY-ARTIST' } })
    .jpeg()
    .toFile(path.join(folder, 'large.jpg'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const picture = (source: string, size = { width: WIDTH, height: HEIGHT }) => ({
  address: 'figures/FI-x.jpg',
  scale: 1,
  key: 'made from the test',
  source,
  size,
});

describe('tiles of a large figure', () => {
  it('are all that level 0 of the IIIF Image API 3.0 lists: every tile, every size, full/max', async () => {
    const output = path.join(folder, 'site');
    const tiles = await writeTiles(
      new Map([['FI-x', picture(path.join(folder, 'large.jpg'))]]),
      'https://museum.example/lerakos/',
      await openPictureStore(`${output}-before`, output),
    );
    const root = path.join(output, tiles.get('FI-x')?.address ?? '');
    const info = JSON.parse(readFileSync(path.join(root, 'info.json'), 'utf8'));
    expect(info).toMatchObject({
      '@context': 'http://iiif.io/api/image/3/context.json',
      id: 'https://museum.example/lerakos/tiles/FI-x',
      type: 'ImageService3',
      protocol: 'http://iiif.io/api/image',
      profile: 'level0',
      width: WIDTH,
      height: HEIGHT,
    });
    const [{ width: tile, scaleFactors }] = info.tiles;
    let counted = 0;
    for (const factor of scaleFactors) {
      const step = tile * factor;
      for (let x = 0; x < WIDTH; x += step) {
        for (let y = 0; y < HEIGHT; y += step) {
          const [w, h] = [Math.min(step, WIDTH - x), Math.min(step, HEIGHT - y)];
          const region = x === 0 && y === 0 && w === WIDTH && h === HEIGHT ? 'full' : `${x},${y},${w},${h}`;
          const [sw, sh] = [Math.ceil(w / factor), Math.ceil(h / factor)];
          const file = path.join(root, region, `${sw},${sh}`, '0', 'default.jpg');
          expect(existsSync(file), file).toBe(true);
          const made = await sharp(file).metadata();
          expect([made.width, made.height]).toEqual([sw, sh]);
          counted += 1;
        }
      }
    }
    expect(counted).toBeGreaterThan(30);
    for (const { width, height } of info.sizes) {
      const made = await sharp(path.join(root, 'full', `${width},${height}`, '0', 'default.jpg')).metadata();
      expect([made.width, made.height]).toEqual([width, height]);
    }
    const whole = await sharp(path.join(root, 'full', 'max', '0', 'default.jpg')).metadata();
    expect([whole.width, whole.height]).toEqual([WIDTH, HEIGHT]);
  });

  it('hold no metadata and no time of the build; without a base address there is no info.json', async () => {
    const output = path.join(folder, 'plain');
    await writeTiles(
      new Map([['FI-x', picture(path.join(folder, 'large.jpg'))]]),
      null,
      await openPictureStore(`${output}-before`, output),
    );
    const files = readdirSync(path.join(output, 'tiles'), { recursive: true, withFileTypes: true }).filter((one) =>
      one.isFile(),
    );
    expect(new Set(files.map((one) => one.name))).toEqual(new Set(['default.jpg']));
    for (const one of files)
      expect(readFileSync(path.join(one.parentPath, one.name)).includes('CANARY-ARTIST')).toBe(false);
  });

  it('small figures are left whole', async () => {
    const tiles = await writeTiles(
      new Map([['FI-x', picture('none.jpg', { width: 2000, height: 900 })]]),
      null,
      await openPictureStore('none', 'none'),
    );
    expect(tiles.size).toBe(0);
  });
});

describe('the store of pictures', () => {
  it('takes over what was made from the same, and makes anew what was not', async () => {
    const [last, next] = [path.join(folder, 'last'), path.join(folder, 'next')];
    const made: string[] = [];
    const build = async (from: string, to: string, key: string): Promise<void> => {
      const store = await openPictureStore(from, to);
      await store.put('figures/a.jpg', key, async () => {
        made.push(key);
        writeFileSync(path.join(to, 'figures/a.jpg'), key);
      });
      await store.close();
    };
    await build(path.join(folder, 'nothing'), last, 'one');
    await build(last, next, 'one');
    expect(made).toEqual(['one']);
    expect(readFileSync(path.join(next, 'figures/a.jpg'), 'utf8')).toBe('one');
    await build(next, last, 'two');
    expect(made).toEqual(['one', 'two']);
    rmSync(path.join(last, 'figures/a.jpg'));
    await build(last, next, 'two');
    expect(made).toEqual(['one', 'two', 'two']);
    writeFileSync(path.join(next, 'kerfmark-pictures.json'), '{ broken');
    await build(next, last, 'two');
    expect(made).toEqual(['one', 'two', 'two', 'two']);
  });
});
