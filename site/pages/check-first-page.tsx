import type { JSX } from 'preact';
import { leaveOneRootOut, type MovedBound, whatToCheckFirst } from '../../src/findings/check-first.ts';
import { sayChanges } from '../../src/findings/worth-in-words.ts';
import type { Entry } from '../../src/model/entry.ts';
import { reasonPath } from '../../src/publish/page-paths.ts';
import { sayStatement } from '../../src/statements/say-statement.ts';
import type { FileStatement } from '../../src/statements/statements.ts';
import type { PageContext } from '../context.ts';
import { said, say, term, words } from '../say.ts';
import { Layout } from './layout.tsx';
import { EntryLink, GradeMark, Joined, StatementLink } from './parts.tsx';

/** Which statements are worth checking first; for readers inside the institution, since it ranks testimony. */
export function CheckFirstPage({ page }: { readonly page: PageContext }): JSX.Element {
  const objects = page.file.catalogue.ofType('object').filter((object) => object.keys['key-events'] !== undefined);
  return (
    <Layout
      page={page}
      title={words('What to check first')}
      standing={words('Which statements the dates of the key events hang on; for internal readers only.')}
    >
      <h1>{say('What to check first')}</h1>
      <p class="lead">
        {say(
          'Statements below {0}, in the order of how much of the key events’ dates would give way without each: dates that would become open first, then the number of dates, then the days. Computed on {1} statements. It says nothing of how likely a statement is to be wrong.',
          <i>{say('established')}</i>,
          term(page.file.settings.printedGrade),
        )}
      </p>
      {objects.length === 0 ? <p>{say('No object names its key events yet.')}</p> : null}
      {objects.map((object) => (
        <ObjectPart page={page} object={object} />
      ))}
    </Layout>
  );
}

function ObjectPart({ page, object }: { readonly page: PageContext; readonly object: Entry<'object'> }): JSX.Element {
  const statements = whatToCheckFirst(page.file, object);
  const roots = leaveOneRootOut(page.file, object);
  return (
    <section>
      <h2>
        <EntryLink page={page} id={object.id} />
      </h2>
      {statements.length === 0 ? <p>{say('No statement below established moves these dates.')}</p> : null}
      <ol class="check-first">
        {statements.slice(0, 60).map(({ statement, moved }) => (
          <li>
            {said(sayStatement(statement.says))} <StatementLink page={page} statement={statement} />{' '}
            <GradeMark grade={statement.grade} />
            {statement.source ? (
              <span class="aside"> {say('Source: {0}.', <EntryLink page={page} id={statement.source} />)}</span>
            ) : null}
            {page.file.inDetail ? (
              <Moved page={page} moved={moved} withdrawn={[statement]} />
            ) : (
              <span class="aside"> {say('{0} bounds of key events', moved.length)}</span>
            )}
          </li>
        ))}
      </ol>
      <h3>{say('One independent origin left out after the other')}</h3>
      <p>
        {say(
          'A source counts together with everything that was copied from it alone. If one independent origin fell, with all of that, these dates would be others.',
        )}
      </p>
      {roots.length === 0 ? (
        <p>
          {page.file.inDetail
            ? words('No independent origin moves them.')
            : words('In a file of this size this is left to “kerfmark dates --without SOURCE”.')}
        </p>
      ) : null}
      <ol class="check-first">
        {roots.map(({ root, statements: out, moved }) => (
          <li>
            <EntryLink page={page} id={root} />{' '}
            <span class="aside">
              {say('with {0}', <Joined items={out.map((one) => <StatementLink page={page} statement={one} />)} />)}
            </span>
            <Moved page={page} moved={moved} withdrawn={out} />
          </li>
        ))}
      </ol>
    </section>
  );
}

function Moved({
  page,
  moved,
  withdrawn,
}: {
  readonly page: PageContext;
  readonly moved: readonly MovedBound[];
  readonly withdrawn: readonly FileStatement[];
}): JSX.Element {
  const { changes, finer } = sayChanges(page.file, moved, withdrawn);
  return (
    <ul class="plain aside">
      {changes.map((one) => (
        <li>
          {say(
            '{0}{1}: {2} becomes {3}',
            <a href={page.href(reasonPath(one.entry))}>{one.title}</a>,
            one.of === 'whole' ? '' : `, ${one.of}`,
            said(one.was),
            said(one.is),
          )}
        </li>
      ))}
      {finer > 0 ? (
        <li>
          {say(
            '{0} by less than what is printed',
            words('{0, plural, one {one date moves} other {# dates move}}', finer),
          )}
        </li>
      ) : null}
    </ul>
  );
}
