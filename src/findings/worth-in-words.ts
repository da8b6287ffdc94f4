import { GRADES, type Grade } from '../base/grade.ts';
import type { Chronology } from '../chronology/chronology.ts';
import { type BoundChange, widens } from '../chronology/worth.ts';
import { formatBound } from '../dates/wording.ts';
import type { FileStatement, Moment } from '../statements/statements.ts';
import type { CaseFile } from './case-file.ts';
import { sayMoment } from './explain.ts';
import { printedBound } from './printed-range.ts';

/** A bound that is another one without some statement, told once for all grades at which it is. */
export interface ChangeInWords {
  readonly moment: Moment;
  readonly side: 'earliest' | 'latest';
  readonly grades: readonly Grade[];
  readonly effect: 'widens' | 'narrows';
  /** `the beginning of “Taken off the wall”: not before 1929 → not before 1925`. */
  readonly text: string;
}

/** A bound in words as it is at a grade without some statements. */
export function sayBoundWithout(
  file: CaseFile,
  moment: Moment,
  rank: number,
  side: 'earliest' | 'latest',
  withdrawn: readonly FileStatement[],
): string {
  return sayIn(file, withoutThese(file, withdrawn), { rank, moment: moment.index, side });
}

function withoutThese(file: CaseFile, withdrawn: readonly FileStatement[]): Chronology {
  return file.trial({ withdrawn: new Set(withdrawn.map((one) => file.statements.used.indexOf(one))) });
}

function sayIn(
  file: CaseFile,
  chronology: Chronology,
  { rank, moment, side }: Pick<BoundChange, 'rank' | 'moment' | 'side'>,
): string {
  const bound = printedBound(chronology, file.statements.used, rank, moment, side);
  return bound ? `${side === 'earliest' ? 'not before' : 'not after'} ${formatBound(bound)}` : 'not bounded';
}

/**
 * Tells the changes that a withdrawal makes in words; the same change at several grades once. Each
 * day is printed no finer than what it rests on, before and after.
 */
export function sayChanges(
  file: CaseFile,
  changes: readonly BoundChange[],
  withdrawn: readonly FileStatement[],
): readonly ChangeInWords[] {
  if (changes.length === 0) return [];
  const without = withoutThese(file, withdrawn);
  const told = new Map<string, ChangeInWords & { grades: Grade[] }>();
  for (const change of changes) {
    const moment = file.statements.moments.all[change.moment] as Moment;
    const text = `${sayMoment(file, moment)}: ${sayIn(file, file.chronology, change)} → ${sayIn(file, without, change)}`;
    const grade = GRADES[change.rank] as Grade;
    const known = told.get(text);
    if (known) known.grades.push(grade);
    else
      told.set(text, {
        moment,
        side: change.side,
        grades: [grade],
        effect: widens(change) ? 'widens' : 'narrows',
        text,
      });
  }
  return [...told.values()];
}
