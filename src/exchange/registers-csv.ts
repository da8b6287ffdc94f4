import { stringify } from 'csv-stringify/sync';
import type { CaseFile } from '../findings/case-file.ts';
import { titleOf } from '../model/catalogue.ts';
import type { Entry } from '../model/entry.ts';
import { ENTRY_TYPES, type EntryType } from '../model/entry-type-names.ts';

/** A register as a table: its name, and the text of a CSV file (RFC 4180, UTF-8). */
export interface RegisterTable {
  readonly name: EntryType;
  readonly csv: string;
}

/**
 * One CSV for each type of which the file has entries: a row an entry, a column a key; lists by `; `, maps as JSON. A cell
 * that a spreadsheet would take for a formula begins with an apostrophe.
 */
export function registerTables(file: CaseFile): readonly RegisterTable[] {
  return ENTRY_TYPES.flatMap((type): readonly RegisterTable[] => {
    const entries = file.catalogue.ofType(type) as readonly Entry[];
    if (entries.length === 0) return [];
    const keys = [...new Set(entries.flatMap((entry) => Object.keys(entry.keys)))].filter(
      (key) => !['id', 'type', 'title', 'access'].includes(key),
    );
    const rows = entries.map((entry) => [
      entry.id,
      titleOf(entry, file.settings.languages),
      entry.access,
      ...keys.map((key) => cell((entry.keys as Readonly<Record<string, unknown>>)[key])),
    ]);
    return [
      {
        name: type,
        csv: stringify([['id', 'title', 'access', ...keys], ...rows], {
          escape_formulas: true,
          record_delimiter: 'windows',
        }),
      },
    ];
  });
}

function cell(value: unknown): string {
  if (value === undefined || value === null) return '';
  if (Array.isArray(value) && value.every((one) => typeof one === 'string' || typeof one === 'number'))
    return value.join('; ');
  return typeof value === 'object' ? JSON.stringify(value) : String(value);
}

/** The text of a cell as it was before the apostrophe of `registerTables`. */
export function withoutApostrophe(text: string): string {
  return /^'[=+\-@\t\r\uFF1D\uFF0B\uFF0D\uFF20]/.test(text) ? text.slice(1) : text;
}
