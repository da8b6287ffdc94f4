import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { readLetterValues } from '../../src/letters/letter-values.ts';
import { CURRENT_FORMAT, UPGRADES, upgradeText } from '../../src/reading/upgrade-text.ts';
import { kerfmark } from '../cli/kerfmark.ts';
import { ROOT } from '../workspace.ts';

const home = mkdtempSync(path.join(tmpdir(), 'kerfmark-upgrade-'));
afterAll(() => rmSync(home, { recursive: true, force: true }));

/** A copy of an old workspace, which stays in the tests as it was written then. */
function oldWorkspace(format: number): string {
  const folder = path.join(home, `format-${format}-${Math.random()}`);
  cpSync(path.join(ROOT, `tests/upgrade/format-${format}`), folder, { recursive: true });
  return folder;
}

it('every format that there was is kept as a workspace', () => {
  expect(UPGRADES.map((one) => one.to)).toEqual(Array.from({ length: CURRENT_FORMAT }, (_, i) => i + 1));
  for (let format = 0; format < CURRENT_FORMAT; format += 1)
    expect(existsSync(path.join(ROOT, `tests/upgrade/format-${format}/entries`)), String(format)).toBe(true);
});

describe.each(Array.from({ length: CURRENT_FORMAT }, (_, format) => format))('a workspace of format %i', (format) => {
  it('opens without errors as it is', async () => {
    expect((await kerfmark(['check'], oldWorkspace(format))).code).toBe(0);
  });

  it('is shown with what would change, is brought up to date keeping the old texts, and then needs nothing', async () => {
    const folder = oldWorkspace(format);
    const file = path.join(folder, 'entries/workspace.md');
    const before = readFileSync(file, 'utf8');
    const trial = await kerfmark(['upgrade', '--dry-run'], folder);
    expect(trial.out).toContain(`+format: ${CURRENT_FORMAT}`);
    expect(trial.out).toContain('--- entries/workspace.md');
    expect(trial.out).toMatch(/(One file|\d files) would change/);
    expect(readFileSync(file, 'utf8')).toBe(before);
    const { out, code } = await kerfmark(['upgrade'], folder);
    expect({ code, out }).toMatchObject({ code: 0, out: expect.stringMatching(/(One file|\d files) changed/) });
    expect(readFileSync(file, 'utf8')).toBe(
      before
        .replace(/^format: \d+\n/m, '')
        .replace('type: workspace\n', `type: workspace\nformat: ${CURRENT_FORMAT}\n`),
    );
    expect(readFileSync(path.join(folder, `.kerfmark/format-${format}/entries/workspace.md`), 'utf8')).toBe(before);
    expect((await kerfmark(['upgrade'], folder)).out).toContain('There is nothing to do');
    expect((await kerfmark(['check'], folder)).code).toBe(0);
  });
});

describe('letters of the first format, which hold only sentences', () => {
  const letter = (folder: string, name: string) => {
    const file = path.join(folder, 'entries/sent', name);
    return existsSync(file) ? readFileSync(file, 'utf8') : null;
  };

  it('go to the entries byte by byte; each sentence that the file would still make becomes values, English or French', async () => {
    const folder = oldWorkspace(1);
    const before = ['IN-1.md', 'IN-2.md'].map((name) => readFileSync(path.join(folder, 'sent', name), 'utf8'));
    expect((await kerfmark(['check'], folder)).out.match(/\[sent-not-comparable\]/g)).toHaveLength(2);
    const { out } = await kerfmark(['upgrade'], folder);
    expect(out).toContain('sent/IN-1.md goes to entries/sent/IN-1.md; 7 statements are kept as values');
    expect(out).toContain('sent/IN-2.md goes to entries/sent/IN-2.md; 7 statements are kept as values');
    expect(existsSync(path.join(folder, 'sent'))).toBe(false);
    expect(['IN-1.md', 'IN-2.md'].map((name) => letter(folder, name))).toEqual(before);
    for (const name of ['IN-1.json', 'IN-2.json'])
      expect(readLetterValues(letter(folder, name) ?? '')?.statements.map((one) => one.value.is)).toEqual([
        'relation',
        'lasted',
        'dated',
        'dated',
        'dated',
        'dated',
        'passed',
      ]);
    const checked = await kerfmark(['check'], folder);
    expect(checked.code).toBe(0);
    expect(checked.out).not.toContain('[sent-not-comparable]');
    expect((await kerfmark(['answer', 'IN-2', '--changes'], folder)).out).toBe(
      'No statement that entries/sent/IN-2.md cites is otherwise today; nothing else of it was kept to compare.\n',
    );
    const seen = path.join(folder, 'entries/seen.md');
    writeFileSync(seen, readFileSync(seen, 'utf8').replace('1913/1915', '1913/1916'));
    expect((await kerfmark(['check'], folder)).out.match(/\[cited-changed\]/g)).toHaveLength(2);
  });

  it('a sentence that the file would not make any more stays words, and is never called changed', async () => {
    const folder = oldWorkspace(1);
    const seen = path.join(folder, 'entries/seen.md');
    writeFileSync(seen, readFileSync(seen, 'utf8').replace('1913/1915', '1913/1916'));
    const { out } = await kerfmark(['upgrade'], folder);
    expect(out.match(/6 statements are kept as values, these stay words: EV-seen#2/g)).toHaveLength(2);
    const checked = await kerfmark(['check'], folder);
    expect(checked.code).toBe(0);
    expect(checked.out).not.toContain('[cited-changed]');
    expect(checked.out.match(/\[sent-not-comparable\]/g)).toHaveLength(2);
  });

  it('an upgrade that was broken off is taken up again; what is already in the way is left', async () => {
    const folder = oldWorkspace(1);
    mkdirSync(path.join(folder, 'entries/sent'));
    cpSync(path.join(folder, 'sent/IN-1.md'), path.join(folder, 'entries/sent/IN-1.md'));
    writeFileSync(path.join(folder, 'entries/sent/IN-2.md'), 'Something else.\n');
    const { err, code } = await kerfmark(['upgrade'], folder);
    expect({ err, code }).toMatchObject({ code: 2, err: expect.stringContaining('is left as it is') });
    expect(existsSync(path.join(folder, 'sent/IN-1.md'))).toBe(true);
    expect((await kerfmark(['check'], folder)).code).toBe(0);
    rmSync(path.join(folder, 'entries/sent/IN-2.md'));
    expect((await kerfmark(['upgrade'], folder)).code).toBe(0);
    expect((await kerfmark(['check'], folder)).code).toBe(0);
  });
});

describe('steps', () => {
  const steps = [
    { to: 1, what: 'one', change: (text: string) => `${text}1` },
    { to: 2, what: 'two', change: (text: string) => `${text}2` },
  ];

  it('are applied in order, from the format of the workspace on', () => {
    expect(upgradeText('x', 0, steps)).toBe('x12');
    expect(upgradeText('x', 1, steps)).toBe('x2');
    expect(upgradeText('x', 2, steps)).toBe('x');
  });

  it('leave alone what is of a later program', async () => {
    const folder = oldWorkspace(0);
    await kerfmark(['upgrade'], folder);
    const file = path.join(folder, 'entries/workspace.md');
    writeFileSync(
      file,
      readFileSync(file, 'utf8').replace(`format: ${CURRENT_FORMAT}`, `format: ${CURRENT_FORMAT + 1}`),
    );
    expect((await kerfmark(['upgrade'], folder)).err).toContain('Use a newer version of the program');
    expect((await kerfmark(['check'], folder)).out).toContain('[workspace-format]');
  });
});
