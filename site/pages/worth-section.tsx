import type { JSX } from 'preact';
import { sayChanges } from '../../src/findings/worth-in-words.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { FileStatement } from '../../src/statements/statements.ts';
import type { PageContext } from '../context.ts';
import { say, semicolon, words } from '../say.ts';
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
  const written = page.file
    .statementsAbout(entry.id)
    .filter((one) => one.entry === entry.id && page.file.placeOf(one) >= 0);
  if (written.length === 0) return null;
  return (
    <section id="worth">
      <h2>{say('What rests on this')}</h2>
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
  const isSmall = file.isSmall(index);
  if (!isSmall && !file.worth.isQuick(index))
    return (
      <p>
        {say(
          'In a file of this size, “kerfmark worth {0}” tells what rests on {1}.',
          statement.id,
          <StatementLink page={page} statement={statement} />,
        )}
      </p>
    );
  const { bounds, stretches, resolved } = file.worth.of(index);
  if (!isSmall)
    return (
      <p>
        {say(
          'Without {0}: {1}. In a file of this size, “kerfmark worth” tells which.',
          <StatementLink page={page} statement={statement} />,
          sayHowMuch(new Set(bounds.map((one) => one.moment)).size, resolved.length),
        )}
      </p>
    );
  const told = sayChanges(file, bounds, [statement]);
  const dates = told.changes.length + told.finer;
  const gaps = new Set(stretches.map((one) => file.statements.moments.all[one.moment]?.entry));
  if (dates + resolved.length + gaps.size === 0)
    return <p>{say('Without {0} nothing changes.', <StatementLink page={page} statement={statement} />)}</p>;
  return (
    <details open={open}>
      <summary>{say('Without {0}: {1}', statement.id, sayHowMuch(dates, resolved.length))}</summary>
      {resolved.length + gaps.size > 0 ? (
        <ul>
          {resolved.map((i) => (
            <li>
              {say(
                'Resolved: {0}',
                <a href={page.href(`contradictions.html#c-${i + 1}`)}>{say('contradiction {0}', i + 1)}</a>,
              )}
            </li>
          ))}
          {gaps.size > 0 ? (
            <li>{say('Separate stretches of dates with gaps become others: {0}', [...gaps].join(', '))}</li>
          ) : null}
        </ul>
      ) : null}
      <ChangeTable page={page} told={told} label={words('Dates that would be others without {0}', statement.id)} />
    </details>
  );
}

function sayHowMuch(changes: number, resolved: number): string {
  const dates = words('{0, plural, one {one date depends on it} other {# dates depend on it}}', changes);
  const gone = words('{0, plural, one {one contradiction is gone} other {# contradictions are gone}}', resolved);
  return (
    [...(changes > 0 ? [dates] : []), ...(resolved > 0 ? [gone] : [])].join(semicolon()) || words('nothing changes')
  );
}
