import { createHash } from 'node:crypto';
import { readdir, readFile, realpath, stat } from 'node:fs/promises';
import path from 'node:path';
import type { Diagnostic } from '../base/diagnostic.ts';
import type { SentFile } from '../model/sent-file.ts';
import type { FoundPicture, FoundPictures } from '../reading/figure-pictures.ts';
import type { WorkspaceFiles } from '../reading/reading.ts';
import type { TextFile } from '../reading/text-file.ts';
import { parseTexts } from './parsed-texts.ts';

/** Largest file that is read as an entry, in bytes. */
const MOST_BYTES = 4_000_000;

/** Largest drawing: it may hold its photograph. */
const MOST_BYTES_OF_DRAWING = 60_000_000;

/** A fault that stops a command: exit code 2, words instead of a stack trace. */
export class Fault extends Error {}

/** Loads the files under FOLDER/entries; what cannot be read becomes a problem, nothing is changed. */
export async function loadWorkspace(folder: string): Promise<WorkspaceFiles> {
  const root = path.join(folder, 'entries');
  const found = await stat(root).catch(() => null);
  if (!found?.isDirectory()) {
    throw new Fault(
      `There is no folder "entries" in ${folder}.\nGo to the folder that holds it, name it with --in FOLDER, or type "kerfmark begin" to make one.`,
    );
  }
  const inside = await realpath(root);
  const files = await listFiles(root);
  const problems: Diagnostic[] = [];
  const load = async (wanted: RegExp): Promise<readonly TextFile[]> => {
    const loaded: TextFile[] = [];
    for (const file of files.filter((one) => wanted.test(one))) {
      const text = await loadText(path.join(root, file), inside, `entries/${file}`, problems);
      if (text !== null) loaded.push({ file: `entries/${file}`, text });
    }
    return loaded;
  };
  problems.push(...files.filter((file) => !isExpected(file)).map((file) => notRead(file)));
  const drawings = await load(/\.svg$/i);
  const entries = await load(/(?<!^|\/)\.md$/i);
  return {
    entries,
    parsed: await parseTexts(folder, entries),
    defaults: await load(/(^|\/)_defaults\.ya?ml$/),
    tables: await load(/\.csv$/i),
    drawings,
    pictures: await findPictures(root, inside, files),
    sent: await loadSent(path.join(folder, SENT)),
    problems,
  };
}

/** Folder beside `entries/` that keeps documents as they were sent. */
export const SENT = 'sent';

/** Documents that were sent, each with its checksum; links are not followed. */
async function loadSent(folder: string): Promise<ReadonlyMap<string, SentFile>> {
  const names = await readdir(folder, { withFileTypes: true }).catch(() => []);
  const sent = new Map<string, SentFile>();
  for (const { name } of names.filter((one) => one.isFile())) {
    const bytes = await readFile(path.join(folder, name)).catch(() => null);
    if (bytes === null) continue;
    const text = /\.(md|txt)$/i.test(name) ? bytes.toString('utf8') : null;
    sent.set(`${SENT}/${name}`, { sha256: sha256Of(bytes), text });
  }
  return sent;
}

/** SHA-256 in hexadecimal. */
export function sha256Of(bytes: Buffer | string): string {
  return createHash('sha256').update(bytes).digest('hex');
}

/** Sizes of the pictures, upright; links that lead out of the workspace are not followed. */
async function findPictures(root: string, inside: string, files: readonly string[]): Promise<FoundPictures> {
  const wanted = files.filter((one) => /\.(jpe?g|png|tiff?|webp|avif|gif|svg)$/i.test(one));
  if (wanted.length === 0) return new Map();
  const { default: sharp } = await import('sharp');
  const find = async (file: string): Promise<FoundPicture> => {
    const real = await realpath(path.join(root, file)).catch(() => null);
    if (real === null) return 'not a picture';
    if (!real.startsWith(inside + path.sep)) return 'outside';
    const found = await sharp(real)
      .metadata()
      .catch(() => null);
    if (!found?.width || !found.height) return 'not a picture';
    const { width, height, orientation = 1 } = found;
    return orientation >= 5 ? { width: height, height: width } : { width, height };
  };
  return new Map(await Promise.all(wanted.map(async (file) => [`entries/${file}`, await find(file)] as const)));
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
    message: 'the file is not read, since its name does not end in .md',
    mend: 'if it is an entry, rename it so that it ends in .md (not .md.txt); else move it out of entries/',
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

async function loadText(full: string, inside: string, file: string, problems: Diagnostic[]): Promise<string | null> {
  const problem = (code: string, message: string, mend: string): null => {
    problems.push({ code, severity: 'error', place: { file, line: 1, column: 1 }, message, mend });
    return null;
  };
  try {
    const real = await realpath(full);
    if (real !== inside && !real.startsWith(inside + path.sep)) {
      return problem(
        'file-outside',
        'the file is a link that leads out of the workspace',
        'copy the file itself into the folder',
      );
    }
    if ((await stat(real)).size > (/\.svg$/i.test(file) ? MOST_BYTES_OF_DRAWING : MOST_BYTES)) {
      return problem(
        'file-too-large',
        'the file is larger than 4 MB',
        'part it into several entries; images stand beside an entry as files of their own',
      );
    }
    const bytes = await readFile(real);
    if (bytes[0] === 0xff || bytes[0] === 0xfe) {
      return problem('file-not-utf8', 'the file is written in UTF-16', 'save it as UTF-8');
    }
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch (error) {
    if (error instanceof TypeError) {
      return problem(
        'file-not-utf8',
        'the file is not written in UTF-8, so letters with accents cannot be read',
        'open it in your editor and save it with the encoding UTF-8',
      );
    }
    return problem(
      'file-not-read',
      `the file cannot be read (${(error as NodeJS.ErrnoException).code ?? 'unknown'})`,
      'check that it exists and that you may read it',
    );
  }
}
