import type { JSX } from 'preact';
import { GRADES } from '../../src/base/grade.ts';
import type { FileStatement } from '../../src/statements/statements.ts';
import type { PageContext } from '../context.ts';
import { say, sayList, term, words } from '../say.ts';
import { Joined } from './parts.tsx';

/** Says that a statement is in dispute, and at which grades no date rests on it for that. */
export function StandingInDispute({
  page,
  statement,
}: {
  readonly page: PageContext;
  readonly statement: FileStatement;
}): JSX.Element | null {
  const { file } = page;
  const contradictions = file.contradictions.filter((one) => one.statements.includes(statement));
  if (contradictions.length === 0) return null;
  const index = file.statements.used.indexOf(statement);
  const aside = GRADES.filter((_, rank) => {
    const grade = file.chronology.grades[rank];
    return grade?.all[index] && !grade.kept[index];
  });
  return (
    <span class="aside">
      {' '}
      {say(
        'In dispute: {0, plural, one {contradiction {1}} other {contradictions {1}}}{2}.',
        contradictions.length,
        <Joined
          items={contradictions.map((one) => (
            <a href={page.href(`contradictions.html#c-${one.number}`)}>{one.number}</a>
          ))}
        />,
        aside.length > 0
          ? words('; set aside at {0}, so that no date there rests on it', sayList(aside.map(term)))
          : words('; kept, since a better grade held it'),
      )}
    </span>
  );
}
