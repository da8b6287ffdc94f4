import { writeFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { expect, it } from 'vitest';
import { PicturesOnDemand } from '../../src/cli/pictures-on-demand.ts';
import { testFolder } from '../folders.ts';

const home = testFolder();

it('a picture is made once, when it is asked for; one that failed is tried again; those of before stay where new ones cannot be had', async () => {
  const pictures = new PicturesOnDemand(home);
  let made = 0;
  await pictures.replace(async (store) => {
    await store.put('figures/a.jpg', 'one', async (to) => {
      made += 1;
      if (made === 1) throw new Error('the disk is full');
      writeFileSync(to, 'a picture');
    });
    await store.put('plans/a.jpg', 'two', async (to, fileOf) =>
      writeFileSync(to, `${await readFile(await fileOf('figures/a.jpg'), 'utf8')}, laid on the panel`),
    );
  });
  expect(made).toBe(0);
  await expect(pictures.find('figures/a.jpg')).rejects.toThrow('full');
  const both = await Promise.all([pictures.find('plans/a.jpg'), pictures.find('figures/a.jpg')]);
  expect(made).toBe(2);
  expect(await readFile(both[0] as string, 'utf8')).toBe('a picture, laid on the panel');
  expect(await pictures.find('figures/b.jpg')).toBeNull();
  const failing = pictures.replace(async () => {
    throw new Error('a photograph cannot be read');
  });
  await expect(failing).rejects.toThrow('photograph');
  expect(await pictures.find('figures/a.jpg')).toBe(both[1]);
  await pictures.replace(async () => undefined);
  expect(await pictures.find('figures/a.jpg')).toBeNull();
});
