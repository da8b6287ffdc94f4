import { rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { startPreview } from '../../src/cli/serve.ts';
import { smallWorkspace, testFolder } from '../folders.ts';
import { until } from '../until.ts';
import { silentEffects } from './kerfmark.ts';

const home = testFolder();

describe('serve', () => {
  it('answers on loopback only, rebuilds on change and on deletion, and shows errors on the page', async () => {
    const folder = smallWorkspace(home);
    const preview = await startPreview({ words: [], flags: {} }, silentEffects(folder), 0);
    try {
      expect(preview.address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/);
      const get = async (address: string) => (await fetch(preview.address + address)).text();
      expect(await get('entry/EV-sighting.html')).toContain('_preview/reload.js');
      const fresh = path.join(folder, 'entries/EV-fresh.md');
      writeFileSync(
        fresh,
        '---\nid: EV-fresh\ntype: event\nkind: removal\ntitle: Written while the preview runs\n---\n',
      );
      await until(async () => (await get('entry/EV-fresh.html')).includes('Written while'));
      rmSync(fresh);
      await until(async () => (await fetch(`${preview.address}entry/EV-fresh.html`)).status === 404);
      writeFileSync(fresh, '---\nid: EV-fresh\ntype: event\nkind: remval\ntitle: Wrong\n---\n');
      await until(async () => (await get('index.html')).includes('did you mean &quot;removal&quot;?'));
      const faulty = await get('entry/EV-fresh.html');
      expect(faulty).toContain('<code>kind: remval</code>');
      expect(faulty).toMatch(/<li class="here"><code>kind: remval/);
      expect(faulty).toContain('kerfmark explain unknown-word');
      expect((await fetch(`${preview.address}..%2f..%2fetc/passwd`)).status).toBe(404);
      expect((await fetch(`${preview.address}entry/`)).status).toBe(404);
    } finally {
      preview.close();
    }
  });
});
