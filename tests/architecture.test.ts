import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { ROOT } from './workspace.ts';

/** Which folders of src a folder may import from; arrows point one way (DEVELOPERS.md has the same table). */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  base: [],
  language: [],
  reference: [],
  dates: ['base'],
  chronology: ['base'],
  geometry: ['base'],
  physical: ['base', 'language', 'geometry', 'model', 'reference'],
  model: ['base', 'dates'],
  reading: ['base', 'dates', 'model', 'geometry'],
  statements: ['base', 'language', 'dates', 'model', 'chronology', 'reference'],
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
  exchange: ['base', 'dates', 'model', 'statements', 'findings', 'physical', 'geometry', 'publish'],
  publish: ['base', 'language', 'dates', 'model', 'chronology', 'statements', 'findings', 'physical', 'geometry'],
};

/** Outside these only the thin shell (cli, site) and pipeline.ts stand. */
const files = sourceFiles('src').filter(({ file }) => file.endsWith('.ts'));

/** Code below a folder, by its path from there. */
function sourceFiles(folder: string): readonly { readonly file: string; readonly text: string }[] {
  return readdirSync(path.join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.tsx?$/.test(file))
    .map((file) => ({ file: file.replaceAll('\\', '/'), text: readFileSync(path.join(ROOT, folder, file), 'utf8') }));
}

const imports = files.flatMap(({ file, text }) =>
  [...text.matchAll(/from '([^']+)'|import\('([^']+)'\)/g)].map(([, a, b]) => ({ file, target: (a ?? b) as string })),
);

it('saw the files', () => {
  expect(files.length).toBeGreaterThan(80);
  expect(imports.length).toBeGreaterThan(300);
  for (const folder of Object.keys(MAY_IMPORT))
    expect(files.some(({ file }) => file.startsWith(`${folder}/`)) || folder === 'reference', folder).toBe(true);
});

it('arrows between the folders point one way', () => {
  const wrong = imports.flatMap(({ file, target }) => {
    const folder = file.split('/')[0] as string;
    const allowed = MAY_IMPORT[folder];
    if (!allowed || !target.startsWith('.')) return [];
    const into = path.posix.normalize(path.posix.join(path.posix.dirname(file), target)).split('/')[0] as string;
    return into === folder || allowed.includes(into) ? [] : [`${file} imports ${target}`];
  });
  expect(wrong).toEqual([]);
});

it('the chronology imports nothing but base, no package either, so that it runs in a browser', () => {
  const packages = imports.filter(({ file, target }) => file.startsWith('chronology/') && !target.startsWith('.'));
  expect(packages).toEqual([]);
});

it('only the commands and the site touch the machine', () => {
  const wrong = imports.filter(({ file, target }) => target.startsWith('node:') && !file.startsWith('cli/'));
  expect(wrong).toEqual([]);
  const clocks = files.filter(
    ({ file, text }) => !file.startsWith('cli/') && /new Date\(|Date\.now|process\.|console\./.test(text),
  );
  expect(clocks.map(({ file }) => file)).toEqual([]);
});

it('the text below the keys of an entry is read for three pages only, or pages would be kept that it changes', () => {
  // src/cli/kept-pages.ts: the page of the entry, the search, the opening page; and the catalogue, whose links count as keys.
  const site = sourceFiles('site').map((one) => ({ ...one, file: `site/${one.file}` }));
  const readers = [...files, ...site].filter(
    ({ file, text }) =>
      !/^(reading|model|cli)\//.test(file) && /\.argument\b|\{[^}\n]*\bargument\b[^}\n]*\}/.test(text),
  );
  expect(readers.map(({ file }) => file).sort()).toEqual([
    'publish/search-data.ts',
    'site/pages/entry-page.tsx',
    'site/pages/opening-page.tsx',
  ]);
  const callers = [...files, ...site].filter(({ text }) => /searchRows\(/.test(text)).map(({ file }) => file);
  expect(callers.sort()).toEqual(['publish/search-data.ts', 'site/pages/search-page.tsx']);
});

it('no file has grown past 320 lines', () => {
  // The French texts are a list of words, not code.
  const code = files.filter(({ file }) => !/^language\/fr(-terms)?\.ts$/.test(file));
  expect(code.filter(({ text }) => text.split('\n').length > 320).map(({ file }) => file)).toEqual([]);
});
