import type { CaseFile } from '../findings/case-file.ts';
import { isOfType } from '../model/entry.ts';
import { nameOf } from './say-entry.ts';

/** How a document names entries and statements of a file. */
export function namesOf(file: CaseFile): {
  cite(entry: string): string;
  statement(id: string): string | null;
} {
  return {
    cite: (id) => {
      const entry = file.catalogue.resolve(id)?.entry;
      const keys = entry && isOfType(entry, 'source') ? entry.keys : undefined;
      return [nameOf(file, id), keys?.['reference-code'], keys?.repository]
        .filter((part) => part !== undefined)
        .join(', ')
        .concat(` (${id})`);
    },
    statement: (id) => file.statement(id)?.text ?? null,
  };
}
