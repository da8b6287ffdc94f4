import { cpSync, linkSync, mkdirSync, readFileSync, statSync } from 'node:fs';
import { mkdir, mkdtemp, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { SitePage } from './pages.tsx';

/**
 * Writes pages through Eleventy: one virtual template, paginated over the addresses. The input
 * folder is empty and its own, so no configuration, ignore file or stray page of the reader's
 * folder is picked up. A page that is the same as in the last site is not written a second time: it is linked, and keeps
 * its time of change; one that `isKept` is not even made. `onPage` is called for every page. Fails where a page is missing or empty, which Eleventy would not report.
 */
export async function writePages(
  pages: readonly SitePage[],
  output: string,
  lastSite: string,
  isKept: (address: string) => boolean,
  onPage: () => void,
): Promise<void> {
  const lengths = new Map<string, number>();
  await mkdir(output, { recursive: true });
  // Every run keeps the text of all its pages; a large site is written in several, so that memory stays bounded.
  for (let i = 0; i < pages.length; i += MOST_AT_ONCE) {
    const texts = new Map<string, string>();
    for (const page of pages.slice(i, i + MOST_AT_ONCE)) {
      onPage();
      const [from, to] = [path.join(lastSite, page.path), path.join(output, page.path)];
      if (isKept(page.path)) lengths.set(page.path, bringOver(from, to));
      else {
        const text = renderPage(page);
        lengths.set(page.path, Buffer.byteLength(text));
        if (!takenOver(text, from, to)) texts.set(page.path, text);
      }
      // A long row of pages must not keep the program from hearing a signal.
      if (lengths.size % 50 === 0) await new Promise(setImmediate);
    }
    if (texts.size > 0) await writeTexts(texts, output);
  }
  await assertWritten(lengths, new Set(pages.map((page) => page.path)).size, output);
}

/** Pages of one run. */
const MOST_AT_ONCE = 2000;

/** Brings a page of the last site into the new one, as a copy on a disk that knows no links; returns its length in bytes. */
function bringOver(from: string, to: string): number {
  try {
    linkPage(from, to);
  } catch {
    cpSync(from, to, { preserveTimestamps: true });
  }
  return statSync(to).size;
}

function linkPage(from: string, to: string): void {
  mkdirSync(path.dirname(to), { recursive: true });
  linkSync(from, to);
}

/** Links a page of the last site into the new one, where it is the same; false where it has to be written. */
function takenOver(text: string, from: string, to: string): boolean {
  try {
    if (readFileSync(from, 'utf8') !== text) return false;
    linkPage(from, to);
    return true;
  } catch {
    // No such page before, or a disk that knows no links.
    return false;
  }
}

async function writeTexts(texts: ReadonlyMap<string, string>, output: string): Promise<void> {
  const { default: Eleventy } = await import('@11ty/eleventy');
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
        configuration.addGlobalData('addresses', [...texts.keys()]);
        configuration.addTemplate('page.11ty.js', {
          data: {
            pagination: { data: 'addresses', size: 1, alias: 'path' },
            permalink: (data: { readonly path: string }) => data.path,
            eleventyExcludeFromCollections: true,
          },
          render: ({ path: address }) => texts.get(address) ?? '',
        });
      },
    });
    eleventy.disableLogger();
    await eleventy.write();
  } finally {
    await rm(input, { recursive: true, force: true });
  }
}

function renderPage(page: SitePage): string {
  try {
    return page.render();
  } catch (error) {
    throw new Error(`The page ${page.path} could not be made: ${(error as Error).message}`, { cause: error });
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
