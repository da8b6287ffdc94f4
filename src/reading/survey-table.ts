import { parse } from 'csv-parse/sync';
import { parse as parseYaml } from 'yaml';
import type { Diagnostic } from '../base/diagnostic.ts';
import type { Place } from '../base/place.ts';
import { phrase } from '../base/said.ts';
import { ENTRY_SCHEMAS, type Entry, type KeyPath } from '../model/entry.ts';
import { keyOfHeading } from '../model/sheet-columns.ts';
import { keyNames } from '../model/walk-fields.ts';
import { NO_ARGUMENT } from './argument.ts';
import type { RawEntry } from './raw-entry.ts';
import type { TextFile } from './text-file.ts';

/** Keys whose cells hold several values, parted by semicolons. */
const LISTS = ['over', 'cuts', 'fills', 'same-as', 'bonded-with', 'seen-under', 'see', 'withhold'];

interface Row {
  readonly record: readonly string[];
  readonly info: { readonly lines: number };
}

/**
 * Reads a survey table: a CSV whose first row names keys of `evidence` (`observed.text`,
 * `left-by.event` reach into a key), or has the headings of the printed sheet, and whose other rows are traces. A cell that begins with
 * `{` or `[` is read as YAML. Empty cells are not written.
 */
export function readSurveyTable(
  table: TextFile,
  survey: Entry<'survey'>,
): { readonly rows: readonly RawEntry[]; readonly problems: readonly Diagnostic[] } {
  let rows: readonly Row[];
  try {
    rows = parse(table.text, {
      info: true,
      bom: true,
      delimiter: delimiterOf(table.text),
      relax_column_count: true,
      skip_empty_lines: true,
      trim: true,
    }) as unknown as readonly Row[];
  } catch (error) {
    return { rows: [], problems: [notCsv(table.file, error)] };
  }
  const [head, ...body] = rows;
  if (!head) return { rows: [], problems: [notCsv(table.file, new Error('the table is empty'))] };
  const problems: Diagnostic[] = [];
  const columns = head.record.map(keyOfHeading);
  const raw = body
    .filter((row) => row.record.some((cell) => cell !== ''))
    .map((row) => rawRow(table.file, columns, row, survey, problems));
  return { rows: raw, problems };
}

/** Commas; spreadsheets of some countries part the columns by semicolons or tabs. */
function delimiterOf(text: string): string {
  const head = text.slice(0, text.search(/[\r\n]|$/));
  if (head.includes(',')) return ',';
  return head.includes(';') ? ';' : head.includes('\t') ? '\t' : ',';
}

function rawRow(
  file: string,
  columns: readonly string[],
  row: Row,
  survey: Entry<'survey'>,
  problems: Diagnostic[],
): RawEntry {
  const keys: Record<string, unknown> = {
    type: 'evidence',
    object: survey.keys.object,
    ...pick(survey.keys, ['panel', 'examination', 'access', 'by', 'recorded']),
  };
  row.record.forEach((cell, i) => {
    const column = columns[i];
    if (cell === '') return;
    if (column === undefined || column === '') {
      problems.push(strayCell(file, row.info.lines, i, cell));
      return;
    }
    setAt(keys, column.split('.'), cellValue(column, cell));
  });
  const withheld = withheldOf(survey, keys.withhold);
  if (withheld.length > 0) keys.withhold = withheld;
  const place = (path: KeyPath): Place => {
    const column = columns.findIndex((name) => name === path.join('.') || name.split('.')[0] === String(path[0]));
    return { file, line: row.info.lines, column: column + 1 || 1 };
  };
  const cellAt = (path: KeyPath): string | null => row.record[place(path).column - 1] ?? null;
  return { file, keys, argument: NO_ARGUMENT, places: { placeOfKey: place, placeOfValue: place, sourceOf: cellAt } };
}

/** What the survey keeps back, its rows keep back too, beside what they say themselves. */
function withheldOf(survey: Entry<'survey'>, own: unknown): readonly unknown[] {
  const known = keyNames(ENTRY_SCHEMAS.evidence);
  const kept = (survey.keys.withhold ?? []).filter((key) => known.has(key));
  return [...new Set([...kept, ...(Array.isArray(own) ? (own as unknown[]) : [])])];
}

function cellValue(column: string, cell: string): unknown {
  if (/^[{[]/.test(cell)) {
    try {
      return parseYaml(cell, { schema: 'failsafe' }) as unknown;
    } catch {
      return cell;
    }
  }
  if (column === 'left-by') return cell;
  // On paper nobody writes the unit into every row; a thickness is measured in millimetres.
  if (column === 'thickness' && /^\d+(?:[.,]\d+)?(?:\s*[-–]\s*\d+(?:[.,]\d+)?)?$/.test(cell))
    return `${cell.replaceAll(',', '.')} mm`;
  return LISTS.includes(column) ? cell.split(';').map((part) => part.trim()) : cell;
}

function setAt(keys: Record<string, unknown>, path: readonly string[], value: unknown): void {
  const [first, ...rest] = path as [string, ...string[]];
  if (rest.length === 0) {
    keys[first] = value;
    return;
  }
  const inner = typeof keys[first] === 'object' && keys[first] !== null ? keys[first] : {};
  keys[first] = inner;
  setAt(inner as Record<string, unknown>, rest, value);
}

function pick(keys: object, names: readonly string[]): Record<string, unknown> {
  const source = keys as Record<string, unknown>;
  return Object.fromEntries(names.filter((name) => source[name] !== undefined).map((name) => [name, source[name]]));
}

function notCsv(file: string, error: unknown): Diagnostic {
  const line = Number((error as { lines?: number }).lines ?? 1);
  return {
    code: 'table-not-read',
    severity: 'error',
    place: { file, line, column: 1 },
    message: phrase('the table cannot be read: {0}', (error as Error).message.split('\n')[0]),
    mend: phrase('save it as CSV with commas, text that holds commas in double quotation marks, UTF-8'),
  };
}

function strayCell(file: string, line: number, index: number, cell: string): Diagnostic {
  return {
    code: 'table-stray-cell',
    severity: 'error',
    place: { file, line, column: index + 1 },
    message: phrase('"{0}" stands in a column without a heading', cell),
    mend: phrase('give the column a heading (a key of evidence), or delete the cell'),
  };
}
