import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { lazily } from '../base/once.ts';
import { ENGLISH, type Language, languageFor, type Messages } from '../language/language.ts';

/**
 * The languages that are spoken: one folder each. A folder holds `language.json` (tag, locale, how a day is numbered) and
 * catalogues: `messages.json` (pages and documents), `problems.json`, `terminal.json`, `terms.json`, `keys.json`,
 * `shown.json` (what stands for a message that denies, where something is kept back), and the longer texts in Markdown.
 * Nothing else has to know of a language. Catalogues are read when something is said in it.
 *
 * @param folder that holds the folders; a folder without `language.json` is left out
 */
export function loadLanguages(folder: string): readonly Language[] {
  const tags = readdirSync(folder, { withFileTypes: true })
    .filter((one) => one.isDirectory() && existsSync(path.join(folder, one.name, 'language.json')))
    .map((one) => one.name)
    .sort();
  return [...tags.filter((tag) => tag === 'en'), ...tags.filter((tag) => tag !== 'en')].map((tag) =>
    loadLanguage(path.join(folder, tag)),
  );
}

function loadLanguage(folder: string): Language {
  const read = (name: string): Messages => {
    const file = path.join(folder, name);
    return existsSync(file) ? (JSON.parse(readFileSync(file, 'utf8')) as Messages) : {};
  };
  const pages = lazily(() => read('messages.json'));
  const messages = lazily(() => ({ ...read('terminal.json'), ...read('problems.json'), ...pages() }));
  const keys = lazily(() => read('keys.json'));
  const terms = lazily(() => read('terms.json'));
  const shown = lazily(() => read('shown.json'));
  const prose = lazily(() =>
    Object.fromEntries(
      readdirSync(folder)
        .filter((name) => name.endsWith('.md'))
        .map((name) => [name.slice(0, -'.md'.length), readFileSync(path.join(folder, name), 'utf8')]),
    ),
  );
  const { tag, locale, dayOfMonth, semicolon, colon, notice } = { ...ENGLISH, ...read('language.json') };
  return {
    tag,
    locale,
    dayOfMonth,
    semicolon,
    colon,
    notice,
    get messages() {
      return messages();
    },
    get pages() {
      return pages();
    },
    get keys() {
      return keys();
    },
    get terms() {
      return terms();
    },
    get shown() {
      return shown();
    },
    keptBack: false,
    get prose() {
      return prose();
    },
  };
}

/** The language that a terminal asks for, by the names that POSIX gives it; English where it asks for none that is spoken. */
export function terminalLanguage(
  languages: readonly Language[],
  environment: Readonly<Record<string, string | undefined>>,
): Language {
  const locale = [environment.LC_ALL, environment.LC_MESSAGES, environment.LANG].find((one) => one) ?? '';
  return languageFor(languages, [(locale.split('.')[0] as string).replace('_', '-')]);
}
