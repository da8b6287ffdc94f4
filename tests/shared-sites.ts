import { spawn } from 'node:child_process';
import { cp } from 'node:fs/promises';
import path from 'node:path';
import { inject } from 'vitest';
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
 * the others, which take its pictures over as any second build does.
 */
export async function buildSharedSites(home: string): Promise<void> {
  const [first, ...others] = Object.keys(SITES) as SharedSite[];
  const build = async (name: SharedSite): Promise<void> => {
    const { code, err } = await spawnKerfmark(['build', ...SITES[name], '--out', path.join(home, name)], ROOT);
    if (code !== 0 || err !== '') throw new Error(`The shared site ${name} could not be built: ${code} ${err}`);
  };
  await build(first as SharedSite);
  for (const name of others)
    await cp(path.join(home, first as SharedSite), path.join(home, name), {
      recursive: true,
      preserveTimestamps: true,
    });
  await Promise.all(others.map(build));
}

/** The folder of a shared site. */
export function sharedSite(name: SharedSite): string {
  return path.join(inject('sharedSites'), name);
}
