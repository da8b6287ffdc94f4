import type { JSX } from 'preact';
import { changesWithout } from '../../src/findings/check-first.ts';
import { copiesOf, restingOnAlone, rootsOf } from '../../src/findings/independence.ts';
import { sayChanges } from '../../src/findings/worth-in-words.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { PageContext } from '../context.ts';
import { say, term, words } from '../say.ts';
import { ChangeTable } from './change-table.tsx';
import { EntryLink, Joined, StatementLink } from './parts.tsx';

/** Of a source: what it goes back to, what copies it, and which dates fall if it is left out with all its copies. */
export function IndependenceSection({
  page,
  source,
}: {
  readonly page: PageContext;
  readonly source: Entry<'source'>;
}): JSX.Element {
  const { file } = page;
  const { catalogue } = file;
  const roots = rootsOf(catalogue, source.id);
  const copies = copiesOf(catalogue, source.id);
  const link = (id: string): JSX.Element => <EntryLink page={page} id={id} />;
  const isRoot = roots.known.has(source.id) || roots.unknown.has(source.id);
  const alone = restingOnAlone(catalogue, file.statements.used, source.id);
  const resting = alone.every((one) => file.isSmall(file.placeOf(one))) ? alone : [];
  const told = sayChanges(file, resting.length > 0 ? changesWithout(file, resting) : [], resting);
  const dates = told.changes.length + told.finer;
  return (
    <section>
      <h2>{say('Independence')}</h2>
      <p>
        {isRoot ? (
          roots.unknown.has(source.id) ? (
            words('It is not known what this source rests on; it may go back to one of the others.')
          ) : (
            words('As far as the file knows, this source copies no other.')
          )
        ) : (
          <>{say('Goes back to {0}.', <Joined items={[...roots.known, ...roots.unknown].map(link)} />)}</>
        )}{' '}
        {copies.length > 0 ? (
          <>
            {say('Copied, straight or through others, by {0}.', <Joined items={copies.map((one) => link(one.id))} />)}
          </>
        ) : null}
      </p>
      {resting.length > 0 ? (
        <details>
          <summary>
            {say(
              'Left out with all that goes back to it alone: {0}',
              dates === 0
                ? words('no date changes on {0} statements', term(file.settings.printedGrade))
                : words(
                    '{0} on {1} statements',
                    words('{0, plural, one {one date depends on it} other {# dates depend on it}}', dates),
                    term(file.settings.printedGrade),
                  ),
            )}
          </summary>
          <p>
            {say(
              'Left out: {0}.',
              <Joined items={resting.map((one) => <StatementLink page={page} statement={one} />)} />,
            )}
          </p>
          <ChangeTable page={page} told={told} label={words('Dates that would be others')} grades={false} />
        </details>
      ) : null}
    </section>
  );
}
