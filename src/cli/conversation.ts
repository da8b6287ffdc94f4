import { nearest } from '../base/nearest.ts';
import { capital, inRow, phrase, type Said } from '../base/said.ts';
import { fromWords } from '../dates/from-words.ts';
import { isDateProblem, readDate } from '../dates/read-date.ts';
import { sayExpression } from '../language/date-words.ts';
import type { Sayer } from '../language/sayer.ts';
import type { Effects } from './effects.ts';
import type { NewDate } from './entry-files.ts';
import { Fault } from './fault.ts';

/** One answer that may be chosen: the word that is written, and what it means. */
export interface Choice {
  readonly word: string;
  readonly meaning?: Said;
  /** How the word is told; as it is written where nothing is said. */
  readonly told?: Said;
}

/** What is understood as a date, for messages and questions. */
const DATE_EXAMPLES: Said = phrase(
  '1926, April 1926, 12 April 1926, spring 1926, about 1926, before 1924, between 1925 and 1931',
);

/** The word among choices that an answer means: its number, the word, or its beginning; null where it is none of them. */
export function chosen(answer: string, choices: readonly Choice[]): string | null {
  const plain = answer.trim().toLowerCase();
  const byNumber = /^\d+$/.test(plain) ? choices[Number(plain) - 1] : undefined;
  const exact = choices.find(({ word }) => word.toLowerCase() === plain);
  const beginning = choices.filter(({ word }) => word.toLowerCase().startsWith(plain));
  return (exact ?? byNumber ?? (beginning.length === 1 ? beginning[0] : undefined))?.word ?? null;
}

/**
 * Asks for one of several words: they are listed with numbers; a number, a word or its beginning is an answer. What is
 * none of them is asked again. Null where nobody answers, or Enter is pressed and nothing must be said.
 */
export async function askChoice(
  effects: Effects,
  question: Said,
  choices: readonly Choice[],
  usual: string | null = null,
): Promise<string | null> {
  const list = listed(effects.sayer, choices);
  const first: Said = inRow(['\n', list, question, usual === null ? '' : phrase(' (Enter: {0})', usual), ': '], '');
  for (let words: Said = first; ; ) {
    const answer = await effects.ask(words);
    if (answer === null) return usual;
    if (answer.trim() === '') return usual;
    const word = chosen(answer, choices);
    if (word !== null) return word;
    const [near] = nearest(
      answer.trim(),
      choices.map((one) => one.word),
      1,
    );
    words = phrase(
      '"{0}" is not in the list.{1} Number or word: ',
      answer.trim(),
      near ? phrase(' Did you mean "{0}"?', near) : '',
    );
  }
}

/** Numbered lines; short words stand several in a line. */
function listed({ say }: Sayer, choices: readonly Choice[]): string {
  const toldOf = ({ word, told }: Choice): string => say(told ?? word);
  const width = Math.max(...choices.map((one) => toldOf(one).length)) + 2;
  const lines = choices.map(
    (one, i) => `${String(i + 1).padStart(4)}  ${toldOf(one).padEnd(width)}${say(one.meaning ?? '')}`,
  );
  if (choices.some(({ meaning }) => meaning !== undefined))
    return `${lines.map((line) => line.trimEnd()).join('\n')}\n`;
  const perLine = Math.max(1, Math.floor(78 / (width + 6)));
  const rows: string[] = [];
  for (let i = 0; i < lines.length; i += perLine)
    rows.push(
      lines
        .slice(i, i + perLine)
        .join('')
        .trimEnd(),
    );
  return `${rows.join('\n')}\n`;
}

/** Asks for a text; null where nobody answers or nothing is said. */
export async function askText(effects: Effects, question: Said): Promise<string | null> {
  const answer = await effects.ask(question);
  const text = answer?.trim().replace(/\s+/g, ' ') ?? '';
  return text === '' ? null : text;
}

/**
 * A date as it was typed: EDTF is taken as it is; words are turned into EDTF.
 * @returns the date, or why the words are not understood
 */
export function dateFromTyped(typed: string): NewDate | { readonly refused: Said } {
  const settings = { circa: { year: 0, decade: 0, century: 0, month: 0, day: 0 }, sunsetDays: 0 };
  const direct = readDate(typed, 'gregorian', settings);
  if (!isDateProblem(direct) && direct.warnings.length === 0) return { edtf: typed, sense: null, asWritten: null };
  const read = fromWords(typed);
  if (!read) return { refused: phrase('"{0}" is not understood as a date. {1}', typed, hintFor(typed)) };
  const edtf = readDate(read.edtf, 'gregorian', settings);
  if (isDateProblem(edtf)) return { refused: phrase('{0}. Mend: {1}', capital(edtf.message), edtf.mend) };
  return { ...read, asWritten: typed };
}

/** What to write instead, by what makes the words undecided. */
function hintFor(typed: string): Said {
  const text = typed.toLowerCase();
  if (/winter|christmas/.test(text))
    return phrase(
      'A winter lies in two years: write for example January 1926, or between December 1925 and March 1926.',
    );
  if (/easter|pentecost|feast|saint/.test(text))
    return phrase('A feast moves, and calendars differ: look up its day, or write the months in which it can lie.');
  if (/\bwar\b|revolution|earthquake/.test(text))
    return phrase('Write the year that is meant, such as before 1914; or relate the event to another one later.');
  if (/\d+\/\d+\/\d{4}/.test(text)) return phrase('Day or month first? Write the month as a word: 12 April 1926.');
  if (/early|late|end of|beginning of|mid/.test(text))
    return phrase('Write what you would allow for, such as between January 1926 and April 1926.');
  return phrase('Write for example: {0}.', DATE_EXAMPLES);
}

/** A date given on the command line: what was made of words is offered, and taken after a yes or with `yes`. */
export async function confirmDate(effects: Effects, typed: string, yes: boolean): Promise<NewDate> {
  const date = dateFromTyped(typed);
  if ('refused' in date) throw new Fault(date.refused);
  if (date.asWritten === null || yes) return date;
  const words = sayNewDate(date);
  const answer = await effects.ask(phrase('{0}. Is that right? (Enter: yes) ', words));
  if (answer === null) throw new Fault(phrase('{0}. Type the command again with --yes to accept that.', words));
  if (isNo(answer)) throw new Fault(phrase('Nothing was written.'));
  return date;
}

/** Asks when; what is not understood, or not meant so, is asked again. Null where it is left out. */
export async function askDate(effects: Effects, question: Said): Promise<NewDate | null> {
  const first: Said = phrase('{0} As you would write it: {1}. Enter if it is not known: ', question, DATE_EXAMPLES);
  for (let words: Said = first; ; ) {
    const typed = await askText(effects, words);
    if (typed === null) return null;
    const read = dateFromTyped(typed);
    if ('refused' in read) {
      words = phrase('{0} Once more, or Enter to leave it out: ', read.refused);
      continue;
    }
    const date = await askSpan(effects, read);
    if (date.asWritten === null) return date;
    const answer = await effects.ask(phrase('{0}. Is that right? (Enter: yes) ', sayNewDate(date)));
    if (answer === null || !isNo(answer)) return date;
    words = phrase('Write it otherwise, or Enter to leave the date out: ');
  }
}

/** "1926-1928" may be a time that lasted, or a day that is not known: only who writes can tell. */
async function askSpan(effects: Effects, date: NewDate): Promise<NewDate> {
  const [, first, last] = /^([^/[.]+)\/([^/.]+)$/.exec(date.edtf) ?? [];
  if (first === undefined || last === undefined) return date;
  const one = 'between';
  const choice = await askChoice(
    effects,
    phrase('How is that meant'),
    [
      { word: one, told: phrase('on some day between') },
      { word: 'lasted', told: phrase('it lasted all that time') },
    ],
    one,
  );
  return choice === one ? { ...date, edtf: `[${first}..${last}]`, asWritten: date.asWritten ?? date.edtf } : date;
}

function isNo(answer: string): boolean {
  return /^\s*n/i.test(answer);
}

/** What will be written, in words first: `“spring 1921”: March 1921 – May 1921 (written 1921-21)`. */
function sayNewDate({ edtf, sense, asWritten }: NewDate): Said {
  const settings = { circa: { year: 10, decade: 10, century: 25, month: 3, day: 30 }, sunsetDays: 0 };
  const read = readDate(edtf, 'gregorian', settings);
  const words: Said = isDateProblem(read) ? edtf : sayExpression(read);
  const meant: Said =
    sense === 'by' ? phrase('not after {0}', words) : sense === 'not-before' ? phrase('not before {0}', words) : words;
  return phrase(
    '"{0}" is taken as {1} (written {2}{3})',
    asWritten,
    meant,
    edtf,
    sense ? phrase(', sense: {0}', sense) : '',
  );
}
