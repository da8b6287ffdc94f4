import { createHash } from 'node:crypto';
import { stat } from 'node:fs/promises';
import path from 'node:path';
import type { SiteData } from '../../site/context.ts';
import { plainPages, reportPagesAt, type SitePage } from '../../site/pages.tsx';
import { oncePer, oncePerBoth } from '../base/once.ts';
import type { Computed } from '../pipeline.ts';
import { type SiteJob, siteDataOf, writeSite } from './write-site.ts';

/**
 * The site as a preview shows it. The first time it is written whole; after that, as long as no picture changed, its
 * pages are made when they are asked for, out of what the changed entries were computed to. Nothing is kept from before
 * a change but what the change cannot touch: texts that were parsed, entries that were read, pictures.
 */
export class PreviewSite {
  #data: SiteData | null = null;
  /** Addresses in the folder, drawings and data included. */
  #written: ReadonlySet<string> = new Set();
  #isAhead = false;

  /** True where the pages shown are newer than those in the folder. */
  get isAhead(): boolean {
    return this.#isAhead;
  }

  /** Takes over what was computed; returns the number of pages written, null where they wait until somebody asks for them. */
  async update(job: SiteJob): Promise<number | null> {
    const key = await pictureKey(job.computed, job.folder);
    const { session } = job;
    if (session.pictures?.key !== key) {
      const { data, addresses } = await writeSite(job);
      const { pictures, scales, plans, tiles } = data;
      session.pictures = { key, made: { pictures, scales, plans, tiles } };
      this.#isAhead = false;
      this.#written = new Set(addresses);
      return addresses.length;
    }
    this.#data = await siteDataOf(job, session.pictures.made);
    this.#isAhead = true;
    return null;
  }

  /** A page as it is now; null where it is to be read from the folder, and `gone` where the folder holds an older one. */
  page(address: string): string | 'gone' | null {
    if (!this.#isAhead || !this.#data) return null;
    const text = pageText(this.#data, address);
    if (text !== null) return text;
    // The folder is older: what it holds of pages, drawings and data may have been taken away since, or is not to be seen any more.
    return address.endsWith('.html') || this.#written.has(address) ? 'gone' : null;
  }
}

/** Pages by their addresses, all but the reports. */
const pagesByAddress = oncePer(
  (data: SiteData): ReadonlyMap<string, SitePage> => new Map(plainPages(data).map((page) => [page.path, page])),
);

/** The text of a page of a site, made when it is first asked for; null where there is none. */
const pageText = oncePerBoth((data: SiteData, address: string): string | null => {
  const page = pagesByAddress(data).get(address) ?? reportPagesAt(data, address).find((one) => one.path === address);
  return page?.render() ?? null;
});

/** Changes whenever some picture of the site might be another one: figures, the frames that they are laid into, the files. */
async function pictureKey({ file }: Computed, folder: string): Promise<string> {
  const hash = createHash('sha256');
  const add = (value: unknown): void => {
    hash.update(`${JSON.stringify(value)}\n`);
  };
  add(file.catalogue.workspace?.keys['base-url']);
  for (const object of file.catalogue.ofType('object')) add([object.id, object.keys.panels]);
  for (const figure of file.catalogue.ofType('figure')) {
    const found = await stat(path.join(folder, path.dirname(figure.file), figure.keys.file)).catch(() => null);
    add([figure.keys, figure.withheld, found?.size, found?.mtimeMs]);
  }
  return hash.digest('hex');
}
