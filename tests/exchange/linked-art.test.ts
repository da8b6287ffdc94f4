import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import Ajv from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import jsonld from 'jsonld';
import { describe, expect, it } from 'vitest';
import { linkedArt } from '../../src/exchange/linked-art.ts';
import { checkLinkedArt } from '../../src/exchange/linked-art-check.ts';
import type { LinkedArtRecord } from '../../src/exchange/linked-art-parts.ts';
import { computeFiles, entries, filesOf, PUBLISHED, ROOT } from '../workspace.ts';

/* The published JSON Schemas and context of Linked Art 1.0 (linked.art, CC BY 4.0), kept in tests/published. */
const folder = path.join(PUBLISHED, 'linked-art');

const demo = linkedArt(computeFiles(filesOf(ROOT)).file);

const SCHEMAS: Readonly<Record<string, string>> = {
  HumanMadeObject: 'object',
  Person: 'person',
  Group: 'group',
  Place: 'place',
  LinguisticObject: 'text',
  Event: 'event',
};

const schemaOf = (record: LinkedArtRecord): string =>
  (record.classified_as as { id: string }[] | undefined)?.some((one) => one.id.endsWith('300055863'))
    ? 'provenance'
    : (SCHEMAS[record.type] ?? 'event');

describe('Linked Art 1.0', () => {
  const ajv = new Ajv.default({ strict: false, allErrors: true });
  addFormats.default(ajv);
  for (const name of readdirSync(folder).filter((one) => /^(?!context|linked_art).*\.json$/.test(one)))
    ajv.addSchema(JSON.parse(readFileSync(path.join(folder, name), 'utf8')));
  const validate = (record: LinkedArtRecord): readonly string[] => {
    const check = ajv.getSchema(`https://linked.art/api/1.0/schema/${schemaOf(record)}.json`);
    if (!check) throw new Error(`no schema ${schemaOf(record)}`);
    return check(record) ? [] : (check.errors ?? []).map((one) => `${record.id} ${one.instancePath} ${one.message}`);
  };

  it('every record of the demonstration file is valid by the published schema of its kind', () => {
    expect(demo.length).toBeGreaterThan(60);
    expect(new Set(demo.map(schemaOf)).size).toBeGreaterThan(6);
    expect(demo.flatMap(validate)).toEqual([]);
  });

  it('the schemas would refuse a wrong record', () => {
    const [first] = demo as [LinkedArtRecord];
    expect(validate({ ...first, made_up: 1 })).not.toEqual([]);
    expect(validate({ ...first, _label: 7 } as unknown as LinkedArtRecord)).not.toEqual([]);
  });

  it('expands with a general JSON-LD library, offline, to terms of the CRM', async () => {
    const context = JSON.parse(readFileSync(path.join(folder, 'context.json'), 'utf8')) as object;
    const documentLoader = async (url: string) => {
      if (url !== 'https://linked.art/ns/v1/linked-art.json') throw new Error(`asked for ${url}`);
      return { contextUrl: undefined, documentUrl: url, document: context as never };
    };
    const object = demo.find((one) => one.id.endsWith('OB-lerakos')) as LinkedArtRecord;
    const [expanded = {}] = (await jsonld.expand(object as never, {
      documentLoader: documentLoader as never,
    })) as unknown as readonly Record<string, unknown>[];
    const keys = Object.keys(expanded).join(' ');
    expect(expanded['@type']).toEqual(['http://www.cidoc-crm.org/cidoc-crm/E22_Human-Made_Object']);
    expect(keys).toContain('P113i_was_removed_by');
    expect(keys).toContain('P140i_was_attributed_by');
  });
});

describe('rules of the standard that its schemas do not enforce', () => {
  it('hold for the demonstration file, and are found broken where they are', () => {
    expect(checkLinkedArt(demo)).toEqual([]);
    const [first] = demo as [LinkedArtRecord];
    expect(checkLinkedArt([{ ...first, '@context': 'https://example.org/own.json' }])).toHaveLength(1);
    expect(
      checkLinkedArt([{ ...first, timespan: { type: 'TimeSpan', end_of_the_begin: '1936-01-01T00:00:00Z' } }]),
    ).toHaveLength(1);
    const provenance = demo.find((one) => one.part !== undefined) as LinkedArtRecord;
    expect(checkLinkedArt([{ ...provenance, part: [] }])).toHaveLength(1);
  });

  it('spans of uncertain dates (the notes of the standard beside each): by, not before, before the year 1', () => {
    const record = (stated: string) =>
      linkedArt(
        computeFiles(entries({ 'EV-a': `type: event\nkind: listing\ntitle: Listed\nstated: [${stated}]` })).file,
      ).find((one) => one.id.endsWith('EV-a')) as LinkedArtRecord;
    expect(record('{ date: "1926", sense: by, grade: probable }').timespan).toEqual({
      type: 'TimeSpan',
      end_of_the_begin: '1926-12-31T23:59:59Z',
      end_of_the_end: '1926-12-31T23:59:59Z',
    });
    expect(record('{ date: "-0099", grade: probable }').timespan).toEqual({
      type: 'TimeSpan',
      identified_by: [{ type: 'Name', content: expect.stringContaining('100 BCE') }],
    });
    expect(record('{ date: "1926", sense: by, grade: conjectural }').timespan).toBeUndefined();
    const claimed = record('{ date: "1937-05", sense: not-before, grade: possible }').attributed_by as {
      assigned: object[];
    }[];
    expect(claimed[0]?.assigned).toEqual([{ type: 'TimeSpan', begin_of_the_begin: '1937-05-01T00:00:00Z' }]);
  });

  it('hidden entries never enter it: no label, no reference', () => {
    const file = computeFiles(
      entries({
        'PA-x': 'type: party\nis: person\ntitle: CANARY-party\naccess: restricted',
        'OB-a': 'type: object\ntitle: A panel\nholder: PA-x',
        'HO-a': 'type: holding\ntitle: Held\ncapacity: possessor\nobjects: [OB-a]\nholder: PA-x',
      }),
      'public',
    ).file;
    expect(JSON.stringify(linkedArt(file))).not.toMatch(/CANARY|PA-x/);
  });
});
