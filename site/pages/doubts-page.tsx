import type { JSX } from 'preact';
import { entryPath } from '../../src/publish/page-paths.ts';
import type { PageContext } from '../context.ts';
import { Layout } from './layout.tsx';

/** The doubts and notes of the checks, for internal readers. */
export function DoubtsPage({ page }: { readonly page: PageContext }): JSX.Element {
  const problems = page.problems.filter((one) => one.severity !== 'error');
  return (
    <Layout
      page={page}
      title="Doubts"
      standing="Known traps of the trade that the checks found; for internal readers."
      usesGrades={false}
    >
      <h1>Doubts and notes</h1>
      {problems.length === 0 ? (
        <p>The checks found none.</p>
      ) : (
        <ol>
          {problems.map((one) => (
            <li>
              {one.entry !== undefined && page.file.catalogue.get(one.entry) ? (
                <>
                  <a href={page.href(entryPath(one.entry))}>{one.entry}</a>:{' '}
                </>
              ) : null}
              {one.message}. <em>Mend:</em> {one.mend}.{' '}
              <span class="aside">
                {one.severity}, {one.code},{' '}
                <code>
                  {one.place.file}:{one.place.line}
                </code>
              </span>
            </li>
          ))}
        </ol>
      )}
    </Layout>
  );
}
