import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { ENTRY_TYPES } from '../model/entry-type-names.ts';
import { jsonSchemaOf } from '../model/json-schema.ts';
import { packageRoot } from './package-root.ts';

/**
 * One JSON Schema for entries of every type, chosen by the key `type`, as language servers for YAML read it
 * (JSON Schema draft-07, `if` and `then`).
 */
function entrySchema(): unknown {
  return {
    $schema: 'http://json-schema.org/draft-07/schema#',
    title: 'An entry',
    type: 'object',
    required: ['id', 'type', 'title'],
    properties: {
      id: { type: 'string' },
      type: { enum: ENTRY_TYPES, description: 'what kind of entry this is; all other keys depend on it' },
    },
    allOf: ENTRY_TYPES.map((type) => {
      const { $schema: _, additionalProperties: __, ...schema } = jsonSchemaOf(type) as Record<string, unknown>;
      // biome-ignore lint/suspicious/noThenProperty: a keyword of JSON Schema
      return { if: { properties: { type: { const: type } }, required: ['type'] }, then: schema };
    }),
  };
}

/** Settings of Visual Studio Code for a workspace folder: entries are completed and explained by the schema. */
const SETTINGS = {
  'files.associations': { '**/entries/**/*.md': 'yaml' },
  'yaml.schemas': { './.vscode/entry.schema.json': '**/entries/**/*.md' },
  'yaml.validate': false,
  'yaml.completion': true,
  'yaml.hover': true,
  'editor.wordWrap': 'on',
  'editor.autoClosingQuotes': 'always',
  '[yaml]': { 'editor.formatOnSave': false, 'editor.insertSpaces': true, 'editor.tabSize': 2 },
};

/** "kerfmark check" as a task whose problems are listed with their lines, by the program that wrote it: it need not be installed. */
const tasks = (program: string): unknown => ({
  version: '2.0.0',
  tasks: [
    {
      label: 'kerfmark check',
      type: 'shell',
      command: `"${process.execPath}" "${program}" check`,
      group: { kind: 'build', isDefault: true },
      presentation: { reveal: 'silent' },
      problemMatcher: {
        owner: 'kerfmark',
        // biome-ignore lint/suspicious/noTemplateCurlyInString: the editor puts the folder in
        fileLocation: ['relative', '${workspaceFolder}'],
        pattern: [
          {
            regexp: '^(entries/.*):(\\d+):(\\d+)  (error|doubt|note)  \\[(.*)\\]$',
            file: 1,
            line: 2,
            column: 3,
            code: 5,
          },
          { regexp: '^  (.*)$', message: 1 },
        ],
      },
    },
  ],
});

/**
 * Writes what an editor needs to complete entries into `.vscode` of a workspace. The schema is written anew; settings
 * and tasks of one's own are left as they are.
 * @returns the files written, and those left as they were
 */
export async function writeEditorFiles(
  folder: string,
): Promise<{ readonly written: readonly string[]; readonly left: readonly string[] }> {
  const home = path.join(folder, '.vscode');
  await mkdir(home, { recursive: true });
  const text = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`;
  const schema = path.join(home, 'entry.schema.json');
  await writeFile(schema, text(entrySchema()));
  const written = [schema];
  const left: string[] = [];
  for (const [name, value] of [
    ['settings.json', SETTINGS],
    ['tasks.json', tasks(path.join(packageRoot(), 'dist', 'src', 'cli', 'main.js'))],
  ] as const) {
    const file = path.join(home, name);
    const isNew = await writeFile(file, text(value), { flag: 'wx' }).then(
      () => true,
      () => false,
    );
    (isNew ? written : left).push(file);
  }
  return { written, left };
}
