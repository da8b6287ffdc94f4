import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
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
    expect(trial.out).toContain('+format: 1');
    expect(trial.out).toContain('--- entries/workspace.md');
    expect(trial.out).toContain('One file would change');
    expect(readFileSync(file, 'utf8')).toBe(before);
    const { out, code } = await kerfmark(['upgrade'], folder);
    expect({ code, out }).toMatchObject({ code: 0, out: expect.stringContaining('One file changed') });
    expect(readFileSync(file, 'utf8')).toBe(before.replace('type: workspace\n', 'type: workspace\nformat: 1\n'));
    expect(readFileSync(path.join(folder, `.kerfmark/format-${format}/entries/workspace.md`), 'utf8')).toBe(before);
    expect((await kerfmark(['upgrade'], folder)).out).toContain('There is nothing to do');
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
    const { writeFileSync } = await import('node:fs');
    writeFileSync(file, readFileSync(file, 'utf8').replace('format: 1', 'format: 2'));
    expect((await kerfmark(['upgrade'], folder)).err).toContain('Use a newer version of the program');
    expect((await kerfmark(['check'], folder)).out).toContain('[workspace-format]');
  });
});
