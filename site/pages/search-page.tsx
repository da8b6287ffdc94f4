import type { JSX } from 'preact';
import { REGISTERS } from '../../src/publish/page-paths.ts';
import { searchRows } from '../../src/publish/search-data.ts';
import type { PageContext } from '../context.ts';
import { say, term, words } from '../say.ts';
import { Layout } from './layout.tsx';

/** Search over ids, titles, names and the beginnings of texts; the index is in the page, so that it works from a disk. */
export function SearchPage({ page }: { readonly page: PageContext }): JSX.Element {
  const rows = searchRows(page.file);
  return (
    <Layout
      page={page}
      title={words('Search')}
      standing={words('Ids, titles, names and the beginnings of the texts of all entries of this site.')}
      usesGrades={false}
      script="search.js"
    >
      <h1>{say('Search')}</h1>
      <p>
        {say(
          'Accents, capitals and the ends of words do not matter; names are found in every writing that the file has. Nothing that you type leaves this page.',
        )}
      </p>
      <div id="search" data-root={page.href('')} />
      <noscript>
        <p>
          {say(
            'The search needs a script. The registers list every entry: {0}.',
            REGISTERS.map((one, i) => (
              <>
                {i > 0 ? ' · ' : ''}
                <a href={page.href(`register/${one.name}.html`)}>{term(one.title)}</a>
              </>
            )),
          )}
        </p>
      </noscript>
      <script
        type="application/json"
        id="search-rows"
        dangerouslySetInnerHTML={{ __html: JSON.stringify(rows).replaceAll('<', '\\u003c') }}
      />
    </Layout>
  );
}
