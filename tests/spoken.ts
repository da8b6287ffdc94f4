import path from 'node:path';
import type { Said } from '../src/base/said.ts';
import { loadLanguages } from '../src/cli/languages.ts';
import type { Language, Messages } from '../src/language/language.ts';
import { sayerIn } from '../src/language/sayer.ts';
import { ROOT } from './workspace.ts';

/** The folder of the languages that the program speaks. */
export const LANGUAGE_FOLDER = path.join(ROOT, 'src/language');

/** The languages that the program speaks, as its commands load them. */
export const LANGUAGES: readonly Language[] = loadLanguages(LANGUAGE_FOLDER);

const [first] = LANGUAGES;

/** Who says everything in English. */
export const english = sayerIn(first as Language);

/** Who says everything in French. */
export const french = sayerIn(LANGUAGES.find((one) => one.tag === 'fr') as Language);

/** What is said in English. */
export function inEnglish(said: Said): string {
  return english.say(said);
}

/** What the effects of a command need to say anything. */
export const SPEECH = { languages: LANGUAGES, sayer: english };

/** A catalogue in which every message there is, and every word, is said in one way. */
export function everyMessage(say: (message: string) => string): Messages {
  return new Proxy<Record<string, string>>(
    {},
    { get: (_, message) => (typeof message === 'string' ? say(message) : undefined), has: () => true },
  );
}
