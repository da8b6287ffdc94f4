import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { inEnglish } from '../spoken.ts';
import { computeFiles, filesOf, ROOT } from '../workspace.ts';

const base = filesOf(path.join(ROOT, 'tests/messages/base'));
const entry = (line: string): string =>
  `---\nid: EV-slip\ntype: event\ntitle: A slip\nkind: removal\nobjects: [OB-wall]\nstated:\n${line}\n---\n`;

describe('slips in braces are told as what they are', () => {
  it.each([
    ['  -{ date: "1926", grade: probable }', 'yaml-no-space', 'write - { date: "1926", grade: probable }'],
    [
      '  - { date: "1926"; grade: probable; why: note }',
      'yaml-comma-missing',
      'write - { date: "1926", grade: probable, why: note }',
    ],
    [
      '  - { date: "1926", grade: probable, why: the note: not read }',
      'yaml-colon-in-text',
      'put the text in quotation marks: why: "the note: not read"',
    ],
    [
      '  - { date: 31 April 1926, grade: probable }',
      'date-not-edtf',
      'there is no day "1926-04-31" in the Gregorian calendar; check the day and the month, or name the calendar of the document (calendar: julian)',
    ],
  ])('%s', (line, code, mend) => {
    const found = computeFiles({ ...base, 'entries/events/EV-slip.md': entry(line) }).problems.find(
      (one) => one.code === code,
    );
    expect(found?.place).toMatchObject({ file: 'entries/events/EV-slip.md', line: 8 });
    expect(inEnglish(found?.mend ?? '')).toBe(mend);
  });

  it('a text in quotation marks with a colon or a semicolon in it is no slip', () => {
    const line = '  - { date: "1926", grade: probable, why: "the note; page: 3" }';
    const problems = computeFiles({ ...base, 'entries/events/EV-slip.md': entry(line) }).problems;
    expect(problems.filter((one) => one.entry === 'EV-slip' && one.severity === 'error')).toEqual([]);
  });
});
