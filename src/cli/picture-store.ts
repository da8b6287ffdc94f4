import { createHash } from 'node:crypto';
import { cp, mkdir, readFile, stat, writeFile } from 'node:fs/promises';
import path from 'node:path';

/** File of a site that says from what each of its pictures was made. */
const LIST = 'kerfmark-pictures.json';

/** Changes whenever the same source would give another picture. */
const MAKING = 'pictures/1';

/** Pictures of the last site, taken over where they would be made again from the same. */
export interface PictureStore {
  /**
   * Writes a picture (a file, or a folder of tiles) at an address of the new site: from the last site where it was made from the same
   * key, else by `make`.
   */
  put(address: string, key: string, make: () => Promise<unknown>): Promise<void>;
  /** Writes the list for the next build. */
  close(): Promise<void>;
}

/** Opens the store; a list that is missing or cannot be read only means that every picture is made. */
export async function openPictureStore(lastSite: string, newSite: string): Promise<PictureStore> {
  const known = await readList(lastSite);
  const made: Record<string, string> = {};
  return {
    async put(address, key, make) {
      made[address] = key;
      const [from, to] = [path.join(lastSite, address), path.join(newSite, address)];
      await mkdir(path.dirname(to), { recursive: true });
      if (known[address] === key && (await stat(from).catch(() => null))) await cp(from, to, { recursive: true });
      else await make();
    },
    async close() {
      if (Object.keys(made).length > 0) await writeFile(path.join(newSite, LIST), `${JSON.stringify(made, null, 1)}\n`);
    },
  };
}

/** A key that changes with any of its parts. */
export function keyOf(...parts: readonly (string | Uint8Array)[]): string {
  const hash = createHash('sha256').update(MAKING);
  for (const part of parts) hash.update(part).update('\0');
  return hash.digest('hex').slice(0, 32);
}

async function readList(site: string): Promise<Readonly<Record<string, string>>> {
  try {
    const read: unknown = JSON.parse(await readFile(path.join(site, LIST), 'utf8'));
    return read !== null && typeof read === 'object' ? (read as Record<string, string>) : {};
  } catch {
    return {};
  }
}
