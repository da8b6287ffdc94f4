import type * as z from 'zod';
import { oncePerBoth } from '../base/once.ts';
import type { KeyPath } from './entry.ts';
import { type FieldNote, fieldNotes } from './fields.ts';

/** One value of an entry that carries a note (a reference, a date, a length). */
export interface NotedField {
  readonly note: FieldNote;
  readonly value: string;
  readonly path: KeyPath;
  /** The map or list that holds the value. */
  readonly parent: unknown;
}

/** Finds every noted value in an entry's keys, in the order of its schema. */
export function findNotedFields(schema: z.ZodType, value: unknown): readonly NotedField[] {
  return value === null || typeof value !== 'object' ? walked(value, schema) : fieldsOf(value, schema);
}

/** The keys of an entry are never changed in place, so their fields are found once. */
const fieldsOf = oncePerBoth<object, z.ZodType, readonly NotedField[]>(walked);

function walked(value: unknown, schema: z.ZodType): readonly NotedField[] {
  const found: NotedField[] = [];
  walk(schema, value, [], null, found);
  return found;
}

type Inner = z.ZodType & { readonly def: InnerDefinition };
interface InnerDefinition {
  readonly type: string;
  readonly shape?: Readonly<Record<string, Inner>>;
  readonly element?: Inner;
  readonly innerType?: Inner;
  readonly options?: readonly Inner[];
  readonly in?: Inner;
  readonly out?: Inner;
  readonly valueType?: Inner;
}

function walk(schema: z.ZodType, value: unknown, path: KeyPath, parent: unknown, found: NotedField[]): void {
  if (value === undefined || value === null) return;
  const note = fieldNotes.get(schema);
  if (note && typeof value === 'string') found.push({ note, value, path, parent });
  for (const [inner, part, key] of partsOf(schema, value)) {
    walk(inner, part, key === null ? path : [...path, key], key === null ? parent : value, found);
  }
}

type Part = readonly [schema: Inner, value: unknown, key: string | number | null];

function partsOf(schema: z.ZodType, value: unknown): readonly Part[] {
  const { def } = schema as Inner;
  switch (def.type) {
    case 'object': {
      const map = value as Record<string, unknown>;
      return Object.entries(def.shape ?? {}).map(([key, inner]) => [inner, map[key], key]);
    }
    case 'array':
      return (value as unknown[]).map((part, i) => [def.element as Inner, part, i]);
    case 'record':
      return Object.entries(value as object).map(([key, part]) => [def.valueType as Inner, part, key]);
    case 'union': {
      const fitting = def.options?.find((option) => option.safeParse(value).success);
      return fitting ? [[fitting, value, null]] : [];
    }
    case 'optional':
      return [[def.innerType as Inner, value, null]];
    case 'pipe':
      return [[def.out as Inner, value, null]];
    default:
      return [];
  }
}

/** The keys that a map may have at a path of an entry; none where no map stands there. */
export function keysAt(schema: z.ZodType, path: KeyPath): readonly string[] {
  const candidates = path.reduce<readonly Inner[]>(
    (schemas, key) => schemas.flatMap((one) => stepInto(one, key)),
    unwrap(schema as Inner),
  );
  return candidates.flatMap((one) => (one.def.type === 'object' ? Object.keys(one.def.shape ?? {}) : []));
}

function stepInto(schema: Inner, key: string | number): readonly Inner[] {
  const { def } = schema;
  if (def.type === 'object') {
    const inner = def.shape?.[String(key)];
    return inner ? unwrap(inner) : [];
  }
  if (def.type === 'array' && def.element) return unwrap(def.element);
  if (def.type === 'record' && def.valueType) return unwrap(def.valueType);
  return [];
}

function unwrap(schema: Inner): readonly Inner[] {
  const { def } = schema;
  if (def.type === 'optional' && def.innerType) return unwrap(def.innerType);
  if (def.type === 'pipe' && def.out) return unwrap(def.out);
  if (def.type === 'union') return def.options?.flatMap(unwrap) ?? [];
  return [schema];
}

/** The note of a key at the top of a type, through lists and what may be missing; undefined where it has none. */
export function noteOfKey(schema: z.ZodType, key: string): FieldNote | undefined {
  const inner = (schema as Inner).def.shape?.[key];
  const options = inner ? unwrap(inner).flatMap((one) => (one.def.element ? unwrap(one.def.element) : [one])) : [];
  return options.map((one) => fieldNotes.get(one)).find((note) => note !== undefined);
}

/** Every key that a type has, at any depth. */
export function keyNames(schema: z.ZodType): ReadonlySet<string> {
  const names = new Set<string>();
  const visit = (inner: Inner): void => {
    for (const { def } of unwrap(inner)) {
      if (def.element) visit(def.element);
      if (def.valueType) visit(def.valueType);
      for (const [key, value] of Object.entries(def.shape ?? {})) {
        names.add(key);
        visit(value);
      }
    }
  };
  visit(schema as Inner);
  return names;
}
