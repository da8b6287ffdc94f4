import { spawn, spawnSync } from 'node:child_process';
import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { run } from '../../src/cli/run.ts';
import { startPreview } from '../../src/cli/serve.ts';
import { ROOT } from '../workspace.ts';
import { kerfmark } from './kerfmark.ts';

const made: string[] = [];
const temporary = (): string => {
  const folder = mkdtempSync(path.join(tmpdir(), 'kerfmark-test-'));
  made.push(folder);
  return folder;
};
afterAll(() => {
  for (const folder of made) rmSync(folder, { recursive: true, force: true });
});

/** Every file below a folder with its content, for comparing. */
function snapshot(folder: string): Record<string, string> {
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((one) => one.isFile());
  return Object.fromEntries(
    files
      .map((one) => {
        const full = path.join(one.parentPath, one.name);
        return [path.relative(folder, full), readFileSync(full).toString('base64')];
      })
      .sort(([a], [b]) => ((a as string) < (b as string) ? -1 : 1)),
  );
}

function demoCopy(): string {
  const folder = temporary();
  for (const part of ['entries', 'sent']) cpSync(path.join(ROOT, part), path.join(folder, part), { recursive: true });
  return folder;
}

describe('check', () => {
  it('finds no error in the demonstration file', async () => {
    const { code, out } = await kerfmark(['check'], ROOT);
    expect(out).toMatch(/no errors/);
    expect(code).toBe(0);
  });

  it('reports all problems in one run, as text, JSON and SARIF, and ends with 1', async () => {
    const folder = demoCopy();
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

describe('faults end with 2 and plain words', () => {
  it.each([
    [['chek'], 'Did you mean "check"?'],
    [['check', '--in', '/nowhere'], 'There is no folder "entries"'],
    [['check', '--colour'], 'Usage: kerfmark check'],
    [['why', 'EV-remval'], 'Did you mean EV-removal'],
    [['why'], 'Which entry?'],
    [['why', 'SO-ledger'], 'has no time of its own'],
    [['dates', '--audience', 'everyone'], 'The audiences are: public, internal, restricted'],
    [['dates', '--without', 'CL-99'], 'There is no statement CL-99'],
    [['new', 'evnt'], 'Did you mean "event"?'],
    [['schema', 'evnt'], 'There is no type "evnt"'],
  ])('%j', async (line, words) => {
    const { code, err } = await kerfmark(line, ROOT);
    expect(code).toBe(2);
    expect(err).toContain(words);
    expect(err).not.toMatch(/\bat .*\.ts:\d+/);
  });

  it('every command has help with examples', async () => {
    const { out } = await kerfmark([], ROOT);
    for (const name of ['begin', 'new', 'check', 'dates', 'why', 'serve', 'build', 'number', 'schema']) {
      expect(out).toContain(name);
      const help = await kerfmark([name, '--help'], ROOT);
      expect(help.out).toContain('Examples:');
      expect(help.code).toBe(0);
    }
  });
});

it('commands are named as they must be typed: with npx where it was used, and with the folder given', async () => {
  const folder = temporary();
  let out = '';
  const effects = {
    cwd: folder,
    program: 'npx kerfmark',
    out: (text: string) => {
      out += text;
    },
    err: (text: string) => {
      out += text;
    },
    today: () => '2024-06-01',
    ask: async () => null,
  };
  await run(['begin', '--in', 'my files'], effects);
  expect(out).toContain('"npx kerfmark new --in "my files""');
  out = '';
  await run(['new', 'place', '--title', 'A town', '--yes', '--in', 'my files'], effects);
  expect(out).toContain('then type: npx kerfmark check --in "my files"');
  out = '';
  await run(['check', '--json', '--in', 'my files'], effects);
  expect(() => JSON.parse(out)).not.toThrow();
});

describe('dates and why', () => {
  it('withdrawing one statement changes the range that it holds', async () => {
    const range = async (without: readonly string[]) => {
      const { out } = await kerfmark(
        ['dates', '--json', ...(without.length > 0 ? ['--without', without.join(',')] : [])],
        ROOT,
      );
      const report = JSON.parse(out) as { moments: { entry: string; edge: string; ranges: { earliest: string }[] }[] };
      return report.moments.find((one) => one.entry === 'EV-removal' && one.edge === 'start')?.ranges[1]?.earliest;
    };
    expect(await range([])).toBe('1929-05-01');
    expect(await range(['EV-removal#2'])).toBe('1925-05-16');
  });

  it('why tells the argument in sentences', async () => {
    const { out, code } = await kerfmark(['why', 'EV-removal', '--grade', 'established'], ROOT);
    expect(code).toBe(0);
    expect(out).toContain('16 May 1925');
    expect(out).toMatch(/\[EV-sighting-1925#entry, established\]/);
    expect(out).toContain('Nothing ends before it starts');
  });
});

describe('begin, new, number', () => {
  it('lay out a workspace without errors and never overwrite', async () => {
    const folder = temporary();
    const begun = await kerfmark(['begin', '--panels', 'A,B'], folder, [
      'Our museum: a trial',
      'The "panels"',
      'Two panels',
    ]);
    expect(begun.code).toBe(0);
    const checked = (await kerfmark(['check'], folder)).out;
    expect(checked.match(/\[template-text-left\]/g)?.length).toBe(3);
    expect(checked).toContain('no errors, no doubts, 3 notes.');
    const before = snapshot(folder);
    expect((await kerfmark(['begin'], folder, ['x', 'y', 'z', 'A'])).code).toBe(2);
    expect(snapshot(folder)).toEqual(before);
  });

  it('new offers the EDTF of a date in words and writes it after a yes', async () => {
    const folder = temporary();
    await kerfmark(['begin'], folder);
    const refused = await kerfmark(
      ['new', 'event', '--title', 'Seen', '--kind', 'recorded in place', '--date', 'spring 1926'],
      folder,
      ['no'],
    );
    expect(refused.code).toBe(2);
    const line = ['new', 'event', '--title', 'Seen', '--kind', 'recorded in place', '--date', 'before 1924'];
    expect((await kerfmark(line, folder, ['yes'])).code).toBe(0);
    const text = readFileSync(path.join(folder, 'entries/events/EV-seen.md'), 'utf8');
    expect(text).toContain('date: "1923", sense: by');
    expect((await kerfmark(['check'], folder)).code).toBe(0);
    expect((await kerfmark(line, folder, ['yes'])).code).toBe(0);
    expect(existsSync(path.join(folder, 'entries/events/EV-seen-2.md'))).toBe(true);
    // Asked for, with numbers, beginnings of words and slips; what is not understood is asked again.
    const spoken = await kerfmark(['new'], folder, [
      '1',
      'Removed by night',
      'remval',
      'remova',
      'Easter 1926',
      'about 1926',
      'y',
      '2',
      'the ledger says so',
      'no such id!',
      'EV-removed',
    ]);
    expect(spoken.err).toBe('');
    expect(spoken.out).toContain('"remval" is not in the list. Did you mean "removal"?');
    expect(spoken.out).toContain('"Easter 1926" is not understood as a date');
    expect(spoken.out).toContain('"no such id!" cannot be an id');
    const written = readFileSync(path.join(folder, 'entries/events/EV-removed.md'), 'utf8');
    expect(written).toContain('kind: "removal"');
    expect(written).toContain('objects: "OB-1"');
    expect(written).toContain('{ date: "1926~", grade: probable, why: "the ledger says so" }');
    // The only object is offered; a date before a year becomes an open interval in a key of its own.
    await kerfmark(['new', 'evidence'], folder, ['A fill', 'fill', '', '']);
    expect(readFileSync(path.join(folder, 'entries/evidence/PE-fill.md'), 'utf8')).toContain('object: "OB-1"');
    await kerfmark(['new', 'source'], folder, ['A letter', 'letter', 'before 1924', 'y', '']);
    expect(readFileSync(path.join(folder, 'entries/sources/SO-letter.md'), 'utf8')).toContain(
      'date-on-it: "../1923"   # typed: before 1924',
    );
    expect((await kerfmark(['check'], folder)).out).toMatch(/^no errors, no doubts/m);
    const clash = await kerfmark(['new', 'event', '--title', 'Seen', '--kind', 'removal', '--id', 'ev-SEEN'], folder);
    expect(clash.code).toBe(2);
  });

  it('number writes refs and changes nothing else: every statement keeps its id and its range', async () => {
    const folder = demoCopy();
    const before = (await kerfmark(['dates', '--json'], folder)).out;
    const { code } = await kerfmark(['number'], folder);
    expect(code).toBe(0);
    expect((await kerfmark(['dates', '--json'], folder)).out).toBe(before);
    expect(readFileSync(path.join(folder, 'entries/events/EV-gift.md'), 'utf8')).toContain(
      '{ ref: "1", date: "1951-04-02"',
    );
    expect((await kerfmark(['number'], folder)).out).toContain('Every inline statement has its ref.');
  });
});

describe('build', () => {
  it('builds the demonstration file twice to the same bytes, and leaves the entries alone', async () => {
    const folder = demoCopy();
    const entries = snapshot(path.join(folder, 'entries'));
    for (const audience of ['internal', 'public']) {
      for (const out of ['one', 'two'])
        expect((await kerfmark(['build', '--audience', audience, '--out', out], folder)).code).toBe(0);
      expect(snapshot(path.join(folder, 'two'))).toEqual(snapshot(path.join(folder, 'one')));
    }
    expect(snapshot(path.join(folder, 'entries'))).toEqual(entries);
  });

  it('a public build holds nothing of restricted entries, withheld keys or unnamed persons', async () => {
    const folder = demoCopy();
    await kerfmark(['build', '--audience', 'public', '--out', 'site'], folder);
    const files = snapshot(path.join(folder, 'site'));
    const all = Object.entries(files)
      .filter(([name]) => /\.(html|json)$/.test(name))
      .map(([name, text]) => name + Buffer.from(text, 'base64').toString('utf8'))
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
    const folder = demoCopy();
    expect((await kerfmark(['build', '--audience', 'public', '--out', 'site'], folder)).code).toBe(0);
    const good = snapshot(path.join(folder, 'site'));
    const file = path.join(folder, 'entries/events/EV-gift.md');
    writeFileSync(file, readFileSync(file, 'utf8').replace('kind: gift', 'kind: gfit'));
    expect((await kerfmark(['build', '--audience', 'public', '--out', 'site'], folder)).code).toBe(1);
    expect(snapshot(path.join(folder, 'site'))).toEqual(good);
    const preview = await kerfmark(['build', '--out', 'preview'], folder);
    expect(preview.code).toBe(1);
    const page = readFileSync(path.join(folder, 'preview/index.html'), 'utf8');
    // Whom the broken entry is for cannot be known, so its words are told to who has the files, not on a page for others.
    expect(page).toContain('4 problems in the entries.');
    expect(page).not.toContain('gfit');
    expect(preview.err).toContain('did you mean "gift"?');
  });

  it('never replaces a folder that is no site', async () => {
    const folder = demoCopy();
    mkdirSync(path.join(folder, 'precious'));
    writeFileSync(path.join(folder, 'precious/thesis.txt'), 'years of work');
    const { code, err } = await kerfmark(['build', '--out', 'precious'], folder);
    expect(code).toBe(2);
    expect(err).toContain('it is not replaced');
    expect(readFileSync(path.join(folder, 'precious/thesis.txt'), 'utf8')).toBe('years of work');
  });

  it('a build that is killed at any time leaves the last good site', async () => {
    const folder = demoCopy();
    const main = path.join(ROOT, 'dist/src/cli/main.js');
    const environment = { ...process.env, SOURCE_DATE_EPOCH: '1717200000' };
    expect(
      spawnSync(process.execPath, [main, 'build', '--out', 'site'], { cwd: folder, env: environment }).status,
    ).toBe(0);
    const good = snapshot(path.join(folder, 'site'));
    for (const delay of [150, 400, 700, 1000, 1300, 1600]) {
      const child = spawn(process.execPath, [main, 'build', '--out', 'site'], { cwd: folder, env: environment });
      await new Promise((resolve) => setTimeout(resolve, delay));
      child.kill('SIGKILL');
      await new Promise((resolve) => child.once('exit', resolve));
      // Between the two renames the old site stands beside; the next command puts it back.
      const there = existsSync(path.join(folder, 'site')) ? 'site' : 'site.previous';
      expect(snapshot(path.join(folder, there))).toEqual(good);
    }
    expect(
      spawnSync(process.execPath, [main, 'build', '--out', 'site'], { cwd: folder, env: environment }).status,
    ).toBe(0);
    expect(readdirSync(folder).sort()).toEqual(['.kerfmark', 'entries', 'sent', 'site']);
    expect(readFileSync(path.join(folder, '.kerfmark/.gitignore'), 'utf8')).toBe('*\n');
  });

  it('a folder that may not be written gives plain words', async () => {
    const folder = demoCopy();
    writeFileSync(path.join(folder, 'blocked'), 'a file, no folder');
    const { code, err } = await kerfmark(['build', '--out', 'blocked/site'], folder);
    expect(code).toBe(2);
    expect(err).not.toContain('    at ');
  });
});

describe('bad files', () => {
  it('are named with file and mend', async () => {
    const folder = demoCopy();
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
    const folder = temporary();
    mkdirSync(path.join(folder, 'entries'));
    const { code, out } = await kerfmark(['check'], folder);
    expect(code).toBe(1);
    expect(out).toContain('[workspace-missing]');
    chmodSync(path.join(folder, 'entries'), 0o755);
  });

  it('hostile text stays text', async () => {
    const folder = demoCopy();
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

describe('serve', () => {
  it('answers on loopback only, rebuilds on change and on deletion, and shows errors on the page', async () => {
    const folder = demoCopy();
    const effects = {
      cwd: folder,
      out: () => undefined,
      err: () => undefined,
      today: () => '2024-06-01',
      ask: async () => null,
    };
    const preview = await startPreview({ words: [], flags: {} }, effects, 0);
    try {
      expect(preview.address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/);
      const get = async (address: string) => (await fetch(preview.address + address)).text();
      const until = async (test: () => Promise<boolean>) => {
        for (let i = 0; i < 500; i += 1) {
          if (await test()) return true;
          await new Promise((resolve) => setTimeout(resolve, 100));
        }
        return false;
      };
      expect(await get('entry/EV-gift.html')).toContain('_preview/reload.js');
      const fresh = path.join(folder, 'entries/events/EV-fresh.md');
      writeFileSync(
        fresh,
        '---\nid: EV-fresh\ntype: event\nkind: removal\ntitle: Written while the preview runs\n---\n',
      );
      expect(await until(async () => (await get('entry/EV-fresh.html')).includes('Written while'))).toBe(true);
      rmSync(fresh);
      expect(await until(async () => (await fetch(`${preview.address}entry/EV-fresh.html`)).status === 404)).toBe(true);
      writeFileSync(fresh, '---\nid: EV-fresh\ntype: event\nkind: remval\ntitle: Wrong\n---\n');
      expect(await until(async () => (await get('index.html')).includes('did you mean &quot;removal&quot;?'))).toBe(
        true,
      );
      const faulty = await get('entry/EV-fresh.html');
      expect(faulty).toContain('<code>kind: remval</code>');
      expect(faulty).toMatch(/<li class="here"><code>kind: remval/);
      expect(faulty).toContain('kerfmark explain unknown-word');
      expect((await fetch(`${preview.address}..%2f..%2fetc/passwd`)).status).toBe(404);
      expect((await fetch(`${preview.address}entry/`)).status).toBe(404);
    } finally {
      preview.close();
    }
  }, 180_000);
});
