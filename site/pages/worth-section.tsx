import type { JSX } from 'preact';
import { sayChanges } from '../../src/findings/worth-in-words.ts';
import type { Entry } from '../../src/model/entry.ts';
import { reasonPath } from '../../src/publish/page-paths.ts';
import type { FileStatement } from '../../src/statements/statements.ts';
import type { PageContext } from '../context.ts';
import { StatementLink } from './parts.tsx';

/** What rests on the statements written in an entry: all that is different without each. */
export function WorthSection({
  page,
  entry,
}: {
  readonly page: PageContext;
  readonly entry: Entry;
}): JSX.Element | null {
  const written = page.file.statements.used.filter((one) => one.entry === entry.id);
  if (written.length === 0) return null;
  return (
    <section id="worth">
      <h2>What rests on this</h2>
      {written.map((one) => (
        <StatementWorth page={page} statement={one} open={written.length === 1} />
      ))}
    </section>
  );
}

function StatementWorth({
  page,
  statement,
  open,
}: {
  readonly page: PageContext;
  readonly statement: FileStatement;
  readonly open: boolean;
}): JSX.Element {
  const { file } = page;
  const { bounds, stretches, resolved } = file.worth.of(file.statements.used.indexOf(statement));
  const changes = sayChanges(file, bounds, [statement]);
  const gaps = new Set(stretches.map((one) => file.statements.moments.all[one.moment]?.entry));
  if (changes.length + resolved.length + gaps.size === 0)
    return (
      <p>
        Without <StatementLink page={page} statement={statement} /> nothing changes.
      </p>
    );
  return (
    <details open={open}>
      <summary>
        Without {statement.id}: {sayHowMuch(changes.length, resolved.length)}
      </summary>
      <ul>
        {resolved.map((i) => (
          <li>
            resolved: <a href={page.href(`contradictions.html#c-${i + 1}`)}>contradiction {i + 1}</a>
          </li>
        ))}
        {changes.map(({ effect, text, grades, moment }) => (
          <li>
            {effect}: <a href={page.href(`${reasonPath(moment.entry)}#${moment.edge}-${grades[0]}`)}>{text}</a>{' '}
            <span class="aside">({grades.join(', ')})</span>
          </li>
        ))}
        {gaps.size > 0 ? <li>separate stretches of dates with gaps become others: {[...gaps].join(', ')}</li> : null}
      </ul>
    </details>
  );
}

function sayHowMuch(changes: number, resolved: number): string {
  const dates = changes === 1 ? 'one date is another' : `${changes} dates are others`;
  const gone = resolved === 1 ? 'one contradiction is gone' : `${resolved} contradictions are gone`;
  return [...(changes > 0 ? [dates] : []), ...(resolved > 0 ? [gone] : [])].join('; ') || 'a date with gaps is another';
}
