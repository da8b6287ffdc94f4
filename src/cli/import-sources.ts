import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { stringify } from 'yaml';
import { phrase, type Said } from '../base/said.ts';
import { type CslItem, cslFromBibtex, sourceFromCsl } from '../exchange/sources.ts';
import { folderOf, type Options } from './commands.ts';
import { type Draft, writeDraftFiles } from './draft-files.ts';
import type { Effects } from './effects.ts';
import { Fault } from './fault.ts';

/** Makes draft sources from CSL-JSON or BibTeX; what has no title, or cannot be parsed, is told. */
export async function importSources(name: string, options: Options, effects: Effects): Promise<number> {
  const file = path.resolve(effects.cwd, name);
  const text = await readFile(file, 'utf8').catch(() => {
    throw new Fault(phrase('There is no file {0} that can be read as text.', file));
  });
  const { items, problems } = /^\s*[[{]/.test(text)
    ? { items: parseCsl(text, name), problems: [] }
    : cslFromBibtex(text);
  const json = options.flags.json === true;
  const tell = (words: Said): void => (json ? undefined : effects.out(words));
  for (const one of problems) tell(phrase('Not read: {0}\n', one));
  const drafts = items.flatMap((item, i): readonly Draft[] => {
    const keys = sourceFromCsl(item);
    if (!keys) {
      tell(phrase('Left out, item {0} ({1}): it has no title.\n', i + 1, item.id ?? phrase('without id')));
      return [];
    }
    return [
      {
        id: null,
        title: String(keys.title),
        from: `item ${i + 1}, ${item.id ?? effects.sayer.words('without id')}`,
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
    throw new Fault(phrase('{0} is no JSON: {1}', name, (error as Error).message));
  }
  const list = Array.isArray(read) ? read : [read];
  return list.filter((one): one is CslItem => one !== null && typeof one === 'object');
}
