import type { CaseFile } from '../findings/case-file.ts';
import { dossierOf } from '../findings/dossier.ts';

/** Which part of a site is written: the pages of some objects, those of the whole file, or all. */
export type SitePart = { readonly objects: readonly string[] } | 'whole file' | 'all';

/** Folders of a site of which each page belongs to one entry, named by its id. */
const BY_ENTRY = /^(?:entry|why|answer|close|tracing|iiif)\/(.+)\.(?:html|json)$/;

/** Folders of which each page belongs to an object, whose id its name begins with. */
const BY_OBJECT = /^(?:panel|plate|report)\/(.+)$/;

/**
 * True for the pages of a part. Everything is computed of the whole file first, so that a page is the same bytes in
 * whichever part it stands; a page that bears on several objects stands in the part of each. The parts of all objects
 * and the part of the whole file together are the whole site.
 */
export function pageFilter(file: CaseFile, part: SitePart): (address: string) => boolean {
  if (part === 'all') return () => true;
  const everywhere = file.catalogue.ofType('object').map((one) => one.id);
  const objects = part === 'whole file' ? everywhere : part.objects;
  const bearing = new Set(objects.flatMap((id) => [...dossierOf(file, id)]));
  const ofObjects = (address: string): boolean => {
    const entry = BY_ENTRY.exec(address)?.[1];
    if (entry !== undefined) return bearing.has(entry);
    const name = BY_OBJECT.exec(address)?.[1];
    return name !== undefined && objects.some((id) => name.startsWith(`${id}-`));
  };
  return part === 'whole file' ? (address) => !ofObjects(address) : ofObjects;
}
