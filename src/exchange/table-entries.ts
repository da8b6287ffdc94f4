import { stringify } from 'yaml';
import { fromWords } from '../dates/from-words.ts';
import { ENTRY_SCHEMAS } from '../model/entry.ts';
import type { EntryType } from '../model/entry-type-names.ts';
import { keyNames } from '../model/walk-fields.ts';
import { withoutApostrophe } from './registers-csv.ts';

/** Which column goes to which key: `Kind` to `kind`, `From` to `begins.date`; '' leaves a column out. */
export type ColumnMap = Readonly<Record<string, string>>;

/** A draft entry made from a row. */
export interface RowEntry {
  /** Row in the table, the head counted as 1. */
  readonly row: number;
  readonly id: string | null;
  readonly title: string;
  /** Keys as YAML, without id and type. */
  readonly keys: Readonly<Record<string, unknown>>;
  /** The words of the row, kept in the entry. */
  readonly words: string;
}

/** Keys whose value is a list of dated statements; a column of them holds the date. */
const DATED = ['stated', 'begins', 'ends', 'held'];

/** The map that the heads of a table suggest: a head that is the name of a key of the type, in whatever case. */
export function suggestedMap(type: EntryType, heads: readonly string[]): ColumnMap {
  const known = keyNames(ENTRY_SCHEMAS[type]);
  return Object.fromEntries(
    heads.map((head) => {
      const key = head
        .trim()
        .toLowerCase()
        .replace(/[\s_]+/g, '-');
      return [head, DATED.includes(key) ? `${key}.date` : known.has(key) ? key : ''];
    }),
  );
}

/** Heads of a map that lead to no key of the type. */
export function strangeTargets(type: EntryType, map: ColumnMap): readonly string[] {
  const known = keyNames(ENTRY_SCHEMAS[type]);
  return Object.values(map).filter((target) => target !== '' && !known.has(target.split('.').at(-1) as string));
}

/**
 * Draft entries from the rows of a table. Dates may be written as people write them; what was written stays under
 * `as-written`. Lists are parted at semicolons. Empty rows are passed over.
 *
 * @param grade grade of dated statements that a row makes
 */
export function entriesFromRows(
  heads: readonly string[],
  rows: readonly (readonly string[])[],
  map: ColumnMap,
  grade: string,
): readonly RowEntry[] {
  return rows.flatMap((cells, i): readonly RowEntry[] => {
    if (cells.every((one) => one.trim() === '')) return [];
    const keys: Record<string, unknown> = {};
    heads.forEach((head, column) => {
      const target = map[head] ?? '';
      const value = withoutApostrophe((cells[column] ?? '').trim());
      if (target !== '' && value !== '') setValue(keys, target, value, grade);
    });
    const { id, title, type: _, ...rest } = keys;
    const words = heads.map((head, column) => `${head}: ${cells[column] ?? ''}`).join('; ');
    return [
      {
        row: i + 2,
        id: typeof id === 'string' ? id : null,
        title: typeof title === 'string' ? title : `Row ${i + 2}`,
        keys: rest,
        words,
      },
    ];
  });
}

function setValue(keys: Record<string, unknown>, target: string, value: string, grade: string): void {
  const [key = '', inner] = target.split('.');
  if (DATED.includes(key)) {
    const list = (keys[key] ?? []) as unknown[];
    keys[key] = [...list, dated(value, grade)];
  } else if (inner !== undefined) {
    keys[key] = { ...((keys[key] ?? {}) as object), [inner]: value };
  } else if (/^[[{]/.test(value)) keys[key] = jsonOr(value);
  else keys[key] = /;\s/.test(value) && isListKey(key) ? value.split(/;\s*/) : value;
}

/** Keys of which a cell may hold several values. */
function isListKey(key: string): boolean {
  return [
    'objects',
    'author',
    'about',
    'found',
    'shared-with',
    'see',
    'seen-under',
    'accession-numbers',
    'parties',
  ].includes(key);
}

function jsonOr(value: string): unknown {
  try {
    return JSON.parse(value) as unknown;
  } catch {
    return value;
  }
}

function dated(value: string, grade: string): Readonly<Record<string, string>> {
  const worded = /^[\d[{./~?%X-]+$/i.test(value) ? null : fromWords(value);
  if (!worded) return { date: value, grade };
  return { date: worded.edtf, ...(worded.sense ? { sense: worded.sense } : {}), 'as-written': value, grade };
}

/** The text of an entry from a row. */
export function rowText(type: EntryType, id: string, { title, keys, words }: RowEntry): string {
  const yaml = stringify({ id, type, title, ...keys, access: keys.access ?? 'internal' }, { lineWidth: 0 });
  return `---\n${yaml}---\n\nFrom a row of a table, not yet checked: ${words.replace(/\s+/g, ' ')}\n`;
}
