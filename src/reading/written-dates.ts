import type { Diagnostic } from '../base/diagnostic.ts';
import { inRow, phrase, type Said } from '../base/said.ts';
import { CALENDARS, type CalendarName } from '../dates/calendars/calendar.ts';
import { dayOf } from '../dates/day.ts';
import { parseDuration } from '../dates/duration.ts';
import type { DateExpression, DateProblem, DateSettings, DateWarning } from '../dates/expression.ts';
import { hullOfExpression } from '../dates/expression.ts';
import { fromWords } from '../dates/from-words.ts';
import { isDateProblem, readDate } from '../dates/read-date.ts';
import { sayExpression } from '../language/date-words.ts';
import { ENTRY_SCHEMAS, type Entry } from '../model/entry.ts';
import { settingsOf } from '../model/settings.ts';
import { findNotedFields, type NotedField } from '../model/walk-fields.ts';

/** Checks every date and every length that the entries hold, wherever it stands. */
export function checkDates(entries: readonly Entry[]): readonly Diagnostic[] {
  const workspace = entries.find((entry): entry is Entry<'workspace'> => entry.type === 'workspace');
  const settings = settingsOf(workspace ?? null).dates;
  return entries.flatMap((entry) =>
    findNotedFields(ENTRY_SCHEMAS[entry.type], entry.keys).flatMap((field) => {
      if (field.note.holds === 'date') return checkDate(entry, field, settings);
      return field.note.holds === 'duration' ? checkDuration(entry, field) : [];
    }),
  );
}

const WARNING_MENDS: Readonly<Record<DateWarning['code'], Said>> = {
  'date-short-year': phrase('write four digits for a year; for a decade "192X", for a century "19XX"'),
  'date-time-of-day': phrase('leave the time of day to the words of the entry'),
  'date-far-off': phrase('check the year and the calendar'),
  'date-season-or-years': phrase(
    'if two years are meant, write "1926/1927" (it lasted) or "[1926..1927]" (one unknown day between)',
  ),
};

/** Days so far from anything in a museum's file that a slip is likelier: a wrong calendar, a digit too many. */
function farOff(written: string, date: DateExpression): readonly DateWarning[] {
  const { first, last } = hullOfExpression(date);
  const late = Number.isFinite(first) && first > dayOf(2100, 1, 1);
  const early = date.calendar !== 'gregorian' && Number.isFinite(last) && last < dayOf(500, 1, 1);
  if (!late && !early) return [];
  return [
    { code: 'date-far-off', text: phrase('"{0}" is {1} in the Gregorian calendar', written, sayExpression(date)) },
  ];
}

function checkDate(entry: Entry, field: NotedField, settings: DateSettings): readonly Diagnostic[] {
  const base = (): Pick<Diagnostic, 'place' | 'entry'> => ({ place: entry.placeOf(field.path), entry: entry.id });
  if (/[\u2018-\u201f\u2032\u2033]/.test(field.value)) {
    return [
      {
        ...base(),
        code: 'date-curly-quotes',
        severity: 'error',
        message: phrase('{0} stands in curly quotation marks, which count as part of the text', field.value),
        mend: phrase('use straight quotation marks: "{0}"', field.value.replace(/[“”„‟«»‘’]/g, '').trim()),
      },
    ];
  }
  const result = readDate(field.value, calendarBeside(field), settings);
  if (isDateProblem(result))
    return [{ ...base(), ...result, mend: mendOf(field.value, result, settings), severity: 'error' }];
  return [...farOff(field.value, result), ...result.warnings].map((warning) => ({
    ...base(),
    code: warning.code,
    severity: 'doubt',
    message: warning.text,
    mend: WARNING_MENDS[warning.code],
  }));
}

/** Words that are understood are offered as EDTF; day and month in one digit are filled up. */
function mendOf(written: string, problem: DateProblem, settings: DateSettings): Said {
  if (problem.code !== 'date-not-edtf') return problem.mend;
  const filled = written.replace(/^(\d{4})-(\d{1,2})(?:-(\d{1,2}))?$/, (_, year: string, month: string, day?: string) =>
    [year, month.padStart(2, '0'), ...(day === undefined ? [] : [day.padStart(2, '0')])].join('-'),
  );
  if (filled !== written) return phrase('write "{0}"', filled);
  if (/^\d{1,2}[/.]\d{1,2}[/.]\d{4}$/.test(written))
    return phrase('write the year first, then month and day: "1926-04-12"');
  const words = fromWords(written);
  if (!words) return problem.mend;
  // "31 April 1926" is understood, and there was no such day.
  const day = readDate(words.edtf, 'gregorian', settings);
  if (isDateProblem(day)) return inRow([day.message, '; ', day.mend], '');
  return phrase(
    'write date: "{0}"{1}, and keep the words under as-written',
    words.edtf,
    words.sense ? phrase(' with sense: {0}', words.sense) : '',
  );
}

/** The calendar named in the same map, Gregorian where there is none. */
function calendarBeside(field: NotedField): CalendarName {
  const parent = Array.isArray(field.parent) ? null : (field.parent as { calendar?: unknown } | null);
  const name = parent?.calendar as CalendarName | undefined;
  return name !== undefined && CALENDARS.includes(name) ? name : 'gregorian';
}

function checkDuration(entry: Entry, field: NotedField): readonly Diagnostic[] {
  if (parseDuration(field.value)) return [];
  return [
    {
      code: 'duration-not-read',
      severity: 'error',
      place: entry.placeOf(field.path),
      message: phrase('"{0}" is no length of time that this program can read', field.value),
      mend: phrase('write P, then whole years Y, months M, weeks W, days D: P2Y, P6M, P10D, P1Y6M; not negative'),
      entry: entry.id,
    },
  ];
}
