/** The four grades of a statement, best first. Ordinal: compared, never averaged. */
export const GRADES = ['established', 'probable', 'possible', 'conjectural'] as const;

/** How sure a person is of a statement, set with a reason. */
export type Grade = (typeof GRADES)[number];

/** Rank of a grade: 0 for `established` to 3 for `conjectural`. */
export function rankOf(grade: Grade): number {
  return GRADES.indexOf(grade);
}

/** Grade of a rank, held inside the scale (rank 4 and more is `conjectural`). */
export function gradeOfRank(rank: number): Grade {
  return GRADES[Math.max(0, Math.min(rank, GRADES.length - 1))] as Grade;
}

/** The lowest (least sure) of some grades; `established` for none. */
export function lowestGrade(...grades: readonly Grade[]): Grade {
  return gradeOfRank(Math.max(0, ...grades.map(rankOf)));
}

/** The letter mark of a grade in drawings and tables: d, p, o, c. */
export const GRADE_LETTER: Readonly<Record<Grade, string>> = {
  established: 'd',
  probable: 'p',
  possible: 'o',
  conjectural: 'c',
};
