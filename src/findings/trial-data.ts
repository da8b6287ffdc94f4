import type { Grade } from '../base/grade.ts';
import type { Said } from '../base/said.ts';
import type { Link } from '../chronology/chronology.ts';
import type { PrintableStatement } from './printed-range.ts';
import type { EntryRanges } from './range-changes.ts';

/** A statement as far as a trial needs it. */
export interface TrialStatement extends PrintableStatement {
  readonly id: string;
  readonly grade: Grade;
  /** What it says, and where it says it from. */
  readonly text: string;
  readonly source: string | null;
  readonly links: readonly Link[];
  readonly choice?: readonly (readonly Link[])[];
  readonly order?: 'order' | 'same';
}

/** An entry with a time of its own, and the statements that are listed under it. */
export interface TrialEntry {
  readonly id: string;
  readonly title: string;
  readonly type: 'event' | 'holding' | 'trace';
  /** Its moments; the same twice for a trace left at once. */
  readonly start: number;
  readonly end: number;
  readonly statements: readonly number[];
}

/** A reference date, and the entries that are tested on it. */
export interface TrialReference {
  readonly title: string;
  readonly from: { readonly first: number; readonly last: number };
  readonly to: { readonly first: number; readonly last: number } | null;
  /** Holdings are asked who had it on the day, or through the period. */
  readonly asks: 'order' | 'held';
  readonly entries: readonly string[];
}

/** Everything that a reader's trial is computed from: what this audience may see of the chronology, as plain data. */
export interface TrialFile {
  readonly format: 'kerfmark-trial/1';
  readonly printedGrade: Grade;
  readonly moments: number;
  readonly axioms: readonly Link[];
  readonly statements: readonly TrialStatement[];
  readonly entries: readonly TrialEntry[];
  readonly references: readonly TrialReference[];
}

/** What a reader changed: statements left out, and statements taken at another grade. */
export interface TrialState {
  readonly withdrawn: readonly string[];
  readonly grades: Readonly<Record<string, Grade>>;
}

/** Statements that cannot all be right in the trial. */
export interface TrialContradiction {
  readonly kind: 'dates' | 'order';
  readonly grade: Grade;
  readonly statements: readonly string[];
}

/** How an entry lies to a reference date in the trial, in words, at each grade. */
export interface TrialAnswer {
  readonly reference: string;
  readonly entry: string;
  readonly title: string;
  readonly words: readonly Said[];
}

/** The file as a trial leaves it. */
export interface TrialResult {
  /** Entries in the order of the file. */
  readonly rows: readonly EntryRanges[];
  readonly contradictions: readonly TrialContradiction[];
  readonly answers: readonly TrialAnswer[];
}
