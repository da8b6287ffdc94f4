import type { JSX } from 'preact';
import { type HoldingCoverage, searchCoverage, type Years } from '../../src/findings/search-coverage.ts';
import type { PageContext } from '../context.ts';
import { colon, say, semicolon, term, words } from '../say.ts';
import { EntryLink, Scroll } from './parts.tsx';

/** Holders and years against the archives that were consulted. */
export function CoverageOfSearches({ page }: { readonly page: PageContext }): JSX.Element | null {
  const rows = searchCoverage(page.file);
  const repositories = [...new Set(rows.flatMap((one) => one.looks.map(({ search }) => search.keys.repository)))];
  if (repositories.length === 0) return null;
  return (
    <section>
      <h2>{say('Holders and years against archives')}</h2>
      <p>
        {say(
          'For each holding, the years that were looked through in each archive, and what came of it. Years that nobody has looked through stand at the right. A blank says that no search there concerns the holding.',
        )}
      </p>
      <Scroll label={words('Holders and years against archives')}>
        <table class="readings">
          <thead>
            <tr>
              <th scope="col">{say('Holding')}</th>
              {repositories.map((name) => (
                <th scope="col">{name}</th>
              ))}
              <th scope="col">{say('Not looked through')}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr>
                <th scope="row">
                  <EntryLink page={page} id={row.holding.id} />
                  <span class="aside"> {row.years ? sayYears(row.years) : words('years without a known limit')}</span>
                </th>
                {repositories.map((name) => (
                  <td>
                    <Looks page={page} looks={row.looks.filter((one) => one.search.keys.repository === name)} />
                  </td>
                ))}
                <td>{sayUncovered(row)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </section>
  );
}

function Looks({ page, looks }: { readonly page: PageContext; readonly looks: HoldingCoverage['looks'] }): JSX.Element {
  return (
    <>
      {looks.map(({ search, years }, i) => (
        <>
          {i > 0 ? semicolon() : ''}
          {years ? sayYears(years) : words('years not recorded')}
          {colon()}
          <a href={page.href(`entry/${search.id}.html`)}>{term(search.keys.outcome)}</a>
        </>
      ))}
    </>
  );
}

function sayUncovered({ uncovered }: HoldingCoverage): string {
  if (uncovered === null) return words('cannot be told');
  return uncovered.length === 0 ? words('none') : uncovered.map(sayYears).join(', ');
}

function sayYears({ first, last }: Years): string {
  return first === last ? String(first) : `${first}–${last}`;
}
