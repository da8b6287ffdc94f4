// Makes dist/ out of src and site: the program as one split bundle for Node, and the scripts of the pages for browsers.
import { chmod, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..');
const dist = path.join(root, 'dist');
const entryPoints = (names) => names.map((name) => path.join(root, name));

/** Packages with parts of another kind than JavaScript, or that look for files beside themselves. */
const LEFT_OUT = ['@11ty/eleventy', '@myriaddreamin/typst-ts-node-compiler', '@resvg/resvg-js', 'sharp'];

/** Packages written for CommonJS ask for parts of Node in their own way, which a module does not know by itself. */
const REQUIRE =
  "import { createRequire as requireOfModule } from 'node:module';\nconst require = requireOfModule(import.meta.url);";

const common = {
  bundle: true,
  metafile: true,
  absWorkingDir: root,
  logLevel: 'warning',
  jsx: 'automatic',
  jsxImportSource: 'preact',
};

await rm(dist, { recursive: true, force: true });
const program = await build({
  ...common,
  entryPoints: entryPoints(['src/cli/main.ts', 'src/cli/parse-thread.ts']),
  outdir: dist,
  entryNames: '[name]',
  chunkNames: 'parts/[name]-[hash]',
  splitting: true,
  format: 'esm',
  platform: 'node',
  target: 'node20.19',
  external: LEFT_OUT,
  banner: { js: REQUIRE },
});
const scripts = await build({
  ...common,
  entryPoints: entryPoints(
    ['registers.ts', 'trial.tsx', 'tracing.ts', 'compare.ts', 'close.ts', 'search.ts'].map(
      (one) => `site/scripts/${one}`,
    ),
  ),
  outdir: path.join(dist, 'scripts'),
  minify: true,
  format: 'iife',
  target: 'es2022',
});
await chmod(path.join(dist, 'main.js'), 0o755);
await writeFile(path.join(dist, 'licences.txt'), await licencesOf([program, scripts]));

/** The licences of all packages of which something stands in the bundles, which they ask to be kept with it. */
async function licencesOf(made) {
  const inputs = made.flatMap(({ metafile }) => Object.keys(metafile.inputs));
  const packages = new Set(
    inputs.flatMap((file) => /^(?:.*\/)?node_modules\/(?:@[^/]+\/)?[^/]+/.exec(file)?.[0] ?? []),
  );
  const texts = await Promise.all(
    [...packages].sort().map(async (folder) => {
      const { name, version, license, licenses } = JSON.parse(
        await readFile(path.join(root, folder, 'package.json'), 'utf8'),
      );
      const files = (await readdir(path.join(root, folder))).filter((one) => /^(licen[cs]e|notice)/i.test(one)).sort();
      const words = await Promise.all(files.map((one) => readFile(path.join(root, folder, one), 'utf8')));
      return `${name} ${version} (${license ?? licenses?.[0]?.type})\n\n${words.join('\n')}`;
    }),
  );
  return texts.join(`\n${'-'.repeat(80)}\n\n`);
}
