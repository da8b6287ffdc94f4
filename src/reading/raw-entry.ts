import type { Root } from 'mdast';
import type { Diagnostic } from '../base/diagnostic.ts';
import { nearest } from '../base/nearest.ts';
import type { Place } from '../base/place.ts';
import { ENTRY_SCHEMAS, type Entry, type KeyPath, type Keys } from '../model/entry.ts';
import { ENTRY_TYPES, type EntryType } from '../model/entry-type-names.ts';
import { type Places, schemaProblems } from './schema-problems.ts';

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
  const keyOf = (one: Diagnostic): string => /^"([^"]*)"/.exec(one.message)?.[1] ?? '';
  const missing = new Set(errors.filter((one) => one.code === 'missing-key').map(keyOf));
  const empty = notes.filter((one) => one.code === 'no-value' && missing.has(keyOf(one)));
  const filled = new Set(empty.map(keyOf));
  return [
    ...notes.filter((one) => !empty.includes(one)),
    ...errors.map((one) =>
      one.code === 'missing-key' && filled.has(keyOf(one))
        ? {
            ...one,
            place: empty.find((note) => keyOf(note) === keyOf(one))?.place ?? one.place,
            message: `"${keyOf(one)}" has no value`,
            mend: one.mend.replace(/^add "[^"]*"/, `write a value after "${keyOf(one)}:"`),
          }
        : one,
    ),
  ];
}

function isEntryType(type: unknown): type is EntryType {
  return ENTRY_TYPES.includes(type as EntryType);
}

function typeProblem(type: unknown, places: Places): Diagnostic {
  const written = typeof type === 'string' ? type : null;
  const [near] = written === null ? [] : nearest(written, ENTRY_TYPES, 1);
  const all = `the types are: ${ENTRY_TYPES.join(', ')}`;
  return {
    code: written === null ? 'missing-key' : 'unknown-type',
    severity: 'error',
    place: places.placeOfValue(['type']),
    message: written === null ? '"type" is missing' : `"${written}" is not a type of entry`,
    mend: near ? `did you mean "${near}"? ${all}` : all,
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
      message: `"${key}" was cut off at a comma from the text before it`,
      mend: 'inside { } or [ ] put text that holds a comma in quotation marks: why: "first part, second part"',
    };
  }
  return {
    code: 'no-value',
    severity: 'note',
    place,
    message: `"${key}" has no value and counts as not written`,
    mend: 'write a value, or delete the line',
  };
}
