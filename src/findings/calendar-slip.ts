import { phrase, type Said } from '../base/said.ts';
import type { CalendarName } from '../dates/calendars/calendar.ts';
import type { DayRange } from '../dates/day.ts';
import type { DateSettings } from '../dates/expression.ts';
import { hullOfExpression } from '../dates/expression.ts';
import { isDateProblem, readDate } from '../dates/read-date.ts';
import { sayDays } from '../language/date-words.ts';

/** What a day written in another calendar is, in days and words. */
export interface ConvertedHint {
  readonly range: DayRange;
  readonly words: Said;
}

/** Month names that belong to one calendar only, with the number by which entries write the month. */
const MONTHS: readonly (readonly [CalendarName, readonly (readonly string[])[]])[] = [
  [
    'islamic-civil',
    [
      ['muharram'],
      ['safar'],
      ['rabi i', 'rabi al-awwal'],
      ['rabi ii', 'rabi al-thani'],
      ['jumada i', 'jumada al-ula'],
      ['jumada ii', 'jumada al-thani'],
      ['rajab'],
      ['shaban', 'shawban'],
      ['ramadan'],
      ['shawwal'],
      ['dhu al-qada', 'dhu al-qaada'],
      ['dhu al-hijja'],
    ],
  ],
  [
    'persian',
    [
      ['farvardin'],
      ['ordibehesht'],
      ['khordad'],
      ['tir'],
      ['mordad'],
      ['shahrivar'],
      ['mehr'],
      ['aban'],
      ['azar'],
      ['dey'],
      ['bahman'],
      ['esfand'],
    ],
  ],
];

/**
 * Reads a day such as `20 Safar 1291` or `12 Aban 1309` out of the words of a document, where the
 * month's name tells the calendar. Null where the words hold no such day.
 */
export function gregorianHint(words: string, settings: DateSettings): ConvertedHint | null {
  const plain = words
    .normalize('NFD')
    .replace(/[\p{M}'’‘ʿʾ`]/gu, '')
    .toLowerCase();
  for (const [calendar, months] of MONTHS) {
    const found = findDay(plain, months);
    if (!found) continue;
    const result = readDate(found, calendar, settings);
    if (isDateProblem(result)) continue;
    const range = hullOfExpression(result);
    return { range, words: phrase('{0} in the Gregorian calendar', sayDays(range, 'day')) };
  }
  return null;
}

function findDay(plain: string, months: readonly (readonly string[])[]): string | null {
  for (const [index, names] of months.entries()) {
    for (const name of names) {
      const found = new RegExp(`(?:^|\\D)(\\d{1,2})\\s+${name}\\s+(\\d{3,4})(?:\\D|$)`).exec(plain);
      if (found) return `${(found[2] as string).padStart(4, '0')}-${pad(index + 1)}-${pad(Number(found[1]))}`;
    }
  }
  return null;
}

function pad(number: number): string {
  return String(number).padStart(2, '0');
}
