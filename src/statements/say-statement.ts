import { allOf, inRow, named, phrase, type Said } from '../base/said.ts';
import { CALENDAR_WORDS } from '../dates/calendars/calendar-words.ts';
import type { DateExpression } from '../dates/expression.ts';
import type { Sense } from '../dates/sense.ts';
import { sayDuration, sayExpression } from '../language/date-words.ts';
import type { LayerRelation } from '../model/layer-relations.ts';
import type { LifeDate } from '../model/life-dates.ts';
import type { RelationName } from '../model/types/event.ts';
import type { Gap } from './relation-links.ts';
import type { MaterialYear, Saying, Subject } from './saying.ts';

type SayTwo = (one: Said, other: Said) => Said;

const SENSES: Readonly<Record<Sense, SayTwo>> = {
  within: (subject, date) => phrase('{0}: dated {1}', subject, date),
  by: (subject, date) => phrase('{0}: by {1}', subject, date),
  'not-before': (subject, date) => phrase('{0}: not before {1}', subject, date),
  'under-way': (subject, date) => phrase('{0}: under way in {1}', subject, date),
  began: (subject, date) => phrase('{0}: begun in {1}', subject, date),
  ended: (subject, date) => phrase('{0}: ended in {1}', subject, date),
  'not-yet': (subject, date) => phrase('{0}: not yet in {1}', subject, date),
};

const RELATIONS: Readonly<Record<RelationName, SayTwo>> = {
  after: (one, other) => phrase('“{0}” after “{1}”', one, other),
  before: (one, other) => phrase('“{0}” before “{1}”', one, other),
  during: (one, other) => phrase('“{0}” during “{1}”', one, other),
  contains: (one, other) => phrase('“{0}” containing “{1}”', one, other),
  meets: (one, other) => phrase('“{0}” ending as the next begins: “{1}”', one, other),
  'met-by': (one, other) => phrase('“{0}” beginning as the former ends: “{1}”', one, other),
  'same-as': (one, other) => phrase('“{0}” at the same time as “{1}”', one, other),
  overlaps: (one, other) => phrase('“{0}” overlapping into “{1}”', one, other),
  'overlapped-by': (one, other) => phrase('“{0}” overlapped by “{1}”', one, other),
  starts: (one, other) => phrase('“{0}” beginning together with “{1}”', one, other),
  'started-by': (one, other) => phrase('“{0}” begun together with “{1}”', one, other),
  finishes: (one, other) => phrase('“{0}” ending together with “{1}”', one, other),
  'finished-by': (one, other) => phrase('“{0}” ended together with “{1}”', one, other),
  'bonded-with': (one, other) => phrase('“{0}” bonded with “{1}”', one, other),
};

const LAYERS: Readonly<Record<LayerRelation['key'], SayTwo>> = {
  over: (one, other) => phrase('“{0}” lies over “{1}”', one, other),
  cuts: (one, other) => phrase('“{0}” cuts “{1}”', one, other),
  fills: (one, other) => phrase('“{0}” fills “{1}”', one, other),
  'same-as': (one, other) => phrase('“{0}” was left together with “{1}”', one, other),
};

const MATERIALS: Readonly<Record<MaterialYear, (...parts: readonly Said[]) => Said>> = {
  'first known': (...parts) => phrase('“{0}” holds {1}, first known {2} ({3})', ...parts),
  'in trade': (...parts) => phrase('“{0}” holds {1}, in trade from {2} ({3})', ...parts),
};

const PASSAGES: Readonly<Record<string, SayTwo>> = {
  direct: (from, to) => phrase('passed from “{0}” to “{1}”, directly', from, to),
  'not direct': (from, to) => phrase('passed from “{0}” to “{1}”, not directly', from, to),
  unknown: (from, to) => phrase('passed from “{0}” to “{1}”, directly or not', from, to),
};

const LIVES: Readonly<Record<LifeDate['key'], SayTwo>> = {
  born: (party, date) => phrase('{0}: born {1}', party, date),
  died: (party, date) => phrase('{0}: died {1}', party, date),
  founded: (party, date) => phrase('{0}: founded {1}', party, date),
  closed: (party, date) => phrase('{0}: closed {1}', party, date),
};

/** A statement: what it speaks of, what it says, and in which words of its document. */
export function sayStatement(saying: Saying): Said {
  switch (saying.is) {
    case 'dated':
      return sayDated(saying);
    case 'relation':
      return inRow(
        [
          RELATIONS[saying.relation](saying.one.title, saying.other.title),
          sayGap(saying.gap),
          saying.strict ? phrase(', at least a day apart') : '',
        ],
        '',
      );
    case 'lasted':
      return phrase('“{0}” lasted {1}', saying.subject.title, sayLimits(saying.gap) ?? phrase('some time'));
    case 'layer':
      return LAYERS[saying.relation](saying.one.title, saying.other.title);
    case 'left by':
      return phrase('“{0}” was left by “{1}”', saying.one.title, saying.other.title);
    case 'material':
      return MATERIALS[saying.year](saying.subject.title, saying.material, String(saying.from), saying.table);
    case 'handed on':
      return sayHandedOn(saying);
    case 'life':
      return LIVES[saying.key](phrase('“{0}”', saying.subject.title), sayExpression(saying.date));
    case 'passed':
      return (PASSAGES[saying.how] as SayTwo)(saying.one.title, saying.other.title);
  }
}

/** What an act did: "passed from A to B by the sale"; "lent", "brought back" where it did that. */
function sayHandedOn({ act, how, from, to }: Extract<Saying, { is: 'handed on' }>): Said {
  const by = act.title;
  if (from && to) {
    if (how === 'for a time') return phrase('given for a time from “{0}” to “{1}”, by “{2}”', from.title, to.title, by);
    if (how === 'brought back' || how === 'returned')
      return phrase('brought back from “{0}” to “{1}”, by “{2}”', from.title, to.title, by);
    return phrase('passed from “{0}” to “{1}”, by “{2}”', from.title, to.title, by);
  }
  if (from)
    return how === 'for a time'
      ? phrase('“{0}” lent by “{1}”', from.title, by)
      : phrase('“{0}” ended with “{1}”', from.title, by);
  return phrase('“{0}” began with “{1}”', to?.title ?? '', by);
}

function sayDated({ subject, sense, date, written }: Extract<Saying, { is: 'dated' }>): Said {
  return inRow(
    [
      SENSES[sense](saySubject(subject), sayExpression(date)),
      written === null ? '' : phrase(', written “{0}”', written),
      sayCalendar(date),
    ],
    '',
  );
}

/** What is dated: an entry, or an edge of its time. */
function saySubject({ edge, title }: Subject): Said {
  if (edge === 'begins') return phrase('beginning of “{0}”', title);
  if (edge === 'delivery') return phrase('delivery by “{0}”', title);
  return edge === 'ends' ? phrase('end of “{0}”', title) : phrase('“{0}”', title);
}

/** The note of a date converted from another calendar; empty for plain Gregorian dates. */
function sayCalendar(date: DateExpression): Said {
  if (date.calendar === 'gregorian') return '';
  const calendar = named(CALENDAR_WORDS[date.calendar]);
  return date.sunset
    ? phrase(' ({0} in the {1} calendar, a day either side for its evenings)', date.text, calendar)
    : phrase(' ({0} in the {1} calendar)', date.text, calendar);
}

/** Limits of a length: `at least 2 weeks and at most 1 year`, `within one day`; null for none. */
function sayLimits({ min, max }: Gap): Said | null {
  const limits: Said[] = [];
  if (min && min.months + min.days > 0) limits.push(phrase('at least {0}', sayDuration(min)));
  if (max)
    limits.push(max.months + max.days === 0 ? phrase('within one day') : phrase('at most {0}', sayDuration(max)));
  return limits.length === 0 ? null : allOf(limits);
}

function sayGap(gap: Gap): Said {
  const limits = sayLimits(gap);
  return limits === null ? '' : phrase(', by {0}', limits);
}
