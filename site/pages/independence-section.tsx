import type { JSX } from 'preact';
import { changesWithout } from '../../src/findings/check-first.ts';
import { ancestorsOf, restingOnRootAlone, rootsOf } from '../../src/findings/independence.ts';
import { sayChanges } from '../../src/findings/worth-in-words.ts';
import type { Entry } from '../../src/model/entry.ts';
import { reasonPath } from '../../src/publish/page-paths.ts';
import type { PageContext } from '../context.ts';
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
  const resting = isRoot ? restingOnRootAlone(catalogue, file.statements.used, source.id) : [];
  const changes = sayChanges(file, resting.length > 0 ? changesWithout(file, resting) : [], resting);
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
            {changes.length === 0
              ? `no date changes on ${file.settings.printedGrade} statements`
              : `${changes.length === 1 ? 'one date is another' : `${changes.length} dates are others`} on ${file.settings.printedGrade} statements`}
          </summary>
          <p>
            Left out: <Joined items={resting.map((one) => <StatementLink page={page} statement={one} />)} />.
          </p>
          <ul>
            {changes.map(({ effect, text, moment, grades }) => (
              <li>
                {effect}: <a href={page.href(`${reasonPath(moment.entry)}#${moment.edge}-${grades[0]}`)}>{text}</a>
              </li>
            ))}
          </ul>
        </details>
      ) : null}
    </section>
  );
}
