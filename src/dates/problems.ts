import type { CalendarName } from './calendars/calendar.ts';
import { CALENDAR_WORDS } from './calendars/calendar-words.ts';
import type { DateProblem } from './expression.ts';

/** Widths that are proposed where the workspace has none; no standard says. */
const PROPOSED: Readonly<Record<string, number>> = { year: 10, decade: 10, century: 25, month: 3, day: 30 };

/** The wording of everything that can be wrong with a date. */
export const problem = {
  notEdtf: (text: string, calendar: CalendarName): DateProblem => ({
    code: 'date-not-edtf',
    message: `"${text.length > 80 ? `${text.slice(0, 80)}…` : text}" is not a date this program can read${calendar === 'gregorian' ? '' : ` (calendar: ${calendar})`}`,
    mend: 'write year, year-month or year-month-day with four, two and two digits: "1926", "1926-04", "1926-04-12"; about: "1926~"; one unknown day between: "[1925..1931]"; lasted: "1921/1938"',
  }),
  noSuchDay: (text: string, calendar: CalendarName): DateProblem => ({
    code: 'date-no-such-day',
    message: `there is no day "${text}" in the ${CALENDAR_WORDS[calendar]} calendar`,
    mend: 'check the day and the month, or name the calendar of the document (calendar: julian)',
  }),
  winter: (text: string): DateProblem => ({
    code: 'date-winter',
    message: `"${text}" crosses the turn of the year, so it does not say which months are meant`,
    mend: 'give the months: "[1926-12..1927-02]" for one unknown day in that winter, "1926-12/1927-02" for something that lasted',
  }),
  circaUnset: (unit: string): DateProblem => ({
    code: 'date-circa-unset',
    message: `the date says "about" (~ or %), but the workspace does not say how wide "about" is for a ${unit}`,
    mend: `add to the workspace entry, for example: circa: { ${unit}: ${PROPOSED[unit] ?? 10} } (${unit === 'month' || unit === 'day' ? `${unit}s` : 'years'} either side; the Object ID guide suggests 10 years for a year)`,
  }),
  reversed: (text: string): DateProblem => ({
    code: 'date-reversed',
    message: `"${text}" ends before it begins`,
    mend: 'exchange the two dates, or check the years',
  }),
  era: (text: string): DateProblem => ({
    code: 'date-era',
    message: `"${text}" is no year of that era, or lies before Meiji 6 (1873), when Japan used another calendar`,
    mend: 'check era and year, or write the converted date and keep the original under as-written',
  }),
  calendarYear: (text: string, calendar: CalendarName): DateProblem => ({
    code: 'date-calendar-year',
    message: `the ${CALENDAR_WORDS[calendar]} calendar was not in use in the year of "${text}"`,
    mend: 'check the year and the calendar',
  }),
};
