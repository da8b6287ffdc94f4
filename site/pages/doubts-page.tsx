import type { JSX } from 'preact';
import { publicDifferences } from '../../src/findings/public-differences.ts';
import { entryPath } from '../../src/publish/page-paths.ts';
import type { PageContext } from '../context.ts';
import { colon, said, say, term, words } from '../say.ts';
import { Layout } from './layout.tsx';
import { Scroll } from './parts.tsx';

/** The doubts and notes of the checks, for internal readers. */
export function DoubtsPage({ page }: { readonly page: PageContext }): JSX.Element {
  const problems = page.problems.filter((one) => one.severity !== 'error');
  return (
    <Layout
      page={page}
      title={words('Doubts')}
      standing={words('Points to verify that the checks found; for internal readers.')}
      usesGrades={false}
    >
      <h1>{say('Doubts and notes')}</h1>
      <p>
        {say(
          '{0} tells on which statements most depends.',
          <a href={page.href('check-first.html')}>{say('What to check first')}</a>,
        )}
      </p>
      {problems.length === 0 ? (
        <p>{say('The checks found none.')}</p>
      ) : (
        <ol>
          {problems.map((one) => (
            <li>
              {one.entry !== undefined && page.file.catalogue.get(one.entry) ? (
                <>
                  <a href={page.href(entryPath(one.entry))}>{one.entry}</a>
                  {colon()}
                </>
              ) : null}
              {said(one.message)}. <em>{say('Mend:')}</em> {said(one.mend)}.{' '}
              <span class="aside">
                {term(one.severity)}, {one.code},{' '}
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
          {say(
            'Doubts about entries that this audience does not see whole are not listed here; “kerfmark check” tells them.',
          )}
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
      <h2>{say('What a public build says otherwise')}</h2>
      <p>
        {say(
          'Compared with what this audience ({0}) may see. {1}',
          term(page.file.catalogue.audience),
          page.file.catalogue.audience === 'restricted'
            ? ''
            : words('Restricted entries are compared by “kerfmark check”.'),
        )}
      </p>
      {differences.length === 0 ? (
        <p>{say('By that, it prints the same ranges and gaps, and hides no contradiction.')}</p>
      ) : (
        <Scroll label={words('What a public build says otherwise')}>
          <table class="stacking">
            <thead>
              <tr>
                <th scope="col">{say('About')}</th>
                <th scope="col">{say('Here')}</th>
                <th scope="col">{say('In public')}</th>
                <th scope="col">{say('Signed off')}</th>
              </tr>
            </thead>
            <tbody>
              {differences.map((one) => (
                <tr>
                  <th scope="row">
                    <a href={page.href(entryPath(one.entry))}>{said(one.what)}</a>
                  </th>
                  <td>
                    <span class="cell-label">{say('here')}</span>
                    {said(one.here)}
                  </td>
                  <td>
                    <span class="cell-label">{say('in public')}</span>
                    {said(one.public)}
                  </td>
                  <td>
                    <span class="cell-label">{say('signed off')}</span>
                    {signed.get(one.entry)?.why ?? words('not yet')}
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
