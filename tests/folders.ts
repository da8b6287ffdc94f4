import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll } from 'vitest';
import { ROOT } from './workspace.ts';

/** A folder of its own for the tests of one file, taken away after the last of them. */
export function testFolder(): string {
  const folder = mkdtempSync(path.join(tmpdir(), 'kerfmark-test-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

let count = 0;

/** A new empty folder below one. */
export function freshFolder(home: string): string {
  count += 1;
  const folder = path.join(home, `w${count}`);
  mkdirSync(folder);
  return folder;
}

/** A small workspace of eleven entries without a fault, with further files by their names below `entries/`. */
export function smallWorkspace(home: string, files: Readonly<Record<string, string | Uint8Array>> = {}): string {
  return workspaceFrom(path.join(ROOT, 'tests/messages/base'), home, files);
}

/** A copy of the demonstration file. */
export function demoCopy(home: string, files: Readonly<Record<string, string | Uint8Array>> = {}): string {
  return workspaceFrom(ROOT, home, files);
}

function workspaceFrom(from: string, home: string, files: Readonly<Record<string, string | Uint8Array>>): string {
  const folder = freshFolder(home);
  cpSync(path.join(from, 'entries'), path.join(folder, 'entries'), { recursive: true });
  for (const [name, bytes] of Object.entries(files)) {
    const full = path.join(folder, 'entries', name);
    mkdirSync(path.dirname(full), { recursive: true });
    writeFileSync(full, bytes);
  }
  return folder;
}

/** Every file below a folder with its bytes, for comparing; sorted by path. */
export function snapshot(folder: string): Readonly<Record<string, string>> {
  const files = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((one) => one.isFile())
    .map((one) => path.join(one.parentPath, one.name));
  return Object.fromEntries(files.sort().map((one) => [path.relative(folder, one), readFileSync(one, 'latin1')]));
}

/** Seconds of this process's own work on something: a busy machine makes none more. */
export async function cpuSecondsOf(work: () => unknown): Promise<number> {
  const before = process.cpuUsage();
  await work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
}
