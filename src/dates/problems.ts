import { inRow, phrase } from '../base/said.ts';
import type { CalendarName } from './calendars/calendar.ts';
import { CALENDAR_WORDS } from './calendars/calendar-words.ts';
import type { DateProblem } from './expression.ts';

/** Widths that are proposed where the workspace has none; no standard says. */
const PROPOSED: Readonly<Record<string, number>> = { year: 10, decade: 10, century: 25, month: 3, day: 30 };

/** The wording of everything that can be wrong with a date. */
export const problem = {
  notEdtf: (text: string, calendar: CalendarName): DateProblem => ({
    code: 'date-not-edtf',
    message: phrase(
      '"{0}" is not a date this program can read{1}',
      text.length > 80 ? inRow([text.slice(0, 80), '…'], '') : text,
      calendar === 'gregorian' ? '' : phrase(' (calendar: {0})', calendar),
    ),
    mend: phrase(
      'write year, year-month or year-month-day with four, two and two digits: "1926", "1926-04", "1926-04-12"; about: "1926~"; one unknown day between: "[1925..1931]"; lasted: "1921/1938"',
    ),
  }),
  noSuchDay: (text: string, calendar: CalendarName): DateProblem => ({
    code: 'date-no-such-day',
    message: phrase('there is no day "{0}" in the {1} calendar', text, CALENDAR_WORDS[calendar]),
    mend: phrase('check the day and the month, or name the calendar of the document (calendar: julian)'),
  }),
  winter: (text: string): DateProblem => ({
    code: 'date-winter',
    message: phrase('"{0}" crosses the turn of the year, so it does not say which months are meant', text),
    mend: phrase(
      'give the months: "[1926-12..1927-02]" for one unknown day in that winter, "1926-12/1927-02" for something that lasted',
    ),
  }),
  circaUnset: (unit: string): DateProblem => ({
    code: 'date-circa-unset',
    message: phrase(
      'the date says "about" (~ or %), but the workspace does not say how wide "about" is for a {0}',
      unit,
    ),
    mend: phrase(
      "add to the workspace entry, for example: circa: '{' {0}: {1} '}' ({2} either side; the Object ID guide suggests 10 years for a year)",
      unit,
      PROPOSED[unit] ?? 10,
      unit === 'month' || unit === 'day' ? phrase('{0, select, month {months} other {days}}', unit) : phrase('years'),
    ),
  }),
  reversed: (text: string): DateProblem => ({
    code: 'date-reversed',
    message: phrase('"{0}" ends before it begins', text),
    mend: phrase('exchange the two dates, or check the years'),
  }),
  era: (text: string): DateProblem => ({
    code: 'date-era',
    message: phrase(
      '"{0}" is no year of that era, or lies before Meiji 6 (1873), when Japan used another calendar',
      text,
    ),
    mend: phrase('check era and year, or write the converted date and keep the original under as-written'),
  }),
  calendarYear: (text: string, calendar: CalendarName): DateProblem => ({
    code: 'date-calendar-year',
    message: phrase('the {0} calendar was not in use in the year of "{1}"', CALENDAR_WORDS[calendar], text),
    mend: phrase('check the year and the calendar'),
  }),
};
