import { appendFileSync, cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import type { Said } from '../../src/base/said.ts';
import { type Preview, startPreview } from '../../src/cli/serve.ts';
import { inEnglish, SPEECH } from '../spoken.ts';
import { ROOT } from '../workspace.ts';

const home = mkdtempSync(path.join(tmpdir(), 'kerfmark-preview-'));
afterAll(() => rmSync(home, { recursive: true, force: true }));

/** A wall with one event and one trace, drawn in a report and on a plate. */
const FILES: Readonly<Record<string, string>> = {
  'workspace.md':
    'id: workspace\ntype: workspace\ntitle: A file\ninstitution: Wexcombe Museum of Art\naccess-default: public',
  'OB-1.md':
    'id: OB-1\ntype: object\ntitle: Panel\nobject-type: wall painting\npanels: [{ id: A, width: 1200, height: 900 }]',
  'EV-1.md':
    'id: EV-1\ntype: event\nkind: removal\ntitle: Carried off quietly\nobjects: [OB-1]\nstated:\n  - { date: "1926", sense: within, grade: probable, why: a note }',
  'PE-1.md':
    'id: PE-1\ntype: evidence\nkind: label-or-mark\ntitle: A label\nobject: OB-1\npanel: A\nface: back\nshape: [{ area: { ring: [[10, 10], [100, 10], [100, 100]] } }]',
};

function workspace(name: string): string {
  const folder = path.join(home, name);
  mkdirSync(path.join(folder, 'entries'), { recursive: true });
  for (const [file, keys] of Object.entries(FILES))
    writeFileSync(path.join(folder, 'entries', file), `---\n${keys}\n---\n`);
  return folder;
}

function start(folder: string, audience: string, out: (text: string) => void = () => undefined): Promise<Preview> {
  const told = (said: Said): void => out(inEnglish(said));
  const effects = { ...SPEECH, cwd: folder, out: told, err: told, today: () => '2024-06-01', ask: async () => null };
  return startPreview({ words: [], flags: { audience } }, effects, 0);
}

async function until(test: () => Promise<boolean>): Promise<boolean> {
  for (let i = 0; i < 300; i += 1) {
    if (await test()) return true;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  return false;
}

describe('a running preview', () => {
  it('shows no drawing any more of what became restricted since it began', async () => {
    const folder = workspace('restricted');
    const preview = await start(folder, 'public');
    try {
      const get = (address: string) => fetch(preview.address + address);
      const drawings = ['report/OB-1-chronology.svg', 'plate/OB-1-A-back.svg', 'plate/OB-1-A-back.html'];
      for (const address of drawings) expect((await get(address)).status, address).toBe(200);
      expect(await (await get('report/OB-1-chronology.svg')).text()).toContain('Carried off');
      for (const file of ['EV-1.md', 'PE-1.md']) {
        const full = path.join(folder, 'entries', file);
        writeFileSync(full, readFileSync(full, 'utf8').replace('\ntype:', '\naccess: restricted\ntype:'));
      }
      expect(await until(async () => (await get('entry/PE-1.html')).status === 404)).toBe(true);
      for (const address of [...drawings, 'entry/EV-1.html']) expect((await get(address)).status, address).toBe(404);
      expect(await (await get('data/dates.json')).text()).not.toContain('Carried off');
      expect((await get('assets/kerfmark.css')).status).toBe(200);
    } finally {
      preview.close();
    }
  }, 60_000);

  it('shows what was saved while the first site was made', async () => {
    const folder = workspace('meanwhile');
    const file = path.join(folder, 'entries/EV-1.md');
    let started = false;
    const starting = start(folder, 'internal', () => {
      started = true;
    });
    // Written as soon as the entries were read: the first site does not hold it.
    const timer = setInterval(() => {
      if (started) return;
      appendFileSync(file, '\nSaved meanwhile.\n');
      clearInterval(timer);
    }, 60);
    const preview = await starting;
    clearInterval(timer);
    try {
      expect(readFileSync(file, 'utf8')).toContain('Saved meanwhile.');
      const text = async () => (await fetch(`${preview.address}entry/EV-1.html`)).text();
      expect(await until(async () => (await text()).includes('Saved meanwhile.'))).toBe(true);
    } finally {
      preview.close();
    }
  }, 60_000);

  it('hears of a change to a document as it was sent', async () => {
    const folder = path.join(home, 'sent');
    cpSync(path.join(ROOT, 'entries'), path.join(folder, 'entries'), { recursive: true });
    let said = '';
    const preview = await start(folder, 'internal', (text) => {
      said += text;
    });
    try {
      expect(said).not.toContain('is not the file that was sent');
      appendFileSync(path.join(folder, 'entries/sent/IN-2021-3.md'), '\nA line that was never sent.\n');
      expect(await until(async () => said.includes('is not the file that was sent'))).toBe(true);
    } finally {
      preview.close();
    }
  }, 120_000);
});
