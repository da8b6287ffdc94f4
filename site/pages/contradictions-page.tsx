import type { JSX } from 'preact';
import type { PageContext } from '../context.ts';
import { Layout } from './layout.tsx';
import { StatementLink, StatementList } from './parts.tsx';

/** Where the file disagrees with itself, and the ways out. Nothing is picked for the reader. */
export function ContradictionsPage({ page }: { readonly page: PageContext }): JSX.Element {
  const { contradictions } = page.file;
  return (
    <Layout page={page} title="Contradictions" standing="Where statements of the file cannot all be right.">
      <h1>Contradictions</h1>
      {contradictions.length === 0 ? (
        <p>No statements of this file contradict each other, at any grade.</p>
      ) : (
        <p class="lead">
          Each set below cannot hold together, and would be free of contradiction if any one of its statements were
          withdrawn. The file does not choose: ranges rest on what is not in dispute, and the ways out say which
          withdrawals would mend a whole cluster of contradictions.
        </p>
      )}
      {contradictions.map((one) => (
        <section id={`c-${one.number}`}>
          <h2>
            {one.number}. {one.kind === 'order' ? 'A loop of order' : 'Statements that cannot all be right'},{' '}
            {one.grade}
          </h2>
          {one.kind === 'order' ? (
            <p>
              Each comes after the next, and the last after the first. All on one day would satisfy it; it is rather a
              slip in one of the relations.
            </p>
          ) : null}
          <StatementList page={page} statements={one.statements} />
          <h3>Ways out</h3>
          <ul>
            {one.waysOut.map((way) => (
              <li>
                Withdraw{' '}
                {way.map((s, i) => (
                  <>
                    {i > 0 ? ' and ' : ''}
                    <StatementLink page={page} statement={s} />
                  </>
                ))}
                .
              </li>
            ))}
          </ul>
          {one.complete ? null : <p>There may be more contradictions in this cluster than could be listed.</p>}
        </section>
      ))}
    </Layout>
  );
}
