import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

/** Root of the installed package: the folder whose package.json is ours. */
export function packageRoot(): string {
  const here = path.dirname(fileURLToPath(import.meta.url));
  return here.includes(`${path.sep}dist${path.sep}`) ? path.resolve(here, '../../..') : path.resolve(here, '../..');
}

/** Version of this package. */
export async function packageVersion(): Promise<string> {
  const text = await readFile(path.join(packageRoot(), 'package.json'), 'utf8');
  return (JSON.parse(text) as { version: string }).version;
}
