import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import sharp from 'sharp';
import { afterAll, describe, expect, it } from 'vitest';
import { kerfmark } from '../cli/kerfmark.ts';
import { cpuSecondsOf } from '../folders.ts';
import { entries, ROOT } from '../workspace.ts';

const root = mkdtempSync(path.join(tmpdir(), 'kerfmark-hostile-files-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));

const REMOVAL = 'type: event\nkind: removal\ntitle: Taken down\n';
const FIGURE = 'type: figure\ntitle: A picture\nalternative: A wall\n';

interface Attack {
  readonly name: string;
  /** Files beside the workspace entry and one object, by path from the folder. */
  readonly files: Readonly<Record<string, string | Buffer>>;
  /** Code of the message that tells it; null where the file is good and simply does no harm. */
  readonly told: string | null;
  prepare?(folder: string): void;
}

const bomb = [
  'a: &a [x, x, x, x, x, x, x, x, x]',
  ...'bcdefghi'.split('').map((key, i) => `${key}: &${key} [${Array(9).fill(`*${'abcdefgh'[i]}`).join(', ')}]`),
].join('\n');

const tall = `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="60" height="48" viewBox="0 0 60 48"><script>fetch("https://off.example")</script><rect width="60" height="48" fill="#c9b79c" onload="alert(1)"/><image xlink:href="../../secret.png" width="60" height="48"/></svg>`;

const ATTACKS: readonly Attack[] = [
  {
    name: 'aliases that grow without end',
    files: { 'entries/x.md': `---\nid: EV-x\n${REMOVAL}${bomb}\n---\n` },
    told: 'yaml-aliases',
  },
  {
    name: 'front matter in JavaScript',
    files: {
      'entries/x.md': `---js\nrequire("fs").writeFileSync(${JSON.stringify(path.join(root, 'ran'))}, "x"); ({ id: "EV-x" })\n---\n`,
    },
    told: 'front-matter-language',
  },
  {
    name: 'tags of YAML that make objects',
    files: { 'entries/x.md': `---\nid: EV-x\n${REMOVAL}lot: !!js/function "function () { return 1 }"\n---\n` },
    told: 'yaml-special-start',
  },
  {
    name: 'brackets ten thousand deep',
    files: { 'entries/x.md': `---\nid: EV-x\n${REMOVAL}lot: ${'['.repeat(10_000)}\n---\n` },
    told: 'yaml-bracket-open',
  },
  {
    name: 'keys of every object of the language',
    files: {
      'entries/x.md': `---\nid: EV-x\n${REMOVAL}__proto__: { polluted: yes }\nconstructor: { prototype: { polluted: yes } }\n---\n`,
    },
    told: 'unknown-key',
  },
  {
    name: 'an id that every object has',
    files: {
      'entries/x.md': `---\nid: constructor\n${REMOVAL}see: [constructor]\n---\n[it](constructor) and [that](__proto__)\n`,
    },
    told: 'link-not-allowed',
  },
  {
    name: 'a date of a hundred thousand letters',
    files: {
      'entries/x.md': `---\nid: EV-x\n${REMOVAL}stated: [{ date: "${'1926~/'.repeat(17_000)}", grade: probable }]\n---\n`,
    },
    told: 'date-not-edtf',
  },
  {
    name: 'a measure that makes patterns think long',
    files: {
      'entries/x.md': `---\nid: PE-x\ntype: evidence\nkind: crack\ntitle: A crack\nobject: OB-a\nthickness: "${'1 x '.repeat(20_000)}"\n---\n`,
    },
    told: 'bad-shape',
  },
  {
    name: 'a picture that is no picture',
    files: { 'entries/x.md': `---\nid: FI-x\n${FIGURE}file: x.jpg\n---\n`, 'entries/x.jpg': 'no picture at all' },
    told: 'picture-not-read',
  },
  {
    name: 'a picture outside the workspace',
    files: { 'entries/x.md': `---\nid: FI-x\n${FIGURE}file: ../../secret.png\n---\n` },
    told: 'picture-outside',
  },
  {
    name: 'a picture that is a link to one outside',
    files: { 'entries/x.md': `---\nid: FI-x\n${FIGURE}file: x.png\n---\n` },
    told: 'picture-outside',
    prepare: (folder) => symlinkSync(path.join(root, 'secret.png'), path.join(folder, 'entries/x.png')),
  },
  {
    name: 'a drawing with scripts and links as a figure',
    files: { 'entries/x.md': `---\nid: FI-x\n${FIGURE}file: x.svg\n---\n`, 'entries/x.svg': tall },
    told: null,
  },
  {
    name: 'a survey table outside the workspace',
    files: {
      'entries/x.md': '---\nid: SV-x\ntype: survey\ntitle: A survey\nobject: OB-a\ntable: ../../secret.csv\n---\n',
    },
    told: 'table-missing',
  },
  {
    name: 'a sent document outside the folder of sent documents',
    files: {
      'entries/x.md': `---\nid: IN-x\ntype: inquiry\ntitle: An inquiry\nreceived: "2020"\nobjects: [OB-a]\nstate: sent\nsent-file: { file: ../secret.csv, sha256: "${'0'.repeat(64)}" }\n---\n`,
    },
    told: 'sent-file-missing',
  },
  {
    name: 'folders that lead into themselves',
    files: {},
    told: 'file-not-entry',
    prepare: (folder) => symlinkSync(folder, path.join(folder, 'entries/again')),
  },
  {
    name: 'a foreign configuration, data and templates in the workspace',
    files: {
      'eleventy.config.js': `require("fs").writeFileSync(${JSON.stringify(path.join(root, 'ran'))}, "x")`,
      'entries/eleventy.config.mjs': `import { writeFileSync } from "node:fs"; writeFileSync(${JSON.stringify(path.join(root, 'ran'))}, "x")`,
      'entries/_data/evil.js': `require("fs").writeFileSync(${JSON.stringify(path.join(root, 'ran'))}, "x")`,
      'entries/page.11ty.js': `require("fs").writeFileSync(${JSON.stringify(path.join(root, 'ran'))}, "x")`,
      '.npmrc': 'ignore-scripts=false',
    },
    told: 'file-not-entry',
  },
  {
    name: 'templates of other languages in an argument',
    files: {
      'entries/x.md': `---\nid: EV-x\n${REMOVAL}layout: evil\n---\n{{ 7 * 7 }} {% include "../../secret.csv" %} <%= process.env %> \${7*7}\n`,
    },
    told: 'unknown-key',
  },
];

it('docs/security.md tells each of them, and what happens', () => {
  const page = readFileSync(path.join(ROOT, 'docs/security.md'), 'utf8');
  for (const { name, told } of ATTACKS)
    expect(page).toContain(
      `| ${name} | ${told === null ? 'read as what it is; nothing in it runs or loads' : `\`${told}\``} |`,
    );
});

describe('hostile files', () => {
  it.each(ATTACKS)(
    '$name: told with $told, nothing runs, nothing from outside is read',
    async ({ files, told, prepare }) => {
      const folder = mkdtempSync(path.join(root, 'one-'));
      await sharp({ create: { width: 600, height: 480, channels: 3, background: '#ff0000' } })
        .png()
        .toFile(path.join(root, 'secret.png'));
      writeFileSync(path.join(root, 'secret.csv'), 'id,title,kind\nPE-secret,zqsecret,crack\n');
      for (const [file, text] of Object.entries({ ...entries({ 'OB-a': 'type: object\ntitle: A wall' }), ...files })) {
        mkdirSync(path.dirname(path.join(folder, file)), { recursive: true });
        writeFileSync(path.join(folder, file), text);
      }
      prepare?.(folder);
      let checked = { code: 0, out: '', err: '' };
      let built = checked;
      const seconds = await cpuSecondsOf(async () => {
        checked = await kerfmark(['check', '--format', 'json'], folder);
        built = await kerfmark(['build', '--out', 'site'], folder);
      });
      expect(seconds).toBeLessThan(20);
      expect(checked.err).toBe('');
      const codes = (JSON.parse(checked.out) as { problems: { code: string }[] }).problems.map((one) => one.code);
      if (told === null) expect(codes).toEqual([]);
      else expect(codes).toContain(told);
      expect(built.code, built.err).toBeLessThan(2);
      expect(existsSync(path.join(root, 'ran'))).toBe(false);
      expect(({} as Record<string, unknown>).polluted).toBeUndefined();
      const page = path.join(folder, 'site/figures/FI-x.jpg');
      if (existsSync(page)) {
        const { dominant } = await sharp(page).stats();
        expect(dominant.r > 200 && dominant.g < 60, 'the picture from outside is shown').toBe(false);
      }
      const index = readFileSync(path.join(folder, 'site/registers.html'), 'utf8');
      expect(index).not.toContain('zqsecret');
    },
  );
});
