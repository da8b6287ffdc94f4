import type { Said } from '../base/said.ts';
import { twoSidesOf } from '../chronology/two-sides.ts';
import { coarsest } from '../dates/expression.ts';
import type { FileStatement, Moment } from '../statements/statements.ts';
import type { CaseFile, FileContradiction } from './case-file.ts';
import { sayMoment } from './explain.ts';
import { sayBound } from './say-bound.ts';

/** A contradiction as a sentence that names both sides, each with the statements that lead to it. */
export interface SaidContradiction {
  readonly moment: Said;
  readonly earliest: SaidSide;
  readonly latest: SaidSide;
}

/** `not before 23 April 1933`, and the statements that say so together. */
export interface SaidSide {
  readonly words: Said;
  readonly statements: readonly FileStatement[];
}

/** Says the two sides of a contradiction; null for a circle of order and where only gaps exclude each other. */
export function sayContradiction(file: CaseFile, contradiction: FileContradiction): SaidContradiction | null {
  if (contradiction.kind === 'order') return null;
  const { used, moments } = file.statements;
  const sides = twoSidesOf(
    file.chronology.compiled,
    contradiction.statements.map((one) => used.indexOf(one)),
  );
  if (!sides) return null;
  const sideOf = (name: 'earliest' | 'latest'): SaidSide => {
    const { day, statements } = sides[name];
    const list = statements.map((i) => used[i] as FileStatement);
    const bound = { day, precision: coarsest(list.map((one) => one.precision)), about: list.some((one) => one.about) };
    return { words: sayBound(name, bound), statements: list };
  };
  return {
    moment: sayMoment(file, moments.all[sides.moment] as Moment),
    earliest: sideOf('earliest'),
    latest: sideOf('latest'),
  };
}
