import type { Grade } from '../base/grade.ts';
import { named, phrase, type Said } from '../base/said.ts';
import { titleOf } from '../model/catalogue.ts';
import type { CaseFile } from './case-file.ts';
import type { Applied, ReachedHolding, ReachedOrder, ReferenceAnswer } from './reference-tests.ts';

const ORDER_WORDS: Readonly<Record<Exclude<ReachedOrder, 'no place'>, string>> = {
  before: 'before',
  within: 'within',
  after: 'after',
  partly: 'partly within',
  undetermined: 'undetermined',
  outside: 'outside',
};

/** How an event lies to a reference date, in a word. */
export function sayOrder(order: ReachedOrder): Said {
  return order === 'no place' ? sayNoPlace() : named(ORDER_WORDS[order]);
}

const HELD_WORDS: Readonly<Record<Exclude<ReachedHolding, 'no place'>, string>> = {
  outside: 'outside',
  undetermined: 'undetermined',
  throughout: 'held throughout',
  part: 'held for part of it',
  possibly: 'possibly held',
  open: 'not excluded',
  not: 'not held then',
};

/** How somebody's time with a piece lies to a reference date, in words. */
export function sayHeld(held: ReachedHolding): Said {
  return held === 'no place' ? sayNoPlace() : named(HELD_WORDS[held]);
}

function sayNoPlace(): Said {
  return phrase('not tested: no place is recorded');
}

/** Who says that a date applies to an act, and why: a person's word, beside what the rule over the place settles. */
export function sayApplied(
  { catalogue, settings }: Pick<CaseFile, 'catalogue' | 'settings'>,
  { by, why }: Applied,
): Said {
  const who = catalogue.get(by);
  return phrase('applied by {0}: {1}', who ? titleOf(who, settings.languages) : by, why);
}

/** Answers that are the same at several grades, told once. */
export function tellAnswers(
  answers: readonly ReferenceAnswer[],
): readonly { readonly grades: readonly Grade[]; readonly answer: ReferenceAnswer }[] {
  const told: { key: string; grades: Grade[]; answer: ReferenceAnswer }[] = [];
  for (const answer of answers) {
    const key = JSON.stringify([
      answer.order,
      answer.decides,
      answer.because.map((one) => one.id),
      answer.decidedBy.map((one) => [one.order, one.statements.map((s) => s.id)]),
    ]);
    const last = told.at(-1);
    if (last?.key === key) last.grades.push(answer.grade);
    else told.push({ key, grades: [answer.grade], answer });
  }
  return told;
}
