import { naturalOrder } from '../base/natural-order.ts';
import type { CaseFile } from '../findings/case-file.ts';
import type { Chain } from '../findings/chain.ts';
import { findChains } from '../findings/custody-chains.ts';
import { dossierOf } from '../findings/dossier.ts';
import { titleOf } from '../model/catalogue.ts';
import { type Entry, isOfType } from '../model/entry.ts';
import type { EntryType } from '../model/entry-type-names.ts';

/** What the parts of a report are made from: a file, and the pieces that it is about. */
export interface Matter {
  readonly file: CaseFile;
  readonly objects: readonly Entry<'object'>[];
  /** Ids of the pieces, panels and sections included as they are written. */
  readonly asked: readonly string[];
  readonly chains: readonly Chain[];
  /** Entries that bear on the pieces, in natural order of their ids. */
  readonly dossier: readonly Entry[];
}

/** The matter of some pieces; those that the file does not show are left out of `objects`. */
export function matterOf(file: CaseFile, asked: readonly string[]): Matter {
  const objects = asked.flatMap((id) => {
    const entry = file.catalogue.resolve(id)?.entry;
    return entry && isOfType(entry, 'object') ? [entry] : [];
  });
  const chains = findChains(file).filter((chain) => objects.some((one) => one.id === chain.object.id));
  const ids = new Set(objects.flatMap((one) => [...dossierOf(file, one.id)]));
  const dossier = [...ids].flatMap((id) => file.catalogue.get(id) ?? []).sort((a, b) => naturalOrder(a.id, b.id));
  return { file, objects: [...new Set(objects)], asked, chains, dossier };
}

/** Entries of a type that bear on the pieces. */
export function bearing<Type extends EntryType>(
  { dossier }: Pick<Matter, 'dossier'>,
  type: Type,
): readonly Entry<Type>[] {
  return dossier.filter((entry): entry is Entry<Type> => isOfType(entry, type));
}

/** The foot of a report: institution, file, and what the report is of. */
export function footOf({ catalogue, settings }: CaseFile, id: string): string {
  const { workspace } = catalogue;
  return [workspace?.keys.institution, workspace ? titleOf(workspace, settings.languages) : undefined, id]
    .filter((part) => part !== undefined)
    .join(', ');
}
