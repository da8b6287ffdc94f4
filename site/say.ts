import { type ComponentChildren, createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Said } from '../src/base/said.ts';
import { ENGLISH, type Language } from '../src/language/language.ts';
import { type Sayer, sayerIn } from '../src/language/sayer.ts';
import type { FootnoteWords } from '../src/publish/argument-html.ts';

/** Who says the words of a page: given once, around the whole of it. All below is asked while a part of a page is made. */
export const Speech = createContext<Sayer>(sayerIn(ENGLISH));

/** The language of the page. */
export function language(): Language {
  return useContext(Speech).language;
}

/** What was found, in words. */
export function said(what: Said): string {
  return useContext(Speech).say(what);
}

/** A text of the interface as plain words. */
export function words(message: string, ...parts: readonly (Said | null | undefined)[]): string {
  return useContext(Speech).words(message, ...parts);
}

/** A text of the interface with elements among its words. */
export function say(message: string, ...parts: readonly ComponentChildren[]): ComponentChildren {
  const speech = useContext(Speech);
  return parts.length === 0 ? speech.words(message) : speech.pieces(message, parts);
}

/** A word that an entry holds by its schema, or the name of a register, a mark, an edge. */
export function term(word: string): string {
  return useContext(Speech).term(word);
}

/** `A`, `A and B`, `A, B and C`. */
export function sayList(list: readonly string[]): string {
  return useContext(Speech).list(list);
}

/** What stands at the footnotes of a text of an entry. */
export function footnoteWords(): FootnoteWords {
  const speech = useContext(Speech);
  return { label: speech.words('Footnotes'), back: (note) => speech.words('Back to reference {0}', note) };
}

/** What stands between a thing and what is said of it. */
export function colon(): string {
  return useContext(Speech).language.colon;
}

/** What stands between two things in a row that hold commas. */
export function semicolon(): string {
  return useContext(Speech).semicolon;
}
