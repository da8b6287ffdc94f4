import { GRADES, type Grade, rankOf } from '../base/grade.ts';
import { naturalOrder } from '../base/natural-order.ts';
import { computeChronology, type Link, type Network, type Trial, type Tried } from '../chronology/chronology.ts';
import { openTrials, type TriedContradiction } from '../chronology/trials.ts';
import type { PrintedBound } from '../dates/printed-bound.ts';
import { heldAtReference, type MomentDays, orderToReference } from './order-to-reference.ts';
import { type GradedRange, printedRanges } from './printed-range.ts';
import type { EntryRanges } from './range-changes.ts';
import { sayHeld, sayOrder } from './reference-words.ts';
import type { TrialAnswer, TrialContradiction, TrialEntry, TrialFile, TrialResult, TrialState } from './trial-data.ts';

export type {
  TrialAnswer,
  TrialContradiction,
  TrialEntry,
  TrialFile,
  TrialReference,
  TrialResult,
  TrialState,
  TrialStatement,
} from './trial-data.ts';

/** The file as it stands. */
export const NO_CHANGE: TrialState = { withdrawn: [], grades: {} };

/** A file opened for trials. */
export interface OpenedTrials {
  run(state: TrialState): TrialResult;
}

/**
 * Opens a file for trials (see src/chronology/trials.ts: only what is tied to the statements of a trial is computed). Rows
 * that a trial leaves as they were are the same objects, so that a page need not draw them again.
 * @param standing the chronology of the file as it stands, where it is known already
 */
export function openTrialFile(file: TrialFile, standing = computeChronology(networkOf(file))): OpenedTrials {
  const trials = openTrials(standing);
  const indexOf = new Map(file.statements.map((one, i) => [one.id, i]));
  const inOrder = contradictionsIn(file, standing.disagreements.contradictions);
  const rows = file.entries.map((entry) => rowOf(file, standing, entry));
  const before: TrialResult = { rows, contradictions: inOrder, answers: answersOf(file, rows, null) };
  let last = before;
  return {
    run(state) {
      const trial = trialOf(indexOf, state);
      if (trial === null) last = before;
      else {
        const tried = trials.of(trial);
        const touched = new Set(tried.moments);
        const tell = (entry: TrialEntry, i: number): EntryRanges =>
          touched.has(entry.start) || touched.has(entry.end)
            ? keep(last.rows[i], rowOf(file, tried, entry))
            : (rows[i] as EntryRanges);
        const told = file.entries.map(tell);
        const contradictions = contradictionsIn(file, tried.contradictions);
        last = { rows: told, contradictions, answers: answersOf(file, told, last) };
      }
      return last;
    },
  };
}

function networkOf(file: TrialFile): Network {
  return {
    moments: file.moments,
    axioms: file.axioms,
    statements: file.statements.map(({ id, grade, links, choice, order }) => ({
      id,
      rank: rankOf(grade),
      links: links.map(revived),
      ...(choice ? { choice: choice.map((member) => member.map(revived)) } : {}),
      ...(order ? { order } : {}),
    })),
  };
}

/** JSON has no infinity: a missing day is that of an open end, which bounds nothing. */
function revived(link: Link): Link {
  return link.days === null ? { ...link, days: Number.NEGATIVE_INFINITY } : link;
}

/** The part of a state that falls into a piece; null where none does. */
/** A reader's state as a trial; null where it changes nothing that is in the file. */
function trialOf(indexOf: ReadonlyMap<string, number>, { withdrawn, grades }: TrialState): Trial | null {
  const out = new Set(withdrawn.flatMap((id) => indexOf.get(id) ?? []));
  const ranks = new Map(
    Object.entries(grades).flatMap(([id, grade]) => {
      const index = indexOf.get(id);
      return index === undefined ? [] : [[index, rankOf(grade)] as const];
    }),
  );
  return out.size + ranks.size === 0 ? null : { withdrawn: out, ranks };
}

/** True where a state changes nothing. */
export function isUnchanged(state: TrialState): boolean {
  return state.withdrawn.length === 0 && Object.keys(state.grades).length === 0;
}

function contradictionsIn(file: TrialFile, found: readonly TriedContradiction[]): readonly TrialContradiction[] {
  const told = found.map((one) => ({
    kind: one.kind,
    grade: GRADES[one.rank] as Grade,
    statements: one.statements.map((i) => file.statements[i]?.id ?? ''),
  }));
  return told.sort(compareContradictions);
}

function compareContradictions(a: TrialContradiction, b: TrialContradiction): number {
  return (
    (a.kind === b.kind ? 0 : a.kind === 'dates' ? -1 : 1) ||
    rankOf(a.grade) - rankOf(b.grade) ||
    a.statements.length - b.statements.length ||
    naturalOrder(a.statements.join(' '), b.statements.join(' '))
  );
}

function keep(before: EntryRanges | undefined, after: EntryRanges): EntryRanges {
  const same =
    before &&
    before.crossing?.earliest === after.crossing?.earliest &&
    before.crossing?.latest === after.crossing?.latest &&
    sameRanges(before.starts, after.starts) &&
    sameRanges(before.ends, after.ends);
  return same ? before : after;
}

function sameRanges(before: readonly GradedRange[], after: readonly GradedRange[]): boolean {
  return before.every((one, i) => {
    const other = after[i] as GradedRange;
    return (
      one.consistent === other.consistent &&
      sameBound(one.earliest, other.earliest) &&
      sameBound(one.latest, other.latest)
    );
  });
}

function sameBound(a: PrintedBound | null, b: PrintedBound | null): boolean {
  return a?.day === b?.day && a?.precision === b?.precision && a?.about === b?.about;
}

function rowOf(file: TrialFile, tried: Tried, entry: TrialEntry): EntryRanges {
  const starts = printedRanges(tried, file.statements, entry.start);
  return {
    id: entry.id,
    title: entry.title,
    starts,
    ends: entry.end === entry.start ? starts : printedRanges(tried, file.statements, entry.end),
    crossing: tried.crossing(3, entry.start) ?? tried.crossing(3, entry.end),
  };
}

/** Answers; those of rows that are the same objects as before are the same objects too. */
function answersOf(file: TrialFile, rows: readonly EntryRanges[], last: TrialResult | null): readonly TrialAnswer[] {
  const byId = new Map(rows.map((row, i) => [row.id, { row, same: row === last?.rows[i] }]));
  let count = -1;
  return file.references.flatMap((reference) =>
    reference.entries.flatMap((id) => {
      const found = byId.get(id);
      if (!found) return [];
      const { row, same } = found;
      count += 1;
      const before = last?.answers[count];
      if (same && before) return [before];
      const words = GRADES.map((_, rank) => {
        const [start, end] = [daysOf(row.starts[rank]), daysOf(row.ends[rank])];
        return reference.asks === 'order'
          ? sayOrder(orderToReference(reference, start, end))
          : sayHeld(heldAtReference(reference, start, end));
      });
      return [{ reference: reference.title, entry: id, title: row.title, words }];
    }),
  );
}

function daysOf(range: GradedRange | undefined): MomentDays {
  return {
    earliest: range?.earliest?.day ?? Number.NEGATIVE_INFINITY,
    latest: range?.latest?.day ?? Number.POSITIVE_INFINITY,
  };
}
