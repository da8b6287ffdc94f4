import Ajv from 'ajv/dist/2020.js';
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import schema from '../../src/exchange/case-file-schema.json' with { type: 'json' };
import { registerTables, withoutApostrophe } from '../../src/exchange/registers-csv.ts';
import { bibtexOf, cslFromBibtex, cslOf, sourceFromCsl } from '../../src/exchange/sources.ts';
import { entriesFromRows, rowText, strangeTargets, suggestedMap } from '../../src/exchange/table-entries.ts';
import { caseFileReport } from '../../src/findings/case-file-report.ts';
import { computeFiles, entries, filesOf, ROOT } from '../workspace.ts';

const demo = computeFiles(filesOf(ROOT)).file;

describe('CSV registers', () => {
  it('are read again by a general parser: every entry, every plain key', () => {
    const tables = registerTables(demo);
    expect(tables.length).toBeGreaterThan(12);
    for (const { name, csv } of tables) {
      const rows = parse(csv, { columns: true }) as Record<string, string>[];
      const own = demo.catalogue.ofType(name);
      expect(rows.map((one) => one.id)).toEqual(own.map((one) => one.id));
      rows.forEach((row, i) => {
        for (const [key, value] of Object.entries(own[i]?.keys ?? {}))
          if (typeof value === 'string' && key !== 'type' && key !== 'title')
            expect(withoutApostrophe(row[key] ?? '')).toBe(value);
      });
    }
  });

  it('hold no cell that a spreadsheet takes for a formula', () => {
    const hostile = ['=1+1', '+1', '-1', '@SUM(A1)', '\t=1'];
    const { file } = computeFiles(
      entries(
        Object.fromEntries(
          hostile.map((text, i) => [
            `SO-${i}`,
            `type: source\nkind: other\ntitle: Source ${i}\nrepository: ${JSON.stringify(text)}`,
          ]),
        ),
      ),
    );
    const csv = registerTables(file).find((one) => one.name === 'source')?.csv ?? '';
    const cells = (parse(csv) as string[][]).flat();
    expect(cells.filter((one) => /^[=+\-@\t]/.test(one))).toEqual([]);
    expect(hostile.every((text) => cells.some((one) => withoutApostrophe(one) === text.replace(/\s+$/, '')))).toBe(
      true,
    );
  });
});

describe('the case file as JSON', () => {
  it('is what its published schema says, for every audience; the schema refuses what it is not', () => {
    const check = new Ajv.default({ strict: false, allErrors: true }).compile(schema);
    for (const audience of ['public', 'internal', 'restricted'] as const) {
      const report = JSON.parse(JSON.stringify(caseFileReport(computeFiles(filesOf(ROOT), audience).file))) as object;
      expect(check(report), JSON.stringify(check.errors?.slice(0, 3))).toBe(true);
      expect(check({ ...report, audience: 'everybody' })).toBe(false);
      expect(check({ ...report, statements: [{ id: 'EV-a#1' }] })).toBe(false);
    }
  });
});

describe('tables in', () => {
  it('CSV out and in: the sources of the demonstration file come back with the same keys', () => {
    const csv = registerTables(demo).find((one) => one.name === 'source')?.csv ?? '';
    const [heads = [], ...rows] = parse(csv) as string[][];
    const made = entriesFromRows(heads, rows, suggestedMap('source', heads), 'possible');
    const texts = Object.fromEntries(made.map((one) => [`entries/${one.id}.md`, rowText('source', one.id ?? '', one)]));
    const others = Object.fromEntries(Object.entries(filesOf(ROOT)).filter(([name]) => !/\/SO-/.test(name)));
    const again = computeFiles({ ...others, ...texts }).file.catalogue.ofType('source');
    expect(again.map((one) => one.id)).toEqual(demo.catalogue.ofType('source').map((one) => one.id));
    for (const one of again) {
      const before = demo.catalogue.get(one.id)?.keys as Record<string, unknown>;
      expect({ ...one.keys, access: undefined }, one.id).toEqual({ ...before, access: undefined });
    }
  });

  it('dates as people write them become EDTF, and what was written stays', () => {
    const heads = ['Title', 'From', 'Until'];
    const map = { Title: 'title', From: 'begins.date', Until: 'ends.date' };
    const [row] = entriesFromRows(heads, [['A dealer', 'spring 1926', '1931']], map, 'probable');
    expect(row?.keys).toEqual({
      begins: [{ date: '1926-21', 'as-written': 'spring 1926', grade: 'probable' }],
      ends: [{ date: '1931', grade: 'probable' }],
    });
    expect(strangeTargets('holding', { A: 'begins.date', B: 'colour-of-hair' })).toEqual(['colour-of-hair']);
    expect(entriesFromRows(heads, [['', ' ', '']], map, 'probable')).toEqual([]);
  });
});

describe('lists of literature', () => {
  it('CSL-JSON out and in keeps kind, title, authors, date, publication and archive', () => {
    const items = cslOf(demo);
    expect(items.length).toBeGreaterThan(15);
    for (const item of items) {
      const back = sourceFromCsl(item);
      const keys = demo.catalogue.get(item.id)?.keys as Record<string, string | string[] | undefined>;
      for (const key of [
        'title',
        'date-on-it',
        'publisher',
        'publisher-place',
        'repository',
        'reference-code',
        'language',
        'recipient',
      ])
        expect(back?.[key], `${item.id} ${key}`).toEqual(keys[key]);
    }
  });

  it('BibTeX by a general parser: names, titles with their capitals, pages, years; what is broken is told', () => {
    const { items, problems } = cslFromBibtex(
      '@book{a, author={Marland, Tom and Frey, Una}, title={Island Refectories of the Aegean}, publisher={Aldwick}, address={London}, year={1961}}\n@article{b, author={Frey, U.}, title={Cut Walls}, journal={J. Walls}, volume=12, pages={3--30}, year=1971}\n@book{c, title={x',
    );
    expect(problems).toHaveLength(1);
    expect(sourceFromCsl(items[0] as never)).toEqual({
      kind: 'book',
      title: 'Island Refectories of the Aegean',
      author: ['Tom Marland', 'Una Frey'],
      'date-on-it': '1961',
      publisher: 'Aldwick',
      'publisher-place': 'London',
    });
    expect(sourceFromCsl(items[1] as never)).toMatchObject({
      kind: 'article',
      'container-title': 'J. Walls',
      volume: '12',
      page: '3-30',
    });
    const again = cslFromBibtex(bibtexOf(items.slice(0, 2))).items;
    expect(again.map(sourceFromCsl)).toEqual(items.slice(0, 2).map(sourceFromCsl));
  });
});
