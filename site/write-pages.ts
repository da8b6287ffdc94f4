import { mkdir, mkdtemp, rm, stat } from 'node:fs/promises';
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
  const lengths = new Map<string, number>();
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
            const text = renderPage(byPath, address);
            lengths.set(address, Buffer.byteLength(text));
            return text;
          },
        });
      },
    });
    eleventy.disableLogger();
    await eleventy.write();
  } finally {
    await rm(input, { recursive: true, force: true });
  }
  await assertWritten(lengths, byPath.size, output);
}

function renderPage(byPath: ReadonlyMap<string, SitePage>, address: string): string {
  try {
    return byPath.get(address)?.render() ?? '';
  } catch (error) {
    throw new Error(`The page ${address} could not be made: ${(error as Error).message}`, { cause: error });
  }
}

/** Every page is there, as long as it was rendered. */
async function assertWritten(lengths: ReadonlyMap<string, number>, pages: number, output: string): Promise<void> {
  if (lengths.size !== pages) throw new Error(`Of ${pages} pages ${lengths.size} were rendered`);
  const list = [...lengths];
  for (let i = 0; i < list.length; i += 64)
    await Promise.all(
      list.slice(i, i + 64).map(async ([address, length]) => {
        const found = await stat(path.join(output, address)).catch(() => null);
        if (length === 0 || found?.size !== length) throw new Error(`The page ${address} was not written whole`);
      }),
    );
}
