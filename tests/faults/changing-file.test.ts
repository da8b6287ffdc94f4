import { appendFileSync, cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, expect, it, vi } from 'vitest';
import { loadWorkspace } from '../../src/cli/load-workspace.ts';
import { Session } from '../../src/cli/session.ts';
import { ROOT } from '../workspace.ts';

// Another program saves a file at the very moment when it is read.

const meanwhile = vi.hoisted(() => ({ before: new Map<string, () => void>(), after: new Map<string, () => void>() }));

vi.mock('node:fs/promises', async (original) => {
  const real = await original<typeof import('node:fs/promises')>();
  const once = (acts: Map<string, () => void>, file: string): void => {
    const act = acts.get(file);
    acts.delete(file);
    act?.();
  };
  const readFile = async (file: string, ...rest: readonly unknown[]): Promise<unknown> => {
    once(meanwhile.before, String(file));
    const read = await (real.readFile as (...all: readonly unknown[]) => Promise<unknown>)(file, ...rest);
    once(meanwhile.after, String(file));
    return read;
  };
  return { ...real, readFile };
});

const home = mkdtempSync(path.join(tmpdir(), 'kerfmark-changing-'));
afterAll(() => rmSync(home, { recursive: true, force: true }));

it.each(['before', 'after'] as const)(
  'a file that changes just %s its bytes are read is read again the next time',
  async (when) => {
    const folder = path.join(home, when);
    cpSync(path.join(ROOT, 'tests/messages/base'), folder, { recursive: true });
    const session = new Session();
    const textOf = async (): Promise<string> =>
      (await loadWorkspace(folder, session)).entries.find((one) => one.file === 'entries/workspace.md')?.text ?? '';
    const file = path.join(folder, 'entries/workspace.md');
    meanwhile[when].set(file, () => appendFileSync(file, '\nSaved meanwhile.\n'));
    const first = await textOf();
    expect(meanwhile[when].size).toBe(0);
    expect(first.includes('Saved meanwhile.')).toBe(when === 'before');
    expect(await textOf()).toContain('Saved meanwhile.');
  },
);

it('a file that is gone when its turn comes is a problem at that file, and all others are read', async () => {
  const folder = path.join(home, 'gone');
  cpSync(path.join(ROOT, 'tests/messages/base'), folder, { recursive: true });
  const session = new Session();
  const before = (await loadWorkspace(folder, session)).entries.length;
  const file = path.join(folder, 'entries/workspace.md');
  appendFileSync(file, '\nNew.\n');
  meanwhile.before.set(file, () => rmSync(file));
  const { entries, problems } = await loadWorkspace(folder, session);
  expect(entries.length).toBe(before - 1);
  expect(problems).toMatchObject([{ code: 'file-not-read', place: { file: 'entries/workspace.md' } }]);
});
