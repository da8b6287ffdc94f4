import type { JSX } from 'preact';
import { publicDifferences } from '../../src/findings/public-differences.ts';
import { entryPath } from '../../src/publish/page-paths.ts';
import type { PageContext } from '../context.ts';
import { Layout } from './layout.tsx';
import { Scroll } from './parts.tsx';

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
      <p>
        <a href={page.href('check-first.html')}>What to check first</a> tells on which statements most depends.
      </p>
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
      {page.file.catalogue.holdsMore && !page.file.catalogue.workspace?.keys['unshown-note'] ? (
        <p class="aside">
          Doubts about entries that this audience does not see whole are not listed here; “kerfmark check” tells them.
        </p>
      ) : null}
      <PublicDifferences page={page} />
    </Layout>
  );
}

/** What a public build would say otherwise, whether signed off or not. */
function PublicDifferences({ page }: { readonly page: PageContext }): JSX.Element {
  const differences = publicDifferences(page.file, page.fileFor('public'));
  const signed = new Map((page.file.catalogue.workspace?.keys['signed-off'] ?? []).map((one) => [one.entry, one]));
  return (
    <section>
      <h2>What a public build says otherwise</h2>
      <p>
        Compared with what this audience ({page.file.catalogue.audience}) may see.{' '}
        {page.file.catalogue.audience === 'restricted' ? '' : 'Restricted entries are compared by “kerfmark check”.'}
      </p>
      {differences.length === 0 ? (
        <p>By that, it prints the same ranges and gaps, and hides no contradiction.</p>
      ) : (
        <Scroll label="What a public build says otherwise">
          <table class="stacking">
            <thead>
              <tr>
                <th scope="col">About</th>
                <th scope="col">Here</th>
                <th scope="col">In public</th>
                <th scope="col">Signed off</th>
              </tr>
            </thead>
            <tbody>
              {differences.map((one) => (
                <tr>
                  <th scope="row">
                    <a href={page.href(entryPath(one.entry))}>{one.what}</a>
                  </th>
                  <td>
                    <span class="cell-label">here</span>
                    {one.here}
                  </td>
                  <td>
                    <span class="cell-label">in public</span>
                    {one.public}
                  </td>
                  <td>
                    <span class="cell-label">signed off</span>
                    {signed.get(one.entry)?.why ?? 'not yet'}
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
