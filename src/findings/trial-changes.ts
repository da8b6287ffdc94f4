import { GRADES, type Grade } from '../base/grade.ts';
import { type EntryRanges, rangeChanges, sayChanged } from './range-changes.ts';
import type { TrialContradiction, TrialResult } from './run-trial.ts';

/** What a trial changed, in words: dates, contradictions, order to reference dates. */
export interface TrialChanges {
  readonly dates: readonly string[];
  readonly contradictions: readonly string[];
  readonly references: readonly string[];
}

/** Tells what is different between the file as published and the trial. */
export function changesOf(before: TrialResult, after: TrialResult): TrialChanges {
  return {
    dates: after.rows.flatMap((row, i) => changesOfRow(before.rows[i] as EntryRanges, row)),
    contradictions: changesOfContradictions(before.contradictions, after.contradictions),
    references: after.answers.flatMap((answer, i) => {
      if (answer === before.answers[i]) return [];
      return byGrade(before.answers[i]?.words ?? [], answer.words).map(
        ({ grades, is, was }) =>
          `“${answer.title}” and ${answer.reference}, ${grades.join(', ')}: ${is}; it was ${was}.`,
      );
    }),
  };
}

/** One line for those who listen: how much changed. */
export function summaryOf({ dates, contradictions, references }: TrialChanges): string {
  const count = (list: readonly string[], one: string, many: string): readonly string[] =>
    list.length === 0 ? [] : [list.length === 1 ? `one ${one}` : `${list.length} ${many}`];
  const parts = [
    ...count(dates, 'date', 'dates'),
    ...count(contradictions, 'contradiction', 'contradictions'),
    ...count(references, 'order to a reference date', 'orders to reference dates'),
  ];
  return parts.length === 0 ? 'No date changes.' : `Changed: ${parts.join(', ')}.`;
}

function changesOfRow(before: EntryRanges, after: EntryRanges): readonly string[] {
  if (before === after) return [];
  return rangeChanges(before, after).map(
    ({ of, grades, is, was }) => `${sayChanged(of, after.title)}, ${grades.join(', ')}: ${is}; it was ${was}.`,
  );
}

interface GradedChange {
  readonly grades: Grade[];
  readonly was: string;
  readonly is: string;
}

/** Words that differ, the same difference at several grades told once. */
function byGrade(before: readonly string[], after: readonly string[]): readonly GradedChange[] {
  const told: GradedChange[] = [];
  after.forEach((is, rank) => {
    const was = before[rank] ?? '';
    if (is === was) return;
    const grade = GRADES[rank] as Grade;
    const known = told.find((one) => one.is === is && one.was === was);
    if (known) known.grades.push(grade);
    else told.push({ grades: [grade], was, is });
  });
  return told;
}

function changesOfContradictions(
  before: readonly TrialContradiction[],
  after: readonly TrialContradiction[],
): readonly string[] {
  const key = (one: TrialContradiction): string => `${one.kind} ${one.statements.join(',')}`;
  const was = new Map(before.map((one) => [key(one), one]));
  const is = new Map(after.map((one) => [key(one), one]));
  return [
    ...before.filter((one) => !is.has(key(one))).map((one) => `Gone: ${one.statements.join(', ')}.`),
    ...after.flatMap((one) => {
      const old = was.get(key(one));
      if (!old) return [`New: ${one.statements.join(', ')} (${one.grade}).`];
      return old.grade === one.grade ? [] : [`${one.statements.join(', ')}: now ${one.grade}, it was ${old.grade}.`];
    }),
  ];
}
