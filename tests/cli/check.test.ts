import { mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { loadWorkspace } from '../../src/cli/load-workspace.ts';
import { freshFolder, smallWorkspace, testFolder } from '../folders.ts';
import { ROOT } from '../workspace.ts';
import { kerfmark } from './kerfmark.ts';

const home = testFolder();

describe('check', () => {
  it('finds no error in the demonstration file', async () => {
    const { code, out } = await kerfmark(['check'], ROOT);
    expect(out).toMatch(/no errors/);
    expect(code).toBe(0);
  });

  it('reports all problems in one run, as text, JSON and SARIF, and ends with 1', async () => {
    const folder = smallWorkspace(home);
    writeFileSync(path.join(folder, 'entries/bad-1.md'), '---\nid: EV-x\ntype: evnt\n---\n');
    writeFileSync(path.join(folder, 'entries/bad-2.md'), 'nothing\n');
    const text = await kerfmark(['check'], folder);
    expect(text.code).toBe(1);
    expect(text.out).toContain('entries/bad-1.md:3:7  error  [unknown-type]');
    expect(text.out).toContain('entries/bad-2.md:1:1  error  [front-matter-missing]');
    expect(text.out).toContain('2 errors');
    const json = JSON.parse((await kerfmark(['check', '--format', 'json'], folder)).out) as {
      problems: { severity: string }[];
    };
    expect(json.problems.filter((one) => one.severity === 'error').length).toBe(2);
    const sarif = JSON.parse((await kerfmark(['check', '--format', 'sarif'], folder)).out) as {
      version: string;
      runs: { results: { level: string; locations: { physicalLocation: { region: { startLine: number } } }[] }[] }[];
    };
    expect(sarif.version).toBe('2.1.0');
    expect(
      sarif.runs[0]?.results.find((one) => one.level === 'error')?.locations[0]?.physicalLocation.region.startLine,
    ).toBe(3);
  });
});

describe('bad files', () => {
  it('are named with file and mend', async () => {
    const folder = smallWorkspace(home);
    const at = (name: string) => path.join(folder, 'entries', name);
    writeFileSync(
      at('latin.md'),
      Buffer.from('---\nid: EV-l\ntype: event\nkind: removal\ntitle: Gem\xe4lde\n---\n', 'latin1'),
    );
    writeFileSync(at('wide.md'), Buffer.from('\ufeff---\nid: EV-w\n---\n', 'utf16le'));
    writeFileSync(
      at('huge.md'),
      `---\nid: EV-h\ntype: event\nkind: removal\ntitle: x\n---\n${'long text '.repeat(600_000)}`,
    );
    symlinkSync('/etc/hostname', at('link.md'));
    writeFileSync(
      at('bom.md'),
      '\ufeff---\r\nid: EV-bom\r\ntype: event\r\nkind: removal\r\ntitle: With a mark and CRLF\r\nplaec: x\r\n---\r\n',
    );
    const { code, out } = await kerfmark(['check'], folder);
    expect(code).toBe(1);
    expect(out).toMatch(/entries\/latin\.md:1:1 {2}error {2}\[file-not-utf8\]/);
    expect(out).toMatch(/entries\/wide\.md:1:1 {2}error {2}\[file-not-utf8\]/);
    expect(out).toMatch(/entries\/huge\.md:1:1 {2}error {2}\[file-too-large\]/);
    expect(out).toMatch(/entries\/link\.md:1:1 {2}error {2}\[file-outside\]/);
    expect(out).toMatch(/entries\/bom\.md:6:1 {2}error {2}\[unknown-key\]/);
    expect(out).toContain('5 errors');
  });

  it('a folder without a workspace entry, and one that cannot be read', async () => {
    const folder = freshFolder(home);
    mkdirSync(path.join(folder, 'entries'));
    const { code, out } = await kerfmark(['check'], folder);
    expect(code).toBe(1);
    expect(out).toContain('[workspace-missing]');
  });

  it('hostile text stays text', async () => {
    const folder = smallWorkspace(home);
    writeFileSync(
      path.join(folder, 'entries/hostile.md'),
      '---\nid: EV-hostile\ntype: event\nkind: removal\ntitle: "<script>alert(1)</script>"\n---\n<img src=x onerror=alert(1)> and [x](https://example.org/"onmouseover="alert(1))\n',
    );
    await kerfmark(['build', '--out', 'site'], folder);
    const page = readFileSync(path.join(folder, 'site/entry/EV-hostile.html'), 'utf8');
    expect(page).not.toContain('<script>alert');
    expect(page).not.toMatch(/<[^>]+\son(error|mouseover)=/i);
    expect(page).toContain('&lt;script');
  });
});

it('sizes of photographs are those of the library that knows all kinds, also of those that are to be turned', async () => {
  const folder = smallWorkspace(home);
  const sizes: Record<string, unknown> = {};
  for (const orientation of [1, 3, 6, 8]) {
    const name = `entries/turned-${orientation}.jpg`;
    await sharp({ create: { width: 60, height: 40, channels: 3, background: '#c9b79c' } })
      .jpeg()
      .withMetadata({ orientation })
      .toFile(path.join(folder, name));
    const found = await sharp(path.join(folder, name)).metadata();
    const isTurned = (found.orientation ?? 1) >= 5;
    sizes[name] = isTurned
      ? { width: found.height, height: found.width }
      : { width: found.width, height: found.height };
  }
  // What calls itself a photograph and is another kind of picture is read all the same.
  await sharp({ create: { width: 7, height: 5, channels: 3, background: '#c9b79c' } })
    .png()
    .toFile(path.join(folder, 'entries/no.jpg'));
  writeFileSync(
    path.join(folder, 'entries/cut.jpg'),
    readFileSync(path.join(folder, 'entries/turned-1.jpg')).subarray(0, 30),
  );
  const { pictures } = await loadWorkspace(folder);
  expect(Object.fromEntries(pictures)).toEqual({
    ...sizes,
    'entries/no.jpg': { width: 7, height: 5 },
    'entries/cut.jpg': 'not a picture',
  });
  expect(new Set(Object.values(sizes).map((one) => JSON.stringify(one))).size).toBe(2);
});
