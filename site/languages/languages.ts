import { ENGLISH, type Language } from '../say.ts';
import { FRENCH } from './fr.ts';
import { FRENCH_KEYS, FRENCH_TERMS } from './fr-terms.ts';
import { frenchDate } from './french-dates.ts';

/** The languages that the interface speaks. */
export const LANGUAGES: readonly Language[] = [
  ENGLISH,
  {
    tag: 'fr',
    messages: FRENCH,
    keys: FRENCH_KEYS,
    terms: FRENCH_TERMS,
    dated: frenchDate,
    notice: 'Les phrases que le calcul compose (raisons, assertions, doutes, documents) sont encore en anglais.',
  },
];

/** The interface for a file: in the first of its languages that the interface speaks; English else. */
export function interfaceFor(languages: readonly string[]): Language {
  const [first] = languages
    .map((tag) => LANGUAGES.find((one) => one.tag === tag.split('-')[0]))
    .filter((one) => one !== undefined);
  return first ?? ENGLISH;
}
