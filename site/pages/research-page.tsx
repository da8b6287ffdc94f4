import type { JSX } from 'preact';
import { titleOf } from '../../src/model/catalogue.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { PageContext } from '../context.ts';
import { CoverageOfSearches } from './coverage-of-searches.tsx';
import { Layout } from './layout.tsx';
import { EntryLink, Joined, Scroll } from './parts.tsx';

/** What is asked, what was searched, and the candidate readings beside the entries that bear on them. No totals. */
export function ResearchPage({ page }: { readonly page: PageContext }): JSX.Element {
  const { catalogue } = page.file;
  return (
    <Layout
      page={page}
      title="Research"
      standing="Open questions, candidate readings, and where was looked."
      usesGrades={false}
    >
      <h1>Research</h1>
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
      <h2>Questions</h2>
      {questions.length === 0 ? <p>No question is recorded.</p> : null}
      {questions.map((one) => (
        <>
          <h3>
            <EntryLink page={page} id={one.id} />
          </h3>
          <dl class="facts">
            <dt>State</dt>
            <dd>{one.keys.state}</dd>
            {(one.keys.about ?? []).length > 0 ? (
              <>
                <dt>About</dt>
                <dd>
                  <Joined items={(one.keys.about ?? []).map((id) => <EntryLink page={page} id={id} />)} />
                </dd>
              </>
            ) : null}
            {one.keys['why-it-matters'] ? (
              <>
                <dt>Why it matters</dt>
                <dd>{one.keys['why-it-matters']}</dd>
              </>
            ) : null}
            <dt>What would settle it</dt>
            <dd>{one.keys['would-settle-it'] ?? 'not yet said'}</dd>
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
      <h2>Readings</h2>
      {readings.length === 0 ? <p>No candidate reading is recorded.</p> : null}
      {columns.length > 0 ? (
        <>
          <p>
            Candidates in rows, entries in columns; blank where nobody has said. The words are not added up. A candidate
            is excluded only by a contradiction that somebody states and that stands.
          </p>
          <Scroll label="Readings beside entries">
            <table class="readings">
              <thead>
                <tr>
                  <th scope="col">Reading</th>
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
                      return <td>{found?.is}</td>;
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
            {reading.keys.proposition} Put forward by{' '}
            {(reading.keys['put-forward-by'] ?? []).length === 0 ? (
              'nobody named'
            ) : (
              <Joined items={(reading.keys['put-forward-by'] ?? []).map(party)} />
            )}
            {(reading.keys['accepted-by'] ?? []).length === 0 ? (
              '.'
            ) : (
              <>
                ; accepted by <Joined items={(reading.keys['accepted-by'] ?? []).map(party)} />.
              </>
            )}
          </p>
          <ul>
            {(reading.keys.weighs ?? []).map((one) => (
              <li>
                <EntryLink page={page} id={one.entry} />{' '}
                {one.is === 'compatible'
                  ? 'is compatible with it'
                  : one.is === 'not diagnostic'
                    ? 'is not diagnostic'
                    : `${one.is} it`}
                : {one.why}.
              </li>
            ))}
          </ul>
        </>
      ))}
    </section>
  );
}

function Searches({
  page,
  searches,
}: {
  readonly page: PageContext;
  readonly searches: readonly Entry<'search'>[];
}): JSX.Element {
  return (
    <section>
      <h2>Where was looked</h2>
      <p>Nothing found in what was searched is not the same as nothing there.</p>
      {searches.length === 0 ? (
        <p>No search is recorded.</p>
      ) : (
        <Scroll label="Searches">
          <table class="stacking">
            <thead>
              <tr>
                <th scope="col">Search</th>
                <th scope="col">Repository</th>
                <th scope="col">What was looked at</th>
                <th scope="col">Years</th>
                <th scope="col">Outcome</th>
                <th scope="col">Concerns</th>
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
                    <span class="cell-label">repository</span>
                    {keys.repository}
                  </td>
                  <td>
                    <span class="cell-label">looked at</span>
                    {keys.scope?.series ?? 'not recorded'}
                    {keys.scope?.missing ? `; could not be seen: ${keys.scope.missing}` : ''}
                  </td>
                  <td>
                    {keys.scope?.from || keys.scope?.to
                      ? `${keys.scope.from ?? ''}–${keys.scope.to ?? ''}`
                      : 'not recorded'}
                  </td>
                  <td>
                    <span class="cell-label">outcome</span>
                    {keys.outcome}
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
