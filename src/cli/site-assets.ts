import { cp, mkdir, readFile, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import path from 'node:path';
import { packageRoot } from './package-root.ts';

/** Styles, scripts and faces of a site. */
export async function writeAssets(output: string): Promise<void> {
  const assets = path.join(output, 'assets');
  await mkdir(path.join(assets, 'fonts'), { recursive: true });
  const styles = path.join(packageRoot(), 'site', 'styles');
  await cp(path.join(styles, 'kerfmark.css'), path.join(assets, 'kerfmark.css'));
  await cp(path.join(styles, 'plan.css'), path.join(assets, 'plan.css'));
  await cp(path.join(styles, 'drawings.css'), path.join(assets, 'drawings.css'));
  await cp(path.join(styles, 'mark.svg'), path.join(assets, 'mark.svg'));
  await cp(path.join(packageRoot(), 'dist', 'scripts'), assets, { recursive: true });
  await writeFonts(path.join(assets, 'fonts'));
}

const FACES = [
  ['@fontsource/source-serif-4', ['400', '400-italic', '600']],
  ['@fontsource/source-sans-3', ['400', '400-italic', '600']],
] as const;

/** Copies the faces out of their packages: Latin, Greek and Cyrillic, woff2 only. */
async function writeFonts(folder: string): Promise<void> {
  const require = createRequire(import.meta.url);
  const sheets: string[] = [];
  for (const [name, weights] of FACES) {
    const root = path.dirname(require.resolve(`${name}/package.json`));
    for (const weight of weights) {
      const css = await readFile(path.join(root, `${weight}.css`), 'utf8');
      sheets.push(
        css.replace(
          /url\(\.\/files\/([\w-]+\.woff2)\) format\('woff2'\), url\([^)]*\) format\('woff'\)/g,
          "url($1) format('woff2')",
        ),
      );
      for (const [, file] of css.matchAll(/files\/([\w-]+\.woff2)/g)) {
        await cp(path.join(root, 'files', file as string), path.join(folder, file as string));
      }
    }
  }
  await writeFile(path.join(folder, 'fonts.css'), sheets.join('\n'));
}
