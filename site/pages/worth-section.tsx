import type { JSX } from 'preact';
import { sayChanges } from '../../src/findings/worth-in-words.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { FileStatement } from '../../src/statements/statements.ts';
import type { PageContext } from '../context.ts';
import { ChangeTable } from './change-table.tsx';
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
  const index = file.placeOf(statement);
  if (!file.inDetail && !file.worth.isQuick(index))
    return (
      <p>
        In a file of this size, “kerfmark worth {statement.id}” tells what rests on{' '}
        <StatementLink page={page} statement={statement} />.
      </p>
    );
  const { bounds, stretches, resolved } = file.worth.of(index);
  if (!file.inDetail)
    return (
      <p>
        Without <StatementLink page={page} statement={statement} />:{' '}
        {sayHowMuch(new Set(bounds.map((one) => one.moment)).size, resolved.length)}. In a file of this size, “kerfmark
        worth” tells which.
      </p>
    );
  const said = sayChanges(file, bounds, [statement]);
  const dates = said.changes.length + said.finer;
  const gaps = new Set(stretches.map((one) => file.statements.moments.all[one.moment]?.entry));
  if (dates + resolved.length + gaps.size === 0)
    return (
      <p>
        Without <StatementLink page={page} statement={statement} /> nothing changes.
      </p>
    );
  return (
    <details open={open}>
      <summary>
        Without {statement.id}: {sayHowMuch(dates, resolved.length)}
      </summary>
      {resolved.length + gaps.size > 0 ? (
        <ul>
          {resolved.map((i) => (
            <li>
              Resolved: <a href={page.href(`contradictions.html#c-${i + 1}`)}>contradiction {i + 1}</a>
            </li>
          ))}
          {gaps.size > 0 ? <li>Separate stretches of dates with gaps become others: {[...gaps].join(', ')}</li> : null}
        </ul>
      ) : null}
      <ChangeTable page={page} said={said} label={`Dates that would be others without ${statement.id}`} />
    </details>
  );
}

function sayHowMuch(changes: number, resolved: number): string {
  const dates = changes === 1 ? 'one date is another' : `${changes} dates are others`;
  const gone = resolved === 1 ? 'one contradiction is gone' : `${resolved} contradictions are gone`;
  return [...(changes > 0 ? [dates] : []), ...(resolved > 0 ? [gone] : [])].join('; ') || 'nothing changes';
}
