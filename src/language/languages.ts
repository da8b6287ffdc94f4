import { FRENCH } from './fr.ts';
import { FRENCH_KEYS, FRENCH_TERMS } from './fr-terms.ts';
import { frenchDate } from './french-dates.ts';
import { ENGLISH, type Language, speaking } from './spoken.ts';

/** The languages that the interface speaks. */
export const LANGUAGES: readonly Language[] = [
  ENGLISH,
  {
    tag: 'fr',
    messages: FRENCH,
    keys: FRENCH_KEYS,
    terms: FRENCH_TERMS,
    dated: frenchDate,
    notice:
      'Les doutes et les messages du contrôle, les sources des méthodes et les lignes des tableaux de référence sont donnés en anglais.',
  },
];

/** Composes in the language of a file: see `interfaceFor`. */
export function speakingFor<Result>(languages: readonly string[], compose: () => Result): Result {
  return speaking(interfaceFor(languages), compose);
}

/** The interface for a file: in the first of its languages that the interface speaks; English else. */
export function interfaceFor(languages: readonly string[]): Language {
  const [first] = languages
    .map((tag) => LANGUAGES.find((one) => one.tag === tag.split('-')[0]))
    .filter((one) => one !== undefined);
  return first ?? ENGLISH;
}
