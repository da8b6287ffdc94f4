import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ACCESS, type Access, maySee } from '../../src/base/access.ts';
import { kerfmark } from '../cli/kerfmark.ts';
import { ROOT } from '../workspace.ts';
import { canary, filledWorkspace, pictureOf, WITHHELD, withheldWorkspace } from './filled-workspace.ts';
import { readOutputs } from './read-outputs.ts';

const root = mkdtempSync(path.join(tmpdir(), 'kerfmark-audiences-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));

type Outputs = ReadonlyMap<string, string>;

/** Writes a workspace with a picture to each figure; the words of its level stand in the picture's metadata. */
async function writeWorkspace(name: string, seenBy: Access, files = filledWorkspace(seenBy)): Promise<string> {
  const folder = path.join(root, name);
  for (const [file, text] of Object.entries(files)) {
    mkdirSync(path.join(folder, path.dirname(file)), { recursive: true });
    writeFileSync(path.join(folder, file), text);
  }
  for (const access of ACCESS) {
    if (!maySee(seenBy, access)) continue;
    const words = access === 'public' ? 'zqcamera' : canary(access);
    await sharp({ create: { width: 600, height: 480, channels: 3, background: '#c9b79c' } })
      .jpeg()
      .withExif({ IFD0: { Copyright: words, ImageDescription: words, Artist: words }, IFD3: { GPSMapDatum: words } })
      .toFile(path.join(folder, 'entries/figure', pictureOf(access)));
  }
  return folder;
}

const MAIN = path.join(ROOT, 'dist/main.js');

const COMMANDS = [
  ['dates', '--json'],
  ['custody', '--json'],
  ['panels', '--json'],
  ['worth', '--json'],
  ['references', '--json'],
  ['references', '--offered'],
  ['answer', 'IN-open', '--json'],
  ['why', 'EV-open'],
];

/** Everything that the program gives out of a workspace to an audience: files by path, and what the commands print. */
async function outputsOf(folder: string, audience: Access): Promise<Outputs> {
  const out = path.join(folder, `out-${audience}`);
  const to = ['--audience', audience, '--out'];
  const documents = (format: string) => ['--format', format, ...to, path.join(out, 'documents')];
  const composed = [
    ['file', 'OB-open'],
    ['appendix', 'OB-open'],
    ['answer', 'IN-open'],
  ];
  const runs = [
    ['build', ...to, path.join(out, 'site')],
    ['export', ...to, path.join(out, 'export')],
    ...composed.map((line) => [...line, ...documents('pdf,md,html')]),
  ];
  for (const line of runs) expect(await kerfmark(line, folder), line.join(' ')).toMatchObject({ code: 0, err: '' });
  // The library for DOCX counts on within one process; a fresh one gives the same bytes.
  for (const line of composed) {
    const env = { ...process.env, SOURCE_DATE_EPOCH: '1717200000' };
    const made = spawnSync(process.execPath, [MAIN, ...line, ...documents('docx')], { cwd: folder, env });
    expect(made.status, made.stderr.toString()).toBe(0);
  }
  const printed: [string, string][] = [];
  for (const line of COMMANDS) {
    const { code, out: text, err } = await kerfmark([...line, '--audience', audience], folder);
    expect({ code, err }, line.join(' ')).toEqual({ code: 0, err: '' });
    printed.push([`printed: ${line.join(' ')}`, text]);
  }
  return new Map([...(await readOutputs(out)), ...printed]);
}

/** Kinds of output, each with the files that belong to it. */
const KINDS: Readonly<Record<string, RegExp>> = {
  'pages of the site': /^site\/.*\.html$/,
  search: /^site\/search\.html$/,
  'data of the site': /^site\/data\/.*\.json$/,
  'IIIF manifests': /^site\/iiif\/OB-[^/]*\.json$/,
  'pictures of the site': /^site\/.*\.jpg$/,
  PDF: /\.pdf$/,
  DOCX: /\.docx$/,
  Markdown: /^documents\/.*\.md$/,
  'HTML documents': /^documents\/.*\.html$/,
  'Linked Art': /^export\/linked-art\//,
  'CSV registers': /^export\/registers\//,
  'case file': /^export\/case-file\.json$/,
  literature: /^export\/sources\//,
  'RO-Crate': /^export\/ro-crate-metadata\.json$/,
  printed: /^printed:/,
};

/** The doubts listed on the page of doubts, without the lines of their places. */
function doubtsOn(outputs: Outputs): readonly string[] {
  const list = outputs.get('site/doubts.html')?.match(/<li>.*?<\/li>/gs) ?? [];
  return list.map((one) => one.replace(/:\d+<\/code>/, ''));
}

describe.each(ACCESS)('for the audience %s', (audience) => {
  let outputs: Outputs;
  let alone: Outputs;
  beforeAll(async () => {
    outputs = await outputsOf(await writeWorkspace(`whole-${audience}`, 'restricted'), audience);
    // The whole file is its own copy without hidden entries: nothing is hidden from restricted readers.
    alone =
      audience === 'restricted'
        ? outputs
        : await outputsOf(await writeWorkspace(`alone-${audience}`, audience), audience);
  });

  it('every kind of output is there, and shows what this audience may see', () => {
    for (const [kind, pattern] of Object.entries(KINDS)) {
      const texts = [...outputs].filter(([name]) => pattern.test(name)).map(([, text]) => text);
      expect(texts.length, kind).toBeGreaterThan(0);
      if (kind.startsWith('pictures') || kind === 'RO-Crate') continue;
      expect(
        texts.some((text) => /open/i.test(text)),
        kind,
      ).toBe(true);
    }
    const all = [...outputs.values()].join('\n');
    for (const access of ACCESS.slice(1)) expect(all.includes(canary(access)), access).toBe(maySee(audience, access));
  });

  it.each(ACCESS.slice(1).filter((access) => !maySee(audience, access)))(
    'no file name, text, picture or packed part holds a word of the level %s',
    (access) => {
      const found = [...outputs].filter(([name, text]) => `${name}\n${text}`.toLowerCase().includes(canary(access)));
      expect(found.map(([name]) => name)).toEqual([]);
    },
  );

  it('every file and every printed line is what it would be if the hidden entries had never existed', () => {
    expect([...outputs.keys()].sort()).toEqual([...alone.keys()].sort());
    const differing = [...outputs].filter(([name, text]) => alone.get(name) !== text).map(([name]) => name);
    // Doubts about entries that are not shown whole are told to those who have the files only.
    expect(differing.filter((name) => name !== 'site/doubts.html')).toEqual([]);
    const doubts = doubtsOn(outputs);
    expect(doubts.filter((one) => !doubtsOn(alone).includes(one))).toEqual([]);
    if (audience === 'internal') expect(doubts.length).toBeGreaterThan(10);
  });

  it('pictures lose what the camera wrote into them, in public', () => {
    const pictures = [...outputs].filter(([name]) => /^site\/.*\.jpg$/.test(name));
    expect(pictures.some(([, text]) => text.includes('zqcamera'))).toBe(false);
  });
});

describe('in public', () => {
  let outputs: Outputs;
  beforeAll(async () => {
    const folder = await writeWorkspace('withheld', 'public', withheldWorkspace());
    // A picture that may not be shown lies beside its entry.
    await sharp({ create: { width: 60, height: 48, channels: 3, background: '#c9b79c' } })
      .jpeg()
      .toFile(path.join(folder, 'entries/kept/open-picture.jpg'));
    outputs = await outputsOf(folder, 'public');
  });

  it('no withheld key of any type, nor the name of who may not be named, stands in any output', () => {
    const found = [...outputs].filter(([name, text]) => `${name}\n${text}`.toLowerCase().includes(WITHHELD));
    expect(found.map(([name]) => name)).toEqual([]);
  });

  it('public names, holdings that are not disclosed and requests with a public text stay in their place', () => {
    const custody = outputs.get('site/custody.html') ?? '';
    expect(custody).toContain('A private collector');
    expect(custody).toContain('Known, not disclosed');
    expect(
      [...outputs].filter(([name, text]) => /^site\/.*html$/.test(name) && text.includes('A request was received.'))
        .length,
    ).toBeGreaterThan(0);
    for (const id of ['PA-living', 'PL-store', 'FI-unshown', 'PA-veiled', 'HO-undisclosed', 'RQ-kept'])
      expect(
        [...outputs].filter(([name, text]) => `${name}${text}`.includes(id)).map(([name]) => name),
        id,
      ).toEqual([]);
  });

  it('every entry of which something is withheld says so', () => {
    const pages = [...outputs].filter(([name]) => /^site\/entry\/[A-Z]{2}-partly\.html$/.test(name));
    expect(pages.length).toBeGreaterThan(15);
    for (const [name, text] of pages) expect(text, name).toContain('Some particulars of this entry are not shown');
  });
});
