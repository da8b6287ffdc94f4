import { GRADES, type Grade } from '../base/grade.ts';
import type { Chronology } from '../chronology/chronology.ts';
import type { PrintedBound } from '../dates/wording.ts';
import type { Entry } from '../model/entry.ts';
import type { FileStatement } from '../statements/statements.ts';
import type { CaseFile, FileContradiction } from './case-file.ts';
import { eventsInOrder } from './event-order.ts';
import { printedBound } from './printed-range.ts';

/** From the earliest beginning to the latest end. */
export interface EntryRange {
  readonly earliest: PrintedBound | null;
  readonly latest: PrintedBound | null;
}

/** A cluster of contradictions, with what the dates become under each way out of it. */
export interface ClusterOfContradictions {
  readonly number: number;
  readonly complete: boolean;
  readonly contradictions: readonly FileContradiction[];
  /** The grade at which all contradictions of the cluster are at play; the ranges are those of this grade. */
  readonly grade: Grade;
  /** Events and holdings whose dates are not the same under every way. */
  readonly affected: readonly Entry[];
  /** Ranges of the affected entries as the file stands: resting on nothing that is in dispute. */
  readonly standing: readonly EntryRange[];
  readonly ways: readonly {
    readonly withdrawn: readonly FileStatement[];
    readonly ranges: readonly EntryRange[];
  }[];
}

/** Contradictions by cluster; nothing is picked, every way out stands beside the others. */
export function clustersOfContradictions(file: CaseFile): readonly ClusterOfContradictions[] {
  const { clusters } = file.chronology.disagreements;
  return clusters.map((cluster): ClusterOfContradictions => {
    const contradictions = file.contradictions.filter((one) => one.cluster === cluster.number);
    const rank = Math.max(...contradictions.map((one) => GRADES.indexOf(one.grade)));
    const trials = file.inDetail ? cluster.waysOut.map((way) => file.trial({ withdrawn: new Set(way) })) : [];
    const timed = [...eventsInOrder(file), ...file.catalogue.ofType('holding')];
    const rangeIn = (chronology: Chronology, entry: Entry): EntryRange => rangeOfEntry(file, chronology, rank, entry);
    const affected = timed.filter((entry) => {
      const standing = keyOf(rangeIn(file.chronology, entry));
      return trials.some((trial) => keyOf(rangeIn(trial, entry)) !== standing);
    });
    return {
      number: cluster.number,
      complete: cluster.complete,
      contradictions,
      grade: GRADES[rank] as Grade,
      affected,
      standing: affected.map((entry) => rangeIn(file.chronology, entry)),
      ways: cluster.waysOut.map((way, i) => ({
        withdrawn: way.map((one) => file.statements.used[one] as FileStatement),
        ranges: affected.map((entry) => rangeIn(trials[i] as Chronology, entry)),
      })),
    };
  });
}

/** The range of an event or a holding in some chronology of the file, as it may be printed. */
export function rangeOfEntry(file: CaseFile, chronology: Chronology, rank: number, entry: Entry): EntryRange {
  const [first, last] = entry.type === 'holding' ? (['begins', 'ends'] as const) : (['start', 'end'] as const);
  const { moments, used } = file.statements;
  const start = moments.momentOf(entry.id, first);
  const end = moments.momentOf(entry.id, last);
  return {
    earliest: start && printedBound(chronology, used, rank, start.index, 'earliest'),
    latest: end && printedBound(chronology, used, rank, end.index, 'latest'),
  };
}

function keyOf({ earliest, latest }: EntryRange): string {
  return `${earliest?.day} ${latest?.day}`;
}
