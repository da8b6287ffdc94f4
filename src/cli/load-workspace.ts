import { createHash } from 'node:crypto';
import { lstatSync, type Stats } from 'node:fs';
import { lstat, readdir, readFile, realpath, stat } from 'node:fs/promises';
import path from 'node:path';
import type { Diagnostic } from '../base/diagnostic.ts';
import { inRow, phrase, type Said } from '../base/said.ts';
import { OLD_SENT_FOLDER, SENT_FOLDER, type SentFile, valuesFileOf } from '../model/sent-file.ts';
import type { FoundPicture, FoundPictures } from '../reading/figure-pictures.ts';
import type { WorkspaceFiles } from '../reading/reading.ts';
import type { TextFile } from '../reading/text-file.ts';
import { Fault } from './fault.ts';
import { parseTexts } from './parsed-texts.ts';
import { Session, type TextBefore } from './session.ts';

/** Largest file that is read as an entry, in bytes. */
const MOST_BYTES = 4_000_000;

/** Largest drawing: it may hold its photograph. */
const MOST_BYTES_OF_DRAWING = 60_000_000;

/**
 * Loads the files under FOLDER/entries; what cannot be read becomes a problem, nothing is changed.
 * @param session what was read and parsed before; in a preview most files stay as they are
 */
export async function loadWorkspace(folder: string, session = new Session()): Promise<WorkspaceFiles> {
  const root = path.join(folder, 'entries');
  const found = await stat(root).catch(() => null);
  if (!found?.isDirectory()) {
    throw new Fault(
      phrase(
        'There is no folder "entries" in {0}.\nGo to the folder that holds it, name it with --in FOLDER, or type "kerfmark begin" to make one.',
        folder,
      ),
    );
  }
  const inside = await realpath(root);
  // Letters as they were sent lie beside the entries, and are none.
  const files = (await listFiles(root)).filter((file) => !file.startsWith('sent/'));
  const problems: Diagnostic[] = [];
  const load = async (wanted: RegExp): Promise<readonly TextFile[]> => {
    const names = files.filter((one) => wanted.test(one));
    const texts = await inBatches(names, (file) =>
      loadText(path.join(root, file), inside, `entries/${file}`, session.texts),
    );
    return names.flatMap((file, i): readonly TextFile[] => {
      const text = texts[i];
      if (typeof text === 'string') return [{ file: `entries/${file}`, text }];
      if (text) problems.push(text);
      return [];
    });
  };
  problems.push(...files.filter((file) => !isExpected(file)).map((file) => notRead(file)));
  const drawings = await load(/\.svg$/i);
  const entries = await load(/(?<!^|\/)\.md$/i);
  return {
    entries,
    parsed: await parseTexts(folder, entries, session.parsed),
    defaults: await load(/(^|\/)_defaults\.ya?ml$/),
    tables: await load(/\.csv$/i),
    drawings,
    pictures: await findPictures(root, inside, files),
    sent: new Map([...(await loadSent(folder, OLD_SENT_FOLDER)), ...(await loadSent(folder, SENT_FOLDER))]),
    problems,
  };
}

/** Documents that were sent, each with its checksum and the values beside it; links are not followed. */
async function loadSent(folder: string, within: string): Promise<ReadonlyMap<string, SentFile>> {
  const names = await readdir(path.join(folder, within), { withFileTypes: true }).catch(() => []);
  const files = new Map<string, Buffer>();
  for (const { name } of names.filter((one) => one.isFile())) {
    const bytes = await readFile(path.join(folder, within, name)).catch(() => null);
    if (bytes !== null) files.set(`${within}/${name}`, bytes);
  }
  return new Map(
    [...files].map(([name, bytes]) => {
      const values = files.get(valuesFileOf(name));
      return [
        name,
        {
          sha256: sha256Of(bytes),
          text: /\.(md|txt)$/i.test(name) ? bytes.toString('utf8') : null,
          values: values && values !== bytes ? { sha256: sha256Of(values), text: values.toString('utf8') } : null,
        },
      ];
    }),
  );
}

/** SHA-256 in hexadecimal. */
export function sha256Of(bytes: Buffer | string): string {
  return createHash('sha256').update(bytes).digest('hex');
}

/** Sizes of the pictures, upright; links that lead out of the workspace are not followed. */
async function findPictures(root: string, inside: string, files: readonly string[]): Promise<FoundPictures> {
  const wanted = files.filter((one) => /\.(jpe?g|png|tiff?|webp|avif|gif|svg)$/i.test(one));
  if (wanted.length === 0) return new Map();
  const find = async (file: string): Promise<FoundPicture> => {
    const real = await realpath(path.join(root, file)).catch(() => null);
    if (real === null) return 'not a picture';
    if (!real.startsWith(inside + path.sep)) return 'outside';
    const found = (/\.jpe?g$/i.test(real) ? await sizeOfJpeg(real) : null) ?? (await sizeOfAny(real));
    if (!found?.width || !found.height) return 'not a picture';
    const { width, height, orientation = 1 } = found;
    return orientation >= 5 ? { width: height, height: width } : { width, height };
  };
  return new Map(await Promise.all(wanted.map(async (file) => [`entries/${file}`, await find(file)] as const)));
}

/** Width and height as they lie in the file, and how it is to be turned (EXIF). */
interface RawSize {
  readonly width: number;
  readonly height: number;
  readonly orientation?: number | undefined;
}

/** Photographs are JPEG as a rule: their sizes stand in the first bytes, and the library for all others need not be loaded. */
async function sizeOfJpeg(file: string): Promise<RawSize | null> {
  const { imageSizeFromFile } = await import('image-size/fromFile');
  const found = await imageSizeFromFile(file).catch(() => null);
  return found?.type === 'jpg' ? found : null;
}

async function sizeOfAny(file: string): Promise<RawSize | null> {
  const { default: sharp } = await import('sharp');
  return sharp(file)
    .metadata()
    .catch(() => null);
}

/** Files that are read, and pictures and drawings that entries may name. */
function isExpected(file: string): boolean {
  return /(\.md|\.csv|(^|\/)_defaults\.ya?ml|\.(jpe?g|png|tiff?|webp|avif|gif|svg|pdf))$/i.test(file);
}

function notRead(file: string): Diagnostic {
  return {
    code: 'file-not-entry',
    severity: 'note',
    place: { file: `entries/${file}`, line: 1, column: 1 },
    message: phrase('the file is not read, since its name does not end in .md'),
    mend: phrase('if it is an entry, rename it so that it ends in .md (not .md.txt); else move it out of entries/'),
  };
}

/** Paths below a folder, with `/`, sorted; hidden files and folders are not looked into. */
export async function listFiles(root: string, below = ''): Promise<readonly string[]> {
  const names = await readdir(path.join(root, below), { withFileTypes: true });
  const lists = await Promise.all(
    names
      .filter((one) => !one.name.startsWith('.'))
      .map(async (one) => {
        const here = below === '' ? one.name : `${below}/${one.name}`;
        return one.isDirectory() ? listFiles(root, here) : [here];
      }),
  );
  return lists.flat().sort();
}

/** Files that are opened at the same time. */
const AT_ONCE = 64;

/** Does something for every name, some at the same time; results in the order of the names. */
async function inBatches<Result>(
  names: readonly string[],
  load: (name: string) => Promise<Result>,
): Promise<readonly Result[]> {
  const results: Result[] = [];
  for (let i = 0; i < names.length; i += AT_ONCE)
    results.push(...(await Promise.all(names.slice(i, i + AT_ONCE).map(load))));
  return results;
}

function stateOf({ ino, size, mtimeMs, ctimeMs }: Stats): string {
  return `${ino} ${size} ${mtimeMs} ${ctimeMs}`;
}

/** The text of a file, or why it cannot be read. */
async function loadText(
  full: string,
  inside: string,
  file: string,
  lastRead: Map<string, TextBefore>,
): Promise<string | Diagnostic> {
  try {
    const before = lastRead.get(full);
    // Asked at once, not awaited: a preview asks for every file after every edit, and nearly none has changed.
    if (before && before.state === stateOf(lstatSync(full))) return before.text;
    const found = await lstat(full);
    // Folders that are links are not looked into, so only a file that is one can lead out.
    if (found.isSymbolicLink()) {
      const real = await realpath(full);
      if (real !== inside && !real.startsWith(inside + path.sep)) return loadProblem(file, 'file-outside');
      return readText(real, file, await stat(real), lastRead);
    }
    return await readText(full, file, found, lastRead);
  } catch (error) {
    return loadProblem(file, 'file-not-read', (error as NodeJS.ErrnoException).code);
  }
}

async function readText(
  full: string,
  file: string,
  found: Stats,
  lastRead: Map<string, TextBefore>,
): Promise<string | Diagnostic> {
  if (!found.isFile()) return loadProblem(file, 'file-not-read', 'not a file');
  if (found.size > (/\.svg$/i.test(file) ? MOST_BYTES_OF_DRAWING : MOST_BYTES))
    return loadProblem(file, 'file-too-large');
  const bytes = await readFile(full);
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff))
    return loadProblem(file, 'file-utf16');
  if (bytes.includes(0)) return loadProblem(file, 'file-nul');
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return loadProblem(file, 'file-not-utf8');
  }
  // Written while it was read: what was read may be half of it, so it is asked for again the next time.
  const after = await lstat(full);
  if (after.mtimeMs === found.mtimeMs && after.size === found.size) lastRead.set(full, { state: stateOf(found), text });
  return text;
}

const LOAD_PROBLEMS: Readonly<
  Record<
    'file-outside' | 'file-too-large' | 'file-utf16' | 'file-nul' | 'file-not-utf8' | 'file-not-read',
    readonly [code: string, message: Said, mend: Said]
  >
> = {
  'file-outside': [
    'file-outside',
    phrase('the file is a link that leads out of the workspace'),
    phrase('copy the file itself into the folder'),
  ],
  'file-too-large': [
    'file-too-large',
    phrase('the file is larger than 4 MB'),
    phrase('part it into several entries; images stand beside an entry as files of their own'),
  ],
  'file-utf16': ['file-not-utf8', phrase('the file is written in UTF-16'), phrase('save it as UTF-8')],
  'file-nul': [
    'file-not-utf8',
    phrase('the file holds NUL bytes, so it is no text or was damaged'),
    phrase('bring back an earlier copy of it, or save it again as plain text in UTF-8'),
  ],
  'file-not-utf8': [
    'file-not-utf8',
    phrase('the file is not written in UTF-8, so letters with accents cannot be read'),
    phrase('open it in your editor and save it with the encoding UTF-8'),
  ],
  'file-not-read': [
    'file-not-read',
    phrase('the file cannot be read'),
    phrase('check that it exists and that you may read it'),
  ],
};

function loadProblem(file: string, kind: keyof typeof LOAD_PROBLEMS, detail?: string): Diagnostic {
  const [code, message, mend] = LOAD_PROBLEMS[kind];
  const place = { file, line: 1, column: 1 };
  return { code, severity: 'error', place, message: detail ? inRow([message, ' (', detail, ')'], '') : message, mend };
}
