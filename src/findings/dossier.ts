import { oncePerBoth } from '../base/once.ts';
import type { CaseFile } from './case-file.ts';

/**
 * Entries that bear on an object: itself, what names it or a part of it, what those link to or are named by, and what
 * these in turn rest on. A file of many objects tells of each from its own dossier.
 */
export const dossierOf = oncePerBoth(({ catalogue }: CaseFile, object: string): ReadonlySet<string> => {
  const core = [object, ...catalogue.namingObject(object).map((one) => one.id)];
  const near = core.flatMap((id) => [
    ...catalogue.linksTo(id).map((one) => one.from),
    ...catalogue.linksFrom(id).map((one) => one.to),
  ]);
  const behind = near.flatMap((id) => catalogue.linksFrom(id).map((one) => one.to));
  return new Set([...core, ...near, ...behind]);
});
