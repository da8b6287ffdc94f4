import type { JSX } from 'preact';
import { capital, sameSaid } from '../../src/base/said.ts';
import type { FileContradiction } from '../../src/findings/case-file.ts';
import { disputeOf, sayDispute } from '../../src/findings/dispute.ts';
import { countRoots, sayRootCount } from '../../src/findings/independence.ts';
import { type PrintedRange, sayRange } from '../../src/findings/printed-range.ts';
import { sayContradiction } from '../../src/findings/say-contradiction.ts';
import { type ClusterOfContradictions, clustersOfContradictions } from '../../src/findings/ways-out.ts';
import { titleOf } from '../../src/model/catalogue.ts';
import { reasonPath } from '../../src/publish/page-paths.ts';
import type { FileStatement } from '../../src/statements/statements.ts';
import type { PageContext } from '../context.ts';
import { said, say, term, words } from '../say.ts';
import { formatTrial } from '../trial/trial-state.ts';
import { Layout } from './layout.tsx';
import { EntryLink, Joined, Scroll, StatementLink, StatementList } from './parts.tsx';

/** Where the file disagrees with itself, and the ways out. Nothing is picked for the reader. */
export function ContradictionsPage({ page }: { readonly page: PageContext }): JSX.Element {
  const clusters = clustersOfContradictions(page.file);
  return (
    <Layout
      page={page}
      title={words('Contradictions')}
      standing={words('Where statements of the file cannot all be right.')}
    >
      <h1>{say('Contradictions')}</h1>
      {clusters.length === 0 ? (
        <p>{say('No statements of this file contradict each other, at any grade.')}</p>
      ) : (
        <p class="lead">
          {say(
            'Each set below cannot hold together, and would be free of contradiction if any one of its statements were withdrawn. The file does not choose: its dates rest on what is not in dispute, and the ways out say which withdrawals would mend all of them together, and what the dates would then be.',
          )}
        </p>
      )}
      {clusters.map((cluster) => (
        <ClusterSection page={page} cluster={cluster} several={clusters.length > 1} />
      ))}
    </Layout>
  );
}

function ClusterSection({
  page,
  cluster,
  several,
}: {
  readonly page: PageContext;
  readonly cluster: ClusterOfContradictions;
  readonly several: boolean;
}): JSX.Element {
  const Heading = several ? 'h3' : 'h2';
  return (
    <section class="cluster">
      {several ? <h2>{say('Group {0}', cluster.number)}</h2> : null}
      <DisputePart page={page} cluster={cluster} />
      {cluster.contradictions.map((one) => (
        <span id={`c-${one.number}`} />
      ))}
      <details>
        <summary>
          {say(
            '{0, plural, one {The set of statements} other {The {0} sets of statements}} that cannot hold together',
            cluster.contradictions.length,
          )}
        </summary>
        {cluster.contradictions.map((one) => (
          <ContradictionPart page={page} one={one} Heading={Heading} />
        ))}
      </details>
      {cluster.complete ? null : <p>{say('There may be more contradictions in this group than could be listed.')}</p>}
      <Heading>
        {say('Ways out{0}', cluster.contradictions.length > 1 ? words(' of all of these together') : '')}
      </Heading>
      <p>
        {say(
          'Each row withdraws as little as possible; none is preferred. The dates are those on statements that are {0} or better.',
          term(cluster.grade),
        )}
      </p>
      <WaysTable page={page} cluster={cluster} />
    </section>
  );
}

/** The dispute told once: who says what, merged by independent origins. */
function DisputePart({
  page,
  cluster,
}: {
  readonly page: PageContext;
  readonly cluster: ClusterOfContradictions;
}): JSX.Element {
  const dispute = disputeOf(page.file, cluster.contradictions);
  return (
    <>
      <p>{said(sayDispute(page.file, dispute))}.</p>
      <Scroll label={words('Statements by independent origin')}>
        <table class="stacking">
          <thead>
            <tr>
              <th scope="col">{say('Independent origin')}</th>
              <th scope="col">{say('Statements')}</th>
            </tr>
          </thead>
          <tbody>
            {dispute.groups.map((group) => (
              <tr>
                <th scope="row">
                  {group.origins.length === 0 ? (
                    words('names no source')
                  ) : (
                    <Joined items={group.origins.map((id) => <EntryLink page={page} id={id} />)} />
                  )}
                </th>
                <td>
                  <Links page={page} statements={group.statements} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </>
  );
}

/** One irreducible set, said as a sentence that names both sides. */
function ContradictionPart({
  page,
  one,
  Heading,
}: {
  readonly page: PageContext;
  readonly one: FileContradiction;
  readonly Heading: 'h2' | 'h3';
}): JSX.Element {
  const sides = sayContradiction(page.file, one);
  return (
    <div>
      <Heading>
        {one.number}. {one.kind === 'order' ? words('A loop of order') : words('Statements that cannot all be right')},{' '}
        {term(one.grade)}
      </Heading>
      {one.kind === 'order' ? (
        <p>
          {say(
            'Each comes after the next, and the last after the first. All on one day would satisfy it; it is rather a slip in one of the relations.',
          )}
        </p>
      ) : null}
      {sides ? (
        <p>
          {say(
            '{0} would have to be {1}, by {2}, and {3}, by {4}.',
            said(capital(sides.moment)),
            said(sides.earliest.words),
            <Links page={page} statements={sides.earliest.statements} />,
            said(sides.latest.words),
            <Links page={page} statements={sides.latest.statements} />,
          )}
        </p>
      ) : null}
      {!sides && one.kind === 'dates' ? (
        <p>
          {one.statements.some((statement) => statement.choice)
            ? words('None of the separate dates that are left open fits with all of the others.')
            : words('They make a circle: followed round, something would have to lie later than itself.')}
        </p>
      ) : null}
      <StatementList page={page} statements={one.statements} />
      <p class="aside">{said(sayRootCount(countRoots(page.file.catalogue, one.statements)))}.</p>
    </div>
  );
}

function Links({
  page,
  statements,
}: {
  readonly page: PageContext;
  readonly statements: readonly FileStatement[];
}): JSX.Element {
  return <Joined items={statements.map((one) => <StatementLink page={page} statement={one} />)} />;
}

function WaysTable({
  page,
  cluster,
}: {
  readonly page: PageContext;
  readonly cluster: ClusterOfContradictions;
}): JSX.Element {
  const { affected, standing, ways } = cluster;
  const title = (i: number): string => {
    const entry = affected[i];
    return entry ? titleOf(entry, page.file.settings.languages) : '';
  };
  const cells = (ranges: readonly PrintedRange[], before: readonly PrintedRange[] | null): readonly JSX.Element[] =>
    ranges.map((range, i) => {
      const same = before !== null && sameSaid(sayRange(range), sayRange(before[i] as PrintedRange));
      return (
        <td class={same ? 'same' : undefined}>
          <span class="cell-label">{title(i)} </span>
          {said(sayRange(range))}
        </td>
      );
    });
  return (
    <Scroll label={words('Ways out of group {0}', cluster.number)}>
      <table class="stacking long">
        <thead>
          <tr>
            <th scope="col">{say('Withdrawn')}</th>
            {affected.map((entry, i) => (
              <th scope="col">
                <a href={page.href(reasonPath(entry.id))}>{title(i)}</a>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">{say('Nothing: as the file stands')}</th>
            {cells(standing, null)}
          </tr>
          {ways.map((way) => (
            <tr>
              <th scope="row">
                <Withdrawn page={page} statements={way.withdrawn} />
              </th>
              {cells(way.ranges, standing)}
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

function Withdrawn({
  page,
  statements,
}: {
  readonly page: PageContext;
  readonly statements: readonly FileStatement[];
}): JSX.Element {
  const trial = `trial.html${formatTrial({ withdrawn: statements.map((one) => one.id), grades: {} })}`;
  return (
    <>
      <Links page={page} statements={statements} />{' '}
      <a class="ref" href={page.href(trial)}>
        {say('(see it)')}
      </a>
    </>
  );
}
