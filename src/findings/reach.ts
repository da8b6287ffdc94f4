import { phrase, type Said } from '../base/said.ts';
import type { DayRange } from '../dates/day.ts';
import { hullOfExpression } from '../dates/expression.ts';
import { isDateProblem, readDate } from '../dates/read-date.ts';
import { type Catalogue, titleOf } from '../model/catalogue.ts';
import { type Entry, isOfType, type Keys } from '../model/entry.ts';
import type { CaseFile } from './case-file.ts';
import { type ChosenReference, type ReferenceRow, referenceTable } from './reference-dates.ts';

/** Who ruled a place in a stretch of time, as the place's entry has it. */
export type Rule = NonNullable<Keys<'place'>['rule']>[number];

/**
 * Whether a law, a treaty or a period speaks of the place where something was done, at every day on which it may have been
 * done: `inside` if it does on every one, `outside` if on none; else not determined, and what would decide.
 */
export type Reach =
  | { readonly is: 'inside' | 'outside' }
  | { readonly is: 'no place' }
  | { readonly is: 'undetermined'; readonly decides: Said };

/** Powers that a place can have lain under, by the table; the European Union and the parties to treaties are none. */
const POWERS: ReadonlySet<string> = new Set(
  referenceTable()
    .map((row) => jurisdictionOf(row.jurisdiction))
    .filter((one) => one !== 'international' && one !== 'european-union'),
);

/** Policies that speak to museums or to every land, wherever a thing lay. */
const EVERYWHERE =
  /^(?:All lands|Museums|UNESCO member states|UN member states|\d+ states|46 or 47 states|More than 20)/;

/** Names of lands that the column of territories has otherwise than that of jurisdictions. */
const SAME_LAND: Readonly<Record<string, string>> = {
  'Soviet Union': 'ussr',
  'Ceylon, later Sri Lanka': 'sri-lanka',
  Myanmar: 'burma',
  'Netherlands Indies, later Indonesia': 'netherlands-indies',
  'French mandate: Syria and Lebanon': 'syria-lebanon',
  'French Indochina: today Cambodia, Laos and Vietnam': 'french-indochina',
  'Palestine under British rule': 'mandate-palestine',
  'Iraq under mandate': 'iraq',
  'Tunisia (French protectorate)': 'tunisia',
  'Morocco (French protectorate)': 'morocco',
  'Algeria (French)': 'algeria',
  'Cyprus under British rule': 'cyprus',
  'Korea under Japanese rule': 'korea',
  'Italian Libya': 'libya',
  'Provinces of Udine, Gorizia, Trieste, Pola, Fiume, with Ljubljana, Susak and Bakar': 'adriatic-littoral',
};

/**
 * Territories that name the whole of a land and the lands that it did not hold yet, or no longer: what came to it later is
 * told by the rule over a place, and is settled nowhere here.
 */
const WHOLE_OF_ITS_TIME: Readonly<Record<string, RegExp>> = {
  'ottoman-empire': /^Ottoman lands/,
  greece: /^(?:Kingdom of Greece in the borders of 1899 |Greece \(Dodecanese from 1947\)$)/,
  italy: /^Kingdom of Italy \((?:Rome from 1873|Trento, Bolzano, Trieste, Gorizia, Istria only from 3 November 1921)/,
  france: /^France \(not Alsace-Moselle(?:, then German)?\)$/,
  ethiopia: /^Ethiopia \(Eritrea included then\)$/,
};

/** A territory or a power as the table writes its jurisdictions: `United States` is `united-states`. */
export function jurisdictionOf(words: string): string {
  return words
    .trim()
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '');
}

/** True where a row speaks of the whole of its jurisdiction, as far as its column of territories says. */
export function isOfWholeLand({ territory, jurisdiction }: ReferenceRow): boolean {
  if (WHOLE_OF_ITS_TIME[jurisdiction]?.test(territory)) return true;
  const land = territory.replace(
    /^(?:Kingdom of|Republic of|People's Republic of|Federal Republic of|Principality of|Grand Duchy of|Anglo-Egyptian) (?:the )?/,
    '',
  );
  return (
    territory === '' || SAME_LAND[territory] === jurisdiction || jurisdictionOf(land) === jurisdictionOf(jurisdiction)
  );
}

/** True where a row speaks to everybody, wherever a thing lay. */
export function isOfEveryLand({ jurisdiction, kind, territory }: ReferenceRow): boolean {
  return jurisdiction === 'international' && kind === 'policy' && EVERYWHERE.test(territory);
}

/**
 * How far a reference date reaches to a place in the days given. Rule over time decides; what the rule does not settle is
 * not settled here: a row of a part of a land, a law of a power that came, or stood there by occupation, after the law was made.
 */
export function reachOf(
  file: CaseFile,
  reference: ChosenReference,
  place: Entry<'place'> | null,
  done: DayRange,
): Reach {
  const { row } = reference;
  const time = daysWithin(reference, done);
  if (isOfEveryLand(row)) return { is: 'inside' };
  if (!place) return { is: 'no place' };
  const name = titleOf(place, file.settings.languages);
  const rules = rulesOver(file.catalogue, place);
  if (rules.length === 0) return { is: 'undetermined', decides: phrase('who ruled {0} then', name) };
  const isPeriod = row.kind === 'period';
  const jurisdiction = isPeriod && row.jurisdiction === 'international' ? 'germany' : jurisdictionOf(row.jurisdiction);
  if (row.kind === 'treaty' && jurisdiction === 'international')
    return { is: 'undetermined', decides: phrase('whether the state that ruled {0} was a party to it then', name) };
  if (!isComparable(file.catalogue, jurisdiction))
    return {
      is: 'undetermined',
      decides: phrase('whether it bound {0}: it speaks of {1}', name, row.territory || row.jurisdiction),
    };
  const own = rules.filter((rule) => jurisdictionOf(rule.jurisdiction ?? rule.power) === jurisdiction);
  const days = own.map((rule) => daysOf(file, rule));
  // Where no rule is recorded at all in those days, nothing says that it was another power.
  const allDays = rules.map((rule) => daysOf(file, rule));
  if (!days.some((one) => overlaps(one, time)))
    return covers(allDays, time)
      ? { is: 'outside' }
      : { is: 'undetermined', decides: phrase('who ruled {0} then', name) };
  if (
    !covers(
      days.map(({ certain }) => ({ certain, possible: certain })),
      time,
    )
  )
    return { is: 'undetermined', decides: phrase('who ruled {0} on that day', name) };
  if (isPeriod) return { is: 'inside' };
  const byForce = own.every((rule) => rule.kind === 'occupation' || rule.kind === 'disputed');
  if (byForce)
    return {
      is: 'undetermined',
      decides: phrase('whether it was put in force at {0}, which was then occupied or disputed', name),
    };
  if (!isOfWholeLand(row))
    return { is: 'undetermined', decides: phrase('whether it reached {0}: it speaks of {1}', name, row.territory) };
  const since = Math.min(...days.map(({ possible }) => possible.first));
  const made = reference.from?.first ?? Number.NEGATIVE_INFINITY;
  if (Number.isFinite(since) && since > made)
    return {
      is: 'undetermined',
      decides: phrase('whether it was put in force at {0}, which came under that rule after it was made', name),
    };
  return { is: 'inside' };
}

/** Where an act was done: an export where the piece left, an import where it arrived, a removal at its wall. */
export function placeOfEvent(catalogue: Catalogue, event: Entry<'event'>): Entry<'place'> | null {
  const { kind, objects = [] } = event.keys;
  const id = kind === 'import' ? (event.keys.to ?? event.keys.place) : event.keys.place;
  const own = id === undefined ? undefined : catalogue.get(id);
  if (own && isOfType(own, 'place')) return own;
  if (kind !== 'removal') return null;
  const object = objects.map((one) => catalogue.resolve(one)?.entry).find((one) => one && isOfType(one, 'object'));
  const wall = object && isOfType(object, 'object') ? catalogue.get(object.keys.of ?? '') : undefined;
  return wall && isOfType(wall, 'place') ? wall : null;
}

/** The days on which something may have been done while the law may have stood; all of them, where there are none such. */
function daysWithin({ from, to }: ChosenReference, done: DayRange): DayRange {
  const first = Math.max(done.first, from?.first ?? Number.NEGATIVE_INFINITY);
  const last = Math.min(done.last, to?.last ?? Number.POSITIVE_INFINITY);
  return first <= last ? { first, last } : done;
}

/** Rules of the nearest place around it that records any. */
export function rulesOver(catalogue: Catalogue, place: Entry<'place'>): readonly Rule[] {
  const seen = new Set<string>();
  for (let at: Entry | undefined = place; at && isOfType(at, 'place') && !seen.has(at.id); ) {
    seen.add(at.id);
    if ((at.keys.rule ?? []).length > 0) return at.keys.rule ?? [];
    at = at.keys.within === undefined ? undefined : catalogue.get(at.keys.within);
  }
  return [];
}

/** True where a jurisdiction is one of a power: the table's, or that of some place's rule in the file. */
function isComparable(catalogue: Catalogue, jurisdiction: string): boolean {
  return (
    POWERS.has(jurisdiction) ||
    catalogue
      .ofType('place')
      .some((place) =>
        (place.keys.rule ?? []).some((one) => jurisdictionOf(one.jurisdiction ?? one.power) === jurisdiction),
      )
  );
}

interface RuleDays {
  /** Days on which the rule certainly stood, and on which it may have. */
  readonly certain: DayRange;
  readonly possible: DayRange;
}

/** From when to when a rule stood: on every day of it certainly, on the days at its edges possibly. */
export function daysOf(file: CaseFile, { from, to }: Rule): RuleDays {
  const read = (text: string | undefined): DayRange | null => {
    if (text === undefined) return null;
    const date = readDate(text, 'gregorian', file.settings.dates);
    return isDateProblem(date) ? null : hullOfExpression(date);
  };
  const [first, last] = [read(from), read(to)];
  const open = { first: Number.NEGATIVE_INFINITY, last: Number.POSITIVE_INFINITY };
  return {
    certain: { first: first?.last ?? open.first, last: last?.first ?? open.last },
    possible: { first: first?.first ?? open.first, last: last?.last ?? open.last },
  };
}

function overlaps({ possible }: RuleDays, time: DayRange): boolean {
  return possible.first <= time.last && possible.last >= time.first;
}

/** True where every day of a stretch lies in one of the rules, or in one that follows it without a day between. */
function covers(days: readonly RuleDays[], time: DayRange): boolean {
  let reached = time.first;
  for (const { possible } of [...days].sort((a, b) => a.possible.first - b.possible.first)) {
    if (possible.first > reached) break;
    if (possible.last >= time.last) return true;
    reached = Math.max(reached, possible.last + 1);
  }
  return false;
}
