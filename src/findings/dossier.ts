import { oncePer } from '../base/once-per.ts';
import type { CaseFile } from './case-file.ts';

const dossiers = oncePer((_: CaseFile) => new Map<string, ReadonlySet<string>>());

/**
 * Entries that bear on an object: itself, what names it or a part of it, what those link to or are named by, and what
 * these in turn rest on. A file of many objects tells of each from its own dossier.
 */
export function dossierOf(file: CaseFile, object: string): ReadonlySet<string> {
  const known = dossiers(file);
  const before = known.get(object);
  if (before) return before;
  const { catalogue } = file;
  const core = [object, ...catalogue.namingObject(object).map((one) => one.id)];
  const near = core.flatMap((id) => [
    ...catalogue.linksTo(id).map((one) => one.from),
    ...catalogue.linksFrom(id).map((one) => one.to),
  ]);
  const behind = near.flatMap((id) => catalogue.linksFrom(id).map((one) => one.to));
  const fresh = new Set([...core, ...near, ...behind]);
  known.set(object, fresh);
  return fresh;
}
