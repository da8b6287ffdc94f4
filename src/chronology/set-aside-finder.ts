import { naturalOrder } from '../base/natural-order.ts';
import type { Compiled } from './compiled.ts';
import { isConsistent } from './consistency.ts';
import { contradictedMoments } from './contradictions.ts';
import type { GradeResult } from './grade-result.ts';
import { rangesOf } from './ranges.ts';

/** Finds, for each moment, the statements outside the kept set that would bear on it. */
export class SetAsideFinder {
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
