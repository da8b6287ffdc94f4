import { type Document, isMap, isScalar, isSeq, type Node, parseDocument, type YAMLError } from 'yaml';
import type { Diagnostic } from '../base/diagnostic.ts';
import { oncePerName } from '../base/once.ts';
import type { Place } from '../base/place.ts';
import { phrase } from '../base/said.ts';
import type { KeyPath } from '../model/entry.ts';
import type { Places } from './schema-problems.ts';
import { lineStarts, positionAt } from './text-file.ts';
import { COMMENT_IN_TEXT, yamlProblem } from './yaml-problems.ts';

/** YAML as data: what only the text decides. Places name no file. */
export interface YamlData {
  /** The data: numbers stay text as written; only true, false and null are converted. */
  readonly data: unknown;
  readonly problems: readonly Diagnostic[];
}

/** YAML as data, with the place of every key and value. */
export interface PositionedYaml extends YamlData, Places {}

/** Reads YAML 1.2 out of a file: the stretch of `fileText` from `from` to `to`. */
export function readYaml(file: string, fileText: string, from: number, to: number): PositionedYaml {
  const { data, problems } = parseYaml(fileText, from, to);
  return { data, problems: inFile(problems, file), ...placesIn(file, fileText, from, to) };
}

/** Parses the stretch of a text from `from` to `to`. Nothing is evaluated, aliases cannot explode, and every problem is collected. */
export function parseYaml(fileText: string, from: number, to: number): YamlData {
  const text = fileText.slice(from, to);
  const placeAt = placesOf('', fileText, from);
  const document = documentOf(text);
  const problems = [...document.errors, ...document.warnings].map((error: YAMLError) =>
    yamlProblem(error, text, placeAt),
  );
  const cut = swallowedText(text).map((offset) => ({
    ...COMMENT_IN_TEXT,
    severity: 'error' as const,
    place: placeAt(offset),
  }));
  const told = cut.length > 0 ? cut : distinct(problems);
  return { data: cut.length > 0 ? null : dataOf(document, told as Diagnostic[], placeAt(0)), problems: told };
}

/** Problems of a text, told of a file that holds it. */
export function inFile(problems: readonly Diagnostic[], file: string): readonly Diagnostic[] {
  return problems.map((one) => ({ ...one, place: { ...one.place, file } }));
}

/**
 * Where keys and values stand. The text is parsed for that only when somebody asks, since most entries are never
 * complained of, and the trees of a large file take much memory.
 */
export function placesIn(file: string, fileText: string, from: number, to: number): Places {
  const text = fileText.slice(from, to);
  const placeAt = placesOf(file, fileText, from);
  // Let go of when nobody asks any more: one asks about an entry several times in a row, and about most never.
  let document: WeakRef<Document> | null = null;
  const parsed = (): Document => {
    const before = document?.deref();
    if (before) return before;
    const fresh = documentOf(text);
    document = new WeakRef(fresh);
    return fresh;
  };
  const known = oncePerName((name: string): Place => {
    const [what, path] = JSON.parse(name) as ['key' | 'value', KeyPath];
    return placeAt(nearestOffset(parsed(), path, what));
  });
  const placeOf = (path: KeyPath, what: 'key' | 'value'): Place => known(JSON.stringify([what, path]));
  return {
    placeOfValue: (path) => placeOf(path, 'value'),
    placeOfKey: (path) => placeOf(path, 'key'),
    sourceOf: (path) => {
      const range = findNode(parsed(), path)?.node?.range;
      return range ? text.slice(range[0], range[1]) : null;
    },
  };
}

function placesOf(file: string, fileText: string, from: number): (offset: number) => Place {
  let starts: readonly number[] | null = null;
  return (offset) => {
    starts ??= lineStarts(fileText);
    return { file, ...positionAt(starts, from + offset) };
  };
}

function documentOf(text: string): Document {
  return parseDocument(text, {
    version: '1.2',
    schema: 'core',
    prettyErrors: false,
    customTags: (tags) => tags.filter((tag) => typeof tag === 'string' || !/:(int|float)$/.test(tag.tag ?? '')),
  });
}

/** The same slip on the same line is told once. */
function distinct(problems: readonly Diagnostic[]): Diagnostic[] {
  return [...new Map(problems.map((one) => [`${one.code} ${one.place.line}`, one])).values()];
}

/** Offsets of ` #3` and the like, which YAML takes for a comment, so that the rest of the text would be lost. */
function swallowedText(text: string): readonly number[] {
  const found: number[] = [];
  for (const match of text.matchAll(/^[^\n]*$/gm)) {
    const bare = match[0].replace(/"(?:[^"\\]|\\.)*"|'[^']*'/g, (quoted) => 'x'.repeat(quoted.length));
    const hash = bare.search(/\S #[^\s#]/);
    if (hash !== -1 && !/^\s*#/.test(bare) && !/\s#\s/.test(bare.slice(0, hash))) found.push(match.index + hash + 2);
  }
  return found;
}

function dataOf(document: Document, problems: Diagnostic[], place: Place): unknown {
  if (document.errors.length > 0) return null;
  try {
    return document.toJS({ maxAliasCount: 20 });
  } catch {
    problems.push({
      code: 'yaml-aliases',
      severity: 'error',
      place,
      message: phrase('this entry uses so many aliases (*name) that it cannot be read safely'),
      mend: phrase('write the values out'),
    });
    return null;
  }
}

interface Found {
  readonly node: Node | null;
  readonly keyOffset: number | null;
}

function findNode(document: Document, path: KeyPath): Found | null {
  let node: Node | null = document.contents as Node | null;
  let keyOffset: number | null = null;
  for (const key of path) {
    // A list of one may be written without its brackets.
    if (key === 0 && node !== null && !isSeq(node)) continue;
    if (isMap(node)) {
      const pair = node.items.find((item) => isScalar(item.key) && String(item.key.value) === String(key));
      if (!pair) return null;
      keyOffset = (pair.key as Node).range?.[0] ?? null;
      node = pair.value as Node | null;
    } else if (isSeq(node)) {
      const item = node.items[Number(key)] as Node | undefined;
      if (!item) return null;
      keyOffset = item.range?.[0] ?? null;
      node = item;
    } else return null;
  }
  return { node, keyOffset };
}

function nearestOffset(document: Document, path: KeyPath, what: 'key' | 'value'): number {
  for (let length = path.length; length > 0; length -= 1) {
    const found = findNode(document, path.slice(0, length));
    if (!found) continue;
    const exact = length === path.length;
    const valueOffset = isScalar(found.node) || what === 'value' ? found.node?.range?.[0] : undefined;
    if (exact && what === 'value' && valueOffset !== undefined) return valueOffset;
    if (found.keyOffset !== null) return found.keyOffset;
  }
  return 0;
}
