import type { Entry } from '../model/entry.ts';

/** True for a language as a tag of BCP 47 (`el`, `fr-CH`), not for its name in words. */
export function isLanguageTag(text: string): boolean {
  return /^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$/.test(text);
}

/** The name of a language in another: `Greek` for `el` in `en`; the tag itself where it has none (Unicode CLDR, by the engine). */
export function languageName(tag: string, inLanguage: string): string {
  if (!isLanguageTag(tag)) return tag;
  return new Intl.DisplayNames([inLanguage, 'en'], { type: 'language', fallback: 'code' }).of(tag) ?? tag;
}

/** The titles of an entry in languages other than the one that its page is headed by. */
export function otherTitles(entry: Entry, languages: readonly string[]): readonly (readonly [string, string])[] {
  const { title } = entry.keys;
  if (typeof title === 'string') return [];
  const head = languages.find((one) => title[one] !== undefined) ?? Object.keys(title)[0];
  return Object.entries(title).filter(([language]) => language !== head);
}

/**
 * The languages of a file in which an entry has neither title nor name. A title without a language counts as one in the
 * first language of the file.
 */
export function missingLanguages(entry: Entry, languages: readonly string[]): readonly string[] {
  const { title } = entry.keys;
  const titled = typeof title === 'string' ? languages.slice(0, 1) : Object.keys(title);
  const { names = [] } = entry.keys as { readonly names?: readonly { readonly language?: string | undefined }[] };
  const named = names.flatMap(({ language }) => (language === undefined ? [] : [language]));
  const base = (tag: string): string => tag.split('-')[0] as string;
  const has = new Set([...titled, ...named].map(base));
  return languages.filter((one) => !has.has(base(one)));
}
