import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { stringify } from 'yaml';
import { type CslItem, cslFromBibtex, sourceFromCsl } from '../exchange/sources.ts';
import { folderOf, type Options } from './commands.ts';
import { type Draft, writeDraftFiles } from './draft-files.ts';
import type { Effects } from './effects.ts';
import { Fault } from './fault.ts';

/** Makes draft sources from CSL-JSON or BibTeX; what has no title, or cannot be parsed, is told. */
export async function importSources(name: string, options: Options, effects: Effects): Promise<number> {
  const file = path.resolve(effects.cwd, name);
  const text = await readFile(file, 'utf8').catch(() => {
    throw new Fault(`There is no file ${file} that can be read as text.`);
  });
  const { items, problems } = /^\s*[[{]/.test(text)
    ? { items: parseCsl(text, name), problems: [] }
    : cslFromBibtex(text);
  const json = options.flags.json === true;
  const tell = (words: string): void => (json ? undefined : effects.out(words));
  for (const one of problems) tell(`Not read: ${one}\n`);
  const drafts = items.flatMap((item, i): readonly Draft[] => {
    const keys = sourceFromCsl(item);
    if (!keys) {
      tell(`Left out, item ${i + 1} (${item.id ?? 'without id'}): it has no title.\n`);
      return [];
    }
    return [
      {
        id: null,
        title: String(keys.title),
        from: `item ${i + 1}, ${item.id ?? 'without id'}`,
        text: (id) =>
          `---\n${stringify({ id, type: 'source', ...keys, access: 'internal' }, { lineWidth: 0 })}---\n\nFrom a list of literature (${item.id ?? 'without id'}), not yet checked.\n`,
      },
    ];
  });
  return writeDraftFiles(
    folderOf(options, effects),
    'source',
    drafts,
    { write: options.flags.write === true, json },
    effects,
  );
}

function parseCsl(text: string, name: string): readonly CslItem[] {
  let read: unknown;
  try {
    read = JSON.parse(text);
  } catch (error) {
    throw new Fault(`${name} is no JSON: ${(error as Error).message}`);
  }
  const list = Array.isArray(read) ? read : [read];
  return list.filter((one): one is CslItem => one !== null && typeof one === 'object');
}
