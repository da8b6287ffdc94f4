import type { Grade } from '../base/grade.ts';
import { named, type Said } from '../base/said.ts';
import type { HeldAtReference, OrderToReference } from './order-to-reference.ts';
import type { ReferenceAnswer } from './reference-tests.ts';

const ORDER_WORDS: Readonly<Record<OrderToReference, string>> = {
  before: 'before',
  within: 'within',
  after: 'after',
  partly: 'partly within',
  undetermined: 'undetermined',
};

/** How an event lies to a reference date, in a word. */
export function sayOrder(order: OrderToReference): Said {
  return named(ORDER_WORDS[order]);
}

const HELD_WORDS: Readonly<Record<HeldAtReference, string>> = {
  throughout: 'held throughout',
  part: 'held for part of it',
  possibly: 'possibly held',
  open: 'not excluded',
  not: 'not held then',
};

/** How somebody's time with a piece lies to a reference date, in words. */
export function sayHeld(held: HeldAtReference): Said {
  return named(HELD_WORDS[held]);
}

/** Answers that are the same at several grades, told once. */
export function tellAnswers(
  answers: readonly ReferenceAnswer[],
): readonly { readonly grades: readonly Grade[]; readonly answer: ReferenceAnswer }[] {
  const told: { key: string; grades: Grade[]; answer: ReferenceAnswer }[] = [];
  for (const answer of answers) {
    const key = JSON.stringify([
      answer.order,
      answer.because.map((one) => one.id),
      answer.decidedBy.map((one) => [one.order, one.statements.map((s) => s.id)]),
    ]);
    const last = told.at(-1);
    if (last?.key === key) last.grades.push(answer.grade);
    else told.push({ key, grades: [answer.grade], answer });
  }
  return told;
}
