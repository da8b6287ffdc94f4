import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { strToU8, zipSync } from 'fflate';
import { afterEach, describe, expect, it } from 'vitest';
import { entries } from '../workspace.ts';
import { kerfmark } from './kerfmark.ts';

const folders: string[] = [];
afterEach(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

function workspace(): string {
  const folder = mkdtempSync(path.join(tmpdir(), 'kerfmark-import-'));
  folders.push(folder);
  mkdirSync(path.join(folder, 'entries'));
  const files = entries({ 'OB-a': 'type: object\ntitle: A panel\npanels: [{ id: A }]' });
  for (const [name, text] of Object.entries(files)) writeFileSync(path.join(folder, name), text);
  return folder;
}

/** A spreadsheet of one sheet (ECMA-376, the parts that every reader needs), its cells as inline text. */
function spreadsheet(rows: readonly (readonly string[])[]): Uint8Array {
  const cells = rows
    .map(
      (row, r) =>
        `<row r="${r + 1}">${row.map((text, c) => `<c r="${String.fromCharCode(65 + c)}${r + 1}" t="inlineStr"><is><t>${text}</t></is></c>`).join('')}</row>`,
    )
    .join('');
  const head = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>';
  const main = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
  const office = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
  const packaged = 'http://schemas.openxmlformats.org/package/2006';
  return zipSync({
    '[Content_Types].xml': strToU8(
      `${head}<Types xmlns="${packaged}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/></Types>`,
    ),
    '_rels/.rels': strToU8(
      `${head}<Relationships xmlns="${packaged}/relationships"><Relationship Id="rId1" Type="${office}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    ),
    'xl/workbook.xml': strToU8(
      `${head}<workbook xmlns="${main}" xmlns:r="${office}"><sheets><sheet name="Survey" sheetId="1" r:id="rId1"/></sheets></workbook>`,
    ),
    'xl/_rels/workbook.xml.rels': strToU8(
      `${head}<Relationships xmlns="${packaged}/relationships"><Relationship Id="rId1" Type="${office}/worksheet" Target="worksheets/sheet1.xml"/></Relationships>`,
    ),
    'xl/worksheets/sheet1.xml': strToU8(
      `${head}<worksheet xmlns="${main}"><sheetData>${cells}</sheetData></worksheet>`,
    ),
  });
}

describe('kerfmark import table', () => {
  const rows = [
    ['Kind', 'Title', 'Panel', 'Seen'],
    ['crack', 'A long crack', 'A', 'fine, from edge to edge'],
    ['crak', 'Another', 'A', ''],
  ];

  it('from a spreadsheet and from CSV alike: tells first, writes with --write, overwrites nothing', async () => {
    const folder = workspace();
    writeFileSync(path.join(folder, 'survey.xlsx'), spreadsheet(rows));
    writeFileSync(
      path.join(folder, 'survey.csv'),
      rows.map((row) => row.map((one) => `"${one}"`).join(',')).join('\r\n'),
    );
    const line = (file: string) => ['import', 'table', file, '--type', 'evidence', '--object', 'OB-a'];
    const [fromSheet, fromCsv] = [
      await kerfmark(line('survey.xlsx'), folder),
      await kerfmark(line('survey.csv'), folder),
    ];
    expect(fromSheet.err).toBe('');
    expect(fromSheet.out).toBe(fromCsv.out);
    expect(fromSheet.out).toContain('Would write PE-long-crack (row 2): A long crack');
    expect(fromSheet.out).toContain('Row 3: "crak" is not one of the words for "kind"');
    expect(existsSync(path.join(folder, 'entries/evidence'))).toBe(false);
    expect((await kerfmark([...line('survey.xlsx'), '--write'], folder)).code).toBe(1);
    const text = readFileSync(path.join(folder, 'entries/evidence/PE-long-crack.md'), 'utf8');
    expect(text).toContain('object: OB-a\n');
    expect(text).toContain('From a row of a table, not yet checked: Kind: crack; Title: A long crack;');
    writeFileSync(path.join(folder, 'entries/evidence/PE-long-crack.md'), text.replace('A long crack', 'Mine'));
    await kerfmark([...line('survey.xlsx'), '--write'], folder);
    expect(readFileSync(path.join(folder, 'entries/evidence/PE-long-crack.md'), 'utf8')).toContain('Mine');
  });

  it('a map of columns can be saved, corrected and used again; plain words for what does not fit', async () => {
    const folder = workspace();
    writeFileSync(path.join(folder, 'held.csv'), 'Who,Since,Till\nA first owner,spring 1926,1931\n');
    const line = ['import', 'table', 'held.csv', '--type', 'holding', '--object', 'OB-a'];
    expect((await kerfmark([...line, '--save-map', 'map.yaml'], folder)).out).toContain('Columns not read');
    expect(readFileSync(path.join(folder, 'map.yaml'), 'utf8')).toBe('Who: ""\nSince: ""\nTill: ""\n');
    expect((await kerfmark([...line, '--save-map', 'map.yaml'], folder)).err).toContain('exists already');
    writeFileSync(path.join(folder, 'map.yaml'), 'Who: title\nSince: begins.date\nTill: ends.date\n');
    await kerfmark([...line, '--map', 'map.yaml', '--write'], folder);
    const text = readFileSync(path.join(folder, 'entries/holdings/HO-first-owner.md'), 'utf8');
    expect(text).toContain('date: 1926-21\n    as-written: spring 1926\n    grade: possible');
    writeFileSync(path.join(folder, 'map.yaml'), 'Who: titel\n');
    expect((await kerfmark([...line, '--map', 'map.yaml'], folder)).err).toContain(
      'titel, which entries of type holding do not have',
    );
    writeFileSync(path.join(folder, 'broken.xlsx'), 'no zip');
    expect((await kerfmark(['import', 'table', 'broken.xlsx'], folder)).err).toContain(
      'cannot be read as a spreadsheet',
    );
    expect((await kerfmark(['import', 'table', 'none.csv'], folder)).err).toContain('There is no file');
    expect((await kerfmark(['import', 'tabel', 'x'], folder)).err).toContain('Type: kerfmark import line FILE');
  });
});
