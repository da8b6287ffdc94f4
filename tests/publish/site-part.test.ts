import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, it } from 'vitest';
import { kerfmark } from '../cli/kerfmark.ts';
import { sharedSite } from '../shared-sites.ts';
import { ROOT } from '../workspace.ts';

/** Every file of a site but the lists that say when and of what it was made. */
function filesIn(folder: string): ReadonlyMap<string, string> {
  const names = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((one) => one.isFile());
  const files = names.map((one) => path.join(one.parentPath, one.name));
  return new Map(
    files
      .map((file) => [path.relative(folder, file), readFileSync(file).toString('base64')] as const)
      .filter(([name]) => !/^kerfmark-(site|pictures)\.json$/.test(name)),
  );
}

it('the parts of all objects and that of the whole file are together the site, byte for byte', async () => {
  const home = mkdtempSync(path.join(tmpdir(), 'kerfmark-parts-'));
  try {
    const build = async (name: string, ...flags: readonly string[]) => {
      // The pictures of the whole site are taken over; which pages there are is what is asked here.
      cpSync(await sharedSite('internal'), path.join(home, name), { recursive: true });
      expect((await kerfmark(['build', '--out', path.join(home, name), ...flags], ROOT)).code).toBe(0);
      return filesIn(path.join(home, name));
    };
    const site = filesIn(await sharedSite('internal'));
    const parts = [
      await build('a', '--only', 'OB-lerakos'),
      await build('b', '--only', 'OB-sister,OB-strip'),
      await build('whole', '--only', 'whole'),
    ];
    const together = new Map<string, string>();
    for (const part of parts) {
      expect(part.size).toBeLessThan(site.size);
      for (const [name, bytes] of part) expect([name, together.get(name) ?? bytes]).toEqual([name, bytes]);
      for (const [name, bytes] of part) together.set(name, bytes);
    }
    expect([...together.keys()].sort()).toEqual([...site.keys()].sort());
    expect([...together].filter(([name, bytes]) => site.get(name) !== bytes).map(([name]) => name)).toEqual([]);
    const wrong = await kerfmark(['build', '--only', 'OB-lerakkos', '--out', path.join(home, 'x')], ROOT);
    expect(wrong).toMatchObject({ code: 2, err: expect.stringContaining('Did you mean OB-lerakos') });
  } finally {
    rmSync(home, { recursive: true, force: true });
  }
});
