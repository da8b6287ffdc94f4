import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { madeWorkspace, writeWorkspace } from '../bench/made-workspace.mjs';
import { kerfmark } from '../cli/kerfmark.ts';

// On some disks a file cannot have two names.
const disk = vi.hoisted(() => ({ knowsLinks: true }));
vi.mock('node:fs', async (original) => {
  const real = await original<typeof import('node:fs')>();
  const linkSync = (from: string, to: string): void => {
    if (!disk.knowsLinks) throw Object.assign(new Error('EPERM: operation not permitted, link'), { code: 'EPERM' });
    real.linkSync(from, to);
  };
  return { ...real, linkSync };
});

// A page of the last site that is not made again must be the page that would be made.

const home = mkdtempSync(path.join(tmpdir(), 'kerfmark-kept-'));
const folder = path.join(home, 'file');
const site = path.join(home, 'site');
const entry = (name: string): string => path.join(folder, 'entries', name);
const REMOVAL = 'events/d1/EV-1-taken.md';

beforeAll(async () => {
  await writeWorkspace(folder, madeWorkspace(50));
  await build(site);
}, 60_000);
afterAll(() => rmSync(home, { recursive: true, force: true }));

async function build(out: string, ...flags: readonly string[]): Promise<void> {
  const { err } = await kerfmark(['build', '--out', out, ...flags], folder);
  expect(err).not.toContain('could not');
}

function edit(name: string, change: (text: string) => string): void {
  const text = readFileSync(entry(name), 'utf8');
  expect(change(text)).not.toBe(text);
  writeFileSync(entry(name), change(text));
}

function filesIn(root: string): ReadonlyMap<string, string> {
  const files = readdirSync(root, { recursive: true, withFileTypes: true }).filter((one) => one.isFile());
  return new Map(
    files
      .map((one) => path.relative(root, path.join(one.parentPath, one.name)))
      .sort()
      .map((name) => [name, readFileSync(path.join(root, name), 'latin1')]),
  );
}

const hash = (bytes: string | Uint8Array): string =>
  createHash('sha256').update(bytes).digest('base64url').slice(0, 22);

/** What is remembered of the site. */
const list = path.join(folder, `.kerfmark/site-${hash(site)}.json`);

/** Marks a page so that it can be told whether it was made again, and has its mark remembered as if it were its own. */
function mark(address: string): void {
  const file = path.join(site, address);
  writeFileSync(file, `${readFileSync(file, 'utf8')}<!-- marked -->`);
  const made = JSON.parse(readFileSync(list, 'utf8'));
  writeFileSync(list, JSON.stringify({ ...made, pages: { ...made.pages, [address]: hash(readFileSync(file)) } }));
}

const isMarked = (address: string): boolean =>
  readFileSync(path.join(site, address), 'utf8').includes('<!-- marked -->');

describe('pages that are kept from one build to the next', () => {
  const EDITS: readonly (readonly [string, () => void])[] = [
    ['a sentence more', () => edit(REMOVAL, (text) => `${text}\nOne sentence more.\n`)],
    ['a link more', () => edit(REMOVAL, (text) => `${text}\nSee [the object](OB-1).\n`)],
    ['a text of the workspace entry', () => edit('workspace.md', (text) => `${text}\nOne sentence more.\n`)],
    ['another grade', () => edit(REMOVAL, (text) => text.replace('grade: probable', 'grade: possible'))],
    ['another title', () => edit(REMOVAL, (text) => text.replace(/\ntitle: .*/, '\ntitle: Another title'))],
    ['access taken away', () => edit(REMOVAL, (text) => text.replace('\ntype:', '\naccess: restricted\ntype:'))],
    ['an entry gone', () => rmSync(entry(REMOVAL))],
    [
      'a link to an entry that stands in for another',
      () => {
        writeFileSync(
          entry('RQ-1.md'),
          '---\nid: RQ-1\ntype: request-for-return\ntitle: A request\nobjects: [OB-1]\npublic-text: A request was made.\n---\n',
        );
        edit('events/d1/EV-1-seen.md', (text) =>
          text.replace('\ntype:', '\nwithhold: [place]\ntype:').concat('\n[it](RQ-in-public-7)\n'),
        );
      },
    ],
    ['the number of that link', () => edit('events/d1/EV-1-seen.md', (text) => text.replace('public-7', 'public-1'))],
    ['nothing', () => undefined],
    [
      'a text, on a disk that knows no links',
      () => {
        disk.knowsLinks = false;
        edit('events/d1/EV-1-seen.md', (text) => `${text}\nOne sentence more.\n`);
      },
    ],
  ];

  it.each(EDITS)(
    'after %s the site is the one that an empty folder gets, byte for byte',
    async (_, change) => {
      change();
      await build(site);
      const fresh = path.join(home, 'fresh');
      rmSync(fresh, { recursive: true, force: true });
      await build(fresh);
      disk.knowsLinks = true;
      expect(filesIn(site)).toEqual(filesIn(fresh));
    },
    60_000,
  );

  it.each([
    [
      'a text changed: it stays, and the pages of the text are made',
      'kept',
      () => edit('events/d1/EV-1-seen.md', (text) => `${text}\nMore.\n`),
    ],
    [
      'a key changed: it is made again',
      'made',
      () => edit('events/d1/EV-1-seen.md', (text) => text.replace(/\ntitle: .*/, '\ntitle: Seen')),
    ],
    [
      'its own bytes changed by hand: it is made again',
      'made',
      () => writeFileSync(path.join(site, 'marks.html'), 'by hand'),
    ],
    ['what is remembered is damaged: it is made again', 'made', () => writeFileSync(list, '{ broken')],
  ] as const)(
    'a page of which %s',
    async (_, becomes, change) => {
      await build(site);
      mark('marks.html');
      mark('search.html');
      change();
      await build(site);
      expect(isMarked('marks.html')).toBe(becomes === 'kept');
      if (becomes === 'kept') expect(isMarked('search.html')).toBe(false);
    },
    60_000,
  );

  it('a site for another audience takes nothing over', async () => {
    await build(site);
    mark('marks.html');
    await build(site, '--audience', 'restricted');
    expect(isMarked('marks.html')).toBe(false);
  }, 60_000);
});
