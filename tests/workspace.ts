import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import type { Access } from '../src/base/access.ts';
import { type SentFile, valuesFileOf } from '../src/model/sent-file.ts';
import { type Computed, compute } from '../src/pipeline.ts';
import { besideEntry, type FoundPicture, type FoundPictures } from '../src/reading/figure-pictures.ts';
import type { WorkspaceFiles } from '../src/reading/reading.ts';

/** Root of the checkout. */
export const ROOT = path.resolve(import.meta.dirname, '..');

/** Published schemas and lists that others made: see the README there. */
export const PUBLISHED = path.join(ROOT, 'tests/published');

/** Folder with material that is read beside the checkout where it is there. */
export const SHARED = path.resolve(ROOT, '../shared');

/** The files of a folder that holds `entries/`; of a picture its size, as `915x1480`. */
export function filesOf(folder: string): Record<string, string> {
  const files: Record<string, string> = {};
  const walk = (below: string): void => {
    for (const one of readdirSync(path.join(folder, below), { withFileTypes: true })) {
      const here = `${below}/${one.name}`;
      if (one.isDirectory()) walk(here);
      else if (/\.(md|csv|ya?ml|svg|json)$/.test(one.name)) files[here] = readFileSync(path.join(folder, here), 'utf8');
      else if (one.name.endsWith('.jpg')) files[here] = sizeOfJpeg(readFileSync(path.join(folder, here)));
    }
  };
  walk('entries');
  return files;
}

/** Width and height of a JPEG as `915x1480`, from its frame header (ITU-T T.81, B.2.2). */
function sizeOfJpeg(bytes: Buffer): string {
  let at = 2;
  while (at < bytes.length) {
    const marker = bytes[at + 1] as number;
    if (marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker))
      return `${bytes.readUInt16BE(at + 7)}x${bytes.readUInt16BE(at + 5)}`;
    at += 2 + bytes.readUInt16BE(at + 2);
  }
  throw new Error('no frame header');
}

/** A workspace out of files given by name and text, as the commands load one. */
export function workspaceOf(files: Readonly<Record<string, string>>): WorkspaceFiles {
  const list = Object.entries(files).map(([file, text]) => ({ file, text: text.replace(/^\ufeff/, '') }));
  return {
    entries: list.filter(({ file }) => file.endsWith('.md') && !file.startsWith(SENT)),
    defaults: list.filter(({ file }) => /_defaults\.ya?ml$/.test(file)),
    tables: list.filter(({ file }) => file.endsWith('.csv')),
    drawings: list.filter(({ file }) => file.endsWith('.svg')),
    pictures: picturesOf(list),
    sent: sentOf(list.filter(({ file }) => file.startsWith(SENT))),
    problems: [],
  };
}

const SENT = 'entries/sent/';

/** Letters with the values beside them. */
function sentOf(list: readonly { readonly file: string; readonly text: string }[]): ReadonlyMap<string, SentFile> {
  const sha256Of = (text: string): string => createHash('sha256').update(text).digest('hex');
  return new Map(
    list.map(({ file, text }) => {
      const values = list.find((one) => one.file === valuesFileOf(file) && one.file !== file)?.text;
      const kept = values === undefined ? null : { sha256: sha256Of(values), text: values };
      return [file, { sha256: sha256Of(text), text, values: kept }];
    }),
  );
}

/** Computes files given by name and text. */
export function computeFiles(
  files: Readonly<Record<string, string>>,
  audience: Access = 'restricted',
  without: readonly string[] = [],
): Computed {
  return compute(workspaceOf(files), audience, { withdrawn: without, today: '2024-06-01' });
}

/**
 * Pictures of a workspace given as texts: size as `915x1480` (500 x 400 where it is empty), or what is wrong. Every
 * picture that an entry names is there, unless its name holds "missing".
 */
function picturesOf(list: readonly { readonly file: string; readonly text: string }[]): FoundPictures {
  const pictures = new Map<string, FoundPicture>();
  for (const { file, text } of list) {
    const [, name] = /^file: *"?([^"\n]+?)"?$/m.exec(text) ?? [];
    if (name && /^type: *"?figure/m.test(text) && !name.includes('missing'))
      pictures.set(besideEntry(file, name), { width: 500, height: 400 });
  }
  for (const { file, text } of list.filter((one) => one.file.endsWith('.jpg'))) {
    const [, width, height] = /^(\d+)x(\d+)$/.exec(text.trim()) ?? [];
    if (width && height) pictures.set(file, { width: Number(width), height: Number(height) });
    else if (text.trim() !== '') pictures.set(file, text.trim() as FoundPicture);
  }
  return pictures;
}

/** A workspace of short entries: id to front matter lines; ids of type by prefix are up to the caller. */
export function entries(list: Readonly<Record<string, string>>): Record<string, string> {
  const base = {
    'entries/workspace.md':
      '---\nid: workspace\ntype: workspace\ntitle: A file\ninstitution: Wexcombe Museum of Art\naccess-default: public\ncirca: { year: 10, decade: 10, century: 25, month: 3, day: 30 }\n---\n',
  };
  const rest = Object.entries(list).map(([id, keys]) => [`entries/${id}.md`, `---\nid: ${id}\n${keys.trim()}\n---\n`]);
  return { ...base, ...Object.fromEntries(rest) };
}
