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

/** Words in front of the one who got it. */
const BEFORE: Readonly<Record<Acquisition, string>> = {
  purchase: 'purchased by',
  sale: 'sold to',
  gift: 'gift to',
  bequest: 'bequest to',
  inheritance: 'by inheritance to',
  descent: 'by descent to',
  exchange: 'traded to',
  auction: '',
  consignment: 'consigned to',
  'joint account': 'on joint account with',
  commission: 'commissioned by',
  confiscation: 'confiscated by',
  restitution: 'returned to',
  deposit: 'deposited to',
  loan: 'lent to',
  transfer: 'transferred to',
  acquired: 'acquired by',
  sent: 'sent to',
};

/**
 * Writes a provenance line: earliest first, a semicolon where the passage was direct and a period where it was not or is not known; dealers,
 * agents and auction houses in parentheses, life dates in square brackets, "possibly" and "probably" before what is uncertain, numbered notes.
 */
export function writeLine(
  holdings: readonly LineHolding[],
  notes: readonly LineNote[] = [],
  style: LineStyle = USUAL_STYLE,
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
      const text = i === 0 || marks[i - 1] === '.' ? capital(sayHolding(one)) : sayHolding(one);
      const mark = /\.$/.test(text) && marks[i] === '.' ? '' : marks[i];
      return `${text}${mark}${one.notes.map((n) => `[${n}]`).join('')}`;
    })
    .join(' ');
  return notes.length === 0 ? line : `${line}\n\n${notes.map((one) => `[${one.n}] ${one.text}`).join('\n\n')}`;
}

/** What the marks of a line mean, to be printed with it. */
export function sayLegend({ order, marks }: LineStyle): string {
  const direct = marks === 'semicolon is direct' ? ['A semicolon', 'a period'] : ['A period', 'a semicolon'];
  return `${order === 'earliest first' ? 'Earliest first.' : 'Latest first.'} ${direct[0]} says that ${order === 'earliest first' ? 'a holder had it directly from the one before' : 'a holder had it directly from the one named after it'}, ${direct[1]} that this was not so or is not known. Dealers, agents and auction houses stand in parentheses, life dates in square brackets; “by 1936” says that it was there in that year, and may have been before.`;
}

function sayHolding(one: LineHolding): string {
  if (one['acquired-by'] === 'auction') return sayAuction(one);
  const dates = sayYears(one.begins, one.ends, {
    begins: one['begins-circa'],
    ends: one['ends-circa'],
    transfer: one['acquired-by'] !== null && !['descent', 'inheritance', 'commission'].includes(one['acquired-by']),
  });
  const hedge = one.hedge === null ? '' : `${one.hedge} `;
  const verb = one['acquired-by'] === null ? '' : BEFORE[one['acquired-by']];
  const isDealer = one.capacity === 'dealer';
  const lifeDates = one['life-dates'] === null ? '' : ` [${one['life-dates']}]`;
  if (one.holder === '')
    return `${hedge}${verb.replace(/ (?:by|to|with)$/, '')}${dates === '' ? '' : ` ${dates}`}`.trim();
  const named = [`${one.holder}${lifeDates}`, one.place].filter(Boolean).join(', ');
  const who = isDealer ? `(${named})` : named;
  const through = one.through.map((party) => ` through ${inBrackets(party)}`).join('');
  // Dealers share on joint account; anybody else has it jointly.
  const together = isDealer ? 'on joint account' : 'jointly';
  const shared = one['shared-with'].map((party) => ` ${together} with ${inBrackets(party)}`).join('');
  // "sold through (A) to B": the agent stands between the verb and the one who got it.
  const verbs = through !== '' && / to$/.test(verb) ? `${verb.replace(/ to$/, '')}${through} to` : verb;
  const agent = through !== '' && !/ to$/.test(verb) ? through : '';
  return `${hedge}${verbs === '' ? '' : `${verbs} `}${who}${agent}${shared}${dates === '' ? '' : `, ${dates}`}`;
}

function sayAuction(one: LineHolding): string {
  const years = one.begins.latest === null ? '' : String(one.begins.latest);
  const sale = one['consigned-by'] === null ? 'sale' : `${one['consigned-by']} sale`;
  const parts = [sale, one.holder, one.place, years, one.lot === null ? '' : `lot ${one.lot}`].filter(
    (part) => part !== null && part !== '',
  );
  return `(${parts.join(', ')})`;
}

function inBrackets({ holder, place }: NamedParty): string {
  return `(${[holder, place].filter(Boolean).join(', ')})`;
}

/** Years in the words by which lines are read: see `readLineDates`. */
export function sayYears(
  begins: YearRange,
  ends: YearRange,
  {
    begins: aboutBegin,
    ends: aboutEnd,
    transfer,
  }: { readonly begins: boolean; readonly ends: boolean; readonly transfer: boolean },
): string {
  const year = (value: number | null, about: boolean): string => `${about ? 'c. ' : ''}${value}`;
  const { earliest: b1, latest: b2 } = begins;
  const { earliest: e1, latest: e2 } = ends;
  const end =
    e1 !== null && e2 !== null
      ? e1 === e2
        ? `until ${year(e2, aboutEnd)}`
        : `until between ${e1} and ${e2}`
      : e2 !== null
        ? `until before ${e2 + 1}`
        : e1 !== null
          ? `until at least ${year(e1, aboutEnd)}`
          : '';
  if (b1 === null && b2 !== null && e2 === null && e1 === b2) return `by ${year(b2, aboutBegin)}`;
  const begin =
    b1 !== null && b2 !== null
      ? b1 === b2
        ? `${end === '' && !transfer ? 'from ' : ''}${year(b1, aboutBegin)}`
        : `between ${b1} and ${b2}`
      : b2 !== null
        ? e1 !== null
          ? `by ${year(b2, aboutBegin)}`
          : `before ${b2 + 1}`
        : b1 !== null
          ? `after ${year(b1, aboutBegin)}`
          : '';
  return [begin, end].filter((part) => part !== '').join(/^(?:after|before|between)/.test(begin) ? ', ' : ' ');
}

function capital(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}
