import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import http from 'node:http';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Preview, startPreview } from '../../src/cli/serve.ts';
import { computeFiles, filesOf, ROOT } from '../workspace.ts';
import { silentEffects } from './kerfmark.ts';

let folder: string;
let preview: Preview;

beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'kerfmark-trace-'));
  cpSync(path.join(ROOT, 'tests/messages/base/entries'), path.join(folder, 'entries'), { recursive: true });
  const put = (file: string, text: string): void => writeFileSync(path.join(folder, 'entries', file), text);
  put('panel.md', '---\nid: OB-p\ntype: object\ntitle: A panel\npanels: [{ id: A, width: 500, height: 400 }]\n---\n');
  put(
    'figure.md',
    '---\nid: FI-p\ntype: figure\ntitle: A photograph\nfile: photo.jpg\nalternative: a wall\nobject: OB-p\npanel: A\ntechnique: raking\n---\n',
  );
  const trace = (id: string, more = ''): string =>
    `---\nid: ${id}\ntype: evidence\nkind: crack\ntitle: "A crack: fine" # as seen\nobject: OB-p\npanel: A\n${more}---\n\nWhy it matters.\n`;
  put('open.md', trace('PE-open'));
  put('windows.md', trace('PE-windows').replaceAll('\n', '\r\n'));
  put('drawn.md', trace('PE-drawn', 'shape: { point: [1, 2] }\n'));
  put('table.md', '---\nid: SV-p\ntype: survey\ntitle: A table\ntable: rows.csv\nobject: OB-p\npanel: A\n---\n');
  put('rows.csv', 'id,title,kind\nPE-row,A row,crack\n');
  mkdirSync(path.join(folder, 'out'));
  preview = await startPreview(
    { words: [], flags: { in: folder, out: path.join(folder, 'out', 'site') } },
    silentEffects(folder),
    0,
  );
});

afterAll(() => {
  preview.close();
  rmSync(folder, { recursive: true, force: true });
});

const LINE = {
  figure: 'FI-p',
  kind: 'line',
  points: [
    [10, 20],
    [30.04, 40],
  ],
  error: 2,
};

interface Sent {
  readonly method?: string;
  readonly origin?: string | null;
  readonly type?: string;
  readonly host?: string;
}

/** Sends as a program would, so that every header can be set. */
function send(
  body: unknown,
  { method = 'POST', origin, type = 'application/json', host }: Sent = {},
): Promise<{ status: number; message: string }> {
  const url = new URL('/_preview/trace', preview.address);
  const own = origin === undefined ? preview.address.replace(/\/$/, '') : origin;
  return new Promise((resolve, reject) => {
    const request = http.request(
      url,
      {
        method,
        headers: { 'content-type': type, ...(own === null ? {} : { origin: own }), ...(host ? { host } : {}) },
      },
      (response) => {
        let text = '';
        response.on('data', (part) => {
          text += part;
        });
        response.on('end', () => {
          let message = text;
          try {
            message = JSON.parse(text).message;
          } catch {}
          resolve({ status: response.statusCode ?? 0, message });
        });
      },
    );
    request.on('error', reject);
    if (method === 'GET') return void request.end();
    request.end(typeof body === 'string' ? body : JSON.stringify(body));
  });
}

const textOf = (file: string): string => readFileSync(path.join(folder, 'entries', file), 'utf8');

describe('saving a trace in the preview', () => {
  it.each([
    ['a page of another site', { origin: 'https://elsewhere.example' }, 403],
    ['a page of another port', { origin: 'http://127.0.0.1:1' }, 403],
    ['no origin at all', { origin: null }, 403],
    ['an origin that is hidden', { origin: 'null' }, 403],
    ['a form of another site', { type: 'text/plain' }, 415],
    ['reading', { method: 'GET' }, 405],
    ['a name that leads here from outside', { host: 'museum.example', origin: 'http://museum.example' }, 403],
  ] as const)('%s is refused, and nothing is written', async (_, sent, status) => {
    const before = textOf('open.md');
    expect((await send({ ...LINE, into: { entry: 'PE-open' } }, sent)).status).toBe(status);
    expect(textOf('open.md')).toBe(before);
  });

  it('one line more in an entry without a shape; all else stays to the byte, line ends too', async () => {
    for (const [file, id] of [
      ['open.md', 'PE-open'],
      ['windows.md', 'PE-windows'],
    ] as const) {
      const before = textOf(file);
      const answer = await send({ ...LINE, into: { entry: id } });
      expect(answer).toMatchObject({ status: 200 });
      expect(answer.message).toContain(`entries/${file}`);
      const after = textOf(file);
      const line = `shape: { in: FI-p, error: 2, line: [[10, 20], [30, 40]] }${file === 'windows.md' ? '\r' : ''}\n`;
      expect(after).toContain(line);
      expect(after.replace(line, '')).toBe(before);
    }
  });

  it.each([
    ['an entry that has a shape', { entry: 'PE-drawn' }, 'PE-drawn has a shape already'],
    ['the same entry a second time', { entry: 'PE-open' }, 'has a shape already'],
    ['a row of a table', { entry: 'PE-row' }, 'Copy the line into its column'],
    ['an entry that is not there', { entry: 'PE-none' }, 'There is no trace "PE-none"'],
    ['an entry that is no trace', { entry: 'OB-p' }, 'There is no trace "OB-p"'],
  ])('%s is left as it is', async (_, into, words) => {
    const before = filesOf(folder);
    const answer = await send({ ...LINE, into });
    expect(answer.status).toBe(409);
    expect(answer.message).toContain(words);
    expect(filesOf(folder)).toEqual(before);
  });

  it.each([
    ['no JSON', '{'],
    ['too few points', { ...LINE, points: [[1, 1]], into: { entry: 'PE-windows' } }],
    [
      'numbers that are none',
      {
        ...LINE,
        points: [
          [1, null],
          [2, 2],
        ],
        into: { title: 'x', is: 'crack' },
      },
    ],
    ['a kind that is none', { ...LINE, into: { title: 'x', is: 'graffito' } }],
    ['more than is asked', { ...LINE, into: { title: 'x', is: 'crack', file: '../../out.md' } }],
    ['a figure that is not there', { ...LINE, figure: 'FI-x', into: { title: 'x', is: 'crack' } }],
  ])('%s is told in words', async (_, body) => {
    const before = filesOf(folder);
    const answer = await send(body);
    expect(answer.status).toBe(409);
    expect(answer.message.length).toBeGreaterThan(15);
    expect(filesOf(folder)).toEqual(before);
  });

  it('a new entry with what the figure says; the file reads without a problem, and no name is taken twice', async () => {
    const title = 'Crack: "fine", ἄνω #2';
    expect((await send({ ...LINE, into: { title, is: 'crack' } })).status).toBe(200);
    expect((await send({ ...LINE, into: { title, is: 'crack' } })).status).toBe(200);
    const { file, problems } = computeFiles(filesOf(folder));
    const found = file.catalogue.ofType('evidence').filter((one) => one.keys.title === title);
    expect(found).toHaveLength(2);
    expect(found[0]?.keys).toMatchObject({
      kind: 'crack',
      object: 'OB-p',
      panel: 'A',
      face: 'front',
      'seen-under': ['raking'],
      shape: [
        {
          in: 'FI-p',
          error: 2,
          line: [
            [10, 20],
            [30, 40],
          ],
        },
      ],
    });
    const about = found.map((one) => one.file);
    // A note says that the text below the keys is still to be written.
    const expected = ['shape-not-usable', 'template-text-left'];
    expect(problems.filter((one) => about.includes(one.place.file) && !expected.includes(one.code))).toEqual([]);
  });

  it('a body that is too large is refused', async () => {
    const answer = await send(`{"points": [${'[1,1],'.repeat(300_000)}[1,1]]}`).catch(() => ({
      status: 413,
      message: '',
    }));
    expect(answer.status).toBe(413);
  });
});
