import type { JSX } from 'preact';
import { capital } from '../../src/base/said.ts';
import { type OfferedReferences, offeredReferences, sayNothingOffered } from '../../src/findings/offered-references.ts';
import { citationOf } from '../../src/model/row-citation.ts';
import type { PageContext } from '../context.ts';
import { said, say, semicolon, term, words } from '../say.ts';
import { EntryLink, Scroll } from './parts.tsx';

/** What the rule over each event's place offers, and what a person decided about it. */
export function OfferedPart({ page }: { readonly page: PageContext }): JSX.Element | null {
  const offered = offeredReferences(page.file);
  if (offered.length === 0) return null;
  return (
    <section id="offered">
      <h2>{say('Offered by the rule over each place')}</h2>
      <p>
        {say(
          'For each removal, export, import and acquisition: who ruled the place at the time, and which rows of the built-in table speak of such an act then. Rules for what is fixed to a building, for what is movable, and for export are kinds of their own: being taken off the wall changes which kind applies. A person chooses or declines; nothing is chosen by the program.',
        )}
      </p>
      <Scroll label={words('Offered reference dates')}>
        <table class="stacking">
          <thead>
            <tr>
              <th scope="col">{say('Event')}</th>
              <th scope="col">{say('Place and rule')}</th>
              <th scope="col">{say('Row of the table')}</th>
              <th scope="col">{say('Kind')}</th>
              <th scope="col">{say('Standing')}</th>
              <th scope="col">{say('Decision')}</th>
            </tr>
          </thead>
          <tbody>{offered.flatMap((one) => rowsOf(page, one))}</tbody>
        </table>
      </Scroll>
    </section>
  );
}

function rowsOf(page: PageContext, one: OfferedReferences): readonly JSX.Element[] {
  const nothing = sayNothingOffered(one);
  const head = (
    <>
      <th scope="row">
        <EntryLink page={page} id={one.event.id} />
      </th>
      <td>
        <span class="cell-label">{say('place')} </span>
        {one.place ? <EntryLink page={page} id={one.place.id} /> : words('not recorded')}
        {one.rule ? `${semicolon()}${one.rule.power}, ${term(one.rule.kind)}` : ''}
      </td>
    </>
  );
  if (nothing)
    return [
      <tr>
        {head}
        <td>{said(capital(nothing))}.</td>
        <td />
        <td />
        <td />
      </tr>,
    ];
  return one.rows.map(({ row, decision }) => (
    <tr>
      {head}
      <td>
        <span class="cell-label">{say('row')} </span>
        {row.title}, {row.dateAsGiven} <code>{row.id}</code>
      </td>
      <td>
        <span class="cell-label">{say('kind')} </span>
        {term(row.kind)}
      </td>
      <td>
        <span class="cell-label">{say('source')} </span>
        {said(citationOf(row))}
      </td>
      <td>
        <span class="cell-label">{say('decision')} </span>
        {term(decision)}
      </td>
    </tr>
  ));
}
