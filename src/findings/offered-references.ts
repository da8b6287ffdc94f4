import { GRADES, rankOf } from '../base/grade.ts';
import { phrase, type Said } from '../base/said.ts';
import type { DayRange } from '../dates/day.ts';
import type { Catalogue } from '../model/catalogue.ts';
import type { Entry } from '../model/entry.ts';
import type { CaseFile } from './case-file.ts';
import { eventsInOrder } from './event-order.ts';
import { daysOf, jurisdictionOf, placeOfEvent, type Rule, rulesOver } from './reach.ts';
import { type ReferenceRow, referenceDays, referenceTable } from './reference-dates.ts';
import { kindsTested } from './reference-tests.ts';

/** Whether a person has chosen a row for this file, declined it, or not yet decided. */
export type Decision = 'chosen' | 'declined' | 'not decided';

/** Rows of the table that the rule over a place offers for an event there. */
export interface OfferedReferences {
  readonly event: Entry<'event'>;
  /** Where it took place; null where neither the event nor its object says so. */
  readonly place: Entry<'place'> | null;
  /** Null where the place, and what it lies within, records no rule at that time. */
  readonly rule: Rule | null;
  /** The name of the territory as the table would have it. */
  readonly jurisdiction: string | null;
  readonly rows: readonly { readonly row: ReferenceRow; readonly decision: Decision }[];
  /** Rows of that territory in the table, at whatever time and for whatever act. */
  readonly rowsOfTerritory: number;
}

/**
 * What the rule over each event's place offers at the time of the event: rows of that territory that speak of such an act
 * and may have been in force then, on probable statements. Nothing is chosen by this; a person chooses or declines.
 */
export function offeredReferences(file: CaseFile): readonly OfferedReferences[] {
  const acts = eventsInOrder(file).filter((event) => ACT_KINDS.includes(event.keys.kind));
  return acts.flatMap((event): readonly OfferedReferences[] => {
    const place = placeOfEvent(file.catalogue, event);
    const time = timeOf(file, event);
    const rules = place ? rulesOver(file.catalogue, place).filter((rule) => overlaps(file, rule, time)) : [];
    if (rules.length === 0) return [{ event, place, rule: null, jurisdiction: null, rows: [], rowsOfTerritory: 0 }];
    return rules.map((rule) => {
      const jurisdiction = jurisdictionOf(rule.jurisdiction ?? rule.power);
      const ofTerritory = referenceTable().filter((row) => row.jurisdiction === jurisdiction);
      const rows = ofTerritory.filter(
        (row) => kindsTested(row.tests)?.includes(event.keys.kind) && mayApply(row, time),
      );
      return {
        event,
        place,
        rule,
        jurisdiction,
        rows: rows.map((row) => ({ row, decision: decisionOn(file.catalogue, row.id) })),
        rowsOfTerritory: ofTerritory.length,
      };
    });
  });
}

/** Kinds of event that some row of the table could be tested on, other than those tested on any act. */
const ACT_KINDS: readonly string[] = [...new Set(referenceTable().flatMap((row) => kindsTested(row.tests) ?? []))];

/** From the earliest beginning to the latest end, at the printed grade, or the first weaker one that bounds it at all. */
function timeOf(file: CaseFile, event: Entry<'event'>): DayRange {
  const start = file.statements.moments.momentOf(event.id, 'start');
  const end = file.statements.moments.momentOf(event.id, 'end');
  const times = GRADES.slice(rankOf(file.settings.printedGrade)).map((_, i): DayRange => {
    const rank = rankOf(file.settings.printedGrade) + i;
    return {
      first: (start ? file.rangesOf(start)[rank]?.earliest?.day : null) ?? Number.NEGATIVE_INFINITY,
      last: (end ? file.rangesOf(end)[rank]?.latest?.day : null) ?? Number.POSITIVE_INFINITY,
    };
  });
  return times.find(({ first, last }) => Number.isFinite(first) || Number.isFinite(last)) ?? (times[0] as DayRange);
}

function overlaps(file: CaseFile, rule: Rule, time: DayRange): boolean {
  const { possible } = daysOf(file, rule);
  return possible.first <= time.last && possible.last >= time.first;
}

/** True where the row may have been in force in that time. */
function mayApply(row: ReferenceRow, time: DayRange): boolean {
  const { from, to } = referenceDays(row);
  return from !== null && from.first <= time.last && (to === null || to.last >= time.first);
}

function decisionOn({ workspace }: Catalogue, id: string): Decision {
  const decided = (workspace?.keys['reference-dates'] ?? []).find(
    (one) => (typeof one === 'string' ? one : one.id) === id,
  );
  return decided === undefined ? 'not decided' : typeof decided === 'string' ? 'chosen' : 'declined';
}

/** What is said where there is nothing to offer; null where there are rows. */
export function sayNothingOffered({ place, rule, rows, rowsOfTerritory }: OfferedReferences): Said | null {
  if (!place) return phrase('no place is recorded for it');
  if (!rule) return phrase('no rule over the place at that time is recorded');
  if (rows.length > 0) return null;
  return rowsOfTerritory === 0
    ? phrase('no rows for {0} in this table', rule.power)
    : phrase(
        'none of the {0} rows for {1} in this table speaks of such an act at that time',
        rowsOfTerritory,
        rule.power,
      );
}
