import { LANGUAGES } from './languages.ts';
import { speaking, words } from './spoken.ts';

/** Head of the last part of a document as text: the statements as they stood. */
export function citedHeading(): string {
  return words('Statements that the dates rest on, as they stood');
}

/** The language in which a document was composed, told by the head of its last part; null where it has none. */
export function sentLanguage(text: string): string | null {
  return LANGUAGES.find((one) => text.includes(`## ${speaking(one, citedHeading)}`))?.tag ?? null;
}
