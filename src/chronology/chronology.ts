import { oncePerName } from '../base/once.ts';
import { type Active, type Bounds, propagate } from './bounds.ts';
import type { Stretch } from './choices.ts';
import { type Compiled, compileNetwork } from './compiled.ts';
import { type Disagreements, findDisagreements } from './contradictions.ts';
import type { GradeResult } from './grade-result.ts';
import { keptSets } from './kept-sets.ts';
import type { Network } from './network.ts';
import { type Ranges, rangesOf } from './ranges.ts';
import { type Reason, ReasonFinder } from './reason-finder.ts';
import type { Side } from './reasons.ts';
import { SetAsideFinder } from './set-aside-finder.ts';

export type { Stretch } from './choices.ts';
export { type Link, type Network, type NetworkStatement, ORIGIN, RANKS } from './network.ts';
export type { Side, Step } from './reasons.ts';

/** What a chronology, or a trial of it, answers of a moment. */
export interface Tried {
  /** Earliest or latest day at a grade; infinite where nothing bounds it. */
  day(rank: number, moment: number, side: Side): number;
  /** Why a moment is not earlier (later) at a grade; empty where it is unbounded. */
  reason(rank: number, moment: number, side: Side): Reason;
  /** True where statements of the grade that cannot all be right pass through a moment. */
  isContradicted(rank: number, moment: number): boolean;
  /** The two bounds that cross at a moment when all statements of the grade are taken; null if none do. */
  crossing(rank: number, moment: number): Stretch | null;
}

/** The chronology of a network. */
export interface Chronology extends Tried {
  readonly compiled: Compiled;
  readonly grades: readonly GradeResult[];
  readonly disagreements: Disagreements;
  /** Statements of the grade outside the kept set that alone would tighten or contradict a moment. */
  setAside(rank: number, moment: number): readonly number[];
  stretches(rank: number, moment: number): readonly Stretch[];
}

/** A reader's trial: statements left out, and statements taken at another grade. */
export interface Trial {
  readonly withdrawn?: ReadonlySet<number>;
  /** Rank by statement, where it is not that of the file. */
  readonly ranks?: ReadonlyMap<number, number>;
}

/**
 * Computes ranges at the four grades, with contradictions and reasons; in a `trial`, of the altered
 * file. Results do not depend on the order in which statements are given, apart from their indices.
 * `standing`: the chronology of the same network as it stands, which spares the search for
 * contradictions in a trial.
 */
export function computeChronology(network: Network, trial: Trial = {}, standing: Chronology | null = null): Chronology {
  const { withdrawn, ranks } = trial;
  const altered = ranks?.size ? { ...network, statements: regraded(network, ranks) } : network;
  const compiled = standing ? { ...standing.compiled, network: altered } : compileNetwork(altered);
  const usable = Uint8Array.from(network.statements, (_, i) => (withdrawn?.has(i) ? 0 : 1));
  const known = standing?.grades.every((grade) => grade.ranges.inexact.size === 0) ? standing.disagreements : null;
  const disagreements = findDisagreements(compiled, usable, known);
  const grades = gradeResults(compiled, usable, disagreements, known && standing ? standing.grades : []);
  const reasons = new ReasonFinder(compiled, grades);
  const aside = new SetAsideFinder(compiled, grades);
  return {
    compiled,
    grades,
    disagreements,
    day: (rank, moment, side) => grades[rank]?.ranges[side][moment] as number,
    reason: (rank, moment, side) => reasons.reason(rank, moment, side),
    setAside: (rank, moment) => aside.at(rank, moment),
    isContradicted: (rank, moment) => grades[rank]?.contradicted.has(moment) ?? false,
    crossing: crossingFinder(compiled, grades),
    stretches: (rank, moment) => grades[rank]?.ranges.stretches.get(moment) ?? [],
  };
}

function regraded(network: Network, ranks: ReadonlyMap<number, number>): Network['statements'] {
  return network.statements.map((one, i) => ({ ...one, rank: ranks.get(i) ?? one.rank }));
}

/** Ranges at the four grades, each from its kept set; where that is the one of `standing`, its ranges. */
function gradeResults(
  compiled: Compiled,
  usable: Active,
  disagreements: Disagreements,
  standing: readonly GradeResult[],
): readonly GradeResult[] {
  let better: Ranges | null = null;
  return keptSets(compiled, usable, disagreements.disputed).map(({ all, kept, disputed }, rank): GradeResult => {
    const before = standing[rank];
    const ranges: Ranges =
      before && kept.every((on, i) => on === before.kept[i]) ? before.ranges : rangesOf(compiled, kept, better);
    better = ranges;
    const contradicted = new Set(
      disagreements.contradictions
        .filter((one) => one.kind === 'dates' && one.rank <= rank)
        .flatMap((one) => one.moments),
    );
    return { rank, all, kept, disputed, contradicted, ranges };
  });
}

/** Propagates all statements of a grade, once for all moments that are asked about. */
function crossingFinder(compiled: Compiled, grades: readonly GradeResult[]): Chronology['crossing'] {
  const boundsOf = oncePerName((rank: number): Bounds => propagate(compiled, (grades[rank] as GradeResult).all));
  return (rank, moment) => {
    const grade = grades[rank];
    if (!grade?.contradicted.has(moment)) return null;
    const bounds = boundsOf(rank);
    // In a circle that adds up the days depend on how long one goes round; there is nothing to draw.
    if (bounds.loops.includes(compiled.component[moment] as number)) return null;
    const crossed = { earliest: bounds.earliest[moment] as number, latest: bounds.latest[moment] as number };
    return crossed.earliest > crossed.latest ? crossed : null;
  };
}
