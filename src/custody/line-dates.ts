import type { YearRange } from './line-types.ts';

/** Dates of custody in a stretch of a line, and the stretch without them. */
export interface StatedDates {
  readonly begins: YearRange;
  readonly ends: YearRange;
  readonly beginsCirca: boolean;
  readonly endsCirca: boolean;
  /** The day of a beginning that is told to the day. */
  readonly beginsOn: string | null;
  /** The text with every date taken out. */
  readonly rest: string;
  readonly found: boolean;
}

const MONTH =
  '(?:jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?|spring|summer|autumn|fall|winter|early|late|mid|janvier|février|mars|avril|mai|juin|juillet|août|septembre|octobre|novembre|décembre|januar|februar|märz|juni|juli|oktober|dezember)';
const YEAR = '(?:1[0-9]{3}|20[0-9]{2})';
const DATE = `(?:(?:the )?(?:early |late |mid-?)?(?:${MONTH}\\.? \\d{1,2}(?:st|nd|rd|th)?(?:\\s?[-–]\\s?(?:${MONTH}\\.? )?\\d{1,2})?,? ${YEAR}|\\d{1,2}(?:\\s?[-–]\\s?\\d{1,2})? ${MONTH}\\.?,? ${YEAR}|${MONTH}\\.?,?[ -]?(?:of )?${YEAR}|\\d{1,2}[/.]\\d{1,2}[/.]${YEAR}|${YEAR}s?))`;
const CIRCA = '(?:(?:about|around|circa|ca?\\.|ca?(?= \\d))\\s?)';
const ONE = `(${CIRCA})?(${DATE})(\\s?\\?)?`;

const BEGINS =
  '(from|since|after|on|in|until between|between|by|(?:sometime )?before|until (?:sometime )?before|until at least|until about|until|to|up to|till|during|through|as of)';
const PHRASE = new RegExp(
  `(?:[,\\s(]|^)(?:(probably|possibly|perhaps|likely) )?(?:${BEGINS} )?(?:(probably|possibly|perhaps) )?${ONE}(?:\\s?(until at least|until|through|to|and|/|[-–—])\\s?(?:at least |by )?${ONE})?(\\s+at the latest)?`,
  'gi',
);

const NONE: YearRange = { earliest: null, latest: null };

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];

/** The day that words tell to the day, as ISO 8601: `3 May 1912`, `May 3, 1912`. */
function dayIn(text: string): string | null {
  const found = /^(?:(\d{1,2}) (\p{L}+)|(\p{L}+)\.? (\d{1,2})),? (\d{4})$/u.exec(text.trim());
  if (!found) return null;
  const month = MONTHS.indexOf((found[2] ?? found[3] ?? '').slice(0, 3).toLowerCase()) + 1;
  const day = Number(found[1] ?? found[4]);
  if (month === 0 || day < 1 || day > 31) return null;
  return `${found[5]}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
}

/** A year from the words of a date. */
function yearOf(text: string): readonly [number, number] | null {
  const found = /(1[0-9]{3}|20[0-9]{2})(s)?/.exec(text);
  if (!found) return null;
  const year = Number(found[1]);
  return [year, found[2] ? year + 9 : year];
}

/**
 * Reads the dates of custody of a stretch of a line from which life dates and quotations were taken out. By the rules that
 * museums print: "by Y" and a bare year say that it was held then; a verb of transfer with a year begins it; "until Y" ends it, "until at
 * least Y" says that it was held still; "before Y" ends in the year before.
 * @param transfer true where a verb of transfer ("sold", "purchased") stands with the date
 */
export function readLineDates(text: string, transfer: boolean): StatedDates {
  let begins = NONE;
  let ends = NONE;
  let beginsCirca = false;
  let beginsOn: string | null = null;
  let endsCirca = false;
  let found = false;
  const rest = text.replace(
    PHRASE,
    (whole, hedgeA, word, hedgeB, circa, first, doubt, joined, circa2, second, doubt2, latest) => {
      const one = yearOf(first as string);
      if (!one) return whole as string;
      const hedged = hedgeA !== undefined || hedgeB !== undefined || doubt !== undefined;
      found = true;
      const two = second === undefined ? null : yearOf(second as string);
      const key = String(word ?? '').toLowerCase();
      if (two && /between$/.test(String(word ?? '').toLowerCase()) && /^and$/i.test(String(joined))) {
        // "between 1912 and 1920", "until between 1912 and 1920": one date with bounds.
        const range = { earliest: one[0], latest: two[1] };
        if (/^until/i.test(String(word))) ends = range;
        else begins = range;
        return ' ';
      }
      if (two) {
        // "1916-1930", "1984 until 1988", "by 1925 until 1938?", "by 1919 until at least 1933"
        if (!hedged) {
          begins =
            key === 'by' || /before$/.test(key)
              ? { earliest: null, latest: one[1] }
              : { earliest: one[0], latest: one[1] };
          beginsCirca ||= circa !== undefined;
        }
        if (doubt2 === undefined) {
          ends =
            latest !== undefined
              ? { earliest: null, latest: two[1] }
              : /at least/.test(whole as string)
                ? { earliest: two[0], latest: null }
                : { earliest: two[0], latest: two[1] };
          endsCirca ||= circa2 !== undefined;
        } else if (key === 'by' && !hedged) ends = { earliest: one[0], latest: null };
        return ' ';
      }
      if (hedged) return ' ';
      if (key === 'until at least') ends = { earliest: one[0], latest: null };
      else if (['until', 'to', 'till', 'up to', 'through', 'until about'].includes(key)) {
        ends = { earliest: latest === undefined ? one[0] : null, latest: one[1] };
        endsCirca ||= circa !== undefined || key === 'until about';
      } else if (/^until .*before$/.test(key)) ends = { earliest: null, latest: one[0] - 1 };
      else if (/before$/.test(key)) begins = { earliest: null, latest: one[0] - 1 };
      else if (key === 'after' || key === 'since' || key === 'from') {
        begins = key === 'after' ? { earliest: one[0], latest: null } : { earliest: one[0], latest: one[1] };
        beginsOn = key === 'after' || circa !== undefined ? null : dayIn(first as string);
        beginsCirca ||= circa !== undefined;
      } else if (transfer && key !== 'by') {
        begins = { earliest: one[0], latest: one[1] };
        beginsOn = circa === undefined ? dayIn(first as string) : null;
        beginsCirca ||= circa !== undefined;
      } else {
        begins = { earliest: begins.earliest, latest: begins.latest ?? one[1] };
        ends = { earliest: ends.earliest ?? one[0], latest: ends.latest };
        beginsCirca ||= circa !== undefined;
        endsCirca ||= circa !== undefined;
      }
      return ' ';
    },
  );
  return { begins, ends, beginsCirca, endsCirca, beginsOn, rest, found };
}
