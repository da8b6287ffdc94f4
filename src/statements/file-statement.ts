import type { Grade } from '../base/grade.ts';
import type { Said } from '../base/said.ts';
import type { Link } from '../chronology/chronology.ts';
import type { DateExpression, Precision } from '../dates/expression.ts';
import type { KeyPath } from '../model/entry.ts';
import type { Saying } from './saying.ts';

/** Which end of an entry's time a moment is. */
export type Edge = 'start' | 'end' | 'begins' | 'ends' | 'moment' | 'delivery';

/** A moment of the file. */
export interface Moment {
  readonly index: number;
  readonly entry: string;
  readonly edge: Edge;
}

/** The start and the end of what a statement speaks of; the same moment twice for a single one. */
export interface Span {
  readonly start: number;
  readonly end: number;
  readonly single: boolean;
}

/** What kind of statement it is, for wording and lists. */
export type StatementKind =
  | 'stated'
  | 'claim'
  | 'relation'
  | 'lasts'
  | 'passage'
  | 'delivery'
  | 'life'
  | 'layer'
  | 'left-by'
  | 'material'
  | 'begins'
  | 'ends'
  | 'held';

/** One statement of the file as it enters (or does not enter) the computation. */
export interface FileStatement {
  readonly id: string;
  /** The entry in which it is written, and where in it. */
  readonly entry: string;
  readonly path: KeyPath;
  readonly kind: StatementKind;
  /** Effective grade: the person's, one step lower for `?`, capped by the source. */
  readonly grade: Grade;
  readonly statedGrade: Grade;
  /** Why the grade is lower than stated; empty where it is not. */
  readonly gradeNote: Said;
  /** Source that it rests on, if named. */
  readonly source: string | null;
  readonly why: string | null;
  /** What it says; see `sayStatement`. */
  readonly says: Saying;
  readonly date: DateExpression | null;
  readonly precision: Precision;
  readonly about: boolean;
  readonly links: readonly Link[];
  readonly choice?: readonly (readonly Link[])[];
  readonly order?: 'order' | 'same';
  /** Set where it takes no part: "not used in the computation, because ...". */
  readonly notUsed: Said | null;
}
