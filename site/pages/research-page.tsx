import type { JSX } from 'preact';
import { phrase } from '../../src/base/said.ts';
import { titleOf } from '../../src/model/catalogue.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { PageContext } from '../context.ts';
import { colon, said, say, term, words } from '../say.ts';
import { CoverageOfSearches } from './coverage-of-searches.tsx';
import { Layout } from './layout.tsx';
import { EntryLink, Joined, Scroll } from './parts.tsx';

/** What is asked, what was searched, and the candidate readings beside the entries that bear on them. No totals. */
export function ResearchPage({ page }: { readonly page: PageContext }): JSX.Element {
  const { catalogue } = page.file;
  return (
    <Layout
      page={page}
      title={words('Research')}
      standing={words('Open questions, candidate readings, and the searches made.')}
      usesGrades={false}
    >
      <h1>{say('Research')}</h1>
      <Questions page={page} questions={catalogue.ofType('question')} />
      <Readings page={page} readings={catalogue.ofType('reading')} />
      <Searches page={page} searches={catalogue.ofType('search')} />
      <CoverageOfSearches page={page} />
    </Layout>
  );
}

function Questions({
  page,
  questions,
}: {
  readonly page: PageContext;
  readonly questions: readonly Entry<'question'>[];
}): JSX.Element {
  return (
    <section>
      <h2>{say('Questions')}</h2>
      {questions.length === 0 ? <p>{say('No question is recorded.')}</p> : null}
      {questions.map((one) => (
        <>
          <h3>
            <EntryLink page={page} id={one.id} />
          </h3>
          <dl class="facts">
            <dt>{say('State')}</dt>
            <dd>{term(one.keys.state)}</dd>
            {(one.keys.about ?? []).length > 0 ? (
              <>
                <dt>{say('About')}</dt>
                <dd>
                  <Joined items={(one.keys.about ?? []).map((id) => <EntryLink page={page} id={id} />)} />
                </dd>
              </>
            ) : null}
            {one.keys['why-it-matters'] ? (
              <>
                <dt>{say('Why it matters')}</dt>
                <dd>{one.keys['why-it-matters']}</dd>
              </>
            ) : null}
            <dt>{say('What would settle it')}</dt>
            <dd>{one.keys['would-settle-it'] ?? words('not yet said')}</dd>
          </dl>
        </>
      ))}
    </section>
  );
}

function Readings({
  page,
  readings,
}: {
  readonly page: PageContext;
  readonly readings: readonly Entry<'reading'>[];
}): JSX.Element {
  const columns = [...new Set(readings.flatMap((one) => (one.keys.weighs ?? []).map(({ entry }) => entry)))];
  const party = (id: string): JSX.Element =>
    page.file.catalogue.get(id) ? <EntryLink page={page} id={id} /> : <>{id}</>;
  return (
    <section>
      <h2>{say('Readings')}</h2>
      {readings.length === 0 ? <p>{say('No candidate reading is recorded.')}</p> : null}
      {columns.length > 0 ? (
        <>
          <p>
            {say(
              'Candidates in rows, entries in columns; blank where nobody has said. The words are not added up. A candidate is excluded only by a contradiction that somebody states and that stands.',
            )}
          </p>
          <Scroll label={words('Readings beside entries')}>
            <table class="readings">
              <thead>
                <tr>
                  <th scope="col">{say('Reading')}</th>
                  {columns.map((id) => (
                    <th scope="col">
                      <EntryLink page={page} id={id} />
                    </th>
                  ))}
                </tr>
              </thead>
              <tbody>
                {readings.map((reading) => (
                  <tr>
                    <th scope="row">
                      <EntryLink page={page} id={reading.id} />
                    </th>
                    {columns.map((id) => {
                      const found = reading.keys.weighs?.find((one) => one.entry === id);
                      return <td>{found ? term(found.is) : null}</td>;
                    })}
                  </tr>
                ))}
              </tbody>
            </table>
          </Scroll>
        </>
      ) : null}
      {readings.map((reading) => (
        <>
          <h3>{titleOf(reading, page.file.settings.languages)}</h3>
          <p>
            {say(
              '{0} Put forward by {1}{2}',
              reading.keys.proposition,
              (reading.keys['put-forward-by'] ?? []).length === 0 ? (
                words('nobody named')
              ) : (
                <Joined items={(reading.keys['put-forward-by'] ?? []).map(party)} />
              ),
              (reading.keys['accepted-by'] ?? []).length === 0 ? (
                '.'
              ) : (
                <>{say('; accepted by {0}.', <Joined items={(reading.keys['accepted-by'] ?? []).map(party)} />)}</>
              ),
            )}
          </p>
          <ul>
            {(reading.keys.weighs ?? []).map((one) => (
              <li>
                <EntryLink page={page} id={one.entry} /> {said(WEIGHS[one.is])}
                {colon()}
                {one.why}.
              </li>
            ))}
          </ul>
        </>
      ))}
    </section>
  );
}

/** What something says of a reading. */
const WEIGHS = {
  requires: phrase('needs it'),
  compatible: phrase('fits'),
  contradicts: phrase('speaks against it'),
  'not diagnostic': phrase('decides nothing'),
} as const;

function Searches({
  page,
  searches,
}: {
  readonly page: PageContext;
  readonly searches: readonly Entry<'search'>[];
}): JSX.Element {
  return (
    <section>
      <h2>{say('Searches made')}</h2>
      <p>{say('Nothing found in what was searched is not the same as nothing there.')}</p>
      {searches.length === 0 ? (
        <p>{say('No search is recorded.')}</p>
      ) : (
        <Scroll label={words('Searches')}>
          <table class="stacking">
            <thead>
              <tr>
                <th scope="col">{say('Search')}</th>
                <th scope="col">{say('Repository')}</th>
                <th scope="col">{say('What was looked at')}</th>
                <th scope="col">{say('Years')}</th>
                <th scope="col">{say('Outcome')}</th>
                <th scope="col">{say('Concerns')}</th>
              </tr>
            </thead>
            <tbody>
              {searches.map(({ id, keys }) => (
                <tr>
                  <th scope="row">
                    <EntryLink page={page} id={id} />
                    {keys.when ? <span class="aside"> ({keys.when})</span> : null}
                  </th>
                  <td>
                    <span class="cell-label">{say('repository')}</span>
                    {keys.repository}
                  </td>
                  <td>
                    <span class="cell-label">{say('looked at')}</span>
                    {keys.scope?.series ?? words('not recorded')}
                    {keys.scope?.missing ? words('; could not be seen: {0}', keys.scope.missing) : ''}
                  </td>
                  <td>
                    {keys.scope?.from || keys.scope?.to
                      ? `${keys.scope.from ?? ''}–${keys.scope.to ?? ''}`
                      : words('not recorded')}
                  </td>
                  <td>
                    <span class="cell-label">{say('outcome')}</span>
                    {term(keys.outcome)}
                  </td>
                  <td>
                    <Joined items={(keys.about ?? []).map((about) => <EntryLink page={page} id={about} />)} />
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </Scroll>
      )}
    </section>
  );
}
