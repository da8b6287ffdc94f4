import type { JSX } from 'preact';
import { changesWithout } from '../../src/findings/check-first.ts';
import { ancestorsOf, restingOnAlone, rootsOf } from '../../src/findings/independence.ts';
import { sayChanges } from '../../src/findings/worth-in-words.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { PageContext } from '../context.ts';
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
  const copies = catalogue.ofType('source').filter((one) => ancestorsOf(catalogue, one.id).has(source.id));
  const link = (id: string): JSX.Element => <EntryLink page={page} id={id} />;
  const isRoot = roots.known.has(source.id) || roots.unknown.has(source.id);
  const resting = file.inDetail ? restingOnAlone(catalogue, file.statements.used, source.id) : [];
  const said = sayChanges(file, resting.length > 0 ? changesWithout(file, resting) : [], resting);
  const dates = said.changes.length + said.finer;
  return (
    <section>
      <h2>Independence</h2>
      <p>
        {isRoot ? (
          roots.unknown.has(source.id) ? (
            'It is not known what this source rests on; it may go back to one of the others.'
          ) : (
            'As far as the file knows, this source copies no other.'
          )
        ) : (
          <>
            Goes back to <Joined items={[...roots.known, ...roots.unknown].map(link)} />.
          </>
        )}{' '}
        {copies.length > 0 ? (
          <>
            Copied, straight or through others, by <Joined items={copies.map((one) => link(one.id))} />.
          </>
        ) : null}
      </p>
      {resting.length > 0 ? (
        <details>
          <summary>
            Left out with all that goes back to it alone:{' '}
            {dates === 0
              ? `no date changes on ${file.settings.printedGrade} statements`
              : `${dates === 1 ? 'one date is another' : `${dates} dates are others`} on ${file.settings.printedGrade} statements`}
          </summary>
          <p>
            Left out: <Joined items={resting.map((one) => <StatementLink page={page} statement={one} />)} />.
          </p>
          <ChangeTable page={page} said={said} label="Dates that would be others" grades={false} />
        </details>
      ) : null}
    </section>
  );
}
