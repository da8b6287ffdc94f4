import { createHash } from 'node:crypto';
import { rmSync } from 'node:fs';
import { mkdtemp, readFile, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { SiteData } from '../../site/context.ts';
import { plainPages, reportPagesAt, type SitePage } from '../../site/pages.tsx';
import { oncePer, oncePerBoth } from '../base/once.ts';
import type { Computed } from '../pipeline.ts';
import { panelPath } from '../publish/page-paths.ts';
import { PicturesOnDemand } from './pictures-on-demand.ts';
import type { Session } from './session.ts';
import { writeAssets } from './site-assets.ts';
import { flatDataOf, putPictures, type SiteJob, withLayers } from './write-site.ts';

/** What is shown: the data of the pages, without the layouts of layers, and what is kept from before. */
interface Shown {
  readonly data: SiteData;
  readonly session: Session;
}

/**
 * The site as a preview shows it: pages and pictures are made when they are asked for, out of what the entries were computed
 * to, so that the first page stands as soon as that is done. Nothing is written beside the entries. Nothing is kept from
 * before a change but what the change cannot touch: texts that were parsed, entries that were read, pictures.
 */
export class PreviewSite {
  readonly #home: string;
  readonly #pictures: PicturesOnDemand;
  #shown: Shown | null = null;

  private constructor(home: string) {
    this.#home = home;
    this.#pictures = new PicturesOnDemand(path.join(home, 'pictures'));
  }

  /** Opens a site without pages, with its styles, scripts and faces in a folder for the time of the preview. */
  static async open(): Promise<PreviewSite> {
    const home = await mkdtemp(path.join(tmpdir(), 'kerfmark-preview-'));
    await writeAssets(home);
    return new PreviewSite(home);
  }

  /** Takes over what was computed; returns the number of pages, reports left out. */
  async update(job: Omit<SiteJob, 'output'>): Promise<number> {
    const { session } = job;
    const key = await pictureKey(job.computed, job.folder);
    if (session.pictures?.key !== key)
      session.pictures = { key, made: await this.#pictures.replace((store) => putPictures(job, store)) };
    const data = { ...(await flatDataOf(job, session.pictures.made)), layers: new Map() };
    this.#shown = { data, session };
    return pagesByAddress(data).size;
  }

  /** What stands at an address: a page, a picture, a style; null where nothing does. */
  async find(address: string): Promise<string | Buffer | null> {
    const page = this.#shown && (await pageText(this.#shown, address));
    if (page !== null) return page;
    const isAsset = address.startsWith('assets/') && path.posix.normalize(address) === address;
    const file = isAsset ? path.join(this.#home, address) : await this.#pictures.find(address);
    return file === null ? null : readFile(file).catch(() => null);
  }

  /** Takes the folder away. */
  close(): void {
    rmSync(this.#home, { recursive: true, force: true });
  }
}

/** Pages by their addresses, all but the reports. */
const pagesByAddress = oncePer(
  (data: SiteData): ReadonlyMap<string, SitePage> => new Map(plainPages(data).map((page) => [page.path, page])),
);

/** The text of a page, made when it is first asked for, the layers of a panel laid out for its own page; null where there is none. */
const pageText = oncePerBoth(async ({ data, session }: Shown, address: string): Promise<string | null> => {
  const isPanel = data.file.physical.panels.some(
    ({ geometry }) => panelPath(geometry.object.id, geometry.panel) === address,
  );
  const whole = isPanel ? await withLayers(data, session, (one) => one === address) : data;
  const page = pagesByAddress(whole).get(address) ?? reportPagesAt(whole, address).find((one) => one.path === address);
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
