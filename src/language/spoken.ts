import { lazily } from '../base/once.ts';

/** Texts by their English words, which are their names. `{0}`, `{1}` stand for parts. */
export type Messages = Readonly<Record<string, string>>;

/** A language of the interface. */
export interface Language {
  /** Its tag (BCP 47). */
  readonly tag: string;
  readonly messages: Messages;
  /** Labels of the keys of entries. */
  readonly keys: Messages;
  /** Words that entries hold by their schemas, and the names of registers and marks. */
  readonly terms: Messages;
  /** A date, range or length in words, out of the English ones. */
  dated(words: string): string;
  /** What the pages say of the sentences that are not in this language; empty where all are. */
  readonly notice: string;
}

/** English: every text is its own name. */
export const ENGLISH: Language = { tag: 'en', messages: {}, keys: {}, terms: {}, dated: (words) => words, notice: '' };

let spoken = ENGLISH;

/** Composes in a language; composing and rendering are calls that wait for nothing, so nothing else speaks meanwhile. */
export function speaking<Result>(language: Language, render: () => Result): Result {
  const before = spoken;
  spoken = language;
  try {
    return render();
  } finally {
    spoken = before;
  }
}

/** A value that is composed when it is first asked for, in the language that is spoken now. */
export function lazilySpoken<Value>(compose: () => Value): () => Value {
  const then = spoken;
  return lazily(() => speaking(then, compose));
}

/** The language that is spoken now. */
export function language(): Language {
  return spoken;
}

/** A text as plain words. */
export function words(message: string, ...parts: readonly unknown[]): string {
  return (spoken.messages[message] ?? message).replace(/\{(\d)\}/g, (_, index: string) =>
    String(parts[Number(index)] ?? ''),
  );
}

/** A word that an entry holds by its schema, or the name of a register, a mark, an edge. */
export function term(word: string): string {
  return spoken.terms[word] ?? spoken.messages[word] ?? spoken.keys[word] ?? word;
}

/** A date, range or length in words. */
export function dated(words: string): string {
  return spoken.dated(words);
}

/** `A`, `A and B`, `A, B and C`. */
export function sayList(list: readonly string[]): string {
  return list.length < 2 ? list.join('') : words('{0} and {1}', list.slice(0, -1).join(', '), list.at(-1));
}
