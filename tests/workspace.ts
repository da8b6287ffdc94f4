import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import type { Access } from '../src/base/access.ts';
import { type Computed, compute } from '../src/pipeline.ts';
import type { WorkspaceFiles } from '../src/reading/reading.ts';

/** Root of the checkout. */
export const ROOT = path.resolve(import.meta.dirname, '..');

/** Folder with material that is read beside the checkout where it is there. */
export const SHARED = path.resolve(ROOT, '../shared');

/** The files of a folder that holds `entries/`. */
export function filesOf(folder: string): Record<string, string> {
  const files: Record<string, string> = {};
  const walk = (below: string): void => {
    for (const one of readdirSync(path.join(folder, below), { withFileTypes: true })) {
      const here = `${below}/${one.name}`;
      if (one.isDirectory()) walk(here);
      else if (/\.(md|csv|ya?ml|svg)$/.test(one.name)) files[here] = readFileSync(path.join(folder, here), 'utf8');
    }
  };
  walk('entries');
  return files;
}

/** Computes files given by name and text, as the commands do after loading. */
export function computeFiles(
  files: Readonly<Record<string, string>>,
  audience: Access = 'restricted',
  without: readonly string[] = [],
): Computed {
  const list = Object.entries(files).map(([file, text]) => ({ file, text: text.replace(/^\ufeff/, '') }));
  const workspace: WorkspaceFiles = {
    entries: list.filter(({ file }) => file.endsWith('.md')),
    defaults: list.filter(({ file }) => /_defaults\.ya?ml$/.test(file)),
    tables: list.filter(({ file }) => file.endsWith('.csv')),
    drawings: list.filter(({ file }) => file.endsWith('.svg')),
    pictures: new Map(
      list.flatMap(({ file }) => (file.endsWith('.jpg') ? [[file, { width: 500, height: 400 }] as const] : [])),
    ),
    problems: [],
  };
  return compute(workspace, audience, without);
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
