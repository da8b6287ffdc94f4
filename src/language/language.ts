import { oncePer } from '../base/once.ts';
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
  /** What stands for a message that denies something ("No search is recorded.") where something is kept back from the reader. */
  readonly shown: Messages;
  /** True where something of the file is kept back from who is told: what is absent and what is hidden look alike then. */
  readonly keptBack: boolean;
  /** Longer texts in Markdown, by the names of their files: the pages on method and marks. */
  readonly prose: Messages;
}

/** English: every text is its own name, and what its catalogue holds stands for it. */
export const ENGLISH: Language = {
  ...english,
  messages: {},
  pages: {},
  keys: {},
  terms: {},
  shown: {},
  keptBack: false,
  prose: {},
};

/**
 * The language in which a file is told to a reader from whom something of it is kept back. All sentences that deny pass here,
 * since every sentence is said by its language: none can be forgotten where it is made, and none says more than is shown.
 */
export const whereKeptBack = oncePer((language: Language): Language => ({ ...language, keptBack: true }));

/** The text of a message; undefined where the language has none of its own. */
export function textOf({ messages, shown, keptBack }: Language, message: string): string | undefined {
  return (keptBack ? shown[message] : undefined) ?? messages[message];
}

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
