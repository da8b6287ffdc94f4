/**
 * What is to be said, before any language says it: data that can be kept, sent and compared, and in which nothing is ever
 * looked for or cut. Plain text stands for words that an entry or a row of a table holds, and for names and numbers.
 */
export type Said = string | number | SaidPhrase | SaidTerm | SaidDate | SaidNumber | SaidList | SaidRun | SaidCapital;

/** A message of the catalogue with its parts: `{0}` stands for the first. */
export interface SaidPhrase {
  readonly phrase: string;
  readonly parts: readonly Said[];
}

/** A word that entries hold by their schemas, or the name of a register, a mark, an edge. */
export interface SaidTerm {
  readonly term: string;
}

/** A date, no finer than it may be printed: months and days that are not to be told are null. */
export interface SaidDate {
  /** Year of the proleptic Gregorian calendar; 0 is 1 BCE. */
  readonly year: number;
  /** 1 to 12. */
  readonly month: number | null;
  readonly day: number | null;
}

/** A measured number, with as many decimals as are told. */
export interface SaidNumber {
  readonly number: number;
  readonly decimals: number;
}

/** Several things in a row: `A, B and C`, `A or B`. */
export interface SaidList {
  readonly list: readonly Said[];
  readonly by: 'and' | 'or';
}

/** Several things one after the other, with marks that are the same in every language between them. */
export interface SaidRun {
  readonly run: readonly Said[];
  readonly between: string;
}

/** What begins with a capital. */
export interface SaidCapital {
  readonly capital: Said;
}

/** A message with its parts; one that is missing is said as nothing. */
export function phrase(message: string, ...parts: readonly (Said | null | undefined)[]): SaidPhrase {
  return { phrase: message, parts: parts.map((one) => one ?? '') };
}

/** A word that entries hold by their schemas. */
export function named(word: string): SaidTerm {
  return { term: word };
}

/** A number as it is measured. */
export function measured(number: number, decimals: number): SaidNumber {
  return { number, decimals };
}

/** `A`, `A and B`, `A, B and C`. */
export function allOf(list: readonly Said[]): Said {
  return list.length === 1 ? (list[0] as Said) : { list, by: 'and' };
}

/** `A`, `A or B`, `A, B or C`. */
export function oneOf(list: readonly Said[]): Said {
  return list.length === 1 ? (list[0] as Said) : { list, by: 'or' };
}

/** Things one after the other; what is empty is left out. */
export function inRow(run: readonly Said[], between: string): Said {
  const told = run.filter((one) => one !== '');
  return told.length === 1 ? (told[0] as Said) : told.length === 0 ? '' : { run: told, between };
}

/** Lines one below the other; what is empty is an empty line. */
export function inLines(lines: readonly Said[]): Said {
  return { run: lines, between: '\n' };
}

/** What begins with a capital. */
export function capital(said: Said): Said {
  return { capital: said };
}

/** True where two things are said with the same words in every language. */
export function sameSaid(one: Said, other: Said): boolean {
  return one === other || JSON.stringify(one) === JSON.stringify(other);
}

/** The parts of a message; none for what is no message. */
export function partsOf(said: Said): readonly Said[] {
  return typeof said === 'object' && 'phrase' in said ? said.parts : [];
}

/** Every text in what is to be said, whether a message has it or an entry: for those who look for what must not be told. */
export function textsIn(said: Said): readonly string[] {
  if (typeof said === 'string') return [said];
  if (typeof said === 'number' || 'year' in said || 'number' in said) return [];
  if ('phrase' in said) return [said.phrase, ...said.parts.flatMap(textsIn)];
  if ('term' in said) return [said.term];
  if ('list' in said) return said.list.flatMap(textsIn);
  return 'run' in said ? said.run.flatMap(textsIn) : textsIn(said.capital);
}
