import type { DayRange } from '../dates/day.ts';
import { isDateProblem, readDate } from '../dates/read-date.ts';
import { hullOfExpression } from '../dates/wording.ts';
import type { Catalogue } from '../model/catalogue.ts';
import table from '../reference/reference-dates.json' with { type: 'json' };

/** A row of the built-in table of laws, treaties, policies and periods. */
export type ReferenceRow = (typeof table)[number];

/** The built-in table; every row with its source, its standing and how sure it is. */
export const REFERENCE_ROWS: readonly ReferenceRow[] = table;

/** A reference date chosen for a workspace, with the days that it falls on. */
export interface ChosenReference {
  readonly id: string;
  readonly title: string;
  readonly row: ReferenceRow;
  /** When it came into force; where the table has no such day, when it was made. */
  readonly from: DayRange | null;
  readonly to: DayRange | null;
  /** True where only the day on which it was made is known. */
  readonly madeOnly: boolean;
}

/** Reference dates that the workspace chose, in order of time. */
export function chosenReferences(catalogue: Catalogue): readonly ChosenReference[] {
  const chosen = catalogue.workspace?.keys['reference-dates'] ?? [];
  const rows = chosen.flatMap((one) => (typeof one === 'string' ? REFERENCE_ROWS.filter((row) => row.id === one) : []));
  return rows
    .map((row): ChosenReference => {
      const start = row.inForceFrom === '' ? row.made : row.inForceFrom;
      return {
        id: row.id,
        title: row.title,
        row,
        from: days(start),
        to: days(row.inForceTo),
        madeOnly: row.inForceFrom === '',
      };
    })
    .sort((a, b) => (a.from?.first ?? 0) - (b.from?.first ?? 0));
}

function days(text: string): DayRange | null {
  if (text === '') return null;
  const result = readDate(text, 'gregorian', { circa: {}, sunsetDays: 0 });
  return isDateProblem(result) ? null : hullOfExpression(result);
}
