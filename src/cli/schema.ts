import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { ENTRY_TYPES, type EntryType } from '../model/entry-type-names.ts';
import { formatDocument } from '../model/format-document.ts';
import { jsonSchemaOf } from '../model/json-schema.ts';
import type { Command } from './commands.ts';
import { Fault } from './load-workspace.ts';

export const schema: Command = {
  name: 'schema',
  summary: 'prints the JSON Schema of a type of entry, for editors',
  usage: 'kerfmark schema [TYPE] [--out FOLDER] [--markdown]',
  examples: ['kerfmark schema event', 'kerfmark schema --out schemas', 'kerfmark schema --markdown'],
  words: 1,
  flags: { out: 'value', markdown: 'switch' },
  async run(options, effects) {
    if (options.flags.markdown) {
      effects.out(formatDocument());
      return 0;
    }
    const types = options.words.length > 0 ? options.words : ENTRY_TYPES;
    const unknown = types.filter((type) => !ENTRY_TYPES.includes(type as EntryType));
    if (unknown.length > 0)
      throw new Fault(`There is no type "${unknown[0]}". The types are: ${ENTRY_TYPES.join(', ')}.`);
    const print = (type: string): string => `${JSON.stringify(jsonSchemaOf(type as EntryType), null, 2)}\n`;
    if (typeof options.flags.out !== 'string') {
      for (const type of types) effects.out(print(type));
      return 0;
    }
    const folder = path.resolve(effects.cwd, options.flags.out);
    await mkdir(folder, { recursive: true });
    for (const type of types) await writeFile(path.join(folder, `${type}.schema.json`), print(type));
    effects.out(`${types.length} schemas in ${folder}\n`);
    return 0;
  },
};
