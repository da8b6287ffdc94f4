import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { ENTRY_SCHEMAS } from '../../src/model/entry.ts';
import { ROOT } from '../workspace.ts';

interface Schema {
  readonly def: {
    readonly shape?: Readonly<Record<string, Schema>>;
    readonly innerType?: Schema;
    readonly out?: Schema;
    readonly element?: Schema;
    readonly valueType?: Schema;
    readonly options?: readonly Schema[];
  };
}

/** Every key of a type, however deep, with the types and paths under which it stands. */
function keysOfTypes(): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, string[]>();
  const walk = ({ def }: Schema, at: string): void => {
    for (const [key, inner] of Object.entries(def.shape ?? {})) {
      found.set(key, [...(found.get(key) ?? []), `${at}.${key}`]);
      walk(inner, `${at}.${key}`);
    }
    for (const inner of [def.innerType, def.out, def.element, def.valueType, ...(def.options ?? [])])
      if (inner) walk(inner, at);
  };
  for (const [type, schema] of Object.entries(ENTRY_SCHEMAS)) walk(schema as unknown as Schema, type);
  return found;
}

/** Files in which keys are declared, named for people or carried on as they stand: a key in them alone is read by nothing. */
const CARRYING = /^src\/(?:model\/types\/|model\/template-texts|exchange\/table-entries|cli\/new-entry|language\/)/;

/** The program without its comments and without lists of keys. */
function programTexts(): readonly (readonly [string, string])[] {
  return ['src', 'site'].flatMap((folder) =>
    (readdirSync(path.join(ROOT, folder), { recursive: true }) as string[])
      .map((name) => `${folder}/${name}`)
      .filter((name) => /\.tsx?$/.test(name) && !CARRYING.test(name))
      .map((name): readonly [string, string] => {
        const text = readFileSync(path.join(ROOT, name), 'utf8');
        return [name, text.replace(/\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm, '')];
      }),
  );
}

/** True where a text reads a key by its name: `keys.due`, `keys['agreed-with']`, `{ due }` taken out of something. */
function reads(text: string, key: string): boolean {
  if (
    text.includes(`['${key}']`) ||
    text.includes(`('${key}')`) ||
    text.includes(`'${key}':`) ||
    text.includes(`.keys.${key}`)
  )
    return true;
  if (!/^\w+$/.test(key)) return false;
  return new RegExp(`[.?]\\.?${key}\\b(?!\\()|[{,]\\s*${key}\\s*(?:[,}]|:\\s*\\w+\\s*[,}])`).test(text);
}

it('every key of every type is read by name somewhere: a check, a computation or a document', () => {
  const texts = programTexts();
  const dead = [...keysOfTypes()].filter(([key]) => !texts.some(([, text]) => reads(text, key)));
  expect(dead.map(([key, places]) => `${key}: ${places.join(', ')}`)).toEqual([]);
});

it('finds a key that nothing reads', () => {
  const [texts, planted] = [programTexts(), 'never-read-by-anything'];
  expect(texts.length).toBeGreaterThan(200);
  expect(texts.some(([, text]) => reads(text, planted))).toBe(false);
  expect(reads("const due = keys['never-read-by-anything'];", planted)).toBe(true);
});
