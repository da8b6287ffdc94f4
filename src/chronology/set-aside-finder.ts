import { naturalOrder } from '../base/natural-order.ts';
import { oncePerName } from '../base/once.ts';
import type { Compiled } from './compiled.ts';
import { isConsistent } from './consistency.ts';
import { contradictedMoments } from './contradictions.ts';
import type { GradeResult } from './grade-result.ts';
import { type Part, partOf, tiedGroups } from './part-of-network.ts';
import { rangesOf } from './ranges.ts';

/** Finds, for each moment, the statements outside the kept set that would bear on it. */
export class SetAsideFinder {
  private readonly compiled: Compiled;
  private readonly grades: readonly GradeResult[];
  private readonly byMoment = oncePerName((rank: number) => this.find(this.grades[rank] as GradeResult));

  constructor(compiled: Compiled, grades: readonly GradeResult[]) {
    this.compiled = compiled;
    this.grades = grades;
  }

  at(rank: number, moment: number): readonly number[] {
    return this.byMoment(rank).get(moment) ?? [];
  }

  private find(grade: GradeResult): ReadonlyMap<number, readonly number[]> {
    const { statements } = this.compiled.network;
    const outside = statements
      .map((_, i) => i)
      .filter((i) => grade.all[i] && !grade.kept[i])
      .sort((a, b) => naturalOrder(statements[a]?.id ?? '', statements[b]?.id ?? ''));
    const groupOf = outside.length > 0 ? groupsByMember(tiedGroups(this.compiled, grade.all)) : new Map();
    const byMoment = new Map<number, number[]>();
    for (const one of outside) {
      for (const moment of this.touched(grade, groupOf.get(one) ?? [one], one)) {
        const list = byMoment.get(moment);
        if (list) list.push(one);
        else byMoment.set(moment, [one]);
      }
    }
    return byMoment;
  }

  /**
   * Moments that one more statement would tighten, or through which it would contradict. Only what is tied to it can
   * move, so only that is solved: `group` is every statement of the grade that is.
   */
  private touched(grade: GradeResult, group: readonly number[], one: number): readonly number[] {
    const part = partOf(
      this.compiled,
      group.filter((other) => other === one || grade.kept[other]),
    );
    const active = new Uint8Array(part.statements.length).fill(1);
    const moments = isConsistent(part.compiled, active)
      ? this.moved(grade, part, active)
      : contradictedMoments(part.compiled, active);
    return moments.map((local) => part.moments[local] as number);
  }

  /** Moments of a part that do not lie where they do in the whole. */
  private moved(grade: GradeResult, part: Part, active: Uint8Array): readonly number[] {
    const ranges = rangesOf(part.compiled, active, null);
    return part.moments.flatMap((moment, local) =>
      ranges.earliest[local] === grade.ranges.earliest[moment] && ranges.latest[local] === grade.ranges.latest[moment]
        ? []
        : [local],
    );
  }
}

function groupsByMember(groups: readonly (readonly number[])[]): ReadonlyMap<number, readonly number[]> {
  return new Map(groups.flatMap((group) => group.map((member) => [member, group] as const)));
}
