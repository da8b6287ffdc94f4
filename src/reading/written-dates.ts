import type { Diagnostic } from '../base/diagnostic.ts';
import { CALENDARS, type CalendarName } from '../dates/calendars/calendar.ts';
import { parseDuration } from '../dates/duration.ts';
import type { DateSettings } from '../dates/expression.ts';
import { isDateProblem, readDate } from '../dates/read-date.ts';
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

function checkDate(entry: Entry, field: NotedField, settings: DateSettings): readonly Diagnostic[] {
  const base = { place: entry.placeOf(field.path), entry: entry.id };
  if (/[\u2018-\u201f\u2032\u2033]/.test(field.value)) {
    return [
      {
        ...base,
        code: 'date-curly-quotes',
        severity: 'error',
        message: `${field.value} stands in curly quotation marks, which count as part of the text`,
        mend: 'use straight quotation marks: "1926-04"',
      },
    ];
  }
  const result = readDate(field.value, calendarBeside(field), settings);
  if (isDateProblem(result)) return [{ ...base, ...result, severity: 'error' }];
  return result.warnings.map((warning) => ({
    ...base,
    code: warning.code,
    severity: 'doubt',
    message: warning.text,
    mend:
      warning.code === 'date-short-year'
        ? 'write four digits for a year; for a decade "192X", for a century "19XX"'
        : 'leave the time of day to the words of the entry',
  }));
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
      message: `"${field.value}" is no length of time that this program can read`,
      mend: 'write P, then whole years Y, months M, weeks W, days D: P2Y, P6M, P10D, P1Y6M; not negative',
      entry: entry.id,
    },
  ];
}
