import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

/** Root of the installed package: the nearest folder above this file with a package.json, wherever the bundle put it. */
export function packageRoot(): string {
  let folder = path.dirname(fileURLToPath(import.meta.url));
  while (!existsSync(path.join(folder, 'package.json'))) folder = path.dirname(folder);
  return folder;
}

/** Version of this package. */
export async function packageVersion(): Promise<string> {
  const text = await readFile(path.join(packageRoot(), 'package.json'), 'utf8');
  return (JSON.parse(text) as { version: string }).version;
}
