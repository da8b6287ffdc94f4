import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { demoCopy, freshFolder, snapshot, testFolder } from '../folders.ts';
import { kerfmark } from './kerfmark.ts';

const home = testFolder();

describe('begin, new, number', () => {
  it('lay out a workspace without errors and never overwrite', async () => {
    const folder = freshFolder(home);
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
    const folder = freshFolder(home);
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
    const folder = demoCopy(home);
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
