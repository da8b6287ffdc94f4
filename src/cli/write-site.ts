import { mkdir, readdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import path from 'node:path';
import type { SiteData } from '../../site/context.ts';
import { sitePages } from '../../site/pages.tsx';
import { writePages } from '../../site/write-pages.ts';
import { phrase } from '../base/said.ts';
import type { CaseFile } from '../findings/case-file.ts';
import { findResting } from '../findings/resting.ts';
import { titleOf } from '../model/catalogue.ts';
import type { PanelFindings } from '../physical/panels.ts';
import type { Computed } from '../pipeline.ts';
import { type LayerDrawing, layOutLayers } from '../publish/layer-drawing.ts';
import { panelPath } from '../publish/page-paths.ts';
import type { Land } from '../publish/places-drawing.ts';
import { pageFilter, type SitePart } from '../publish/site-part.ts';
import type { Step } from './effects.ts';
import { Fault } from './fault.ts';
import { openKeptPages } from './kept-pages.ts';
import { packageRoot, packageVersion } from './package-root.ts';
import { openPictureStore, type PictureStore } from './picture-store.ts';
import type { Session } from './session.ts';
import { writeAssets } from './site-assets.ts';
import { writePictures } from './write-pictures.ts';
import { writePlanPictures } from './write-plan-pictures.ts';
import { writeTiles } from './write-tiles.ts';

/** File that marks a folder as a site of this program, so that no other folder is ever replaced. */
const MARKER = 'kerfmark-site.json';

/** What a site is written from, and where. */
export interface SiteJob {
  readonly computed: Computed;
  /** Folder that holds `entries/`. */
  readonly folder: string;
  readonly output: string;
  readonly built: string;
  readonly session: Session;
  /** True for a preview by who has the files: errors are shown, whomever the pages are for. */
  readonly preview?: boolean;
  /** Only some of its pages; all where nothing is said. */
  readonly part?: SitePart;
  progress?(step: Step): void;
}

/** A site that was written: the addresses of its pages, and what they were made from. */
export interface WrittenSite {
  readonly addresses: readonly string[];
  readonly data: SiteData;
}

/**
 * Writes a site beside the old one and puts it in its place only when it is whole. A build that
 * fails or is killed leaves the last good site.
 */
export async function writeSite(job: SiteJob): Promise<WrittenSite> {
  const { computed, folder, output, built, session, progress } = job;
  await recover(output);
  await refuseForeign(output);
  const fresh = `${output}.new-${process.pid}`;
  try {
    await makeFolder(fresh);
    const { file } = computed;
    const store = await openPictureStore(output, fresh);
    const made = await putPictures(job, store);
    await store.close();
    const flat = await flatDataOf(job, made);
    const asked = [JSON.stringify(job.part ?? 'all'), job.preview ? 'preview' : 'build'];
    const kept = await openKeptPages({ computed, folder, output, data: flat, asked });
    const isPart = pageFilter(file, job.part ?? 'all');
    const data = await withLayers(flat, session, (address) => isPart(address) && !kept.isKept(address));
    const pages = sitePages(data).filter((one) => isPart(one.path));
    let done = 0;
    await writePages(pages, fresh, output, kept.isKept, () => {
      done += 1;
      progress?.({ what: phrase('Pages'), done, all: pages.length });
    });
    await writeAssets(fresh);
    const marker = { format: 'kerfmark-site/1', built, audience: file.catalogue.audience, pages: pages.length };
    await writeFile(path.join(fresh, MARKER), `${JSON.stringify(marker, null, 1)}\n`);
    await exchange(fresh, output);
    const addresses = pages.map((page) => page.path);
    await kept.remember(addresses);
    return { addresses, data };
  } finally {
    await rm(fresh, { recursive: true, force: true });
  }
}

/** Makes a folder; on a disk that can only be read, making one says that there is no such folder, which helps nobody. */
async function makeFolder(folder: string): Promise<void> {
  await mkdir(path.dirname(folder), { recursive: true }).catch(() => undefined);
  await mkdir(folder).catch((error: NodeJS.ErrnoException) => {
    if (error.code !== 'EEXIST') throw error;
  });
}

/** Puts the pictures of a site into a store, and tells of them what its pages need. */
export async function putPictures(
  { computed: { file }, folder, progress }: Pick<SiteJob, 'computed' | 'folder' | 'progress'>,
  store: PictureStore,
): Promise<SitePictures> {
  const pictures = await writePictures(file, folder, store, progress);
  progress?.({ what: phrase('Laying the pictures on the panels') });
  const plans = await writePlanPictures(file, pictures, store);
  progress?.({ what: phrase('Cutting tiles') });
  const tiles = await writeTiles(pictures, file.catalogue.workspace?.keys['base-url'] ?? null, store);
  return {
    pictures: new Map([...pictures].map(([id, { address }]) => [id, address])),
    scales: new Map([...pictures].map(([id, { scale }]) => [id, scale])),
    plans,
    tiles,
  };
}

/** Pictures of a site as its pages need them. */
export type SitePictures = Pick<SiteData, 'pictures' | 'scales' | 'plans' | 'tiles'>;

/** What the pages are made from, without the layouts of layers, which take the longest. */
export async function flatDataOf(
  { computed, folder, built, preview = false }: Omit<SiteJob, 'output'>,
  pictures: SitePictures,
): Promise<Omit<SiteData, 'layers'>> {
  const { file, leftOut } = computed;
  const styles = path.join(packageRoot(), 'site', 'styles');
  return {
    ...pictures,
    file,
    fileFor: computed.fileFor,
    sent: computed.sent,
    built,
    version: await packageVersion(),
    problems: preview ? withErrors(computed) : computed.shownProblems,
    excerpts: preview ? await linesOfProblems(computed, folder) : null,
    errors: computed.errors.length,
    leftOut: preview || !file.catalogue.holdsMore ? leftOut : [],
    resting: findResting(file),
    land: await loadLand(file),
    planStyle: await readFile(path.join(styles, 'plan.css'), 'utf8'),
    drawingStyle: await readFile(path.join(styles, 'drawings.css'), 'utf8'),
  };
}

/** All errors, and the doubts that this audience may read. */
function withErrors({ errors, shownProblems }: Computed): SiteData['problems'] {
  return [...errors, ...shownProblems.filter((one) => one.severity !== 'error')];
}

/** Lines of every entry file with a problem, for the preview. */
async function linesOfProblems(
  { problems }: Computed,
  folder: string,
): Promise<ReadonlyMap<string, readonly string[]>> {
  const files = [...new Set(problems.map(({ place }) => place.file))].filter((file) => /\.(md|csv)$/.test(file));
  const read = async (file: string) => {
    const text = await readFile(path.join(folder, file), 'utf8').catch(() => '');
    return [file, text.split(/\r\n|\r|\n/)] as const;
  };
  return new Map(await Promise.all(files.map(read)));
}

/** Layouts that are kept beside those that were just used. */
const MOST_LAYOUTS = 64;

/** Lays out the layers of the panels whose pages are wanted; a preview asks for the same ones again. */
export async function withLayers(
  data: Omit<SiteData, 'layers'>,
  session: Session,
  isWanted: (address: string) => boolean,
): Promise<SiteData> {
  const { file } = data;
  const layers = new Map<string, LayerDrawing>();
  const used = new Map<string, LayerDrawing | null>();
  const titles = (id: string): string => {
    const entry = file.catalogue.get(id);
    return entry ? titleOf(entry, file.settings.languages) : id;
  };
  const layOut = async ({ geometry, layers: order }: PanelFindings): Promise<void> => {
    const key = JSON.stringify([order, order.boxes.flat().map(titles)]);
    const known = session.layouts.get(key);
    const drawing = known === undefined ? await layOutLayers(order, titles) : known;
    used.set(key, drawing);
    if (drawing) layers.set(pageOf(geometry), drawing);
  };
  const pageOf = ({ object, panel }: PanelFindings['geometry']): string => panelPath(object.id, panel);
  const panels = file.physical.panels.filter((one) => isWanted(pageOf(one.geometry)));
  for (let i = 0; i < panels.length; i += 16) await Promise.all(panels.slice(i, i + 16).map(layOut));
  session.layouts = new Map([...[...session.layouts].slice(-MOST_LAYOUTS), ...used]);
  return { ...data, layers };
}

/** Land at 1 : 50 million (Natural Earth, public domain); read only where a place can be drawn on it. */
async function loadLand(file: CaseFile): Promise<Land | null> {
  if (!file.catalogue.ofType('place').some((one) => one.keys.coordinates)) return null;
  const found = createRequire(import.meta.url).resolve('world-atlas/land-50m.json');
  return JSON.parse(await readFile(found, 'utf8')) as Land;
}

/** Two renames; should the program be killed between them, `recover` puts the old site back. */
async function exchange(fresh: string, output: string): Promise<void> {
  const old = previousOf(output);
  await rm(old, { recursive: true, force: true });
  if (await exists(output)) await rename(output, old);
  await rename(fresh, output);
  await rm(old, { recursive: true, force: true });
}

/** Puts the last good site back where a killed build left it aside. */
async function recover(output: string): Promise<void> {
  const old = previousOf(output);
  if ((await exists(old)) && !(await exists(output))) await rename(old, output);
  const parent = path.dirname(output);
  const names = await readdir(parent).catch(() => []);
  for (const name of names) {
    const left = /\.new-(\d+)$/.exec(name);
    if (left && name.startsWith(path.basename(output)) && !isRunning(Number(left[1]))) {
      await rm(path.join(parent, name), { recursive: true, force: true });
    }
  }
}

function previousOf(output: string): string {
  return `${output}.previous`;
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
}

async function refuseForeign(output: string): Promise<void> {
  const names = await readdir(output).catch(() => null);
  if (names === null || names.length === 0 || names.includes(MARKER)) return;
  throw new Fault(
    phrase(
      '{0} holds files that are no site of this program, so it is not replaced.\nName another folder with --out FOLDER.',
      output,
    ),
  );
}

async function exists(file: string): Promise<boolean> {
  return (await stat(file).catch(() => null)) !== null;
}
