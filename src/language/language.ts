import english from './en/language.json' with { type: 'json' };

/** Texts by their English words, which are their names, as ICU messages: `{0}`, `{1}` stand for parts. */
export type Messages = Readonly<Record<string, string>>;

/** A language of the interface: what its folder holds. */
export interface Language {
  /** Its tag (BCP 47), the name of its folder. */
  readonly tag: string;
  /** The locale by which dates, numbers and lists are set. */
  readonly locale: string;
  /** How the number of a day is told in a date, as an ICU message. */
  readonly dayOfMonth: string;
  /** What stands between two things in a row that hold commas. */
  readonly semicolon: string;
  /** What stands between a thing and what is said of it. */
  readonly colon: string;
  /** What the pages say of what is not in this language; empty where all is. */
  readonly notice: string;
  /** Every message. */
  readonly messages: Messages;
  /** Those of the messages that stand on pages and in documents. */
  readonly pages: Messages;
  /** Labels of the keys of entries. */
  readonly keys: Messages;
  /** Words that entries hold by their schemas, and the names of registers and marks. */
  readonly terms: Messages;
  /** Longer texts in Markdown, by the names of their files: the pages on method and marks. */
  readonly prose: Messages;
}

/** English: every text is its own name, and what its catalogue holds stands for it. */
export const ENGLISH: Language = { ...english, messages: {}, pages: {}, keys: {}, terms: {}, prose: {} };

/**
 * The language for a file: the first of the file's languages that is spoken here; English else.
 *
 * @param languages those that are spoken here
 * @param wanted tags, the most wanted first: `fr-CA` is told in `fr`
 */
export function languageFor(languages: readonly Language[], wanted: readonly string[]): Language {
  const found = wanted.flatMap((tag) => {
    const [plain] = tag.split('-');
    return languages.find((one) => one.tag === tag) ?? languages.find((one) => one.tag === plain) ?? [];
  });
  return found[0] ?? languages.find((one) => one.tag === 'en') ?? ENGLISH;
}
