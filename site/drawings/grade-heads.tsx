import type { JSX } from 'preact';
import { GRADES } from '../../src/base/grade.ts';
import { term } from '../say.ts';

/** The four grades as heads of columns. */
export function GradeHeads(): JSX.Element {
  return (
    <>
      {GRADES.map((grade) => (
        <th scope="col">{term(grade)}</th>
      ))}
    </>
  );
}
