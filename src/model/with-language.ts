import { buildCatalogue, type Catalogue } from './catalogue.ts';
import type { Keys } from './entry.ts';

/** The same file with another language first: titles, names and texts are shown in it where they have it. */
export function withLanguage(catalogue: Catalogue, language: string): Catalogue {
  const entries = catalogue.entries.map((entry) => {
    if (entry.type !== 'workspace') return entry;
    const keys = entry.keys as Keys<'workspace'>;
    const languages = [language, ...(keys.languages ?? ['en']).filter((one) => one !== language)];
    return { ...entry, keys: { ...keys, languages } };
  });
  return buildCatalogue(entries, catalogue.audience, catalogue.holdsMore);
}
