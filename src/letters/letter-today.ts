import type { CaseFile } from '../findings/case-file.ts';
import type { SentFile } from '../model/sent-file.ts';
import { passagesOf, type ReportDocument } from '../reports/document.ts';
import { changesOfLetter, type LetterChange } from './letter-changes.ts';
import { readLetterValues } from './letter-values.ts';

/** What a document names: the statements that it cites and the entries that it rests on. */
export function namedIn(document: ReportDocument): {
  readonly cites: readonly string[];
  readonly rests: readonly string[];
} {
  const passages = passagesOf(document);
  return {
    cites: [...new Set(passages.flatMap((one) => one.cites))].sort(),
    rests: [...new Set(passages.flatMap((one) => one.rests))].sort(),
  };
}

/** What a letter rests on and that is otherwise now. */
export interface LetterToday {
  readonly changes: readonly LetterChange[];
  /** Only the statements that it cites were kept, so that its other entries were not compared. */
  readonly statementsOnly: boolean;
}

/**
 * Compares a letter with the file as it is now; null where it keeps only sentences, so that nothing can be compared.
 *
 * @param facts the file for the audience of the letter
 * @param document the letter as it would be composed now
 */
export function changesToday(sent: SentFile | null, facts: CaseFile, document: ReportDocument): LetterToday | null {
  const values = sent?.values ? readLetterValues(sent.values.text) : null;
  if (values === null) return null;
  const { cites, rests } = namedIn(document);
  return { changes: changesOfLetter(values, facts, cites, rests), statementsOnly: values.entries === null };
}
