import type { DateExpression } from '../dates/expression.ts';
import type { Sense } from '../dates/sense.ts';
import { formatCalendar, formatExpression } from '../dates/wording.ts';
import type { RelationName } from '../model/types/event.ts';

const SENSE_WORDS: Readonly<Record<Sense, string>> = {
  within: 'dated',
  by: 'by',
  'not-before': 'not before',
  'under-way': 'under way in',
  began: 'begun in',
  ended: 'ended in',
  'not-yet': 'not yet in',
};

/** Words for a relation, between the two titles. */
export const RELATION_WORDS: Readonly<Record<RelationName, string>> = {
  after: 'after',
  before: 'before',
  during: 'during',
  contains: 'containing',
  meets: 'ending as the next begins:',
  'met-by': 'beginning as the former ends:',
  'same-as': 'at the same time as',
  overlaps: 'overlapping into',
  'overlapped-by': 'overlapped by',
  starts: 'beginning together with',
  'started-by': 'begun together with',
  finishes: 'ending together with',
  'finished-by': 'ended together with',
  'bonded-with': 'bonded with',
};

/** A dated statement as words: subject, sense, date, the words of the document, the calendar. */
export function sayDated(subject: string, sense: Sense, date: DateExpression, asWritten: string | undefined): string {
  const written = asWritten === undefined ? '' : `, written “${asWritten}”`;
  const calendar = formatCalendar(date);
  return `${subject}: ${SENSE_WORDS[sense]} ${formatExpression(date)}${written}${calendar === '' ? '' : ` (${calendar})`}`;
}
