import { civilOf, type Day, type DayRange } from '../../dates/day.ts';
import { type Duration, durationUnits } from '../../dates/duration.ts';
import type { DateExpression, Precision } from '../../dates/expression.ts';

// Frozen: how the first format of letters said dates. It is never changed, and serves nothing but reading such letters.

const MONTHS = [
  ['January', 'janvier'],
  ['February', 'février'],
  ['March', 'mars'],
  ['April', 'avril'],
  ['May', 'mai'],
  ['June', 'juin'],
  ['July', 'juillet'],
  ['August', 'août'],
  ['September', 'septembre'],
  ['October', 'octobre'],
  ['November', 'novembre'],
  ['December', 'décembre'],
] as const;

function sayDay(day: Day, precision: Precision): string {
  const { year, month, day: dayOfMonth } = civilOf(day);
  const yearText = year > 0 ? String(year) : `${1 - year} BCE`;
  if (precision === 'year') return yearText;
  const monthText = `${MONTHS[month - 1]?.[0]} ${yearText}`;
  return precision === 'month' ? monthText : `${dayOfMonth} ${monthText}`;
}

function sayDays({ first, last }: DayRange, precision: Precision): string {
  const [from, to] = [first, last].map((day) => (Number.isFinite(day) ? sayDay(day, precision) : null));
  if (from === null && to === null) return 'not bounded';
  if (from === null) return `until ${to}`;
  if (to === null) return `from ${from} on`;
  if (from === to) return from as string;
  return /\s/.test(`${from}${to}`) ? `${from} – ${to}` : `${from}–${to}`;
}

/** What a date expression covers, in English as the first format had it. */
export function englishExpression({ shape, precision, approximate }: DateExpression): string {
  if (shape.kind === 'lasted') {
    const [from, to] = [shape.a.first, shape.b.last].map((day) =>
      Number.isFinite(day) ? sayDay(day, precision) : null,
    );
    return `${from ?? 'an unknown beginning'} to ${to ?? 'an unknown end'}`;
  }
  const joined = shape.members
    .map((member) => sayDays(member, precision))
    .join(shape.kind === 'one' ? ' or ' : ' and ');
  return approximate ? `about ${joined}` : joined;
}

/** A length, in English as the first format had it. */
export function englishDuration(duration: Duration): string {
  const parts = durationUnits(duration).map(({ count, unit }) => `${count} ${unit}${count === 1 ? '' : 's'}`);
  if (parts.length === 0) return 'no time at all';
  return parts.length === 1 ? (parts[0] as string) : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
}

const MONTH = MONTHS.map(([english]) => english).join('|');

const PHRASES: readonly (readonly [RegExp, string])[] = [
  [/not bounded/g, 'sans borne'],
  [/an unknown beginning/g, 'un commencement inconnu'],
  [/an unknown end/g, 'une fin inconnue'],
  [/\bfrom (?=\d{1,2}(?:er)? [a-zéû])([^;,]*?) on\b/g, 'à partir du $1'],
  [/\bfrom (?:about )([^;,]*?) on\b/g, 'à partir de vers $1'],
  [/\bfrom ([^;,]*?) on\b/g, 'à partir de $1'],
  [/\buntil (?=\d{1,2}(?:er)? [a-zéû])/g, 'jusqu’au '],
  [/\buntil about /g, 'jusque vers '],
  [/\buntil /g, 'jusqu’en '],
  [/\babout /g, 'vers '],
  [/ to /g, ' à '],
  [/ or /g, ' ou '],
  [/ and /g, ' et '],
  [/\byears\b/g, 'ans'],
  [/\byear\b/g, 'an'],
  [/\bmonths?\b/g, 'mois'],
  [/\bweeks\b/g, 'semaines'],
  [/\bweek\b/g, 'semaine'],
  [/no time at all/g, 'aucun délai'],
  [/\bdays\b/g, 'jours'],
  [/\bday\b/g, 'jour'],
  [/\bBCE\b/g, 'av. J.-C.'],
];

/** A date or a length in French, out of the English words, as the first format had it. */
export function frenchDate(words: string): string {
  const months = words
    .replace(new RegExp(`\\b1 (?=${MONTH})`, 'g'), '1er ')
    .replace(
      new RegExp(`\\b(${MONTH})\\b`, 'g'),
      (month) => MONTHS.find(([english]) => english === month)?.[1] ?? month,
    );
  return PHRASES.reduce((text, [shape, french]) => text.replace(shape, french), months);
}
