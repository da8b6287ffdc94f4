import type { JSX } from 'preact';
import { reasonsOfPanel } from '../../src/physical/measured-reasons.ts';
import type { PanelFindings } from '../../src/physical/panels.ts';
import { panelPath } from '../../src/publish/page-paths.ts';
import type { PageContext } from '../context.ts';
import { said, say, words } from '../say.ts';
import { Layout } from './layout.tsx';
import { EntryLink, Joined } from './parts.tsx';

/** How every result of a panel was computed: from what, by which method, published where, with which caution. */
export function MeasuredPage({
  page,
  panel,
}: {
  readonly page: PageContext;
  readonly panel: PanelFindings;
}): JSX.Element {
  const { object, panel: name } = panel.geometry;
  const reasons = reasonsOfPanel(panel, page.file.physical.joinsOf(object.id, name));
  return (
    <Layout
      page={page}
      title={words('How panel {0} was measured', name)}
      standing={
        <>
          {say(
            '{0} of {1}, how its results were computed.',
            <a href={page.href(panelPath(object.id, name))}>{say('Panel {0}', name)}</a>,
            <EntryLink page={page} id={object.id} />,
          )}
        </>
      }
      usesGrades={false}
    >
      <h1>{say('How panel {0} was measured', name)}</h1>
      {reasons.length === 0 ? (
        <p>{say('Nothing could be computed of this panel yet; its traces have no shapes.')}</p>
      ) : null}
      {reasons.map((one) => (
        <section id={one.id}>
          <h2>{said(one.what)}</h2>
          <dl class="facts">
            <dt>{say('Result')}</dt>
            <dd>{said(one.result)}</dd>
            <dt>{say('From')}</dt>
            <dd>
              <Joined items={one.inputs.map((id) => <EntryLink page={page} id={id} />)} />
            </dd>
            <dt>{say('Method')}</dt>
            <dd>{said(one.method)}</dd>
            <dt>{say('Source')}</dt>
            <dd>{said(one.source)}</dd>
            {one.caution === null ? null : (
              <>
                <dt>{say('Caution')}</dt>
                <dd>{said(one.caution)}</dd>
              </>
            )}
          </dl>
        </section>
      ))}
    </Layout>
  );
}
