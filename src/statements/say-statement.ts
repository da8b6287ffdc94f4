import { CALENDAR_WORDS } from '../dates/calendars/calendar-words.ts';
import type { DateExpression } from '../dates/expression.ts';
import type { Sense } from '../dates/sense.ts';
import { formatExpression } from '../dates/wording.ts';
import { dated, term, words } from '../language/spoken.ts';
import type { RelationName } from '../model/types/event.ts';

const SENSES: Readonly<Record<Sense, (subject: string, date: string) => string>> = {
  within: (subject, date) => words('{0}: dated {1}', subject, date),
  by: (subject, date) => words('{0}: by {1}', subject, date),
  'not-before': (subject, date) => words('{0}: not before {1}', subject, date),
  'under-way': (subject, date) => words('{0}: under way in {1}', subject, date),
  began: (subject, date) => words('{0}: begun in {1}', subject, date),
  ended: (subject, date) => words('{0}: ended in {1}', subject, date),
  'not-yet': (subject, date) => words('{0}: not yet in {1}', subject, date),
};

const RELATIONS: Readonly<Record<RelationName, (one: string, other: string) => string>> = {
  after: (one, other) => words('“{0}” after “{1}”', one, other),
  before: (one, other) => words('“{0}” before “{1}”', one, other),
  during: (one, other) => words('“{0}” during “{1}”', one, other),
  contains: (one, other) => words('“{0}” containing “{1}”', one, other),
  meets: (one, other) => words('“{0}” ending as the next begins: “{1}”', one, other),
  'met-by': (one, other) => words('“{0}” beginning as the former ends: “{1}”', one, other),
  'same-as': (one, other) => words('“{0}” at the same time as “{1}”', one, other),
  overlaps: (one, other) => words('“{0}” overlapping into “{1}”', one, other),
  'overlapped-by': (one, other) => words('“{0}” overlapped by “{1}”', one, other),
  starts: (one, other) => words('“{0}” beginning together with “{1}”', one, other),
  'started-by': (one, other) => words('“{0}” begun together with “{1}”', one, other),
  finishes: (one, other) => words('“{0}” ending together with “{1}”', one, other),
  'finished-by': (one, other) => words('“{0}” ended together with “{1}”', one, other),
  'bonded-with': (one, other) => words('“{0}” bonded with “{1}”', one, other),
};

/** A relation between two events, by their titles. */
export function sayRelation(relation: RelationName, one: string, other: string): string {
  return RELATIONS[relation](one, other);
}

/** A dated statement as words: subject, sense, date, the words of the document, the calendar. */
export function sayDated(subject: string, sense: Sense, date: DateExpression, asWritten: string | undefined): string {
  const written = asWritten === undefined ? '' : words(', written “{0}”', asWritten);
  return `${SENSES[sense](subject, dated(formatExpression(date)))}${written}${sayCalendar(date)}`;
}

/** The note of a date converted from another calendar; empty for plain Gregorian dates. */
function sayCalendar(date: DateExpression): string {
  if (date.calendar === 'gregorian') return '';
  const calendar = term(CALENDAR_WORDS[date.calendar]);
  return date.sunset
    ? words(' ({0} in the {1} calendar, a day either side for its evenings)', date.text, calendar)
    : words(' ({0} in the {1} calendar)', date.text, calendar);
}
