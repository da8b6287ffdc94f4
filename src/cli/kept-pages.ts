import { createHash, type Hash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { readdir, readFile, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import type { SiteData } from '../../site/context.ts';
import type { Computed } from '../pipeline.ts';
import { entryPath } from '../publish/page-paths.ts';
import { CACHE_FOLDER, keepInCache } from './cache-folder.ts';
import { listFiles } from './load-workspace.ts';
import { packageRoot } from './package-root.ts';

/** Sites of which the making is remembered; the workspace may be built into several folders. */
const MOST_SITES = 8;

/** What is remembered of the making of a site. It stays with who has the entries: a hash of what is withheld can be guessed at. */
interface Made {
  /** Of all that decides the pages but the texts below the keys. */
  readonly fingerprint: string;
  /** Of the text of each entry, as the audience reads it. */
  readonly texts: Readonly<Record<string, string>>;
  /** Hashes of the pages by their addresses. */
  readonly pages: Readonly<Record<string, string>>;
}

/** Which pages of the last site need not be made again. */
export interface KeptPages {
  isKept(address: string): boolean;
  /** Remembers the site, once it stands, for the next build; where nothing can be written the next build makes every page. */
  remember(addresses: Iterable<string>): Promise<void>;
}

/** What the pages are made from, and what else decides them. */
export interface KeptPagesJob {
  readonly computed: Computed;
  /** Folder that holds `entries/`. */
  readonly folder: string;
  /** Folder of the site. */
  readonly output: string;
  /** All but the layouts of layers, which follow from the keys. */
  readonly data: Omit<SiteData, 'layers'>;
  /** Words of the command that decide which pages there are. */
  readonly asked: readonly string[];
}

/**
 * Compares with what is remembered of the last site in the same folder. The text below the keys of an entry stands on
 * three pages at most: its own, the search, and for the workspace the opening page (a test holds that nothing else reads
 * it). So where all else is the same, to the letter, every other page is the same too. Where anything else changed, a
 * key, a link, a picture, a problem, the program, no page is kept.
 */
export async function openKeptPages(job: KeptPagesJob): Promise<KeptPages> {
  const { catalogue } = job.computed.file;
  const fingerprint = await fingerprintOf(job);
  const texts = Object.fromEntries(
    catalogue.entries.map((entry) => [entry.id, hashOf(JSON.stringify(entry.argument))]),
  );
  const name = `site-${hashOf(job.output)}.json`;
  const before = await recall(path.join(job.folder, CACHE_FOLDER, name));
  const isSame = before?.fingerprint === fingerprint;
  const changed = isSame ? Object.keys(texts).filter((id) => texts[id] !== before.texts[id]) : [];
  const touched = new Set(
    changed.flatMap((id) => [entryPath(id), 'search.html', ...(id === catalogue.workspace?.id ? ['index.html'] : [])]),
  );
  const found = new Map<string, string>();
  return {
    isKept(address) {
      const hash = isSame && !touched.has(address) ? before.pages[address] : undefined;
      if (hash === undefined || hash !== (found.get(address) ?? pageHash(job.output, address))) return false;
      found.set(address, hash);
      return true;
    },
    async remember(addresses) {
      const pages = Object.fromEntries([...addresses].map((one) => [one, found.get(one) ?? pageHash(job.output, one)]));
      await keepInCache(job.folder, name, JSON.stringify({ fingerprint, texts, pages }));
      await forgetOldest(path.join(job.folder, CACHE_FOLDER)).catch(() => undefined);
    },
  };
}

/** The hash of a page as it stands in a site; null where none does. */
function pageHash(site: string, address: string): string | null {
  try {
    return hashOf(readFileSync(path.join(site, address)));
  } catch {
    return null;
  }
}

async function fingerprintOf({ computed, data, asked }: KeptPagesJob): Promise<string> {
  const { whole, file } = computed;
  const hash = createHash('sha256');
  const add = (value: unknown): void => {
    hash.update(`${JSON.stringify(value)}\n`);
  };
  await addProgram(hash);
  add([asked, data.built, data.version, process.version, file.catalogue.audience, file.settings.languages]);
  for (const { id, type, file: name, access, keys } of whole.entries) add([id, type, name, access, keys]);
  add([whole.links, file.catalogue.links]);
  add([data.problems, data.errors, data.leftOut, [...data.sent]]);
  add([data.pictures, data.scales, data.plans, data.tiles].map((one) => [...one]));
  add([data.planStyle, data.drawingStyle, data.excerpts && [...data.excerpts]]);
  return hash.digest('hex');
}

/** The program itself, file by file, and the versions of what it uses. */
async function addProgram(hash: Hash): Promise<void> {
  const root = packageRoot();
  const folders = import.meta.url.endsWith('.js') ? ['dist'] : ['src', 'site'];
  hash.update(await readFile(path.join(root, 'package.json')));
  for (const folder of folders)
    for (const file of await listFiles(path.join(root, folder)))
      hash.update(`${file}\n`).update(await readFile(path.join(root, folder, file)));
}

/** 128 bits of SHA-256, which is enough to tell texts apart. */
function hashOf(text: string | Uint8Array): string {
  return createHash('sha256').update(text).digest('base64url').slice(0, 22);
}

async function recall(file: string): Promise<Made | null> {
  try {
    const read = JSON.parse(await readFile(file, 'utf8')) as Partial<Made> | null;
    const isMap = (value: unknown): boolean => value !== null && typeof value === 'object';
    return typeof read?.fingerprint === 'string' && isMap(read.texts) && isMap(read.pages) ? (read as Made) : null;
  } catch {
    return null;
  }
}

async function forgetOldest(folder: string): Promise<void> {
  const names = (await readdir(folder)).filter((name) => /^site-.*\.json$/.test(name));
  const files = names.map((name) => path.join(folder, name));
  const dated = await Promise.all(files.map(async (file) => ({ file, at: (await stat(file)).mtimeMs })));
  for (const { file } of dated.sort((a, b) => b.at - a.at).slice(MOST_SITES)) await rm(file, { force: true });
}
