import { CALENDAR_WORDS } from '../../dates/calendars/calendar-words.ts';
import type { DateExpression } from '../../dates/expression.ts';
import type { Gap } from '../../statements/relation-links.ts';
import type { Saying, Subject } from '../../statements/saying.ts';
import { englishDuration, englishExpression, frenchDate } from './date-sentences.ts';
import french from './french.json' with { type: 'json' };

// Frozen: how the first format of letters said statements. It is never changed, and serves nothing but reading such letters.

/** A language in which letters of the first format were written. */
export type LetterLanguage = 'en' | 'fr';

const HEADING = 'Statements that the dates rest on, as they stood';

/** The language of a letter of the first format, told by the head of its last part; null where it has none. */
export function languageOfLetter(text: string): LetterLanguage | null {
  if (text.includes(`## ${HEADING}`)) return 'en';
  return text.includes(`## ${french.messages[HEADING]}`) ? 'fr' : null;
}

/** A statement as a letter of the first format has it. */
export function sentenceOf(says: Saying, language: LetterLanguage): string {
  const fill = (message: string, ...parts: readonly (string | number)[]): string => {
    const template =
      language === 'en' ? message : ((french.messages as Readonly<Record<string, string>>)[message] ?? message);
    return template.replace(/\{(\d)\}/g, (_, index: string) => String(parts[Number(index)] ?? ''));
  };
  const dated = (english: string): string => (language === 'en' ? english : frenchDate(english));
  const subject = ({ edge, title }: Subject): string => {
    if (edge === 'begins') return fill('beginning of “{0}”', title);
    return edge === 'ends' ? fill('end of “{0}”', title) : fill('“{0}”', title);
  };
  const calendar = ({ calendar: name, sunset, text }: DateExpression): string => {
    if (name === 'gregorian') return '';
    const word = CALENDAR_WORDS[name];
    const said = language === 'en' ? word : ((french.calendars as Readonly<Record<string, string>>)[word] ?? word);
    return sunset
      ? fill(' ({0} in the {1} calendar, a day either side for its evenings)', text, said)
      : fill(' ({0} in the {1} calendar)', text, said);
  };
  const limits = ({ min, max }: Gap): string => {
    const parts = [
      ...(min && min.months + min.days > 0 ? [fill('at least {0}', dated(englishDuration(min)))] : []),
      ...(max
        ? [max.months + max.days === 0 ? fill('within one day') : fill('at most {0}', dated(englishDuration(max)))]
        : []),
    ];
    return parts.length === 2 ? fill('{0} and {1}', ...parts) : (parts[0] ?? '');
  };
  switch (says.is) {
    case 'dated': {
      const written = says.written === null ? '' : fill(', written “{0}”', says.written);
      const date = dated(englishExpression(says.date));
      return `${fill(SENSES[says.sense], subject(says.subject), date)}${written}${calendar(says.date)}`;
    }
    case 'relation': {
      const gap = limits(says.gap);
      const apart = says.strict ? fill(', at least a day apart') : '';
      return `${fill(RELATIONS[says.relation], says.one.title, says.other.title)}${gap === '' ? '' : fill(', by {0}', gap)}${apart}`;
    }
    case 'lasted':
      return fill('“{0}” lasted {1}', says.subject.title, limits(says.gap) || fill('some time'));
    case 'layer':
      return fill(LAYERS[says.relation], says.one.title, says.other.title);
    case 'left by':
      return fill('“{0}” was left by “{1}”', says.one.title, says.other.title);
    case 'material':
      return fill(
        MATERIALS[says.year],
        says.subject.title,
        says.material,
        says.from,
        typeof says.table === 'string' ? says.table : '',
      );
    case 'passed':
      return fill(PASSAGES[says.how], says.one.title, says.other.title);
    case 'handed on':
    case 'life':
      // Letters of the first format were written before there were such statements.
      return '';
  }
}

const SENSES = {
  within: '{0}: dated {1}',
  by: '{0}: by {1}',
  'not-before': '{0}: not before {1}',
  'under-way': '{0}: under way in {1}',
  began: '{0}: begun in {1}',
  ended: '{0}: ended in {1}',
  'not-yet': '{0}: not yet in {1}',
} as const;

const RELATIONS = {
  after: '“{0}” after “{1}”',
  before: '“{0}” before “{1}”',
  during: '“{0}” during “{1}”',
  contains: '“{0}” containing “{1}”',
  meets: '“{0}” ending as the next begins: “{1}”',
  'met-by': '“{0}” beginning as the former ends: “{1}”',
  'same-as': '“{0}” at the same time as “{1}”',
  overlaps: '“{0}” overlapping into “{1}”',
  'overlapped-by': '“{0}” overlapped by “{1}”',
  starts: '“{0}” beginning together with “{1}”',
  'started-by': '“{0}” begun together with “{1}”',
  finishes: '“{0}” ending together with “{1}”',
  'finished-by': '“{0}” ended together with “{1}”',
  'bonded-with': '“{0}” bonded with “{1}”',
} as const;

const LAYERS = {
  over: '“{0}” lies over “{1}”',
  cuts: '“{0}” cuts “{1}”',
  fills: '“{0}” fills “{1}”',
  'same-as': '“{0}” was left together with “{1}”',
} as const;

const MATERIALS = {
  'first known': '“{0}” holds {1}, first known {2} ({3})',
  'in trade': '“{0}” holds {1}, in trade from {2} ({3})',
} as const;

const PASSAGES = {
  direct: 'passed from “{0}” to “{1}”, directly',
  'not direct': 'passed from “{0}” to “{1}”, not directly',
  unknown: 'passed from “{0}” to “{1}”, directly or not',
} as const;
