import { readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { parse as parseCsv } from 'csv-parse/sync';
import { parse as parseYaml, stringify } from 'yaml';
import { GRADES } from '../base/grade.ts';
import { phrase, type Said } from '../base/said.ts';
import { type ColumnMap, entriesFromRows, rowText, strangeTargets, suggestedMap } from '../exchange/table-entries.ts';
import { ENTRY_TYPES, type EntryType } from '../model/entry-type-names.ts';
import { choiceOf, folderOf, type Options } from './commands.ts';
import { writeDraftFiles } from './draft-files.ts';
import type { Effects } from './effects.ts';
import { Fault } from './fault.ts';

/**
 * Makes draft entries from a table. Without `--write` nothing is written: what would be, and what is wrong with it, is
 * told first. `--save-map` keeps the map of columns, to be corrected by hand and given back with `--map`.
 */
export async function importTable(name: string, options: Options, effects: Effects): Promise<number> {
  const type = choiceOf(options, 'type', ENTRY_TYPES, 'evidence' as EntryType);
  const grade = choiceOf(options, 'grade', GRADES, 'possible');
  const json = options.flags.json === true;
  const tell = (words: Said): void => (json ? undefined : effects.out(words));
  const [heads = [], ...rows] = await readRows(path.resolve(effects.cwd, name));
  if (heads.length === 0) throw new Fault(phrase('{0} holds no rows. The first row names the columns.', name));
  const map = { ...suggestedMap(type, heads), ...(await savedMap(options, effects)) };
  const strange = strangeTargets(type, map);
  if (strange.length > 0)
    throw new Fault(
      phrase(
        'The map leads to {0}, which entries of type {1} do not have. docs/format.md lists their keys.',
        strange.join(', '),
        type,
      ),
    );
  if (options.flags['save-map']) {
    const target = path.resolve(effects.cwd, String(options.flags['save-map']));
    await writeFile(target, stringify(map), { flag: 'wx' }).catch(() => {
      throw new Fault(phrase('{0} exists already and is left as it is. Name another file.', target));
    });
    tell(
      phrase(
        'Written: {0}. Correct it in an editor; an empty value leaves a column out.\n',
        path.relative(effects.cwd, target),
      ),
    );
  }
  const used = Object.entries(map).filter(([head, target]) => heads.includes(head) && target !== '');
  const left = heads.filter((head) => (map[head] ?? '') === '');
  tell(phrase('Columns read: {0}.\n', used.map(([head, target]) => `${head} as ${target}`).join(', ') || 'none'));
  if (left.length > 0) tell(phrase('Columns not read, but kept in the text of each entry: {0}.\n', left.join(', ')));
  const fixed = options.flags.object === undefined ? {} : fixedObject(type, String(options.flags.object));
  const entries = entriesFromRows(heads, rows, map, grade).map((one) => ({ ...one, keys: { ...fixed, ...one.keys } }));
  const drafts = entries.map((one) => ({
    id: one.id,
    title: one.title,
    from: `row ${one.row}`,
    text: (id: string) => rowText(type, id, one),
  }));
  return writeDraftFiles(
    folderOf(options, effects),
    type,
    drafts,
    { write: options.flags.write === true, json },
    effects,
  );
}

/** The object that all rows are about, under the key that the type has for it. */
function fixedObject(type: EntryType, object: string): Readonly<Record<string, unknown>> {
  return type === 'evidence' || type === 'survey' || type === 'figure' ? { object } : { objects: [object] };
}

async function readRows(file: string): Promise<readonly (readonly string[])[]> {
  if (/\.xlsx$/i.test(file)) {
    const { default: readXlsx } = await import('read-excel-file/node');
    const sheets = await readXlsx(file).catch((error: Error) => {
      throw new Fault(phrase('{0} cannot be read as a spreadsheet: {1}', file, error.message));
    });
    const first = sheets[0] as { readonly data?: readonly (readonly unknown[])[] } | readonly unknown[] | undefined;
    const rows = Array.isArray(first)
      ? (sheets as unknown as readonly (readonly unknown[])[])
      : ((first as { data?: readonly (readonly unknown[])[] })?.data ?? []);
    return rows.map((row) => row.map(cellText));
  }
  const text = await readFile(file, 'utf8').catch(() => {
    throw new Fault(phrase('There is no file {0} that can be read as text.', file));
  });
  try {
    const delimiter =
      (text.split('\n')[0] ?? '').includes(';') && !(text.split('\n')[0] ?? '').includes(',') ? ';' : ',';
    return parseCsv(text, { bom: true, relax_column_count: true, skip_empty_lines: true, delimiter }) as string[][];
  } catch (error) {
    throw new Fault(phrase('{0} cannot be read as a CSV table: {1}', file, (error as Error).message));
  }
}

function cellText(value: unknown): string {
  if (value === null || value === undefined) return '';
  return value instanceof Date ? value.toISOString().slice(0, 10) : String(value);
}

async function savedMap(options: Options, effects: Effects): Promise<ColumnMap> {
  if (options.flags.map === undefined) return {};
  const file = path.resolve(effects.cwd, String(options.flags.map));
  const text = await readFile(file, 'utf8').catch(() => {
    throw new Fault(
      phrase('There is no map {0}. "--save-map {1}" writes one to begin with.', file, String(options.flags.map)),
    );
  });
  const map = parseYaml(text) as unknown;
  if (map === null || typeof map !== 'object' || Array.isArray(map))
    throw new Fault(phrase('{0} is no map of columns. Each line reads: Name of the column: key', file));
  return Object.fromEntries(Object.entries(map).map(([head, target]) => [head, target === null ? '' : String(target)]));
}
