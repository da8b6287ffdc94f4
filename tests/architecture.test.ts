import ts from 'typescript';
import { expect, it } from 'vitest';
import { moduleState } from './module-state.ts';
import { nodesOf, readProgram } from './program.ts';

/** Which folders of src a folder may import from; arrows point one way (DEVELOPERS.md has the same table). */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  base: [],
  language: ['base', 'dates'],
  reference: [],
  dates: ['base'],
  chronology: ['base'],
  geometry: ['base'],
  physical: ['base', 'language', 'geometry', 'model', 'reference'],
  model: ['base', 'dates'],
  reading: ['base', 'dates', 'language', 'model', 'geometry'],
  statements: ['base', 'language', 'dates', 'model', 'chronology', 'reference', 'custody'],
  findings: [
    'base',
    'language',
    'dates',
    'model',
    'chronology',
    'statements',
    'reference',
    'physical',
    'geometry',
    'custody',
  ],
  custody: ['base', 'language', 'dates', 'model', 'chronology'],
  reports: [
    'base',
    'language',
    'dates',
    'model',
    'chronology',
    'statements',
    'findings',
    'physical',
    'custody',
    'reference',
  ],
  typeset: ['base', 'language', 'reports'],
  letters: ['base', 'dates', 'language', 'model', 'statements', 'findings', 'reports'],
  exchange: [
    'base',
    'dates',
    'language',
    'model',
    'custody',
    'statements',
    'findings',
    'physical',
    'geometry',
    'publish',
  ],
  publish: ['base', 'language', 'dates', 'model', 'chronology', 'statements', 'findings', 'physical', 'geometry'],
};

const program = readProgram();

/** The folder of src that a file lies in; null for the files beside the folders, and for those of site. */
const folderOf = (file: string): string | null => /^src\/([^/]+)\//.exec(file)?.[1] ?? null;

const files = [...program.files].filter(([file]) => file.startsWith('src/'));

it('saw the files', () => {
  expect(files.length).toBeGreaterThan(80);
  expect(program.imports.length).toBeGreaterThan(300);
  for (const folder of Object.keys(MAY_IMPORT))
    expect(files.some(([file]) => folderOf(file) === folder) || folder === 'reference', folder).toBe(true);
});

it('arrows between the folders point one way', () => {
  const wrong = program.imports.flatMap(({ file, target }) => {
    const folder = folderOf(file);
    const allowed = folder === null ? undefined : MAY_IMPORT[folder];
    if (!allowed || !/^(src|site)\//.test(target)) return [];
    const into = folderOf(target) ?? target;
    return into === folder || allowed.includes(into) ? [] : [`${file} imports ${target}`];
  });
  expect(wrong).toEqual([]);
});

it('the chronology imports nothing but base, no package either, so that it runs in a browser', () => {
  const packages = program.imports.filter(
    ({ file, target }) => folderOf(file) === 'chronology' && !target.startsWith('src/'),
  );
  expect(packages).toEqual([]);
});

it('only the commands and the site touch the machine', () => {
  const inside = (file: string): boolean => file.startsWith('src/') && folderOf(file) !== 'cli';
  expect(program.imports.filter(({ file, target }) => target.startsWith('node:') && inside(file))).toEqual([]);
  const clocks = files.flatMap(([file, source]) =>
    [...nodesOf(source)]
      .filter((node) => inside(file) && ts.isIdentifier(node) && isOfMachine(node))
      .map((node) => `${file}: ${node.parent.getText(source)}`),
  );
  expect(clocks).toEqual([]);
});

/** `process`, `console`, `performance`, `fetch` of the machine; `Date` where it tells the time. */
function isOfMachine(node: ts.Identifier): boolean {
  if (!/^(process|console|performance|fetch|Date|globalThis|window)$/.test(node.text)) return false;
  const declared = program.checker.getSymbolAtLocation(node)?.declarations ?? [];
  if (!declared.some((one) => one.getSourceFile().isDeclarationFile)) return false;
  if (node.text !== 'Date') return true;
  const { parent } = node;
  if (ts.isNewExpression(parent)) return (parent.arguments ?? []).length === 0;
  return ts.isPropertyAccessExpression(parent) && parent.name.text === 'now';
}

it('no module remembers anything from one call to the next: that is what a session is for', () => {
  expect(moduleState(program)).toEqual([]);
});

it('the text below the keys of an entry is read for three pages only, or pages would be kept that it changes', () => {
  // src/cli/kept-pages.ts: the page of the entry, the search, the opening page; and the catalogue, whose links count as keys.
  const outside = [...program.files].filter(([file]) => !/^src\/(reading|model|cli)\//.test(file));
  const readers = outside.filter(([, source]) =>
    [...nodesOf(source)].some((node) => {
      if (ts.isPropertyAccessExpression(node))
        return node.name.text === 'argument' && isText(program.checker.getSymbolAtLocation(node.name));
      if (!ts.isBindingElement(node)) return false;
      const name = node.propertyName ?? node.name;
      return (
        ts.isIdentifier(name) &&
        name.text === 'argument' &&
        isText(program.checker.getTypeAtLocation(node.parent).getProperty('argument'))
      );
    }),
  );
  expect(readers.map(([file]) => file).sort()).toEqual([
    'site/pages/entry-page.tsx',
    'site/pages/opening-page.tsx',
    'src/publish/search-data.ts',
  ]);
  const callers = [...program.files].filter(([, source]) =>
    [...nodesOf(source)].some((node) => ts.isIdentifier(node) && node.text === 'searchRows'),
  );
  expect(callers.map(([file]) => file).sort()).toEqual(['site/pages/search-page.tsx', 'src/publish/search-data.ts']);
});

/** True for the key `argument` of an entry, whatever the value at hand is called. */
function isText(symbol: ts.Symbol | undefined): boolean {
  return (symbol?.declarations ?? []).some((one) => one.getSourceFile().fileName.endsWith('src/model/entry.ts'));
}

it('no file has grown past 320 lines', () => {
  // The French texts are a list of words, not code.
  const code = files.filter(([file]) => !/^src\/language\/fr(-terms)?\.ts$|\.json$/.test(file));
  expect(code.filter(([, { text }]) => text.split('\n').length > 320).map(([file]) => file)).toEqual([]);
});

/** Kinds of what is to be said that are data, not text. */
const VALUES = /^Said(?:Phrase|Term|Date|Number|List|Run|Capital)$/;

/** True where an expression may be a value that nobody has said yet, or a list of them. */
function isUnsaid(type: ts.Type, within = 0): boolean {
  if (type.isUnion()) return type.types.some((one) => isUnsaid(one, within));
  if (VALUES.test(type.symbol?.name ?? '')) return true;
  const [item] = program.checker.isArrayType(type) ? program.checker.getTypeArguments(type as ts.TypeReference) : [];
  return within === 0 && item !== undefined && isUnsaid(item, 1);
}

/** The expression that would be turned into text at a node: a child of an element, a part of a template, a sum, a join. */
function turnedToText(node: ts.Node): readonly ts.Expression[] {
  if (ts.isJsxExpression(node) && node.expression && (ts.isJsxElement(node.parent) || ts.isJsxFragment(node.parent)))
    return [node.expression];
  if (ts.isTemplateSpan(node)) return [node.expression];
  if (ts.isBinaryExpression(node) && node.operatorToken.kind === ts.SyntaxKind.PlusToken)
    return [node.left, node.right];
  if (!ts.isCallExpression(node)) return [];
  const called = node.expression;
  if (ts.isIdentifier(called) && called.text === 'String') return [...node.arguments];
  return ts.isPropertyAccessExpression(called) && called.name.text === 'join' ? [called.expression] : [];
}

/** Values compared as objects: two that say the same would differ. */
function comparedAsObjects(node: ts.Node): readonly ts.Expression[] {
  const equal = [ts.SyntaxKind.EqualsEqualsEqualsToken, ts.SyntaxKind.ExclamationEqualsEqualsToken];
  if (!ts.isBinaryExpression(node) || !equal.includes(node.operatorToken.kind)) return [];
  const both = [node.left, node.right];
  return both.every((one) => isUnsaid(program.checker.getTypeAtLocation(one))) ? both : [];
}

it('no value is put into a text, a page or a comparison before it is said', () => {
  let looked = 0;
  const faults = [...program.files].flatMap(([file, source]) =>
    // The comparison of what is said looks at the objects first.
    file === 'src/base/said.ts'
      ? []
      : [...nodesOf(source)].flatMap((node) => {
          const texts = turnedToText(node);
          looked += texts.length;
          const unsaid = texts.filter((one) => isUnsaid(program.checker.getTypeAtLocation(one)));
          return [...unsaid, ...comparedAsObjects(node)].map(
            (one) =>
              `${file}:${source.getLineAndCharacterOfPosition(one.getStart()).line + 1} ${one.getText().slice(0, 80)}`,
          );
        }),
  );
  expect(looked).toBeGreaterThan(1000);
  expect(faults).toEqual([]);
});
