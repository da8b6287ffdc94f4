import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, rmSync, symlinkSync, utimesSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Said } from '../../src/base/said.ts';
import { keepInCache } from '../../src/cli/cache-folder.ts';
import { ENGINE_FLAGS } from '../../src/cli/engine.ts';
import { run } from '../../src/cli/run.ts';
import { killBuilds } from '../bench/kills.mjs';
import { kerfmark } from '../cli/kerfmark.ts';
import { cpuSecondsOf, smallWorkspace, testFolder } from '../folders.ts';
import { inEnglish, SPEECH } from '../spoken.ts';
import { ROOT } from '../workspace.ts';

// docs/faults.md is the table of these and of what was tried by hand.

const home = testFolder();
const workspaceWith = (files: Readonly<Record<string, string | Uint8Array>>): string => smallWorkspace(home, files);

const ENTRY = '---\nid: EV-new\ntype: event\nkind: removal\ntitle: Dépose\nobjects: [OB-wall]\n---\nA text.\n';

describe('encodings', () => {
  it.each([
    ['UTF-16 with its mark, little end first', Buffer.from(`\ufeff${ENTRY}`, 'utf16le'), 'written in UTF-16'],
    ['UTF-16, big end first', Buffer.from(`\ufeff${ENTRY}`, 'utf16le').swap16(), 'written in UTF-16'],
    ['UTF-16 without its mark', Buffer.from(ENTRY, 'utf16le'), 'holds NUL bytes'],
    ['Latin-1', Buffer.from(ENTRY, 'latin1'), 'is not written in UTF-8'],
    ['a NUL byte', Buffer.from(ENTRY.replace('A text', 'A\0text')), 'holds NUL bytes'],
    ['a file of zeros, as a broken disk leaves it', Buffer.alloc(500), 'holds NUL bytes'],
  ])('%s: said at the file, all others are read', async (_, bytes, said) => {
    const folder = workspaceWith({ 'odd.md': bytes });
    const { out, code } = await kerfmark(['check'], folder);
    expect(code).toBe(1);
    expect(out).toContain(said);
    expect(out).toContain('entries/odd.md:1:1');
    expect(readFileSync(path.join(folder, 'entries/odd.md'))).toEqual(Buffer.from(bytes));
  });

  it.each([
    ['a byte order mark', `\ufeff${ENTRY}`],
    ['line ends of Windows', ENTRY.replaceAll('\n', '\r\n')],
    ['mixed line ends', ENTRY.replace('event\n', 'event\r\n')],
  ])('%s is read', async (_, text) => {
    const { code, out } = await kerfmark(['check'], workspaceWith({ 'odd.md': text }));
    expect({ code, out }).toMatchObject({ code: 0 });
  });
});

describe('names and folders', () => {
  it('files whose names differ only by case, ids that do: the second is told', async () => {
    const folder = workspaceWith({ 'a.md': ENTRY, 'A.md': ENTRY.replace('EV-new', 'ev-NEW') });
    expect((await kerfmark(['check'], folder)).out).toContain('[id-twice]');
  });

  it('two Unicode forms of one name are two files, and both are read', async () => {
    const folder = workspaceWith({
      'd\u00e9pose.md': ENTRY,
      'de\u0301pose.md': ENTRY.replace('EV-new', 'EV-other'),
    });
    expect((await kerfmark(['check'], folder)).code).toBe(0);
  });

  it('links in a circle, links that lead nowhere or out, and folders that are links are not followed', async () => {
    const folder = workspaceWith({});
    const entries = path.join(folder, 'entries');
    symlinkSync(entries, path.join(entries, 'again'));
    symlinkSync(path.join(entries, 'loop.md'), path.join(entries, 'loop.md'));
    symlinkSync(path.join(home, 'nothing.md'), path.join(entries, 'gone.md'));
    writeFileSync(path.join(home, 'outside.md'), ENTRY);
    symlinkSync(path.join(home, 'outside.md'), path.join(entries, 'out.md'));
    const { out, code } = await kerfmark(['check'], folder);
    expect(code).toBe(1);
    expect(out).toContain('entries/loop.md:1:1');
    expect(out).toContain('entries/gone.md:1:1');
    expect(out).toContain('leads out of the workspace');
    expect(out).not.toContain('again/');
  });

  it('a very deep folder is read', async () => {
    const deep = Array.from({ length: 60 }, (_, i) => `folder-${i}`).join('/');
    const folder = workspaceWith({ [`${deep}/deep.md`]: ENTRY });
    expect((await kerfmark(['check'], folder)).code).toBe(0);
    expect((await kerfmark(['build'], folder)).code).toBe(0);
  });
});

describe('much of it', () => {
  it('an entry of 100 MB is refused at once', async () => {
    const folder = workspaceWith({ 'huge.md': Buffer.alloc(100_000_000, 'a') });
    const seconds = await cpuSecondsOf(async () => {
      expect((await kerfmark(['check'], folder)).out).toContain('larger than 4 MB');
    });
    expect(seconds).toBeLessThan(20);
  });

  it('10,000 problems are told, each with its place', async () => {
    const wrong = Array.from({ length: 10_000 }, (_, i) => `- see [x${i}](EV-none-${i})`).join('\n');
    const { out, code } = await kerfmark(['check', '--json'], workspaceWith({ 'many.md': `${ENTRY}\n${wrong}\n` }));
    expect(code).toBe(1);
    const { problems } = JSON.parse(out) as {
      problems: readonly { readonly code: string; readonly place: { readonly line: number } }[];
    };
    const links = problems.filter((one) => one.code === 'unknown-id');
    expect(links.length).toBe(10_000);
    expect(new Set(links.map((one) => one.place.line)).size).toBe(10_000);
  });
});

describe('time', () => {
  it('a file from the future, and one from before 1970, are read; a change that keeps size and time of writing is seen all the same', async () => {
    const folder = workspaceWith({ 'odd.md': ENTRY });
    const file = path.join(folder, 'entries/odd.md');
    for (const seconds of [4_000_000_000, -1000]) {
      utimesSync(file, seconds, seconds);
      expect((await kerfmark(['check'], folder)).code).toBe(0);
    }
    writeFileSync(file, ENTRY.replace('removal', 'remoxal'));
    utimesSync(file, -1000, -1000);
    expect((await kerfmark(['check'], folder)).out).toContain('"remoxal"');
  });
});

describe('the system refuses', () => {
  const effects = (error: unknown) => {
    const said = { out: '', err: '' };
    return {
      said,
      effects: {
        ...SPEECH,
        cwd: workspaceWith({}),
        out: () => {
          throw error;
        },
        err: (text: Said) => {
          said.err += inEnglish(text);
        },
        today: () => '2026-01-01',
        ask: async () => null,
      },
    };
  };

  it.each([
    ['ENOSPC', 'The disk is full'],
    ['EROFS', 'can only be read'],
    ['EACCES', 'Check who owns the folder'],
    ['EMFILE', 'Too many files are open'],
  ])('%s, also where other errors are wrapped around it', async (code, words) => {
    const system = Object.assign(new Error(`${code}: refused`), { code });
    for (const error of [system, new Error('outer', { cause: new Error('inner', { cause: system }) })]) {
      const { said, effects: given } = effects(error);
      expect(await run(['check'], given)).toBe(2);
      expect(said.err).toContain(words);
      expect(said.err).not.toContain('mistake of the program');
    }
  });

  it('a folder where the site should be is a file: said, nothing changed', async () => {
    const folder = workspaceWith({});
    writeFileSync(path.join(folder, 'taken'), 'mine');
    const { code } = await kerfmark(['build', '--out', path.join(folder, 'taken', 'site')], folder);
    expect(code).toBe(2);
    expect(readFileSync(path.join(folder, 'taken'), 'utf8')).toBe('mine');
  });
});

describe('what is kept of parsed texts', () => {
  const many = (): Record<string, string> =>
    Object.fromEntries(
      Array.from({ length: 230 }, (_, i) => [`many/EV-${i}.md`, ENTRY.replace('EV-new', `EV-${i}`)] as const),
    );

  it('is written for a large workspace, may be deleted or damaged, and changes nothing that is said', async () => {
    const folder = workspaceWith({ ...many(), 'bad.md': `${ENTRY.replace('EV-new', 'EV-bad')}[x](EV-nowhere)\n` });
    const first = await kerfmark(['check'], folder);
    const file = path.join(folder, '.kerfmark/texts.jsonl');
    const kept = readFileSync(file, 'utf8');
    expect(kept.split('\n').length).toBeGreaterThan(200);
    for (const damaged of [
      '',
      'x',
      kept.slice(0, 5000),
      kept.replaceAll('"root"', '"rot"'),
      kept.replace('0.1.0', '0.0.1'),
    ]) {
      writeFileSync(file, damaged);
      expect(await kerfmark(['check'], folder)).toEqual(first);
    }
    const half = `${file}.new-1`;
    writeFileSync(half, 'left by a killed command');
    utimesSync(half, 1000, 1000);
    await keepInCache(folder, 'texts.jsonl', kept);
    expect(readdirSync(path.join(folder, '.kerfmark')).sort()).toEqual(['.gitignore', 'texts.jsonl']);
    rmSync(path.join(folder, '.kerfmark'), { recursive: true });
    expect(await kerfmark(['check'], folder)).toEqual(first);
  });

  it('where it cannot be written, the work is done all the same', async () => {
    const folder = workspaceWith(many());
    writeFileSync(path.join(folder, '.kerfmark'), 'a file where the folder should be');
    expect((await kerfmark(['check'], folder)).code).toBe(0);
  });
});

describe('pages that did not change', () => {
  it('keep their file; what is gone is gone', async () => {
    const folder = workspaceWith({ 'odd.md': ENTRY, 'other.md': ENTRY.replace('EV-new', 'EV-other') });
    const site = path.join(folder, '_site');
    await kerfmark(['build'], folder);
    const before = readdirSync(path.join(site, 'entry'));
    utimesSync(path.join(site, 'marks.html'), 1000, 1000);
    utimesSync(path.join(site, 'register/events.html'), 1000, 1000);
    rmSync(path.join(folder, 'entries/other.md'));
    await kerfmark(['build'], folder);
    const { statSync } = await import('node:fs');
    expect(before).toContain('EV-other.html');
    expect(readdirSync(path.join(site, 'entry'))).not.toContain('EV-other.html');
    // A page that says the same keeps its time; one that named the entry is written anew. The old site is gone.
    expect(statSync(path.join(site, 'marks.html')).mtimeMs).toBe(1_000_000);
    expect(statSync(path.join(site, 'register/events.html')).mtimeMs).toBeGreaterThan(1_000_000);
    expect(statSync(path.join(site, 'marks.html')).nlink).toBe(1);
  });
});

it.each(Object.values(ENGINE_FLAGS))('the engine knows %s, or it would complain of it', (flag) => {
  const { status, stderr } = spawnSync(process.execPath, [flag, '-e', ''], { encoding: 'utf8' });
  expect([status, stderr]).toEqual([0, '']);
});

it('a killed build leaves one of the two sites whole, and no entry is touched (200 kills of the demonstration file: npm run bench:kills)', async () => {
  const told = await killBuilds(9, { from: path.join(ROOT, 'tests/messages/base'), entry: 'sighting.md' });
  expect(told).toMatchObject({ broken: 0, recovered: true, left: [], beside: ['.kerfmark', 'entries', 'site'] });
  expect(told.whole + told.aside).toBe(9);
  expect(told.killed).toBeGreaterThan(2);
});
