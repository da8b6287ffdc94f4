import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { COMMANDS } from '../../src/cli/command-list.ts';
import { ProgressLine } from '../../src/cli/progress-line.ts';
import { english } from '../spoken.ts';
import { ROOT } from '../workspace.ts';
import { kerfmark } from './kerfmark.ts';

const out = mkdtempSync(path.join(tmpdir(), 'kerfmark-json-'));
afterAll(() => rmSync(out, { recursive: true, force: true }));

/** Commands that report nothing: they ask, write a file for people, or serve. */
const SILENT = ['begin', 'new', 'explain', 'serve', 'schema', 'sheet', 'card'];

describe('--json', () => {
  const csv = path.join(out, 'table.csv');
  writeFileSync(csv, 'title,kind\nA crack,crack\n');
  const line = path.join(out, 'line.txt');
  writeFileSync(line, 'Adela Thornquist, Boston; given to the museum, 1951.\n');
  const lines: Readonly<Record<string, readonly (readonly string[])[]>> = {
    check: [['check']],
    dates: [['dates']],
    why: [['why', 'EV-removal']],
    worth: [['worth']],
    references: [['references']],
    custody: [['custody']],
    panels: [['panels']],
    answer: [['answer', 'IN-2024-1']],
    file: [['file', 'OB-lerakos', '--format', 'md', '--out', out]],
    appendix: [['appendix', 'OB-lerakos', '--format', 'md', '--out', out]],
    export: [['export', '--format', 'csv', '--out', path.join(out, 'export')]],
    build: [['build', '--in', path.join(ROOT, 'tests/messages/base'), '--out', path.join(out, 'site')]],
    number: [['number', '--dry-run']],
    upgrade: [['upgrade', '--dry-run']],
    import: [
      ['import', 'line', line],
      ['import', 'table', csv, '--type', 'evidence', '--object', 'OB-lerakos'],
    ],
  };

  it('is known to every command that reports', () => {
    const reporting = COMMANDS.map((one) => one.name).filter((name) => !SILENT.includes(name));
    expect(Object.keys(lines).sort()).toEqual(reporting.sort());
  });

  it.each(
    Object.values(lines)
      .flat()
      .map((one) => [one.join(' '), one] as const),
  )('%s prints one JSON value that names its format, and nothing else', async (_, words) => {
    const { out: printed, err, code } = await kerfmark([...words, '--json'], ROOT);
    expect({ err, code }).toEqual({ err: '', code: 0 });
    const read = JSON.parse(printed) as Record<string, unknown> | unknown[];
    if (words[1] !== 'line') expect((read as { format?: string }).format).toMatch(/^kerfmark-[a-z-]+\/\d$/);
  });
});

describe('progress', () => {
  it('is one line, written over, cut to the width, not more often than the eye follows, and taken away', () => {
    let [written, now] = ['', 0];
    const line = new ProgressLine(
      english,
      (text) => {
        written += text;
      },
      () => 20,
      () => now,
    );
    line.clear();
    expect(written).toBe('');
    for (let done = 1; done <= 100; done += 1) {
      line.show({ what: 'Pages', done, all: 100 });
      now += 10;
    }
    const shown = written.split('\r\u001b[K').slice(1);
    expect(shown[0]).toBe('Pages 1 of 100');
    expect(shown.length).toBeLessThan(15);
    line.show({ what: 'A step with a very long name indeed' });
    expect(written.endsWith('A step with a very ')).toBe(true);
    line.clear();
    expect(written.endsWith('\r\u001b[K')).toBe(true);
    expect(written).not.toContain('\n');
  });
});
