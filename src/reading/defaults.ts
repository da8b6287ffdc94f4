import type { Diagnostic } from '../base/diagnostic.ts';
import { nearest } from '../base/nearest.ts';
import { phrase } from '../base/said.ts';
import { ENTRY_SCHEMAS, type KeyPath } from '../model/entry.ts';
import type { EntryType } from '../model/entry-type-names.ts';
import { type PositionedYaml, readYaml } from './positioned-yaml.ts';
import type { RawEntry } from './raw-entry.ts';
import type { TextFile } from './text-file.ts';

/** Keys that a folder lends to the entries below it. */
export interface Defaults {
  /** Folder with a closing `/`; empty for the top. */
  readonly folder: string;
  readonly keys: Readonly<Record<string, unknown>>;
  readonly yaml: PositionedYaml;
}

const ALL_KEYS: readonly string[] = [
  ...new Set(Object.values(ENTRY_SCHEMAS).flatMap((schema) => Object.keys(schema.shape))),
];

/** Keys that make an entry what it is and can therefore not be lent. */
const OWN = ['id', 'type', 'title'];

/** Reads a `_defaults.yaml`. */
export function readDefaults({ file, text }: TextFile, problems: Diagnostic[]): Defaults {
  const yaml = readYaml(file, text, 0, text.length);
  problems.push(...yaml.problems);
  const folder = file.slice(0, file.lastIndexOf('/') + 1);
  const data = yaml.data;
  const keys: Record<string, unknown> = {};
  for (const [key, value] of Object.entries(data !== null && typeof data === 'object' ? data : {})) {
    if (ALL_KEYS.includes(key) && !OWN.includes(key)) keys[key] = value;
    else problems.push(unknownDefault(key, yaml));
  }
  return { folder, keys, yaml };
}

function unknownDefault(key: string, yaml: PositionedYaml): Diagnostic {
  const [near] = nearest(key, ALL_KEYS, 1);
  return {
    code: 'unknown-key',
    severity: 'error',
    place: yaml.placeOfKey([key]),
    message: OWN.includes(key)
      ? phrase('"{0}" cannot be lent to a whole folder', key)
      : phrase('"{0}" is no key of any entry', key),
    mend: near && !OWN.includes(key) ? phrase('did you mean "{0}"?', near) : phrase('delete the line'),
  };
}

/** An entry's keys with those that its folders lend, the nearest folder first; own keys win. */
export function withDefaults(raw: RawEntry, all: readonly Defaults[]): RawEntry {
  const schema = ENTRY_SCHEMAS[raw.keys.type as EntryType];
  if (!schema) return raw;
  const above = all.filter((one) => raw.file.startsWith(one.folder)).sort((a, b) => b.folder.length - a.folder.length);
  const lenders = new Map<string, Defaults>();
  const keys: Record<string, unknown> = { ...raw.keys };
  for (const lender of above) {
    for (const [key, value] of Object.entries(lender.keys)) {
      if (!(key in schema.shape) || key in keys) continue;
      keys[key] = value;
      lenders.set(key, lender);
    }
  }
  const placesFor = (path: KeyPath) => lenders.get(String(path[0]))?.yaml ?? raw.places;
  return {
    ...raw,
    keys,
    places: {
      placeOfKey: (path) => placesFor(path).placeOfKey(path),
      placeOfValue: (path) => placesFor(path).placeOfValue(path),
      sourceOf: (path) => placesFor(path).sourceOf(path),
    },
  };
}
