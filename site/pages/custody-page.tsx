import type { JSX } from 'preact';
import { sayLegend } from '../../src/custody/write-line.ts';
import type { Chain } from '../../src/findings/chain.ts';
import { findChains } from '../../src/findings/custody-chains.ts';
import { sayCertain, sayGap, sayPassed, sayStretch, sayWithin } from '../../src/findings/custody-words.ts';
import { searchesFor } from '../../src/findings/gap-searches.ts';
import { howAcquired } from '../../src/findings/passed-on.ts';
import { houseStyle, lineOfChain } from '../../src/findings/provenance-line.ts';
import { titleOf } from '../../src/model/catalogue.ts';
import type { PageContext } from '../context.ts';
import { CustodyFigure } from '../drawings/custody-figure.tsx';
import { said, say, sayList, semicolon, term, words } from '../say.ts';
import { Layout } from './layout.tsx';
import { EntryLink, Joined, Scroll } from './parts.tsx';

/** Who had it, what is not known, who asserts title, and the provenance line: a chain for each piece. */
export function CustodyPage({ page }: { readonly page: PageContext }): JSX.Element {
  const chains = findChains(page.file);
  return (
    <Layout
      page={page}
      title={words('Custody')}
      standing={words('Who had the pieces, one after the other, and what is not known.')}
    >
      <h1>{say('Custody')}</h1>
      <p class="lead">
        {say(
          'On probable statements or better: {0} from the latest possible beginning to the earliest possible end, {1} from the earliest to the latest. Gaps are as long as all statements together leave them. A gap is what this museum has no record of; it says nothing of anybody’s conduct.',
          <em>{say('held throughout')}</em>,
          <em>{say('possibly held')}</em>,
        )}
      </p>
      {chains.length === 0 ? <p>{say('No holding is recorded yet.')}</p> : null}
      {chains.map((chain) => (
        <ChainSection page={page} chain={chain} />
      ))}
    </Layout>
  );
}

function ChainSection({ page, chain }: { readonly page: PageContext; readonly chain: Chain }): JSX.Element {
  const { file } = page;
  const name = titleOf(chain.object, file.settings.languages);
  const panels =
    chain.panels.length === 0
      ? ''
      : words(', {0, plural, one {panel {1}} other {panels {1}}}', chain.panels.length, sayList(chain.panels));
  const [line = '', ...notes] = lineOfChain(file, chain).split('\n\n');
  return (
    <section class="chain">
      <h2>
        {name}
        {panels}
      </h2>
      <figure class="drawing">
        <CustodyFigure page={page} chain={chain} />
        <figcaption>
          {say(
            'Solid: held throughout; two lines, or a ring, where it was shared. Dashed: possibly held. A point: recorded then; since when, or until when, is open. Arrows: no limit known. Dealers and agents stand in parentheses; set in: who had it meanwhile, for somebody else.',
          )}
        </figcaption>
      </figure>
      <Holdings page={page} chain={chain} label={`${name}${panels}`} />
      <Gaps page={page} chain={chain} />
      <Titles page={page} chain={chain} />
      <h3>{say('Provenance line')}</h3>
      <p class="provenance-line">{line}</p>
      {notes.length > 0 ? (
        <ol class="line-notes">
          {notes
            .join('\n')
            .split('\n')
            .map((note) => (
              <li>{note.replace(/^\[\d+\] /, '')}</li>
            ))}
        </ol>
      ) : null}
      <p class="aside">
        {say(
          '{0} By the convention of the AAM Guide to Provenance Research (2001).',
          sayLegend(file.sayer, houseStyle(file)),
        )}
      </p>
    </section>
  );
}

function Holdings({
  page,
  chain,
  label,
}: {
  readonly page: PageContext;
  readonly chain: Chain;
  readonly label: string;
}): JSX.Element {
  return (
    <Scroll label={words('Holdings of {0}', label)}>
      <table class="stacking">
        <thead>
          <tr>
            <th scope="col">{say('Holding')}</th>
            <th scope="col">{say('Capacity')}</th>
            <th scope="col">{say('Held')}</th>
            <th scope="col">{say('Possibly held')}</th>
            <th scope="col">{say('How acquired')}</th>
          </tr>
        </thead>
        <tbody>
          {[...chain.holdings, ...chain.meanwhile].map(({ holding, throughout, recorded, possibly }, i) => (
            <tr>
              <th scope="row">
                {i < chain.holdings.length ? '' : words('Meanwhile: ')}
                <EntryLink page={page} id={holding.id} />
                {holding.drawnFrom ? words(' (from the act)') : ''}
                {holding.keys['not-disclosed']
                  ? words(' (known, not disclosed: {0})', term(holding.keys['not-disclosed'].ground))
                  : ''}
              </th>
              <td>
                <span class="cell-label">{say('capacity')}</span>
                {term(holding.keys.capacity)}
                <Shared page={page} parties={holding.keys['shared-with'] ?? []} />
              </td>
              <td>
                <span class="cell-label">{say('held')}</span>
                {said(sayCertain({ throughout, recorded }))}
              </td>
              <td>
                <span class="cell-label">{say('possibly')}</span>
                {said(sayStretch(possibly))}
              </td>
              <td>
                <Acquired how={howAcquired(page.file.catalogue, holding)} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

function Acquired({ how }: { readonly how: string | undefined }): JSX.Element | null {
  if (how === undefined) return null;
  return (
    <>
      <span class="cell-label">{say('acquired')}</span>
      {term(how)}
    </>
  );
}

function Shared({
  page,
  parties,
}: {
  readonly page: PageContext;
  readonly parties: readonly string[];
}): JSX.Element | null {
  if (parties.length === 0) return null;
  return <>{say(', shared with {0}', <Joined items={parties.map((id) => <EntryLink page={page} id={id} />)} />)}</>;
}

function Gaps({ page, chain }: { readonly page: PageContext; readonly chain: Chain }): JSX.Element {
  const unknown = chain.holdings.filter(
    ({ holding }) => holding.keys.holder === undefined && !holding.keys['not-disclosed'],
  );
  if (chain.gaps.length === 0 && unknown.length === 0) return <p>{say('No gap is left open by the statements.')}</p>;
  return (
    <>
      <h3>{say('What is not known')}</h3>
      <ul>
        {unknown.map(({ holding, possibly }) => (
          <li>
            {say(
              '{0}: no record known to this museum says who had it; possibly {1}. {2}',
              <EntryLink page={page} id={holding.id} />,
              said(sayStretch(possibly)),
              <Searches page={page} list={searchesFor(page.file, [holding], possibly)} />,
            )}
          </li>
        ))}
        {chain.gaps.map((gap) => (
          <li>
            {say(
              'Between {0} and {1}: {2}{3}{4}, {5}.{6} {7}',
              <EntryLink page={page} id={gap.before.id} />,
              <EntryLink page={page} id={gap.after.id} />,
              <>{said(sayPassed(gap))}; </>,
              said(sayGap(gap)),
              gap.most === null || gap.precision !== 'day' ? '' : words(' ({0} to {1} days)', gap.least, gap.most),
              said(sayWithin(gap.within)),
              gap.periods.length > 0
                ? words(' It may reach into: {0}.', gap.periods.map((one) => said(one.title)).join(semicolon()))
                : '',
              <Searches page={page} list={gap.searches} />,
            )}
          </li>
        ))}
      </ul>
      <p class="aside">
        {say(
          'The order of dates only: it does not say that an act was lawful or unlawful. Ask qualified counsel in each land concerned.',
        )}
      </p>
    </>
  );
}

function Searches({
  page,
  list,
}: {
  readonly page: PageContext;
  readonly list: Chain['gaps'][number]['searches'];
}): JSX.Element {
  if (list.length === 0) return <>{say('No search for it is recorded.')}</>;
  return (
    <>
      {say(
        'Searched: {0}.',
        <Joined
          items={list.map((one) => (
            <>
              <EntryLink page={page} id={one.id} /> ({term(one.keys.outcome)})
            </>
          ))}
        />,
      )}
    </>
  );
}

function Titles({ page, chain }: { readonly page: PageContext; readonly chain: Chain }): JSX.Element | null {
  if (chain.titles.length === 0) return null;
  return (
    <>
      <h3>{say('Title, as asserted')}</h3>
      <ul>
        {chain.titles.map((one) => (
          <li>
            {say(
              '{0}: {1}, asserted by {2}, on the ground of {3}{4}{5}.',
              <EntryLink page={page} id={one.id} />,
              term(one.keys.interest),
              <EntryLink page={page} id={one.keys['asserted-by']} />,
              term(one.keys.ground),
              one.keys.begins ? words(', from {0}', one.keys.begins) : '',
              one.keys.ends ? words(' until {0}', one.keys.ends) : '',
            )}
          </li>
        ))}
      </ul>
      {chain.disputes.map((one) => (
        <p>
          {'request' in one
            ? say(
                '{0}: the return is asked for ({1}). Titles are assertions; nothing is computed from them.',
                <strong>{say('Title disputed')}</strong>,
                <EntryLink page={page} id={one.request.id} />,
              )
            : say(
                '{0}: {1} is contested by {2}. Titles are assertions; nothing is computed from them.',
                <strong>{say('Title disputed')}</strong>,
                <EntryLink page={page} id={one.title.id} />,
                <Joined
                  items={one.contestedBy.map((who) =>
                    page.file.catalogue.get(who) ? <EntryLink page={page} id={who} /> : <>{who}</>,
                  )}
                />,
              )}
        </p>
      ))}
    </>
  );
}
