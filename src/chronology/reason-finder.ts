import { naturalOrder } from '../base/natural-order.ts';
import { foundWith, oncePerName } from '../base/once.ts';
import { AXIOM, type Compiled } from './compiled.ts';
import type { GradeResult } from './grade-result.ts';
import { rangesOf } from './ranges.ts';
import { type Chains, findChains, type Side, type Step } from './reasons.ts';

/** Why a bound holds. */
export interface Reason {
  /** Ids of the statements, from the dated one outward. */
  readonly statements: readonly number[];
  /** The chain of links; where members of dates with gaps were excluded, of the surviving choice. */
  readonly steps: readonly Step[];
}

/** True where a bound is infinite, so that nothing has to be explained. */
function isOpen(day: number): boolean {
  return !Number.isFinite(day);
}

const NO_REASON: Reason = { statements: [], steps: [] };

/** Finds reasons on demand; chains of a grade are found once for all moments. */
export class ReasonFinder {
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

  /** The chains that explain the bounds of a grade; trials that leave the bounds as they are share them. */
  private hullChains({ kept, ranges: { hull } }: GradeResult, side: Side): Chains {
    const chainsOn = foundWith(hull, findChains, () =>
      oncePerName((one: Side) => findChains(this.compiled, kept, hull, one)),
    );
    return chainsOn(side);
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
