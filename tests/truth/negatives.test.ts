import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { kerfmark } from '../cli/kerfmark.ts';
import { demoCopy, smallWorkspace, snapshot, testFolder } from '../folders.ts';
import { sharedSite } from '../shared-sites.ts';
import { french, LANGUAGES } from '../spoken.ts';
import { bareDenials, DENIES, PLAIN, SHOWN } from './denials.ts';

// What is absent, hidden, not known and not asked must never be said with each other's words. Where something is kept back from
// a reader, "No search is recorded" would say of the whole file what is only true of what is shown.

const read = (folder: string): readonly (readonly [string, string])[] =>
  Object.entries(snapshot(folder))
    .filter(([name]) => /\.(?:html|md)$/.test(name))
    .map(([name, text]) => [name, Buffer.from(text, 'latin1').toString('utf8')]);

const home = testFolder();
const hint = /\bmay be shown here\b|\bshown here\b/;

describe('where something is kept back', () => {
  it('no page for the public denies anything of the whole file', async () => {
    const pages = read(await sharedSite('public')).filter(([name]) => !/^(?:method|marks)\.html$/.test(name));
    expect(pages.length).toBeGreaterThan(200);
    // The scan does find what it looks for.
    expect(bareDenials([['a.html', '<p>No search is recorded.</p>']])).toHaveLength(1);
    expect(pages.filter(([, text]) => SHOWN.test(text)).length).toBeGreaterThan(100);
    expect(bareDenials(pages)).toEqual([]);
  });

  it('no document does, nor what a command prints', async () => {
    const folder = demoCopy(home);
    const texts: (readonly [string, string])[] = [];
    for (const line of [
      ['file', 'OB-lerakos'],
      ['file', 'OB-sister'],
      ['file', 'OB-strip'],
      ['appendix', 'OB-lerakos'],
      ['appendix', 'OB-sister'],
    ]) {
      const { code } = await kerfmark([...line, '--audience', 'public', '--format', 'md', '--out', 'out'], folder);
      expect(code).toBe(0);
    }
    texts.push(...read(path.join(folder, 'out')));
    for (const line of [['dates'], ['custody'], ['panels'], ['references'], ['worth'], ['why', 'HO-castagnou']]) {
      const { code, out } = await kerfmark([...line, '--audience', 'public'], folder);
      expect(code).toBe(0);
      texts.push([line.join(' '), out]);
    }
    for (const { id } of [{ id: 'IN-2021-3' }, { id: 'IN-2024-1' }])
      texts.push([id, (await kerfmark(['answer', id], folder)).out]);
    expect(texts.length).toBeGreaterThan(10);
    expect(bareDenials(texts)).toEqual([]);
  });

  it('the same page without entries of a kind says the same, whether there are none or they are hidden', async () => {
    const search =
      '---\nid: SE-one\ntype: search\ntitle: A search\nrepository: An archive\nfor: papers\noutcome: found\naccess: restricted\n---\n';
    const other = '---\nid: SO-other\ntype: source\nkind: letter\ntitle: A letter\naccess: restricted\n---\n';
    const [hidden, absent] = [{ 'one.md': search }, { 'one.md': other }].map((files) => smallWorkspace(home, files));
    const page = async (folder: string): Promise<string> => {
      await kerfmark(['file', 'OB-wall', '--audience', 'internal', '--format', 'md', '--out', 'out'], folder);
      return readFileSync(path.join(folder, 'out/OB-wall-file.md'), 'utf8');
    };
    expect(await page(hidden as string)).toBe(await page(absent as string));
    expect(await page(hidden as string)).toContain('Nothing is recorded in what is shown here.');
  });
});

describe('where nothing is kept back', () => {
  it('no sentence hints that something might be', async () => {
    const folder = smallWorkspace(home);
    expect((await kerfmark(['build', '--audience', 'restricted', '--out', 'site'], folder)).code).toBe(0);
    await kerfmark(['file', 'OB-wall', '--audience', 'restricted', '--format', 'md', '--out', 'site/out'], folder);
    const texts = read(path.join(folder, 'site'));
    expect(texts.length).toBeGreaterThan(20);
    expect(texts.filter(([, text]) => hint.test(text)).map(([name]) => name)).toEqual([]);
    expect(texts.some(([, text]) => text.includes('No search is recorded.'))).toBe(true);
  });
});

describe('the words for it', () => {
  const messages = Object.keys(french.language.pages);
  const shown = LANGUAGES[0]?.shown ?? {};

  it('every message that denies has words for where something is kept back, or is known to deny nothing of a file', () => {
    const denying = messages.filter((one) => DENIES.test(one));
    expect(denying.length).toBeGreaterThan(100);
    expect(denying.filter((one) => !(one in shown) && !PLAIN.includes(one))).toEqual([]);
    expect(PLAIN.filter((one) => !messages.includes(one))).toEqual([]);
  });

  it('every language has them for the same messages, with the same parts', () => {
    const parts = (text: string): readonly string[] => [...new Set(text.match(/\{\d(?=[,}])/g) ?? [])].sort();
    for (const { tag, shown: own } of LANGUAGES) {
      expect(Object.keys(own).sort(), tag).toEqual(Object.keys(shown).sort());
      for (const [message, text] of Object.entries(own)) {
        expect(Object.keys(french.language.messages), message).toContain(message);
        expect(parts(message), message).toEqual(expect.arrayContaining([...parts(text)]));
      }
    }
  });
});
