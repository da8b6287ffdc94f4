import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import Ajv from 'ajv';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { isDateProblem, readDate } from '../../src/dates/read-date.ts';
import { ENTRY_SCHEMAS } from '../../src/model/entry.ts';
import { keyNames, keysAt } from '../../src/model/walk-fields.ts';
import { CARD_ENTRY, cardMarkdown, QUICK_CARD } from '../../src/reports/quick-card.ts';
import { SHEET_COLUMNS } from '../../src/reports/survey-sheet.ts';
import { openPdf, textOfPdf } from '../audiences/read-outputs.ts';
import { filesOf, ROOT } from '../workspace.ts';
import { kerfmark } from './kerfmark.ts';

const folder = mkdtempSync(path.join(tmpdir(), 'kerfmark-sheet-'));
const out = path.join(folder, 'documents');
beforeAll(async () => {
  await kerfmark(['begin', '--object', 'A wall', '--panels', 'A'], folder);
  const file = path.join(folder, 'entries/objects/OB-1.md');
  writeFileSync(file, readFileSync(file, 'utf8').replace('{ id: A }', '{ id: A, width: 915, height: 1480 }'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('the survey sheet', () => {
  it('has keys of evidence as columns, fits A4 on its side, and draws the panel at a stated scale', async () => {
    for (const { key } of SHEET_COLUMNS) {
      const [first, ...rest] = key.split('.');
      expect(keysAt(ENTRY_SCHEMAS.evidence, rest.length === 0 ? [] : [first as string]), key).toContain(
        rest[0] ?? first,
      );
    }
    expect(SHEET_COLUMNS.reduce((sum, { widthMm }) => sum + widthMm, 0)).toBe(267);
    expect(await kerfmark(['sheet', 'OB-1/A'], folder)).toMatchObject({ code: 0, err: '' });
    const pdf = await openPdf(path.join(out, 'survey-OB-1-A.pdf'));
    expect(pdf.numPages).toBe(2);
    const [, , width = 0, height = 0] = (await pdf.getPage(1)).view;
    // ISO 216: A4 is 210 mm by 297 mm; PDF counts 72 points to the inch.
    expect(width / 72).toBeCloseTo(297 / 25.4, 2);
    expect(height / 72).toBeCloseTo(210 / 25.4, 2);
    const text = await textOfPdf(path.join(out, 'survey-OB-1-A.pdf'));
    for (const { words } of SHEET_COLUMNS) expect(text).toContain(words);
    expect(text).toContain('1 : 10');
    expect(text).toContain('Nobody lifts alone');
  });

  it('typed into the table beside it, makes entries; a table that is there is never overwritten', async () => {
    const table = path.join(out, 'survey-OB-1-A.csv');
    const head = readFileSync(table, 'utf8');
    const row =
      'PE-1,A fill at the joint,fill,front,upper left,raking,lime with sand,probable,8 mm,,PE-2,\nPE-2,Joint,line-or-joint,front,,,straight,established,,,,\n';
    writeFileSync(table, head + row);
    await kerfmark(['sheet', 'OB-1/A'], folder);
    expect(readFileSync(table, 'utf8')).toBe(head + row);
    mkdirSync(path.join(folder, 'entries/evidence'), { recursive: true });
    writeFileSync(path.join(folder, 'entries/evidence/survey.csv'), head + row);
    const line = [
      'new',
      'survey',
      '--title',
      'Survey',
      '--table',
      'survey.csv',
      '--object',
      'OB-1',
      '--panel',
      'A',
      '--yes',
    ];
    expect((await kerfmark(line, folder)).code).toBe(0);
    const checked = await kerfmark(['check'], folder);
    expect(checked.out).toMatch(/^no errors, no doubts/m);
    const panels = await kerfmark(['why', 'PE-1'], folder);
    expect(panels.code).toBe(0);
  });

  it('names the panels where there is no such', async () => {
    expect((await kerfmark(['sheet', 'OB-1/Z'], folder)).err).toContain('There is no panel "OB-1/Z"');
    expect((await kerfmark(['sheet', '--rows', 'many'], folder)).err).toContain('"many" is no number of rows');
  });
});

describe('the quick card', () => {
  it('is one page, and the page of the guide says the same', async () => {
    expect((await kerfmark(['card', '--out', 'documents'], folder)).err).toBe('');
    expect((await openPdf(path.join(out, 'quick-card.pdf'))).numPages).toBe(1);
    expect(readFileSync(path.join(ROOT, 'docs/guide/quick-card.md'), 'utf8')).toBe(cardMarkdown());
  });

  it('shows dates that are read, keys that there are, and an entry that fits', () => {
    const dates = QUICK_CARD[0]?.rows.flatMap(([, write]) =>
      [...write.matchAll(/"([^"]+)"/g)].map(([, date]) => date as string),
    );
    expect(dates?.length).toBeGreaterThan(12);
    const settings = { circa: { year: 10, decade: 10, century: 25, month: 3, day: 30 }, sunsetDays: 1 };
    for (const date of dates ?? []) expect(isDateProblem(readDate(date, 'gregorian', settings)), date).toBe(false);
    const keys = parse(CARD_ENTRY.split('---')[1] ?? '') as object;
    for (const key of Object.keys(keys)) expect(keyNames(ENTRY_SCHEMAS.event)).toContain(key);
    expect(ENTRY_SCHEMAS.event.safeParse(keys).success).toBe(true);
  });
});

describe('help from an editor', () => {
  it('the schema takes every entry of the demonstration file, and refuses a word that does not fit', async () => {
    await kerfmark(['schema', '--editor'], folder);
    const schema = JSON.parse(readFileSync(path.join(folder, '.vscode/entry.schema.json'), 'utf8')) as object;
    const valid = new Ajv.default({ strict: false, validateFormats: false }).compile(schema);
    const files = Object.entries(filesOf(ROOT)).filter(
      ([name]) => name.startsWith('entries/') && !name.startsWith('entries/sent/') && name.endsWith('.md'),
    );
    expect(files.length).toBeGreaterThan(100);
    for (const [name, text] of files) {
      valid(parse(text.split(/^---$/m)[1] ?? ''));
      // What _defaults.yaml gives is not in the file itself.
      const wrong = (valid.errors ?? []).filter(({ keyword }) => !['required', 'if'].includes(keyword));
      expect(wrong, name).toEqual([]);
    }
    expect(valid({ id: 'EV-a', type: 'event', title: 'A', kind: 'remval' })).toBe(false);
  });

  it('settings of one’s own are left as they are', async () => {
    const file = path.join(folder, '.vscode/settings.json');
    writeFileSync(file, '{ "mine": true }');
    expect((await kerfmark(['schema', '--editor'], folder)).out).toContain('There already, left as it is');
    expect(readFileSync(file, 'utf8')).toBe('{ "mine": true }');
  });
});
