import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import path from 'node:path';
import { Worker } from 'node:worker_threads';
import { type ParsedText, parseText } from '../reading/parsed-text.ts';
import type { TextFile } from '../reading/text-file.ts';
import { CACHE_FOLDER, keepInCache } from './cache-folder.ts';
import { packageRoot, packageVersion } from './package-root.ts';

/** Fewer texts than this are parsed at once; keeping them would save nothing that one notices. */
const FEWEST_KEPT = 200;

/** The file is asked, and written anew, where more than this share of the texts is not known. */
const FEWEST_CHANGED = 0.02;

/** As many texts make it worth while to start threads for them. */
const FEWEST_FOR_THREADS = 400;

/**
 * Parses the texts of entries, each text once: what was parsed before is kept by the hash of the text, in memory and, for
 * a large workspace, in `.kerfmark/texts.jsonl`. That file may be deleted at any time; one that another version of the
 * program wrote is not read, one that is damaged is written anew, and where it cannot be written nothing is kept.
 * @param inMemory texts parsed before, by the hash of each; those that are asked for are left there, and no others
 */
export async function parseTexts(
  folder: string,
  files: readonly TextFile[],
  inMemory: Map<string, ParsedText>,
): Promise<ReadonlyMap<string, ParsedText>> {
  const hashes = files.map(({ text }) => hashOf(text));
  const wanted = new Set(hashes);
  const isMuch = (): boolean =>
    files.length >= FEWEST_KEPT &&
    [...wanted].filter((hash) => !inMemory.has(hash)).length > files.length * FEWEST_CHANGED;
  if (isMuch()) await recall(folder, wanted, inMemory);
  const isToKeep = isMuch();
  const missing = new Map(
    files.flatMap(({ text }, i) => (inMemory.has(hashes[i] as string) ? [] : [[hashes[i], text]])),
  );
  for (const [hash, parsed] of await parseAll(missing as ReadonlyMap<string, string>)) inMemory.set(hash, parsed);
  for (const hash of inMemory.keys()) if (!wanted.has(hash)) inMemory.delete(hash);
  if (isToKeep) await remember(folder, inMemory);
  return new Map(files.map(({ file }, i) => [file, inMemory.get(hashes[i] as string) as ParsedText]));
}

function hashOf(text: string): string {
  return createHash('sha256').update(text).digest('base64url');
}

/** In threads where there is much to do and the program runs as it is published; here else. */
async function parseAll(texts: ReadonlyMap<string, string>): Promise<readonly (readonly [string, ParsedText])[]> {
  const list = [...texts];
  const isCompiled = import.meta.url.endsWith('.js');
  const threads = Math.min(4, availableParallelism());
  if (!isCompiled || list.length < FEWEST_FOR_THREADS || threads < 2)
    return list.map(([hash, text]) => [hash, parseText(text)] as const);
  const shares = Array.from({ length: threads }, (_, i) => list.filter((_, at) => at % threads === i));
  return (await Promise.all(shares.map(parseInThread))).flat();
}

function parseInThread(
  share: readonly (readonly [string, string])[],
): Promise<readonly (readonly [string, ParsedText])[]> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(path.join(packageRoot(), 'dist/parse-thread.js'), { workerData: share });
    worker.once('message', (answer: string) => resolve(JSON.parse(answer)));
    worker.once('error', reject);
  });
}

/** What tells the versions of all that decides a tree: the program's own, with its pinned parsers, and the format. */
async function stampOf(): Promise<string> {
  return JSON.stringify({ format: 'kerfmark-texts/2', version: await packageVersion(), node: process.version });
}

const LIST = 'texts.jsonl';

async function recall(folder: string, wanted: ReadonlySet<string>, inMemory: Map<string, ParsedText>): Promise<void> {
  const text = await readFile(path.join(folder, CACHE_FOLDER, LIST), 'utf8').catch(() => '');
  const [stamp, ...lines] = text.split('\n');
  if (stamp !== (await stampOf())) return;
  const kept = new Map(lines.map((line) => [line.slice(0, line.indexOf(' ')), line]));
  // The names are those that were asked for: a piece of the list as a name would keep the whole list in memory.
  for (const hash of wanted) {
    const line = inMemory.has(hash) ? undefined : kept.get(hash);
    const parsed = line === undefined ? null : readLine(line.slice(hash.length + 1));
    if (parsed) inMemory.set(hash, parsed);
  }
}

function readLine(line: string): ParsedText | null {
  try {
    const { front, argument } = JSON.parse(line) as ParsedText;
    const isWhole =
      Array.isArray(front?.problems) &&
      argument?.tree?.type === 'root' &&
      [argument.tree.children, argument.links, argument.faults].every(Array.isArray);
    return isWhole ? { front, argument } : null;
  } catch {
    return null;
  }
}

async function remember(folder: string, inMemory: ReadonlyMap<string, ParsedText>): Promise<void> {
  const lines = [...inMemory].map(([hash, parsed]) => `${hash} ${JSON.stringify(parsed)}`);
  await keepInCache(folder, LIST, [await stampOf(), ...lines].join('\n'));
}
