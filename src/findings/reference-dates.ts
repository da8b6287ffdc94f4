import { phrase, type Said } from '../base/said.ts';
import type { DayRange } from '../dates/day.ts';
import { hullOfExpression } from '../dates/expression.ts';
import { isDateProblem, readDate } from '../dates/read-date.ts';
import { type Catalogue, titleOf } from '../model/catalogue.ts';
import { type Entry, isOfType } from '../model/entry.ts';
import { citationOf } from '../model/row-citation.ts';
import table from '../reference/reference-dates.json' with { type: 'json' };

/** A row of the built-in table of laws, treaties, policies and periods. */
export type ReferenceRow = (typeof table)[number];

/** The built-in table; every row with its source, its standing and how sure it is. */
const REFERENCE_ROWS: readonly ReferenceRow[] = table;

/** Ids of all rows of the built-in table. */
export const REFERENCE_IDS: readonly string[] = table.map((row) => row.id);

/** True where an id names a row of the table or an entry of one's own. */
export function isKnownReference(catalogue: Catalogue, id: string): boolean {
  return REFERENCE_IDS.includes(id) || catalogue.get(id)?.type === 'reference-date';
}

/** The built-in table, for lists. */
export function referenceTable(): readonly ReferenceRow[] {
  return REFERENCE_ROWS;
}

/** A reference date chosen for a workspace, with the days that it falls on. */
export interface ChosenReference {
  readonly id: string;
  readonly title: Said;
  readonly row: ReferenceRow;
  /** When it came into force; where the table has no such day, when it was made. */
  readonly from: DayRange | null;
  readonly to: DayRange | null;
  /** True where only the day on which it was made is known. */
  readonly madeOnly: boolean;
  /** True for the day of adoption of a treaty that came into force later. */
  readonly adoption: boolean;
  /** The entry that holds it, where it is beyond the built-in table. */
  readonly entry: string | null;
}

/**
 * Reference dates that the workspace chose, and those that have entries of their own, in order of
 * time. A treaty or policy with a later day of force stands twice, once for the day of its adoption.
 */
export function chosenReferences(catalogue: Catalogue): readonly ChosenReference[] {
  const chosen = catalogue.workspace?.keys['reference-dates'] ?? [];
  const rows = chosen.flatMap((one) => (typeof one === 'string' ? REFERENCE_ROWS.filter((row) => row.id === one) : []));
  return [
    ...rows.flatMap((row) => referencesOf(row, null)),
    ...catalogue.ofType('reference-date').flatMap((entry) => referencesOf(rowOfEntry(catalogue, entry), entry.id)),
  ].sort((a, b) => (a.from?.first ?? 0) - (b.from?.first ?? 0));
}

/** A row of the table, or an entry of one's own, by its id, chosen or not; null where there is none. */
export function referenceNamed(catalogue: Catalogue, id: string): ChosenReference | null {
  const entry = catalogue.get(id);
  const row = REFERENCE_ROWS.find((one) => one.id === id);
  const found = row
    ? referencesOf(row, null)
    : entry && isOfType(entry, 'reference-date')
      ? referencesOf(rowOfEntry(catalogue, entry), entry.id)
      : [];
  return found.at(-1) ?? null;
}

/** A row that was looked at and declined, with the reason. */
export function declinedReferences(catalogue: Catalogue): readonly { readonly title: string; readonly why: string }[] {
  return (catalogue.workspace?.keys['reference-dates'] ?? []).flatMap((one) =>
    typeof one === 'string'
      ? []
      : [{ title: REFERENCE_ROWS.find((row) => row.id === one.id)?.title ?? one.id, why: one.declined }],
  );
}

function referencesOf(row: ReferenceRow, entry: string | null): readonly ChosenReference[] {
  const { from, to, madeOnly } = referenceDays(row);
  const main = { id: row.id, title: row.title, row, from, to, madeOnly, adoption: false, entry };
  const made = days(row.made);
  const adopted = made && from && made.last < from.first && (row.kind === 'treaty' || row.kind === 'policy');
  if (!adopted) return [main];
  return [
    {
      ...main,
      id: `${row.id}-adopted`,
      title: phrase('{0}, adopted', row.title),
      from: made,
      to: null,
      madeOnly: true,
      adoption: true,
    },
    main,
  ];
}

/** What is cited for a reference date: the citation of its row, or the source that its entry names. */
export function citedFor({ row, entry }: ChosenReference): Said {
  if (entry === null) return citationOf(row);
  if (row.source === '') return phrase('not verified');
  return row.howSure === 'doubtful' ? phrase('{0} (doubtful)', row.source) : row.source;
}

/** From when to when a row was in force; from the day it was made where the table has no other. */
export function referenceDays(row: ReferenceRow): Pick<ChosenReference, 'from' | 'to' | 'madeOnly'> {
  const madeOnly = row.inForceFrom === '';
  return { from: days(madeOnly ? row.made : row.inForceFrom), to: days(row.inForceTo), madeOnly };
}

/** An entry of one's own in the shape of a row. */
function rowOfEntry(catalogue: Catalogue, { id, keys }: Entry<'reference-date'>): ReferenceRow {
  const source = keys.source === undefined ? undefined : catalogue.get(keys.source);
  return {
    id,
    jurisdiction: keys.jurisdiction,
    territory: keys.territory ?? '',
    made: keys.made ?? '',
    inForceFrom: keys['in-force-from'] ?? '',
    inForceTo: keys['in-force-to'] ?? '',
    dateAsGiven: keys['date-as-given'] ?? '',
    calendar: keys.calendar ?? 'gregorian',
    kind: keys.kind ?? '',
    tests: keys.tests ?? 'any',
    retroactive: keys.retroactive ?? 'not known',
    title: titleOf({ keys } as Entry),
    effect: keys.effect ?? '',
    source: source ? titleOf(source) : (keys.source ?? ''),
    standing: keys.standing,
    howSure: keys['how-sure'],
  };
}

function days(text: string): DayRange | null {
  if (text === '') return null;
  const result = readDate(text, 'gregorian', { circa: {}, sunsetDays: 0 });
  return isDateProblem(result) ? null : hullOfExpression(result);
}
