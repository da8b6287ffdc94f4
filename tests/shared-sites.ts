import { spawn } from 'node:child_process';
import { cp, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { inject } from 'vitest';
import { until } from './until.ts';
import { ROOT } from './workspace.ts';

/** Sites of the demonstration file that many tests look at and none changes: name to the words that build it. */
const SITES = {
  internal: ['--audience', 'internal'],
  public: ['--audience', 'public'],
  french: ['--language', 'fr'],
} as const;

export type SharedSite = keyof typeof SITES;

declare module 'vitest' {
  interface ProvidedContext {
    readonly sharedSites: string;
  }
}

/** The program as it is published. */
export const PROGRAM = path.join(ROOT, 'dist/main.js');

/** What the program as it is published did with a command line, run by itself on the day of all tests. */
export function spawnKerfmark(
  line: readonly string[],
  cwd: string,
  env: Readonly<Record<string, string>> = {},
): Promise<{ readonly code: number | null; readonly out: string; readonly err: string }> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [PROGRAM, ...line], {
      cwd,
      env: { ...process.env, SOURCE_DATE_EPOCH: '1717200000', ...env },
    });
    let [out, err] = ['', ''];
    child.stdout.on('data', (text) => {
      out += text;
    });
    child.stderr.on('data', (text) => {
      err += text;
    });
    child.once('error', reject);
    child.once('close', (code) => resolve({ code, out, err }));
  });
}

/**
 * Builds every shared site with the program as it is published, each in a process of its own. The first one is copied for
 * the others, which take its pictures over as any second build does. Beside each lies a word of how it ended.
 */
export async function buildSharedSites(home: string): Promise<void> {
  const [first, ...others] = Object.keys(SITES) as [SharedSite, ...SharedSite[]];
  await build(home, first);
  for (const name of others)
    await cp(path.join(home, first), path.join(home, name), { recursive: true, preserveTimestamps: true });
  await Promise.all(others.map((name) => build(home, name)));
}

async function build(home: string, name: SharedSite): Promise<void> {
  const { code, err } = await spawnKerfmark(['build', ...SITES[name], '--out', path.join(home, name)], ROOT);
  await writeFile(path.join(home, `${name}.ended`), code === 0 && err === '' ? 'good' : `${code} ${err}`);
}

/** The folder of a shared site, once it stands. */
export async function sharedSite(name: SharedSite): Promise<string> {
  const home = inject('sharedSites');
  const ended = (): Promise<string | null> => readFile(path.join(home, `${name}.ended`), 'utf8').catch(() => null);
  await until(async () => Boolean(await ended()));
  const how = await ended();
  if (how !== 'good') throw new Error(`The shared site ${name} could not be built: ${how}`);
  return path.join(home, name);
}
