import { GRADES, type Grade, rankOf } from '../base/grade.ts';
import { naturalOrder } from '../base/natural-order.ts';
import {
  type Chronology,
  computeChronology,
  type Link,
  type Network,
  type Side,
  type Trial,
} from '../chronology/chronology.ts';
import { compileNetwork } from '../chronology/compiled.ts';
import { partOf, tiedGroups } from '../chronology/part-of-network.ts';
import type { PrintedBound } from '../dates/wording.ts';
import { heldAtReference, type MomentDays, orderToReference } from './order-to-reference.ts';
import { printedBound } from './printed-range.ts';
import type { EntryRanges, GradedRange } from './range-changes.ts';
import { sayHeld, sayOrder } from './reference-words.ts';
import type {
  TrialAnswer,
  TrialContradiction,
  TrialEntry,
  TrialFile,
  TrialResult,
  TrialState,
  TrialStatement,
} from './trial-data.ts';

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

/** A piece of the file that nothing ties to the rest, with its chronology as it stands. */
interface Piece {
  readonly network: Network;
  readonly standing: Chronology;
  readonly statements: readonly TrialStatement[];
  readonly indexOf: ReadonlyMap<string, number>;
  /** Entries of the piece, their moments in its own numbers; by their place in the file. */
  readonly entries: ReadonlyMap<number, TrialEntry>;
}

/** What one piece says of its entries and contradictions. */
interface PieceResult {
  readonly rows: ReadonlyMap<number, EntryRanges>;
  readonly contradictions: readonly TrialContradiction[];
}

/**
 * Opens a file for trials. The chronology as it stands is computed once; a trial computes only the
 * pieces of the file that it touches, from the contradictions known in them. Rows that a trial
 * leaves as they were are the same objects, so that a page need not draw them again.
 */
export function openTrials(file: TrialFile): { run(state: TrialState): TrialResult } {
  const pieces = piecesOf(file);
  const standing = pieces.map((piece) => resultOf(piece, piece.standing));
  const before = joined(file, standing, null);
  let last = before;
  return {
    run(state) {
      const results = pieces.map((piece, i) => {
        const trial = trialIn(piece, state);
        return trial
          ? resultOf(piece, computeChronology(piece.network, trial, piece.standing))
          : (standing[i] as PieceResult);
      });
      last = isUnchanged(state) ? before : joined(file, results, last);
      return last;
    },
  };
}

function piecesOf(file: TrialFile): readonly Piece[] {
  const whole = compileNetwork({
    moments: file.moments,
    axioms: file.axioms,
    statements: file.statements.map(({ id, grade, links, choice, order }) => ({
      id,
      rank: rankOf(grade),
      links: links.map(revived),
      ...(choice ? { choice: choice.map((member) => member.map(revived)) } : {}),
      ...(order ? { order } : {}),
    })),
  });
  const all = new Uint8Array(file.statements.length).fill(1);
  return tiedGroups(whole, all).map((group): Piece => {
    const { compiled, moments, statements } = partOf(whole, group);
    const local = new Map(moments.map((moment, i) => [moment, i]));
    const entries = file.entries.flatMap((entry, i) => {
      const [start, end] = [local.get(entry.start), local.get(entry.end)];
      return start === undefined || end === undefined ? [] : [[i, { ...entry, start, end }] as const];
    });
    return {
      network: compiled.network,
      standing: computeChronology(compiled.network),
      statements: statements.map((i) => file.statements[i] as TrialStatement),
      indexOf: new Map(statements.map((i, place) => [file.statements[i]?.id ?? '', place])),
      entries: new Map(entries),
    };
  });
}

/** JSON has no infinity: a missing day is that of an open end, which bounds nothing. */
function revived(link: Link): Link {
  return link.days === null ? { ...link, days: Number.NEGATIVE_INFINITY } : link;
}

/** The part of a state that falls into a piece; null where none does. */
function trialIn({ indexOf }: Piece, { withdrawn, grades }: TrialState): Trial | null {
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

function resultOf({ statements, entries }: Piece, chronology: Chronology): PieceResult {
  return {
    rows: new Map([...entries].map(([i, entry]) => [i, rowOf(statements, chronology, entry)])),
    contradictions: chronology.disagreements.contradictions.map((one) => ({
      kind: one.kind,
      grade: GRADES[one.rank] as Grade,
      statements: one.statements.map((i) => statements[i]?.id ?? ''),
    })),
  };
}

/** An entry of which nothing is said. */
const UNBOUNDED: GradedRange = { earliest: null, latest: null, consistent: true };

function joined(file: TrialFile, results: readonly PieceResult[], last: TrialResult | null): TrialResult {
  const found = new Map(results.flatMap((one) => [...one.rows]));
  const rows = file.entries.map((entry, i): EntryRanges => {
    const row = found.get(i);
    const ranges = GRADES.map(() => UNBOUNDED);
    return keep(
      last?.rows[i],
      row ?? { id: entry.id, title: entry.title, starts: ranges, ends: ranges, crossing: null },
    );
  });
  const contradictions = results.flatMap((one) => one.contradictions);
  return { rows, contradictions: contradictions.sort(compareContradictions), answers: answersOf(file, rows, last) };
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

function rowOf(statements: readonly TrialStatement[], chronology: Chronology, entry: TrialEntry): EntryRanges {
  const starts = rangesOf(statements, chronology, entry.start);
  return {
    id: entry.id,
    title: entry.title,
    starts,
    ends: entry.end === entry.start ? starts : rangesOf(statements, chronology, entry.end),
    crossing: chronology.crossing(3, entry.start) ?? chronology.crossing(3, entry.end),
  };
}

/** A bound that no further grade moves keeps its reason, and so the way in which it is printed. */
function rangesOf(
  statements: readonly TrialStatement[],
  chronology: Chronology,
  moment: number,
): readonly GradedRange[] {
  const ranges: GradedRange[] = [];
  chronology.grades.forEach((grade, rank) => {
    const bound = (side: Side): PrintedBound | null => {
      const better = ranges[rank - 1]?.[side];
      if (better && better.day === grade.ranges[side][moment]) return better;
      return printedBound(chronology, statements, rank, moment, side);
    };
    ranges.push({
      earliest: bound('earliest'),
      latest: bound('latest'),
      consistent: !grade.contradicted.has(moment),
    });
  });
  return ranges;
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
