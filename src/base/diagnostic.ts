import type { Place } from './place.ts';
import type { Said } from './said.ts';

/** `error` stops a public build; `doubt` is a known trap of the trade; `note` only tells. */
export type Severity = 'error' | 'doubt' | 'note';

/** A second place that belongs to a problem, with a few words on why. */
export interface Related {
  readonly place: Place;
  readonly text: Said;
}

/**
 * One problem in the entries: what is wrong in words, where, and the mend.
 * `code` names its page in docs/messages; `entry` the entry that it concerns, if any.
 */
export interface Diagnostic {
  readonly code: string;
  readonly severity: Severity;
  readonly place: Place;
  readonly message: Said;
  readonly mend: Said;
  readonly entry?: string;
  readonly related?: readonly Related[];
}

const ORDER: readonly Severity[] = ['error', 'doubt', 'note'];

/** Fixed order of problems: by file, line, column, severity, code, message. */
export function compareDiagnostics(a: Diagnostic, b: Diagnostic): number {
  return (
    compareText(a.place.file, b.place.file) ||
    a.place.line - b.place.line ||
    a.place.column - b.place.column ||
    ORDER.indexOf(a.severity) - ORDER.indexOf(b.severity) ||
    compareText(a.code, b.code) ||
    compareText(JSON.stringify(a.message), JSON.stringify(b.message))
  );
}

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
