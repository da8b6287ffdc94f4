import { phrase, type Said } from '../base/said.ts';
import { dayOf } from '../dates/day.ts';
import { sayDay } from '../language/date-words.ts';
import { ENGLISH } from '../language/language.ts';
import { type Sayer, sayerIn } from '../language/sayer.ts';
import type { Acquisition, LineNote, NamedParty, ReadHolding, YearRange } from './line-types.ts';

/** A holding as a provenance line tells it; the order is that of time. */
export type LineHolding = Omit<ReadHolding, 'span'>;

/** How a line is written. Houses differ, so every line is printed with its legend. */
export interface LineStyle {
  readonly order: 'earliest first' | 'latest first';
  /** `semicolon is direct`: as the AAM Guide (2001) has it; the other way round in some houses. */
  readonly marks: 'semicolon is direct' | 'period is direct';
}

/** The convention of the AAM Guide to Provenance Research (2001). */
export const USUAL_STYLE: LineStyle = { order: 'earliest first', marks: 'semicolon is direct' };

type Lead = 'by' | 'to' | 'with';

/** The word between what happened and the name. */
const LEADS: Readonly<Record<Lead, Said>> = { by: phrase('by'), to: phrase('to'), with: phrase('with') };

/** Words in front of the one who got it: what happened, and the word that leads to the name. */
const BEFORE: Readonly<Record<Acquisition, readonly [string, Lead] | null>> = {
  purchase: ['purchased', 'by'],
  sale: ['sold', 'to'],
  gift: ['gift', 'to'],
  bequest: ['bequest', 'to'],
  inheritance: ['by inheritance', 'to'],
  descent: ['by descent', 'to'],
  exchange: ['traded', 'to'],
  auction: null,
  consignment: ['consigned', 'to'],
  'joint account': ['on joint account', 'with'],
  commission: ['commissioned', 'by'],
  confiscation: ['confiscated', 'by'],
  restitution: ['returned', 'to'],
  deposit: ['deposited', 'to'],
  loan: ['lent', 'to'],
  transfer: ['transferred', 'to'],
  acquired: ['acquired', 'by'],
  sent: ['sent', 'to'],
};

/**
 * Writes a provenance line: earliest first, a semicolon where the passage was direct and a period where it was not or is not known; dealers,
 * agents and auction houses in parentheses, life dates in square brackets, "possibly" and "probably" before what is uncertain, numbered notes.
 */
export function writeLine(
  holdings: readonly LineHolding[],
  notes: readonly LineNote[] = [],
  style: LineStyle = USUAL_STYLE,
  sayer: Sayer = sayerIn(ENGLISH),
): string {
  const direct = style.marks === 'semicolon is direct' ? ';' : '.';
  const other = direct === ';' ? '.' : ';';
  const told = style.order === 'earliest first' ? holdings : [...holdings].reverse();
  // The mark between two neighbours is that of the passage from the earlier to the later.
  const marks = told.map((one, i) => {
    const earlier = style.order === 'earliest first' ? one : told[i + 1];
    return i === told.length - 1 ? '.' : earlier?.['passage-to-next'] === 'direct' ? direct : other;
  });
  const line = told
    .map((one, i) => {
      const text = i === 0 || marks[i - 1] === '.' ? capital(sayHolding(sayer, one)) : sayHolding(sayer, one);
      const mark = /\.$/.test(text) && marks[i] === '.' ? '' : marks[i];
      return `${text}${mark}${one.notes.map((n) => `[${n}]`).join('')}`;
    })
    .join(' ');
  return notes.length === 0 ? line : `${line}\n\n${notes.map((one) => `[${one.n}] ${one.text}`).join('\n\n')}`;
}

/** What the marks of a line mean, to be printed with it. */
export function sayLegend(sayer: Sayer, { order, marks }: LineStyle): string {
  const earliest = order === 'earliest first';
  const first = earliest ? sayer.words('Earliest first.') : sayer.words('Latest first.');
  const [direct, other] =
    marks === 'semicolon is direct'
      ? [sayer.words('A semicolon'), sayer.words('a period')]
      : [sayer.words('A period'), sayer.words('a semicolon')];
  const passage = earliest
    ? sayer.words(
        '{0} says that a holder had it directly from the one before, {1} that this was not so or is not known.',
        direct,
        other,
      )
    : sayer.words(
        '{0} says that a holder had it directly from the one named after it, {1} that this was not so or is not known.',
        direct,
        other,
      );
  return `${first} ${passage} ${sayer.words('Dealers, agents and auction houses stand in parentheses, life dates in square brackets; “by 1936” says that it was there in that year, and may have been before.')}`;
}

function sayHolding(sayer: Sayer, one: LineHolding): string {
  if (one['acquired-by'] === 'auction') return sayAuction(sayer, one);
  const dates = sayYears(sayer, one.begins, one.ends, {
    on: one['begins-on'] ?? null,
    begins: one['begins-circa'],
    ends: one['ends-circa'],
    transfer: one['acquired-by'] !== null && !['descent', 'inheritance', 'commission'].includes(one['acquired-by']),
  });
  const hedge = one.hedge === null ? '' : `${sayer.term(one.hedge)} `;
  const [act, leads] = (one['acquired-by'] === null ? null : BEFORE[one['acquired-by']]) ?? [null, null];
  const isDealer = one.capacity === 'dealer';
  const lifeDates = one['life-dates'] === null ? '' : ` [${one['life-dates']}]`;
  if (one.holder === '')
    return `${hedge}${act === null ? '' : sayer.term(act)}${dates === '' ? '' : ` ${dates}`}`.trim();
  const name = [`${one.holder}${lifeDates}`, one.place].filter(Boolean).join(', ');
  const who = isDealer ? `(${name})` : name;
  const through = one.through.map((party) => sayer.words(' through {0}', inBrackets(party))).join('');
  // Dealers share on joint account; anybody else has it jointly.
  const shared = one['shared-with']
    .map(inBrackets)
    .map((party) =>
      isDealer ? sayer.words(' on joint account with {0}', party) : sayer.words(' jointly with {0}', party),
    )
    .join('');
  // "sold through (A) to B": the agent stands between the verb and the one who got it.
  const between = leads === 'to' ? through : '';
  const verbs = act === null || leads === null ? '' : `${sayer.term(act)}${between} ${sayer.say(LEADS[leads])} `;
  return `${hedge}${verbs}${who}${between === '' ? through : ''}${shared}${dates === '' ? '' : `, ${dates}`}`;
}

function sayAuction(sayer: Sayer, one: LineHolding): string {
  const years = one.begins.latest === null ? '' : String(one.begins.latest);
  const sale = one['consigned-by'] === null ? sayer.words('sale') : sayer.words('{0} sale', one['consigned-by']);
  const parts = [sale, one.holder, one.place, years, one.lot === null ? '' : sayer.words('lot {0}', one.lot)].filter(
    (part) => part !== null && part !== '',
  );
  return `(${parts.join(', ')})`;
}

function inBrackets({ holder, place }: NamedParty): string {
  return `(${[holder, place].filter(Boolean).join(', ')})`;
}

/** Years in the words by which lines are read: see `readLineDates`. */
export function sayYears(
  sayer: Sayer,
  begins: YearRange,
  ends: YearRange,
  {
    begins: aboutBegin,
    ends: aboutEnd,
    transfer,
    on = null,
  }: {
    readonly begins: boolean;
    readonly ends: boolean;
    readonly transfer: boolean;
    /** The very day on which it began, where it is known. */
    readonly on?: string | null;
  },
): string {
  const { earliest: b1, latest: b2 } = begins;
  const { earliest: e1, latest: e2 } = ends;
  if (b1 === null && b2 !== null && e2 === null && e1 === b2)
    return sayer.words('by {0}', sayYear(sayer, b2, aboutBegin));
  const end = sayEnd(sayer, ends, aboutEnd);
  // A single year stands before its end without a comma; a stretch or an open beginning with one.
  if (b1 !== null && b1 === b2) {
    const year = on === null ? sayYear(sayer, b1, aboutBegin) : sayer.say(sayDayOf(on));
    return spaced(end === '' && !transfer ? sayer.words('from {0}', year) : year, end, ' ');
  }
  if (b1 !== null && b2 !== null) return spaced(sayer.words('between {0} and {1}', b1, b2), end, ', ');
  if (b2 !== null && e1 !== null) return spaced(sayer.words('by {0}', sayYear(sayer, b2, aboutBegin)), end, ' ');
  if (b2 !== null) return spaced(sayer.words('before {0}', b2 + 1), end, ', ');
  return b1 === null ? end : spaced(sayer.words('after {0}', sayYear(sayer, b1, aboutBegin)), end, ', ');
}

function sayDayOf(iso: string): Said {
  const [year, month, day] = iso.split('-').map(Number) as [number, number, number];
  return sayDay(dayOf(year, month, day), 'day');
}

function sayEnd(sayer: Sayer, { earliest, latest }: YearRange, about: boolean): string {
  if (earliest !== null && earliest === latest)
    return sayer.words('until {0}', sayYear(sayer, latest, about), about ? 'about' : 'year', String(latest));
  if (earliest !== null && latest !== null) return sayer.words('until between {0} and {1}', earliest, latest);
  if (latest !== null) return sayer.words('until {0} at the latest', latest);
  return earliest === null ? '' : sayer.words('until at least {0}', sayYear(sayer, earliest, about));
}

function sayYear(sayer: Sayer, year: number, about: boolean): string {
  return about ? sayer.words('c. {0}', year) : String(year);
}

function spaced(first: string, second: string, between: string): string {
  return second === '' ? first : `${first}${between}${second}`;
}

function capital(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}
