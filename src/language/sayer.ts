import { IntlMessageFormat } from 'intl-messageformat';
import { oncePer, oncePerName } from '../base/once.ts';
import type { Said, SaidDate } from '../base/said.ts';
import { type Language, textOf } from './language.ts';

/** Puts into words, in one language, what was found. */
export interface Sayer {
  readonly language: Language;
  say(said: Said): string;
  /** A message with its parts, as plain words. */
  words(message: string, ...parts: readonly (Said | null | undefined)[]): string;
  /** A message as a row of plain words and the parts among them, for pages whose parts are elements. */
  pieces<Part>(message: string, parts: readonly Part[]): readonly (string | Part)[];
  /** A word that an entry holds by its schema, or the name of a register, a mark, an edge. */
  term(word: string): string;
  /** `A`, `A and B`, `A, B and C`. */
  list(list: readonly string[]): string;
  /** What stands between two things in a row that hold commas. */
  readonly semicolon: string;
}

/** Who says things in a language; made once for it. */
export const sayerIn = oncePer((language: Language): Sayer => {
  const { locale, colon, semicolon } = language;
  const formatOf = oncePerName(
    (message: string) =>
      new IntlMessageFormat(textOf(language, message) ?? message, locale, undefined, { ignoreTag: true }),
  );
  const numberFormat = oncePerName(
    (decimals: number) =>
      new Intl.NumberFormat(locale, {
        minimumFractionDigits: decimals,
        maximumFractionDigits: decimals,
        useGrouping: false,
      }),
  );
  const listFormat = oncePerName(
    (by: 'and' | 'or') =>
      new Intl.ListFormat(locale, { type: by === 'and' ? 'conjunction' : 'disjunction', style: 'long' }),
  );
  const dayFormat = oncePerName((text: string) => new IntlMessageFormat(text, locale));
  const datePieces = oncePerName((shape: `${'day' | 'month'} ${number}`) => {
    const [finest, month] = shape.split(' ') as [string, string];
    const format = new Intl.DateTimeFormat(locale, {
      ...(finest === 'day' ? { day: 'numeric' } : {}),
      month: 'long',
      year: 'numeric',
      timeZone: 'UTC',
    });
    return format.formatToParts(Date.UTC(2001, Number(month) - 1, 15));
  });
  const words = (message: string, ...parts: readonly (Said | null | undefined)[]): string => {
    const format = formatOf(message);
    // Numbers stay numbers, so that a message can choose its words by them.
    const values = parts.map((one) => (typeof one === 'number' ? one : say(one ?? '')));
    return String(format.format({ ...NO_PARTS, ...Object.fromEntries(values.map((one, i) => [String(i), one])) }));
  };
  const yearWords = (year: number): string => (year > 0 ? String(year) : words('{0} BCE', 1 - year));
  const dateWords = ({ year, month, day }: SaidDate): string => {
    if (month === null) return yearWords(year);
    return datePieces(`${day === null ? 'month' : 'day'} ${month}`)
      .map(({ type, value }) => {
        if (type === 'year') return yearWords(year);
        return type === 'day' && day !== null ? String(dayFormat(language.dayOfMonth).format({ 0: day })) : value;
      })
      .join('');
  };
  const term = (word: string): string => language.terms[word] ?? language.messages[word] ?? language.keys[word] ?? word;
  const list = (by: 'and' | 'or', parts: readonly string[]): string => listFormat(by).format(parts);
  const say = (said: Said): string => {
    if (typeof said === 'string') return said;
    if (typeof said === 'number') return String(said);
    if ('phrase' in said) return words(said.phrase, ...said.parts);
    if ('term' in said) return term(said.term);
    if ('year' in said) return dateWords(said);
    if ('number' in said) return numberFormat(said.decimals).format(said.number);
    if ('list' in said) return list(said.by, said.list.map(say));
    if ('run' in said) {
      const between = said.between === '; ' ? semicolon : said.between;
      return said.run.map((one) => (one === ': ' ? colon : say(one))).join(between);
    }
    const text = say(said.capital);
    return `${text.charAt(0).toLocaleUpperCase(locale)}${text.slice(1)}`;
  };
  return {
    language,
    say,
    words,
    pieces: (message, parts) =>
      formatOf(message)
        .formatToParts({ ...NO_PARTS, ...Object.fromEntries(parts.map((one, i) => [String(i), one])) })
        .map(({ value }) => value as string),
    term,
    list: (parts) => list('and', parts),
    semicolon,
  };
});

/** What a message is given for parts that nobody gave: a choice among words falls on its last one. */
const NO_PARTS = Object.fromEntries(Array.from({ length: 8 }, (_, i) => [String(i), '']));
