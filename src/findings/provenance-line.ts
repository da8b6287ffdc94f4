import { GRADES, type Grade, rankOf } from '../base/grade.ts';
import type { Acquisition, LineNote } from '../custody/line-types.ts';
import { type LineHolding, type LineStyle, USUAL_STYLE, writeLine } from '../custody/write-line.ts';
import { civilOf } from '../dates/day.ts';
import { hullOfExpression } from '../dates/expression.ts';
import type { Sayer } from '../language/sayer.ts';
import { titleOf } from '../model/catalogue.ts';
import { type Entry, isOfType } from '../model/entry.ts';
import { lifeDate } from '../model/life-dates.ts';
import type { FileStatement } from '../statements/statements.ts';
import type { CaseFile } from './case-file.ts';
import { type Chain, type ChainHolding, PRINTED_RANK } from './chain.ts';
import { howAcquired, passedOn } from './passed-on.ts';

/** Ways of acquiring that a line has words for. */
const ACQUISITIONS: readonly string[] = [
  'purchase',
  'sale',
  'gift',
  'bequest',
  'inheritance',
  'descent',
  'exchange',
  'consignment',
  'commission',
  'confiscation',
  'restitution',
  'deposit',
  'loan',
  'transfer',
  'acquired',
];

/** Words of a line for the grade of what is known best of a holding. */
const HEDGES: Readonly<Record<Grade, LineHolding['hedge']>> = {
  established: null,
  probable: null,
  possible: 'possibly',
  conjectural: 'possibly',
};

/** How the workspace has its provenance lines set. */
export function houseStyle({ catalogue }: CaseFile): LineStyle {
  const keys = catalogue.workspace?.keys;
  return {
    order: keys?.['line-order'] ?? USUAL_STYLE.order,
    marks: keys?.['line-marks'] === 'exchanged' ? 'period is direct' : USUAL_STYLE.marks,
  };
}

/** The provenance line of a chain with a note for every holding: what each step rests on. */
export function lineOfChain(file: CaseFile, chain: Chain, style = houseStyle(file), sayer = file.sayer): string {
  const notes: LineNote[] = [];
  const holdings = chain.holdings.map((one, i): LineHolding => {
    const text = noteOf(file, one.holding);
    if (text !== '') notes.push({ n: notes.length + 1, text, span: [0, 0] });
    return { ...holdingOf(file, sayer, chain, one, i), notes: text === '' ? [] : [notes.length] };
  });
  return writeLine(holdings, notes, style, sayer);
}

function holdingOf(
  file: CaseFile,
  sayer: Sayer,
  chain: Chain,
  { holding, possibly, begunBy, notEndedBefore }: ChainHolding,
  i: number,
): Omit<LineHolding, 'notes'> {
  const { keys } = holding;
  const languages = file.settings.languages;
  const holder = keys.holder === undefined ? undefined : file.catalogue.get(keys.holder);
  const next = chain.holdings[i + 1]?.holding;
  const passed = next === undefined ? null : passedOn(file.catalogue, holding, next);
  // A semicolon states a fact: a passage that is only possible is none.
  const direct = passed?.is === 'direct' && rankOf(passed.grade) <= PRINTED_RANK;
  const acquired = howAcquired(file.catalogue, holding) ?? '';
  // "By 1926" says that it was there in that year: not so, where it may have ended in the year before.
  const isThereThen = Number.isFinite(possibly.first) || (yearOf(begunBy) ?? 0) <= (yearOf(notEndedBefore) ?? 9999);
  const begins = { earliest: yearOf(possibly.first), latest: isThereThen ? yearOf(begunBy) : null };
  // Who has it now has it still: "1951", not "1951 until at least 2024".
  const isPresent = next === undefined && !Number.isFinite(possibly.last) && Number.isFinite(begunBy);
  // Where nobody is named, one date is said, and no place: "no record known, before 1934".
  const isUnknown = holder === undefined && !keys['not-disclosed'];
  const ends = isUnknown
    ? { earliest: null, latest: begins.latest === null ? yearOf(possibly.last) : null }
    : {
        // That it did not end before it began says nothing more.
        earliest: isPresent || notEndedBefore <= possibly.first ? null : yearOf(notEndedBefore),
        latest: yearOf(possibly.last),
      };
  return {
    holder: keys['not-disclosed']
      ? sayer.words('known, not disclosed')
      : holder
        ? titleOf(holder, languages)
        : sayer.words('no record known to this museum'),
    capacity: keys.capacity === 'agent or dealer' || keys.capacity === 'consignee' ? 'dealer' : null,
    'acquired-by':
      (holder || keys['not-disclosed']) && ACQUISITIONS.includes(acquired) ? (acquired as Acquisition) : null,
    place: isUnknown ? null : townOf(file, keys.place, holder ? titleOf(holder, languages) : ''),
    begins,
    ends,
    'begins-on': possibly.first === begunBy && Number.isFinite(begunBy) ? dayText(begunBy) : null,
    'begins-circa': false,
    'ends-circa': false,
    // Who is known and not named is no possibility.
    hedge: keys['not-disclosed'] ? null : HEDGES[bestGrade(file, holding)],
    'passage-to-next': i === chain.holdings.length - 1 ? null : direct ? 'direct' : 'not direct',
    'life-dates': holder && isOfType(holder, 'party') ? lifeDates(holder) : null,
    lot: null,
    'consigned-by': null,
    through: [],
    'shared-with': (keys['shared-with'] ?? []).flatMap((id) => {
      const party = file.catalogue.get(id);
      return party ? [{ holder: titleOf(party, languages), place: null }] : [];
    }),
  };
}

/** The town, island or country of a place, as a line has it; nothing where the holder's name says it already. */
function townOf(file: CaseFile, id: string | undefined, holder: string): string | null {
  for (let at = id, steps = 0; at !== undefined && steps < 20; steps += 1) {
    const place = file.catalogue.get(at);
    if (!place || !isOfType(place, 'place') || place.keys['present-store']) return null;
    const { kind, within } = place.keys;
    if (within === undefined || ['town', 'island', 'district', 'country', 'port'].includes(kind ?? '')) {
      const title = titleOf(place, file.settings.languages);
      // "Workshop of the firm, Marseille" after "The firm, Marseille" says the town twice.
      return holder.includes(title.split(', ').at(-1) ?? title) ? null : title;
    }
    at = within;
  }
  return null;
}

/** A day as ISO 8601 has it. */
function dayText(day: number): string {
  const { year, month, day: of } = civilOf(day);
  return [String(year).padStart(4, '0'), ...[month, of].map((one) => String(one).padStart(2, '0'))].join('-');
}

function yearOf(day: number): number | null {
  return Number.isFinite(day) ? civilOf(day).year : null;
}

function lifeDates(party: Entry<'party'>): string | null {
  const [first, last] = (['first', 'last'] as const).map((edge) => lifeDate(party, edge)?.date);
  if (party.keys.is !== 'person' || (first === undefined && last === undefined)) return null;
  return `${first ?? ''}-${last ?? ''}`;
}

/** The best grade of a statement about the holding; conjectural where none is used. */
function bestGrade(file: CaseFile, holding: Entry<'holding'>): Grade {
  const grades = file
    .statementsAbout(holding.id)
    .flatMap((one) => (one.notUsed === null ? [GRADES.indexOf(one.grade)] : []));
  return GRADES[Math.min(GRADES.length - 1, ...grades)] ?? 'conjectural';
}

/**
 * Sources of the statements about a holding, the earliest date first, each once and with its shelf mark; then its reasons without
 * a source, but what names a source again.
 */
function noteOf(file: CaseFile, holding: Entry<'holding'>): string {
  const about = file
    .statementsAbout(holding.id)
    .filter((one) => one.notUsed === null && one.kind !== 'life')
    .sort((a, b) => firstDayOf(a) - firstDayOf(b));
  const sources = [...new Set(about.flatMap((one) => one.source ?? []))].flatMap((id) => {
    const source = file.catalogue.get(id);
    if (!source || !isOfType(source, 'source')) return [];
    const mark = shelfMarkOf(source);
    return [`${titleOf(source, file.settings.languages)}${mark === '' ? '' : ` (${mark})`}`];
  });
  const reasons = [...new Set(about.filter((one) => one.source === null).flatMap((one) => one.why ?? []))]
    // "Deed of gift, 1951; deed of gift" says a thing twice.
    .filter((one) => !sources.some((source) => source.toLowerCase().startsWith(one.toLowerCase())));
  return [...sources, ...reasons].map((one) => one.replace(/\s+/g, ' ')).join('; ');
}

function firstDayOf({ date }: FileStatement): number {
  const first = date ? hullOfExpression(date).first : Number.POSITIVE_INFINITY;
  return Number.isFinite(first) ? first : Number.MAX_SAFE_INTEGER;
}

/** Where a source is kept, and under which number. */
function shelfMarkOf({ keys }: Entry<'source'>): string {
  const code = keys['reference-code'];
  const number = code === undefined ? [keys.series, keys.box, keys.folder, keys.item] : [code];
  return [keys.collection, keys.repository, ...number].filter((one) => one !== undefined).join(', ');
}
