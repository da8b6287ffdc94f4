import { mkdir, mkdtemp, readFile, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { SitePage } from './pages.tsx';

/**
 * Writes pages through Eleventy: one virtual template, paginated over the addresses. The input
 * folder is empty and its own, so no configuration, ignore file or stray page of the reader's
 * folder is picked up. `onPage` is called for every page. Fails where a page is missing or empty, which Eleventy would not report.
 */
export async function writePages(pages: readonly SitePage[], output: string, onPage: () => void): Promise<void> {
  const { default: Eleventy } = await import('@11ty/eleventy');
  const byPath = new Map(pages.map((page) => [page.path, page]));
  await mkdir(output, { recursive: true });
  const input = await mkdtemp(path.join(tmpdir(), 'kerfmark-input-'));
  const fromHere = (folder: string): string => path.relative(process.cwd(), folder) || '.';
  try {
    const eleventy = new Eleventy(fromHere(input), fromHere(output), {
      configPath: false,
      loader: 'esm',
      quietMode: true,
      source: 'cli',
      config(configuration) {
        configuration.setUseGitIgnore(false);
        configuration.setTemplateFormats(['11ty.js']);
        configuration.addGlobalData('addresses', [...byPath.keys()]);
        configuration.addTemplate('page.11ty.js', {
          data: {
            pagination: { data: 'addresses', size: 1, alias: 'path' },
            permalink: (data: { readonly path: string }) => data.path,
            eleventyExcludeFromCollections: true,
          },
          render: ({ path: address }) => {
            onPage();
            return renderPage(byPath, address);
          },
        });
      },
    });
    eleventy.disableLogger();
    await eleventy.write();
  } finally {
    await rm(input, { recursive: true, force: true });
  }
  await assertWritten(pages, output);
}

function renderPage(byPath: ReadonlyMap<string, SitePage>, address: string): string {
  try {
    return byPath.get(address)?.render() ?? '';
  } catch (error) {
    throw new Error(`The page ${address} could not be made: ${(error as Error).message}`, { cause: error });
  }
}

async function assertWritten(pages: readonly SitePage[], output: string): Promise<void> {
  for (const page of pages) {
    const file = path.join(output, page.path);
    const size = (await stat(file).catch(() => null))?.size ?? 0;
    const whole =
      size > 0 && (!page.path.endsWith('.html') || (await readFile(file, 'utf8')).trimEnd().endsWith('</html>'));
    if (!whole) throw new Error(`The page ${page.path} was not written whole`);
  }
}
