import { createHash } from 'node:crypto';
import { cp, mkdir, readFile, stat, writeFile } from 'node:fs/promises';
import path from 'node:path';

/** File of a site that says from what each of its pictures was made. */
const LIST = 'kerfmark-pictures.json';

/** Changes whenever the same source would give another picture. */
const MAKING = 'pictures/2';

/**
 * Makes a picture (a file, or a folder of tiles).
 * @param to where it is to lie; its folder is there
 * @param fileOf where another picture of the site lies, which is made first
 */
export type MakePicture = (to: string, fileOf: (address: string) => Promise<string>) => Promise<unknown>;

/** Where the pictures of a site go. */
export interface PictureStore {
  /** Takes a picture in at an address of the site; the key changes whenever it would become another one. */
  put(address: string, key: string, make: MakePicture): Promise<void>;
}

/** Pictures that are written into a site, those of the last site taken over where they would be made again from the same. */
export interface WrittenPictures extends PictureStore {
  /** Writes the list for the next build. */
  close(): Promise<void>;
}

/** Opens the store; a list that is missing or cannot be read only means that every picture is made. */
export async function openPictureStore(lastSite: string, newSite: string): Promise<WrittenPictures> {
  const known = await readList(lastSite);
  const made: Record<string, string> = {};
  return {
    async put(address, key, make) {
      made[address] = key;
      const [from, to] = [path.join(lastSite, address), path.join(newSite, address)];
      await mkdir(path.dirname(to), { recursive: true });
      if (known[address] === key && (await stat(from).catch(() => null))) await cp(from, to, { recursive: true });
      else await make(to, async (other) => path.join(newSite, other));
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
