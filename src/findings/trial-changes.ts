import { GRADES, type Grade } from '../base/grade.ts';
import { inRow, named, phrase, type Said, sameSaid } from '../base/said.ts';
import { type EntryRanges, rangeChanges, sayChanged } from './range-changes.ts';
import type { TrialContradiction, TrialResult } from './run-trial.ts';

/** What a trial changed, in words: dates, contradictions, order to reference dates. */
export interface TrialChanges {
  readonly dates: readonly Said[];
  readonly contradictions: readonly Said[];
  readonly references: readonly Said[];
}

/** Tells what is different between the file as published and the trial. */
export function changesOf(before: TrialResult, after: TrialResult): TrialChanges {
  return {
    dates: after.rows.flatMap((row, i) => changesOfRow(before.rows[i] as EntryRanges, row)),
    contradictions: changesOfContradictions(before.contradictions, after.contradictions),
    references: after.answers.flatMap((answer, i) => {
      if (answer === before.answers[i]) return [];
      return byGrade(before.answers[i]?.words ?? [], answer.words).map(({ grades, is, was }) =>
        phrase('“{0}” and {1}, {2}: {3}; it was {4}.', answer.title, answer.reference, sayGrades(grades), is, was),
      );
    }),
  };
}

/** A number of changes; nothing for none. */
function count(changes: readonly Said[], message: string): readonly Said[] {
  return changes.length === 0 ? [] : [phrase(message, changes.length)];
}

/** One line for those who listen: how much changed. */
export function summaryOf({ dates, contradictions, references }: TrialChanges): Said {
  const parts = [
    ...count(dates, '{0, plural, one {one date} other {# dates}}'),
    ...count(contradictions, '{0, plural, one {one contradiction} other {# contradictions}}'),
    ...count(references, '{0, plural, one {one order to a reference date} other {# orders to reference dates}}'),
  ];
  return parts.length === 0 ? phrase('No date changes.') : phrase('Changed: {0}.', inRow(parts, ', '));
}

function changesOfRow(before: EntryRanges, after: EntryRanges): readonly Said[] {
  if (before === after) return [];
  return rangeChanges(before, after).map(({ of, grades, is, was }) =>
    phrase('{0}, {1}: {2}; it was {3}.', sayChanged(of, after.title), sayGrades(grades), is, was),
  );
}

function sayGrades(grades: readonly Grade[]): Said {
  return inRow(grades.map(named), ', ');
}

interface GradedChange {
  readonly grades: Grade[];
  readonly was: Said;
  readonly is: Said;
}

/** Words that differ, the same difference at several grades told once. */
function byGrade(before: readonly Said[], after: readonly Said[]): readonly GradedChange[] {
  const told: GradedChange[] = [];
  after.forEach((is, rank) => {
    const was = before[rank] ?? '';
    if (sameSaid(is, was)) return;
    const grade = GRADES[rank] as Grade;
    const known = told.find((one) => sameSaid(one.is, is) && sameSaid(one.was, was));
    if (known) known.grades.push(grade);
    else told.push({ grades: [grade], was, is });
  });
  return told;
}

function changesOfContradictions(
  before: readonly TrialContradiction[],
  after: readonly TrialContradiction[],
): readonly Said[] {
  const key = (one: TrialContradiction): string => `${one.kind} ${one.statements.join(',')}`;
  const was = new Map(before.map((one) => [key(one), one]));
  const is = new Map(after.map((one) => [key(one), one]));
  return [
    ...before.filter((one) => !is.has(key(one))).map((one) => phrase('Gone: {0}.', one.statements.join(', '))),
    ...after.flatMap((one) => {
      const old = was.get(key(one));
      if (!old) return [phrase('New: {0} ({1}).', one.statements.join(', '), named(one.grade))];
      return old.grade === one.grade
        ? []
        : [phrase('{0}: now {1}, it was {2}.', one.statements.join(', '), named(one.grade), named(old.grade))];
    }),
  ];
}
