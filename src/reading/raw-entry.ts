import type { Root } from 'mdast';
import type { Diagnostic } from '../base/diagnostic.ts';
import { nearest } from '../base/nearest.ts';
import type { Place } from '../base/place.ts';
import { partsOf, phrase, type Said } from '../base/said.ts';
import { ENTRY_SCHEMAS, type Entry, type KeyPath, type Keys } from '../model/entry.ts';
import { ENTRY_TYPES, type EntryType } from '../model/entry-type-names.ts';
import { mendOfMissing, type Places, schemaProblems } from './schema-problems.ts';

/** The keys of one entry as they came from a file or a table row, not yet checked. */
export interface RawEntry {
  readonly file: string;
  readonly keys: Readonly<Record<string, unknown>>;
  readonly argument: Root;
  readonly places: Places;
}

/** What became of a raw entry: an entry, or only its id and what is wrong. */
export interface CheckedEntry {
  readonly id: string | null;
  readonly entry: Omit<Entry, 'access'> | null;
  readonly problems: readonly Diagnostic[];
}

/** Checks raw keys against the schema of their type; all problems at once. */
export function checkEntry(raw: RawEntry): CheckedEntry {
  const { keys: full, problems, cut } = withoutEmpty(raw);
  const id = typeof full.id === 'string' ? full.id : null;
  const type = full.type;
  if (!isEntryType(type)) {
    return { id, entry: null, problems: [...problems, typeProblem(type, raw.places)] };
  }
  const schema = ENTRY_SCHEMAS[type];
  const result = schema.safeParse(full, { reportInput: true });
  if (cut || !result.success) {
    return {
      id,
      entry: null,
      problems: mergeEmpty(problems, schemaProblems(schema, result.error?.issues ?? [], raw.places)),
    };
  }
  const entry = {
    id: result.data.id,
    type,
    keys: result.data as Keys<EntryType>,
    argument: raw.argument,
    file: raw.file,
    placeOf: (path: KeyPath): Place => raw.places.placeOfValue(path),
  };
  return { id, entry, problems };
}

/** A required key without a value is told once, as an error with the mend to fill it in. */
function mergeEmpty(notes: readonly Diagnostic[], errors: readonly Diagnostic[]): readonly Diagnostic[] {
  const missing = new Set(errors.filter((one) => one.code === 'missing-key').map((one) => firstOf(one.message)));
  const empty = notes.filter((one) => one.code === 'no-value' && missing.has(firstOf(one.message)));
  return [
    ...notes.filter((one) => !empty.includes(one)),
    ...errors.map((one) => {
      const key = firstOf(one.message);
      const written = one.code === 'missing-key' ? empty.find((note) => firstOf(note.message) === key) : undefined;
      if (!written || key === null) return one;
      const mend = mendOfMissing(key, true, partsOf(one.mend)[2] ?? '');
      return { ...one, place: written.place, message: phrase('"{0}" has no value', key), mend };
    }),
  ];
}

/** The key that a problem of a key names first. */
function firstOf(said: Said): string | null {
  const [first] = partsOf(said);
  return typeof first === 'string' ? first : null;
}

function isEntryType(type: unknown): type is EntryType {
  return ENTRY_TYPES.includes(type as EntryType);
}

function typeProblem(type: unknown, places: Places): Diagnostic {
  const written = typeof type === 'string' ? type : null;
  const [near] = written === null ? [] : nearest(written, ENTRY_TYPES, 1);
  const all: Said = phrase('the types are: {0}', ENTRY_TYPES.join(', '));
  return {
    code: written === null ? 'missing-key' : 'unknown-type',
    severity: 'error',
    place: places.placeOfValue(['type']),
    message: written === null ? phrase('"type" is missing') : phrase('"{0}" is not a type of entry', written),
    mend: near ? phrase('did you mean "{0}"? {1}', near, all) : all,
  };
}

/**
 * Leaves out keys without a value (a note each), so that a half-filled form is no disaster.
 * A key without a value that no entry knows is a text cut at its comma: an error.
 */
function withoutEmpty(raw: RawEntry): {
  readonly keys: Readonly<Record<string, unknown>>;
  readonly problems: readonly Diagnostic[];
  readonly cut: boolean;
} {
  const problems: Diagnostic[] = [];
  const clean = (value: unknown, path: KeyPath): unknown => {
    if (Array.isArray(value)) return value.map((part, i) => clean(part, [...path, i]));
    if (value === null || typeof value !== 'object') return value;
    const kept: Record<string, unknown> = {};
    for (const [key, part] of Object.entries(value)) {
      if (part === null) problems.push(emptyKey(key, raw.places.placeOfKey([...path, key])));
      else kept[key] = clean(part, [...path, key]);
    }
    return kept;
  };
  const keys = clean(raw.keys, []) as Record<string, unknown>;
  return { keys, problems, cut: problems.some((problem) => problem.severity === 'error') };
}

function emptyKey(key: string, place: Place): Diagnostic {
  if (!/^[A-Za-z][A-Za-z-]*$/.test(key)) {
    return {
      code: 'yaml-comma-in-text',
      severity: 'error',
      place,
      message: phrase('"{0}" was cut off at a comma from the text before it', key),
      mend: phrase(
        "inside '{' '}' or [ ] put text that holds a comma in quotation marks: why: \"first part, second part\"",
      ),
    };
  }
  return {
    code: 'no-value',
    severity: 'note',
    place,
    message: phrase('"{0}" has no value and counts as not written', key),
    mend: phrase('write a value, or delete the line'),
  };
}
