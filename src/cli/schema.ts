import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { phrase } from '../base/said.ts';
import { ENTRY_TYPES, type EntryType } from '../model/entry-type-names.ts';
import { formatDocument } from '../model/format-document.ts';
import { jsonSchemaOf } from '../model/json-schema.ts';
import { folderOf, type RunCommand } from './commands.ts';
import { writeEditorFiles } from './editor-files.ts';
import { Fault } from './fault.ts';

export const schema: RunCommand = async (options, effects) => {
  if (options.flags.markdown) {
    effects.out(formatDocument());
    return 0;
  }
  if (options.flags.editor) {
    const { written, left } = await writeEditorFiles(folderOf(options, effects));
    const from = (file: string): string => path.relative(effects.cwd, file) || file;
    for (const file of written) effects.out(phrase('Written: {0}\n', from(file)));
    for (const file of left) effects.out(phrase('There already, left as it is: {0}\n', from(file)));
    effects.out(phrase('How to go on: docs/guide/your-first-file.md, "Help from your editor".\n'));
    return 0;
  }
  const types = options.words.length > 0 ? options.words : ENTRY_TYPES;
  const unknown = types.filter((type) => !ENTRY_TYPES.includes(type as EntryType));
  if (unknown.length > 0)
    throw new Fault(phrase('There is no type "{0}". The types are: {1}.', unknown[0], ENTRY_TYPES.join(', ')));
  const print = (type: string): string => `${JSON.stringify(jsonSchemaOf(type as EntryType), null, 2)}\n`;
  if (typeof options.flags.out !== 'string') {
    for (const type of types) effects.out(print(type));
    return 0;
  }
  const folder = path.resolve(effects.cwd, options.flags.out);
  await mkdir(folder, { recursive: true });
  for (const type of types) await writeFile(path.join(folder, `${type}.schema.json`), print(type));
  effects.out(phrase('{0} schemas in {1}\n', types.length, folder));
  return 0;
};
