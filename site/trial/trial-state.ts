import { GRADES, type Grade } from '../../src/base/grade.ts';
import type { TrialFile, TrialState } from '../../src/findings/run-trial.ts';

/** What an address says of a trial. */
export interface AddressedTrial {
  readonly state: TrialState;
  /** Statements that it names and that the file does not hold. */
  readonly unknown: readonly string[];
}

/** The address of the file as published; a name that is no place on the page, so that nothing scrolls. */
export const AS_PUBLISHED = '#as-published';

/** Writes a trial as the part of an address after `#`: `#without=CL-4,CL-9&as=CL-2:possible`. */
export function formatTrial({ withdrawn, grades }: TrialState): string {
  const parts = new URLSearchParams();
  if (withdrawn.length > 0) parts.set('without', withdrawn.join(','));
  const regraded = Object.entries(grades);
  if (regraded.length > 0) parts.set('as', regraded.map(([id, grade]) => `${id}:${grade}`).join(','));
  const text = parts.toString();
  return text === '' ? AS_PUBLISHED : `#${text}`;
}

/** Reads a trial from an address; null where the address speaks of something else, such as a place on the page. */
export function readTrial(hash: string, file: TrialFile): AddressedTrial | null {
  if (hash !== '' && hash !== AS_PUBLISHED && !/[#&](?:without|as)=/.test(hash)) return null;
  const parts = new URLSearchParams(hash.slice(1));
  const byId = new Map(file.statements.map((one) => [one.id, one]));
  const list = (name: string): readonly string[] => (parts.get(name) ?? '').split(',').filter((one) => one !== '');
  const withdrawn = list('without');
  const regraded = list('as').map((one) => {
    const at = one.lastIndexOf(':');
    return [one.slice(0, at), one.slice(at + 1)] as const;
  });
  const isGrade = (grade: string): grade is Grade => (GRADES as readonly string[]).includes(grade);
  const grades = Object.fromEntries(
    regraded.flatMap(([id, grade]) => {
      const statement = byId.get(id);
      return statement && isGrade(grade) && grade !== statement.grade && !withdrawn.includes(id) ? [[id, grade]] : [];
    }),
  );
  return {
    state: { withdrawn: [...new Set(withdrawn.filter((id) => byId.has(id)))], grades },
    unknown: [
      ...new Set([
        ...[...withdrawn, ...regraded.map(([id]) => id)].filter((id) => !byId.has(id)),
        ...regraded.flatMap(([id, grade]) => (byId.has(id) && !isGrade(grade) ? [`${id}:${grade}`] : [])),
      ]),
    ].map((id) => (id.length > 60 ? `${id.slice(0, 60)}…` : id)),
  };
}
