import { GRADES, type Grade } from '../base/grade.ts';
import { groupBy } from '../base/group-by.ts';
import { oncePer } from '../base/once.ts';
import type { Said } from '../base/said.ts';
import { RANKS, type Tried } from '../chronology/chronology.ts';
import { type Entry, isOfType, type Keys } from '../model/entry.ts';
import type { FileStatement, Moment } from '../statements/statements.ts';
import type { CaseFile } from './case-file.ts';
import { eventsInOrder } from './event-order.ts';
import {
  type HeldAtReference,
  heldAtReference,
  type MomentDays,
  type OrderToReference,
  orderToReference,
  type ReferenceDays,
} from './order-to-reference.ts';
import { placeOfEvent, type Reach, reachOf } from './reach.ts';
import { type ChosenReference, chosenReferences } from './reference-dates.ts';

/** Statements each of which alone would settle an open order, and how. */
export interface Deciding {
  readonly order: ReachedOrder;
  readonly statements: readonly FileStatement[];
}

/** How an event lies to a reference date, where the date speaks of it; that it does not, or that no place is recorded, elsewhere. */
export type ReachedOrder = OrderToReference | 'outside' | 'no place';

/** How an event lies to a reference date at one grade. */
export interface ReferenceAnswer {
  readonly grade: Grade;
  readonly order: ReachedOrder;
  /** Where it is not determined whether the date speaks of the act at all: what would decide. */
  readonly decides: Said | null;
  /** Statements that a settled order rests on. */
  readonly because: readonly FileStatement[];
  /** Where it is undetermined: statements each of which alone would decide it, were it established. */
  readonly decidedBy: readonly Deciding[];
}

/** An event against a reference date, at the four grades. */
export interface EventAtReference {
  readonly event: Entry<'event'>;
  /** Who wrote that it applies, and why; null where nobody did. */
  readonly applied: Applied | null;
  readonly answers: readonly ReferenceAnswer[];
}

/** A person's word that a law applies to an act, whatever the rule over its place says. */
export type Applied = NonNullable<Keys<'event'>['applies']>[number];

/** A holding against a reference date, at the four grades. */
export interface HoldingAtReference {
  readonly holding: Entry<'holding'>;
  readonly answers: readonly ReachedHolding[];
}

/** How somebody's time with a piece lies to a reference date that may not speak of where it lay. */
export type ReachedHolding = HeldAtReference | 'outside' | 'no place' | 'undetermined';

/** A reference date with everything that is tested against it. */
export interface ReferenceTest {
  readonly reference: ChosenReference;
  readonly events: readonly EventAtReference[];
  readonly holdings: readonly HoldingAtReference[];
  /** Acts of the kinds that it speaks of, done where it does not reach. */
  readonly outside: readonly Entry<'event'>[];
}

/** Kinds of event that an act in the table speaks of. */
const ACTS: Readonly<Record<string, readonly string[]>> = {
  removal: ['removal', 'theft or looting'],
  export: ['export'],
  import: ['import'],
  acquisition: [
    'sale',
    'gift',
    'bequest',
    'inheritance',
    'exchange',
    'division of finds',
    'nationalisation',
    'confiscation',
    'forced sale',
    'deaccession',
    'return',
  ],
};

/** The kinds of event that a reference date is tested on; null for every kind. */
export function kindsTested(tests: string): readonly string[] | null {
  const acts = tests.split(/[;,]/).map((act) => act.trim());
  return acts.includes('any') ? null : acts.flatMap((act) => ACTS[act] ?? []);
}

/** Tests every chosen reference date on the acts that it speaks of. The order of dates only. */
export const testReferences = oncePer((file: CaseFile): readonly ReferenceTest[] => {
  const events = eventsInOrder(file);
  return chosenReferences(file.catalogue).flatMap((reference) => {
    const { from, to } = reference;
    if (!from) return [];
    const kinds = kindsTested(reference.row.tests);
    const isHeld = /holding|any/.test(reference.row.tests) || reference.row.kind === 'period';
    const ofItsKinds = events
      .filter((event) => kinds === null || kinds.includes(event.keys.kind))
      .map((event) => eventAt(file, reference, { from, to }, event));
    const isOutside = ({ answers }: EventAtReference): boolean => answers.every((one) => one.order === 'outside');
    return [
      {
        reference,
        events: ofItsKinds.filter((one) => !isOutside(one)),
        outside: ofItsKinds.filter(isOutside).map((one) => one.event),
        holdings: isHeld
          ? file.catalogue
              .ofType('holding')
              .map((holding) => ({
                holding,
                answers: heldAt(file, reference, { from, to: reference.row.kind === 'period' ? to : null }, holding),
              }))
              .filter(({ answers }) => !answers.every((one) => one === 'outside'))
          : [],
      },
    ];
  });
});

function edges(file: CaseFile, entry: Entry): readonly [Moment, Moment] | null {
  const [first, last] = isOfType(entry, 'holding') ? (['begins', 'ends'] as const) : (['start', 'end'] as const);
  const start = file.statements.moments.momentOf(entry.id, first);
  const end = file.statements.moments.momentOf(entry.id, last);
  return start && end ? [start, end] : null;
}

function daysAt(chronology: Tried, rank: number, moment: Moment): MomentDays {
  const [earliest, latest] = (['earliest', 'latest'] as const).map((side) => chronology.day(rank, moment.index, side));
  return { earliest: earliest as number, latest: latest as number };
}

function eventAt(
  file: CaseFile,
  reference: ChosenReference,
  days: ReferenceDays,
  event: Entry<'event'>,
): EventAtReference {
  const applied = (event.keys.applies ?? []).find((one) => one.law === reference.row.id) ?? null;
  return { event, applied, answers: answersFor(file, reference, days, event, applied !== null) };
}

function answersFor(
  file: CaseFile,
  reference: ChosenReference,
  days: ReferenceDays,
  event: Entry<'event'>,
  applies: boolean,
): readonly ReferenceAnswer[] {
  const moments = edges(file, event);
  if (!moments) return [];
  const [start, end] = moments;
  const place = placeOfEvent(file.catalogue, event);
  const reached = (
    chronology: Tried,
    rank: number,
  ): { readonly order: ReachedOrder; readonly decides: Said | null } => {
    const [begun, ended] = [daysAt(chronology, rank, start), daysAt(chronology, rank, end)];
    const order = orderToReference(days, begun, ended);
    const reach: Reach = applies
      ? { is: 'inside' }
      : reachOf(file, reference, place, { first: begun.earliest, last: ended.latest });
    if (reach.is === 'outside' || reach.is === 'no place') return { order: reach.is, decides: null };
    // What came before a law was made came before it wherever it was done.
    if (reach.is !== 'undetermined' || order === 'before') return { order, decides: null };
    // Where the dates leave it open themselves, whether the date reaches there is the second question.
    return { order: 'undetermined', decides: order === 'undetermined' ? null : reach.decides };
  };
  const orderIn = (chronology: Tried, rank: number): ReachedOrder => reached(chronology, rank).order;
  return GRADES.map((grade, rank): ReferenceAnswer => {
    const { order, decides } = reached(file.chronology, rank);
    if (order === 'outside' || order === 'no place') return { grade, order, decides, because: [], decidedBy: [] };
    if (order !== 'undetermined') {
      return { grade, order, decides, because: becauseOf(file, rank, start, end, order), decidedBy: [] };
    }
    const tried = file.inDetail ? candidates(file, rank, [start, end]) : [];
    const settled = tried.map((statement) => ({
      statement: file.statements.used[statement] as FileStatement,
      order: orderIn(file.trial({ ranks: new Map([[statement, 0]]) }), rank),
    }));
    const decidedBy = [...groupBy(settled, (one) => one.order)]
      .filter(([settles]) => settles !== 'undetermined')
      .map(([settles, list]): Deciding => ({ order: settles, statements: list.map((one) => one.statement) }));
    return { grade, order, decides, because: [], decidedBy };
  });
}

/** Statements below a grade, or set aside at it, that bear on these moments at some grade. */
function candidates(file: CaseFile, rank: number, moments: readonly Moment[]): readonly number[] {
  const kept = file.chronology.grades[rank]?.kept;
  const found = new Set<number>();
  for (const moment of moments) {
    for (let below = rank; below < RANKS; below += 1) {
      for (const one of file.chronology.setAside(below, moment.index)) found.add(one);
      for (const side of ['earliest', 'latest'] as const) {
        for (const one of file.chronology.reason(below, moment.index, side).statements) found.add(one);
      }
    }
  }
  return [...found].filter((one) => !kept?.[one]).sort((a, b) => a - b);
}

function becauseOf(
  file: CaseFile,
  rank: number,
  start: Moment,
  end: Moment,
  order: OrderToReference,
): readonly FileStatement[] {
  const bound = (moment: Moment, side: 'earliest' | 'latest'): readonly FileStatement[] =>
    file.rangesOf(moment)[rank]?.[side]?.because ?? [];
  const list =
    order === 'before'
      ? bound(end, 'latest')
      : order === 'after'
        ? bound(start, 'earliest')
        : [
            ...bound(start, order === 'partly' ? 'latest' : 'earliest'),
            ...bound(end, order === 'partly' ? 'earliest' : 'latest'),
          ];
  return [...new Set(list)];
}

function heldAt(
  file: CaseFile,
  reference: ChosenReference,
  days: ReferenceDays,
  holding: Entry<'holding'>,
): readonly ReachedHolding[] {
  const moments = edges(file, holding);
  if (!moments) return [];
  const [begins, ends] = moments;
  const at = file.catalogue.get(holding.keys.place ?? '');
  const place = at && isOfType(at, 'place') ? at : null;
  return GRADES.map((_, rank): ReachedHolding => {
    const [begun, ended] = [daysAt(file.chronology, rank, begins), daysAt(file.chronology, rank, ends)];
    const held = heldAtReference(days, begun, ended);
    if (held === 'not') return held;
    const reach = reachOf(file, reference, place, { first: begun.earliest, last: ended.latest });
    return reach.is === 'inside' ? held : reach.is;
  });
}
