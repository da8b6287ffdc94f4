import type { Sense } from './sense.ts';

/** A date as people write it, turned into EDTF; the sense where the words hold one ("before", "by"). */
export interface WordedDate {
  readonly edtf: string;
  readonly sense: Sense | null;
}

const MONTHS = [
  'january',
  'february',
  'march',
  'april',
  'may',
  'june',
  'july',
  'august',
  'september',
  'october',
  'november',
  'december',
];
const SEASONS: Readonly<Record<string, string>> = { spring: '21', summer: '22', autumn: '23', fall: '23' };
const ABOUT = /^(?:circa|ca\.?|c\.?|about|around|approximately|approx\.?)\s*/;
const PERHAPS = /^(?:probably|possibly|perhaps|maybe)\s+|\s*(?:\?|\(\?\))$/g;

/**
 * Reads the usual English ways to write a date; null where the words are not understood.
 * Offered for confirmation, never written unasked.
 * @example fromWords('spring 1926') // { edtf: '1926-21', sense: null }
 */
export function fromWords(words: string): WordedDate | null {
  const text = words
    .trim()
    .toLowerCase()
    .replace(/[–—]/g, '-')
    .replace(/\s+/g, ' ')
    .replace(/^(?:in|on) /, '');
  return (
    sensed(text, /^(?:before|prior to) (.+)$/, 'by', -1) ??
    sensed(text, /^after (.+)$/, 'not-before', 1) ??
    sensed(text, /^(?:not before|no earlier than|from|since) ((?!.* (?:to|until) ).+)$/, 'not-before', 0) ??
    sensed(text, /^(?:by|until|no later than|not later than|not after) (.+)$/, 'by', 0) ??
    plain(text)
  );
}

/** "Before 1924" ends with 1923; "after 1923" begins with 1924; only years move so. */
function sensed(text: string, shape: RegExp, sense: Sense, step: number): WordedDate | null {
  const inner = shape.exec(text)?.[1];
  if (inner === undefined) return null;
  const edtf = simple(inner);
  if (edtf === null) return null;
  if (step === 0) return { edtf, sense };
  if (!/^\d{4}$/.test(edtf)) return null;
  return { edtf: String(Number(edtf) + step).padStart(4, '0'), sense };
}

function plain(text: string): WordedDate | null {
  const between = /^between (.+) and (.+)$/.exec(text);
  const or = /^(.+) or (.+)$/.exec(text);
  const lasted = /^(?:from )?(.+?)(?: to | until |\s?-\s?)(.+)$/.exec(text);
  const edtf =
    pair(between, (a, b) => `[${a}..${b}]`) ??
    pair(or, (a, b) => `[${a},${b}]`) ??
    simple(text) ??
    pair(lasted, (a, b) => `${a}/${b}`);
  return edtf === null ? null : { edtf, sense: null };
}

function pair(found: RegExpExecArray | null, join: (a: string, b: string) => string): string | null {
  if (!found) return null;
  const [a, b] = [simple(found[1] as string), simple(found[2] as string)];
  return a === null || b === null ? null : join(a, b);
}

/** One date: a year, month, day, season, decade or century, perhaps "about" or "probably". */
function simple(words: string): string | null {
  const perhaps = words.search(PERHAPS) === -1 ? '' : '?';
  const sure = words.replace(PERHAPS, '').trim();
  const about = ABOUT.test(sure) ? '~' : '';
  const core = coreDate(sure.replace(ABOUT, ''));
  const mark = about !== '' && perhaps !== '' ? '%' : about + perhaps;
  return core === null ? null : core + mark;
}

function coreDate(text: string): string | null {
  if (/^\d{4}(-(0[1-9]|1[0-2])(-\d\d)?)?$/.test(text)) return text;
  const shortEnd = /^(\d\d)(\d\d)\s?-\s?(\d\d)$/.exec(text);
  if (shortEnd) return `${shortEnd[1]}${shortEnd[2]}/${shortEnd[1]}${shortEnd[3]}`;
  const numbers = /^(\d{1,2})\.\s?(\d{1,2})\.\s?(\d{4})$/.exec(text);
  // With points the day comes first, as on the continent; a slash may be read both ways and is refused.
  if (numbers && Number(numbers[2]) <= 12 && Number(numbers[1]) <= 31)
    return `${numbers[3]}-${(numbers[2] as string).padStart(2, '0')}-${(numbers[1] as string).padStart(2, '0')}`;
  const decade = /^(?:the )?(\d{3})0'?s$/.exec(text);
  if (decade) return `${decade[1]}X`;
  const century = /^(?:the )?(\d{1,2})(?:st|nd|rd|th) century$/.exec(text);
  if (century) return `${String(Number(century[1]) - 1).padStart(2, '0')}XX`;
  const season = /^(?:the )?(?:early |late )?(spring|summer|autumn|fall)(?: of)? (\d{4})$/.exec(text);
  if (season) return `${season[2]}-${SEASONS[season[1] as string]}`;
  return dayOrMonth(text);
}

function dayOrMonth(text: string): string | null {
  const dayFirst = /^(\d{1,2})(?:st|nd|rd|th)?(?: of)? ([a-z]+)\.?,? (\d{4})$/.exec(text);
  if (dayFirst) return join(dayFirst[3], dayFirst[2], dayFirst[1]);
  const monthFirst = /^([a-z]+)\.? (\d{1,2})(?:st|nd|rd|th)?,? (\d{4})$/.exec(text);
  if (monthFirst) return join(monthFirst[3], monthFirst[1], monthFirst[2]);
  const month = /^([a-z]+)\.?,?(?: of)? (\d{4})$/.exec(text);
  return month ? join(month[2], month[1], undefined) : null;
}

function join(year: string | undefined, monthName: string | undefined, day: string | undefined): string | null {
  if (monthName === undefined || monthName.length < 3) return null;
  const month = MONTHS.findIndex((name) => name.startsWith(monthName)) + 1;
  if (month === 0) return null;
  const pad = (part: number): string => String(part).padStart(2, '0');
  return `${year}-${pad(month)}${day === undefined ? '' : `-${pad(Number(day))}`}`;
}
