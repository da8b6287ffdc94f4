import { GRADES, type Grade } from '../base/grade.ts';
import { dated, term, words } from '../language/spoken.ts';
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
      return byGrade(before.answers[i]?.words ?? [], answer.words).map(({ grades, is, was }) =>
        words('“{0}” and {1}, {2}: {3}; it was {4}.', answer.title, answer.reference, sayGrades(grades), is, was),
      );
    }),
  };
}

/** One line for those who listen: how much changed. */
export function summaryOf({ dates, contradictions, references }: TrialChanges): string {
  const count = ({ length }: readonly string[], one: string, many: string): readonly string[] =>
    length === 0 ? [] : [length === 1 ? one : many];
  const parts = [
    ...count(dates, words('one date'), words('{0} dates', dates.length)),
    ...count(contradictions, words('one contradiction'), words('{0} contradictions', contradictions.length)),
    ...count(
      references,
      words('one order to a reference date'),
      words('{0} orders to reference dates', references.length),
    ),
  ];
  return parts.length === 0 ? words('No date changes.') : words('Changed: {0}.', parts.join(', '));
}

function changesOfRow(before: EntryRanges, after: EntryRanges): readonly string[] {
  if (before === after) return [];
  return rangeChanges(before, after).map(({ of, grades, is, was }) =>
    words('{0}, {1}: {2}; it was {3}.', sayChanged(of, after.title), sayGrades(grades), dated(is), dated(was)),
  );
}

function sayGrades(grades: readonly Grade[]): string {
  return grades.map(term).join(', ');
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
    ...before.filter((one) => !is.has(key(one))).map((one) => words('Gone: {0}.', one.statements.join(', '))),
    ...after.flatMap((one) => {
      const old = was.get(key(one));
      if (!old) return [words('New: {0} ({1}).', one.statements.join(', '), term(one.grade))];
      return old.grade === one.grade
        ? []
        : [words('{0}: now {1}, it was {2}.', one.statements.join(', '), term(one.grade), term(old.grade))];
    }),
  ];
}
