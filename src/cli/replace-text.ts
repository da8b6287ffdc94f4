import { readFile, rename, writeFile } from 'node:fs/promises';

/** Writes beside the file and renames, only if the file is still what was read; true where it was written. */
export async function replaceText(full: string, before: string, after: string): Promise<boolean> {
  const bytes = await readFile(full, 'utf8');
  const mark = bytes.startsWith('\ufeff') ? '\ufeff' : '';
  if (bytes.slice(mark.length) !== before) return false;
  const fresh = `${full}.new-${process.pid}`;
  await writeFile(fresh, mark + after);
  await rename(fresh, full);
  return true;
}
