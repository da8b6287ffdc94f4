import { mkdir, readdir, rename, rm, stat, writeFile } from 'node:fs/promises';
import path from 'node:path';

/** Folder beside `entries/` for what can be computed again at any time, and for texts before an upgrade. */
export const CACHE_FOLDER = '.kerfmark';

/**
 * Keeps a text in the folder, whole or not at all; the folder tells git to leave it out. Where it cannot be written, or
 * the disk is full, nothing is kept, and the work is done all the same.
 */
export async function keepInCache(workspace: string, name: string, text: string): Promise<void> {
  const folder = path.join(workspace, CACHE_FOLDER);
  const fresh = path.join(folder, `${name}.new-${process.pid}`);
  try {
    await mkdir(folder, { recursive: true });
    await writeFile(path.join(folder, '.gitignore'), '*\n');
    await writeFile(fresh, text);
    await rename(fresh, path.join(folder, name));
    await clearUp(folder);
  } catch {
    await rm(fresh, { force: true }).catch(() => undefined);
  }
}

/** Takes away what killed commands left half written, an hour ago or more. */
async function clearUp(folder: string): Promise<void> {
  for (const name of (await readdir(folder)).filter((one) => /\.new-\d+$/.test(one))) {
    const file = path.join(folder, name);
    const found = await stat(file).catch(() => null);
    if (found && Date.now() - found.mtimeMs > 3_600_000) await rm(file, { force: true });
  }
}
