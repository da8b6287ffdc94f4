import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { ENTRY_TYPES } from '../src/model/entry-type-names.ts';
import { formatDocument } from '../src/model/format-document.ts';
import { jsonSchemaOf } from '../src/model/json-schema.ts';
import { inEnglish } from './spoken.ts';
import { computeFiles, filesOf, ROOT } from './workspace.ts';

describe('the format', () => {
  it('docs/format.md is what the schemas print', () => {
    expect(readFileSync(path.join(ROOT, 'docs/format.md'), 'utf8')).toBe(formatDocument());
  });

  it('every type has a JSON Schema that allows no unknown keys', () => {
    for (const type of ENTRY_TYPES) {
      const schema = jsonSchemaOf(type) as { additionalProperties?: unknown; required?: string[] };
      expect(schema.additionalProperties, type).toBe(false);
      expect(schema.required).toContain('id');
    }
  });
});

describe('the demonstration file', () => {
  const files = filesOf(ROOT);
  const computed = computeFiles(files);
  const { file, problems, leftOut } = computed;

  it('holds at least 60 entries, of every type, and no error', () => {
    expect(file.catalogue.entries.length).toBeGreaterThanOrEqual(60);
    for (const type of ENTRY_TYPES) expect(file.catalogue.ofType(type).length, type).toBeGreaterThan(0);
    expect(problems.filter((one) => one.severity === 'error')).toEqual([]);
    expect(leftOut).toEqual([]);
  });

  it('has Julian and Gregorian papers, a chain of copies, a rejected claim with its reasons, and a removal that straddles the law of 1932', () => {
    expect(file.statements.all.some((one) => one.date?.calendar === 'julian')).toBe(true);
    const parents = (id: string) =>
      (file.catalogue.get(id)?.keys as { 'derives-from'?: unknown } | undefined)?.['derives-from'];
    expect([parents('SO-ledger'), parents('SO-crate-list')]).toEqual([['SO-crate-list'], ['SO-photo-courtyard']]);
    const rejected = file.statement('CL-catalogue');
    expect(inEnglish(rejected?.notUsed ?? '')).toContain('rejected');
    expect(rejected?.why?.length).toBeGreaterThan(40);
    const start = file.statements.moments.momentOf('EV-removal', 'start');
    const end = file.statements.moments.momentOf('EV-removal', 'end');
    const [first, last] = [start && file.rangesOf(start)[1]?.earliest?.day, end && file.rangesOf(end)[1]?.latest?.day];
    const law = 705535; // 24 August 1932
    expect((first ?? 0) < law && law < (last ?? 0)).toBe(true);
  });

  it('has one true contradiction of one kind, at grade possible', () => {
    expect(file.contradictions.length).toBeGreaterThan(0);
    expect(new Set(file.contradictions.map((one) => `${one.kind} ${one.grade} ${one.cluster}`))).toEqual(
      new Set(['dates possible 1']),
    );
  });

  it('a joint fill with a dated material moves a bound', () => {
    const end = file.statements.moments.momentOf('EV-refilling', 'end');
    const because = end ? file.rangesOf(end)[1]?.earliest?.because.map((one) => one.kind) : [];
    expect(because).toContain('material');
    const without = computeFiles(files, 'restricted', ['PE-fill-A1#3', 'PE-fill-A1#4']).file;
    const moved = without.statements.moments.momentOf('EV-refilling', 'end');
    expect(moved && without.rangesOf(moved)[1]?.earliest?.day).toBeLessThan(
      (end && file.rangesOf(end)[1]?.earliest?.day) ?? 0,
    );
  });

  it('the order of files never matters', () => {
    const turned = Object.fromEntries(Object.entries(files).reverse());
    const print = (one: ReturnType<typeof computeFiles>) =>
      one.file.statements.moments.all.map((moment) =>
        one.file
          .rangesOf(moment)
          .map((range) => [range.earliest?.day, range.latest?.day, range.earliest?.because.map((one) => one.id)]),
      );
    expect(print(computeFiles(turned))).toEqual(print(computed));
  });
});
