import { GRADES, type Grade } from '../base/grade.ts';
import type { Moment } from '../statements/statements.ts';
import type { CaseFile } from './case-file.ts';

/** A bound that rests on some entry. */
export interface RestingBound {
  readonly moment: Moment;
  readonly side: 'earliest' | 'latest';
  /** The best grade at which it rests on it. */
  readonly grade: Grade;
}

/** For every entry, the bounds that rest on a statement written in it or taken from it as a source. */
export function findResting(file: CaseFile): ReadonlyMap<string, readonly RestingBound[]> {
  const resting = new Map<string, Map<string, RestingBound>>();
  for (const moment of file.statements.moments.all) {
    const ranges = file.rangesOf(moment);
    for (const [rank, range] of ranges.entries()) {
      for (const side of ['earliest', 'latest'] as const) {
        // The same day as at the better grade has the same reason there.
        if (range[side]?.day === ranges[rank - 1]?.[side]?.day) continue;
        const bases = new Set(
          (range[side]?.because ?? []).flatMap((one) => [one.entry, ...(one.source ? [one.source] : [])]),
        );
        for (const entry of bases) {
          if (entry === moment.entry) continue;
          const list = resting.get(entry) ?? new Map<string, RestingBound>();
          resting.set(entry, list);
          const key = `${moment.index} ${side}`;
          if (!list.has(key)) list.set(key, { moment, side, grade: GRADES[rank] as Grade });
        }
      }
    }
  }
  return new Map([...resting].map(([entry, list]) => [entry, [...list.values()]]));
}
