import { naturalOrder } from '../base/natural-order.ts';
import { type Active, type Bounds, propagate } from './bounds.ts';
import type { Stretch } from './choices.ts';
import { AXIOM, type Compiled, compileNetwork } from './compiled.ts';
import { isConsistent } from './consistency.ts';
import { contradictedMoments, type Disagreements, findDisagreements } from './contradictions.ts';
import { keptSets } from './kept-sets.ts';
import type { Network } from './network.ts';
import { type Ranges, rangesOf } from './ranges.ts';
import { type Chains, findChains, type Side, type Step } from './reasons.ts';

export type { Stretch } from './choices.ts';
export { type Link, type Network, type NetworkStatement, ORIGIN, RANKS } from './network.ts';
export type { Side, Step } from './reasons.ts';

/** Why a bound holds. */
export interface Reason {
  /** Ids of the statements, from the dated one outward. */
  readonly statements: readonly number[];
  /** The chain of links; where members of dates with gaps were excluded, of the surviving choice. */
  readonly steps: readonly Step[];
}

/** Everything computed at one grade. */
export interface GradeResult {
  readonly rank: number;
  /** Statements of this grade or better. */
  readonly all: Active;
  /** The kept set: what ranges are computed from. */
  readonly kept: Active;
  readonly disputed: ReadonlySet<number>;
  readonly ranges: Ranges;
  /** Moments through which a contradiction of this grade or better passes. */
  readonly contradicted: ReadonlySet<number>;
}

/** The chronology of a network. */
export interface Chronology {
  readonly compiled: Compiled;
  readonly grades: readonly GradeResult[];
  readonly disagreements: Disagreements;
  /** Why a moment is not earlier (later) at a grade; empty where it is unbounded. */
  reason(rank: number, moment: number, side: Side): Reason;
  /** Statements of the grade outside the kept set that alone would tighten or contradict a moment. */
  setAside(rank: number, moment: number): readonly number[];
  stretches(rank: number, moment: number): readonly Stretch[];
  /** The two bounds that cross at a moment when all statements of the grade are taken; null if none do. */
  crossing(rank: number, moment: number): Stretch | null;
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
    reason: (rank, moment, side) => reasons.reason(rank, moment, side),
    setAside: (rank, moment) => aside.at(rank, moment),
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
  const known = new Map<number, Bounds>();
  return (rank, moment) => {
    const grade = grades[rank];
    if (!grade?.contradicted.has(moment)) return null;
    const bounds = known.get(rank) ?? propagate(compiled, grade.all);
    known.set(rank, bounds);
    const crossed = { earliest: bounds.earliest[moment] as number, latest: bounds.latest[moment] as number };
    return crossed.earliest > crossed.latest ? crossed : null;
  };
}

/** True where a bound is infinite, so that nothing has to be explained. */
function isOpen(day: number): boolean {
  return !Number.isFinite(day);
}

const NO_REASON: Reason = { statements: [], steps: [] };

/** Chains already found, by the bounds that they explain and the side. */
const knownChains: Readonly<Record<Side, WeakMap<Bounds, Chains>>> = { earliest: new WeakMap(), latest: new WeakMap() };

/** Finds reasons on demand; chains of a grade are found once for all moments. */
class ReasonFinder {
  private readonly compiled: Compiled;
  private readonly grades: readonly GradeResult[];

  constructor(compiled: Compiled, grades: readonly GradeResult[]) {
    this.compiled = compiled;
    this.grades = grades;
  }

  reason(rank: number, moment: number, side: Side): Reason {
    const here = this.grades[rank] as GradeResult;
    const day = here.ranges[side][moment] as number;
    if (isOpen(day)) return NO_REASON;
    const better = this.grades[rank - 1];
    if (better && better.ranges[side][moment] === day) return this.reason(rank - 1, moment, side);
    if (here.ranges.hull[side][moment] === day) {
      const steps = this.hullChains(here, side).chainOf(moment);
      return { steps, statements: ownersOf(steps) };
    }
    return this.chosenReason(here, moment, side, day);
  }

  private hullChains(grade: GradeResult, side: Side): Chains {
    const known = knownChains[side].get(grade.ranges.hull);
    if (known) return known;
    const fresh = findChains(this.compiled, grade.kept, grade.ranges.hull, side);
    knownChains[side].set(grade.ranges.hull, fresh);
    return fresh;
  }

  /** The chain of the surviving choice in front, then what excludes the other members. */
  private chosenReason(grade: GradeResult, moment: number, side: Side, day: number): Reason {
    const group = grade.ranges.chosen.find(({ part }) => part.moments.includes(moment));
    const local = group?.part.moments.indexOf(moment) ?? -1;
    const solution = group?.solutions.find(({ bounds }) => bounds[side][local] === day);
    if (!group || !solution) return NO_REASON;
    const active = new Uint8Array(group.part.statements.length).fill(1);
    const chains = findChains(group.part.compiled, active, solution.bounds, side, solution.domains);
    const steps = chains.chainOf(local).map((step) => ({
      ...step,
      owner: step.owner === AXIOM ? AXIOM : (group.part.statements[step.owner] as number),
      moment: group.part.moments[step.moment] as number,
    }));
    const chain = ownersOf(steps);
    const forcing = this.forcingSet(grade, group.part.statements, chain, moment, side, day);
    return {
      steps,
      statements: [...chain.filter((one) => forcing.includes(one)), ...forcing.filter((one) => !chain.includes(one))],
    };
  }

  /** An irreducible set of statements of the group that still forces the bound. */
  private forcingSet(
    grade: GradeResult,
    group: readonly number[],
    chain: readonly number[],
    moment: number,
    side: Side,
    day: number,
  ): readonly number[] {
    const { statements } = this.compiled.network;
    const order = (one: number): number => (chain.includes(one) ? -1 : (statements[one]?.rank ?? 0));
    const kept = new Set(group.filter((one) => grade.kept[one]));
    const attempts = [...kept].sort(
      (a, b) => order(b) - order(a) || naturalOrder(statements[b]?.id ?? '', statements[a]?.id ?? ''),
    );
    for (const one of attempts) {
      kept.delete(one);
      const active = Uint8Array.from(statements, (_, i) => (kept.has(i) ? 1 : 0));
      const value = rangesOf(this.compiled, active, null)[side][moment] as number;
      if (side === 'earliest' ? value < day : value > day) kept.add(one);
    }
    return [...kept].sort((a, b) => naturalOrder(statements[a]?.id ?? '', statements[b]?.id ?? ''));
  }
}

/** Statements of a chain, each once, in the order of the chain. */
function ownersOf(steps: readonly Step[]): readonly number[] {
  return [...new Set(steps.map((step) => step.owner).filter((owner) => owner !== AXIOM))];
}

/** Finds, for each moment, the statements outside the kept set that would bear on it. */
class SetAsideFinder {
  private readonly compiled: Compiled;
  private readonly grades: readonly GradeResult[];
  private readonly known = new Map<number, ReadonlyMap<number, readonly number[]>>();

  constructor(compiled: Compiled, grades: readonly GradeResult[]) {
    this.compiled = compiled;
    this.grades = grades;
  }

  at(rank: number, moment: number): readonly number[] {
    let byMoment = this.known.get(rank);
    if (!byMoment) {
      byMoment = this.find(this.grades[rank] as GradeResult);
      this.known.set(rank, byMoment);
    }
    return byMoment.get(moment) ?? [];
  }

  private find(grade: GradeResult): ReadonlyMap<number, readonly number[]> {
    const { statements } = this.compiled.network;
    const outside = statements
      .map((_, i) => i)
      .filter((i) => grade.all[i] && !grade.kept[i])
      .sort((a, b) => naturalOrder(statements[a]?.id ?? '', statements[b]?.id ?? ''));
    const byMoment = new Map<number, number[]>();
    for (const one of outside) {
      for (const moment of this.touched(grade, one)) {
        const list = byMoment.get(moment);
        if (list) list.push(one);
        else byMoment.set(moment, [one]);
      }
    }
    return byMoment;
  }

  /** Moments that one more statement would tighten, or through which it would contradict. */
  private touched(grade: GradeResult, one: number): readonly number[] {
    const active = grade.kept.slice();
    active[one] = 1;
    if (!isConsistent(this.compiled, active)) {
      return contradictedMoments(this.compiled, active);
    }
    const ranges = rangesOf(this.compiled, active, null);
    const moments: number[] = [];
    for (let moment = 0; moment < this.compiled.moments; moment += 1) {
      const same =
        ranges.earliest[moment] === grade.ranges.earliest[moment] &&
        ranges.latest[moment] === grade.ranges.latest[moment];
      if (!same) moments.push(moment);
    }
    return moments;
  }
}
