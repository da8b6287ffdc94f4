import { cpSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { demoCopy, smallWorkspace, snapshot, testFolder } from '../folders.ts';
import { sharedSite } from '../shared-sites.ts';
import { kerfmark } from './kerfmark.ts';

const home = testFolder();

describe('build', () => {
  it('builds the demonstration file twice to the same bytes, and leaves the entries alone', async () => {
    const folder = demoCopy(home);
    const entries = snapshot(path.join(folder, 'entries'));
    for (const audience of ['internal', 'public'] as const) {
      // The second one takes the pictures of the first over.
      if (audience === 'public')
        cpSync(path.join(folder, 'internal'), path.join(folder, 'public'), { recursive: true });
      expect((await kerfmark(['build', '--audience', audience, '--out', audience], folder)).code).toBe(0);
      // The shared site was built from another folder, in a process of its own, by the program as it is published.
      expect(snapshot(path.join(folder, audience))).toEqual(snapshot(await sharedSite(audience)));
    }
    expect(snapshot(path.join(folder, 'entries'))).toEqual(entries);
  });

  it('a public build holds nothing of restricted entries, withheld keys or unnamed persons', async () => {
    const all = Object.entries(snapshot(await sharedSite('public')))
      .filter(([name]) => /\.(html|json)$/.test(name))
      .map(([name, text]) => name + Buffer.from(text, 'latin1').toString('utf8'))
      .join('\n');
    expect(all.length).toBeGreaterThan(500_000);
    for (const secret of [
      'SO-thornquist-letters',
      'CL-agent-letters',
      'PA-private',
      'PA-narrator',
      'Owner of the sister fragment',
      'not for publication',
      'PL-store',
      'RQ-2025-1',
      'IN-2024-1',
      '36.9312',
      'Daughter of the boatman Ilias',
      'doubts.html',
    ]) {
      expect(all.includes(secret), secret).toBe(false);
    }
    expect(all).toContain('private collection, Switzerland');
    expect(all).toContain('This file holds entries that are not shown to this audience');
  });

  it('a public build refuses faulty entries; a preview leaves them out with a banner; both leave the last good site', async () => {
    const folder = smallWorkspace(home, {
      'kept.md': '---\nid: SO-kept\ntype: source\nkind: letter\ntitle: A letter\naccess: restricted\n---\n',
      'gift.md': '---\nid: EV-gift\ntype: event\nkind: gift\ntitle: A gift\n---\n',
    });
    expect((await kerfmark(['build', '--audience', 'public', '--out', 'site'], folder)).code).toBe(0);
    const good = snapshot(path.join(folder, 'site'));
    const file = path.join(folder, 'entries/gift.md');
    writeFileSync(file, readFileSync(file, 'utf8').replace('kind: gift', 'kind: gfit').replace('title:', 'titel:'));
    expect((await kerfmark(['build', '--audience', 'public', '--out', 'site'], folder)).code).toBe(1);
    expect(snapshot(path.join(folder, 'site'))).toEqual(good);
    const preview = await kerfmark(['build', '--out', 'preview'], folder);
    expect(preview.code).toBe(1);
    const page = readFileSync(path.join(folder, 'preview/index.html'), 'utf8');
    // Whom the broken entry is for cannot be known, so its words are told to who has the files, not on a page for others.
    expect(page).toContain('3 problems in the entries.');
    expect(page).not.toContain('gfit');
    expect(preview.err).toContain('did you mean "gift"?');
  });

  it('never replaces a folder that is no site', async () => {
    const folder = smallWorkspace(home);
    mkdirSync(path.join(folder, 'precious'));
    writeFileSync(path.join(folder, 'precious/thesis.txt'), 'years of work');
    const { code, err } = await kerfmark(['build', '--out', 'precious'], folder);
    expect(code).toBe(2);
    expect(err).toContain('it is not replaced');
    expect(readFileSync(path.join(folder, 'precious/thesis.txt'), 'utf8')).toBe('years of work');
  });

  it('a folder that may not be written gives plain words', async () => {
    const folder = smallWorkspace(home);
    writeFileSync(path.join(folder, 'blocked'), 'a file, no folder');
    const { code, err } = await kerfmark(['build', '--out', 'blocked/site'], folder);
    expect(code).toBe(2);
    expect(err).not.toContain('    at ');
  });
});
