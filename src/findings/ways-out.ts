import { GRADES, type Grade } from '../base/grade.ts';
import type { Tried } from '../chronology/chronology.ts';
import type { Entry } from '../model/entry.ts';
import type { FileStatement, Moment } from '../statements/statements.ts';
import type { CaseFile, FileContradiction } from './case-file.ts';
import { eventsInOrder } from './event-order.ts';
import { fromTo, type PrintedRange, printedRange, UNBOUNDED } from './printed-range.ts';

/** A cluster of contradictions, with what the dates become under each way out of it. */
export interface ClusterOfContradictions {
  readonly number: number;
  readonly complete: boolean;
  readonly contradictions: readonly FileContradiction[];
  /** The grade at which all contradictions of the cluster are at play; the ranges are those of this grade. */
  readonly grade: Grade;
  /** Events and holdings whose dates are not the same under every way; traces where there are none. */
  readonly affected: readonly Entry[];
  /** Ranges of the affected entries as the file stands: resting on nothing that is in dispute. */
  readonly standing: readonly PrintedRange[];
  readonly ways: readonly {
    readonly withdrawn: readonly FileStatement[];
    readonly ranges: readonly PrintedRange[];
  }[];
}

/** Contradictions by cluster; nothing is picked, every way out stands beside the others. */
export function clustersOfContradictions(file: CaseFile): readonly ClusterOfContradictions[] {
  const { clusters } = file.chronology.disagreements;
  return clusters.map((cluster): ClusterOfContradictions => {
    const contradictions = file.contradictions.filter((one) => one.cluster === cluster.number);
    const rank = Math.max(...contradictions.map((one) => GRADES.indexOf(one.grade)));
    const isTried = contradictions.every((one) => one.statements.every((it) => file.isSmall(file.placeOf(it))));
    const trials = isTried ? cluster.waysOut.map((way) => file.trial({ withdrawn: new Set(way) })) : [];
    const rangeIn = (chronology: Tried, entry: Entry): PrintedRange => rangeOfEntry(file, chronology, rank, entry);
    const moves = (entry: Entry): boolean => {
      const standing = keyOf(file, file.chronology, rank, entry);
      return trials.some((trial) => keyOf(file, trial, rank, entry) !== standing);
    };
    // Only what is tied to the statements can move.
    const moments = new Set(trials.flatMap((trial) => trial.moments));
    const near = new Set([...moments].map((moment) => file.statements.moments.all[moment]?.entry));
    const moving = (list: readonly Entry[]): readonly Entry[] => list.filter((one) => near.has(one.id) && moves(one));
    const told = moving([...eventsInOrder(file), ...file.catalogue.ofType('holding')]);
    // Traces follow from events as a rule; they stand alone only where no event or holding moves.
    const affected = told.length > 0 ? told : moving(file.catalogue.ofType('evidence'));
    return {
      number: cluster.number,
      complete: cluster.complete,
      contradictions,
      grade: GRADES[rank] as Grade,
      affected,
      standing: affected.map((entry) => rangeIn(file.chronology, entry)),
      ways: cluster.waysOut.map((way, i) => ({
        withdrawn: way.map((one) => file.statements.used[one] as FileStatement),
        ranges: affected.map((entry) => rangeIn(trials[i] as Tried, entry)),
      })),
    };
  });
}

/** The range of an event, a holding or a trace in some chronology of the file, as it may be printed. */
export function rangeOfEntry(file: CaseFile, chronology: Tried, rank: number, entry: Entry): PrintedRange {
  const { moments, used } = file.statements;
  const mine = moments.ofEntry(entry.id);
  const rangeOf = (moment: Moment | undefined): PrintedRange =>
    moment ? printedRange(chronology, used, rank, moment.index) : UNBOUNDED;
  return fromTo(rangeOf(mine[0]), rangeOf(mine.at(-1)));
}

/** All bounds of an entry in a chronology, to see whether any moves. */
function keyOf(file: CaseFile, chronology: Tried, rank: number, entry: Entry): string {
  return file.statements.moments
    .ofEntry(entry.id)
    .map(({ index }) => `${chronology.day(rank, index, 'earliest')} ${chronology.day(rank, index, 'latest')}`)
    .join(' ');
}
