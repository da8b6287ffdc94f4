import type { JSX } from 'preact';
import { reasonsOfPanel } from '../../src/physical/measured-reasons.ts';
import type { PanelFindings } from '../../src/physical/panels.ts';
import { panelPath } from '../../src/publish/page-paths.ts';
import type { PageContext } from '../context.ts';
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
      title={`How panel ${name} was measured`}
      standing={
        <>
          <a href={page.href(panelPath(object.id, name))}>Panel {name}</a> of <EntryLink page={page} id={object.id} />,
          how its results were computed.
        </>
      }
      usesGrades={false}
    >
      <h1>How panel {name} was measured</h1>
      {reasons.length === 0 ? <p>Nothing could be computed of this panel yet; its traces have no shapes.</p> : null}
      {reasons.map((one) => (
        <section id={one.id}>
          <h2>{one.what}</h2>
          <dl class="facts">
            <dt>Result</dt>
            <dd>{one.result}</dd>
            <dt>From</dt>
            <dd>
              <Joined items={one.inputs.map((id) => <EntryLink page={page} id={id} />)} />
            </dd>
            <dt>Method</dt>
            <dd>{one.method}</dd>
            <dt>Source</dt>
            <dd>{one.source}</dd>
            {one.caution === null ? null : (
              <>
                <dt>Caution</dt>
                <dd>{one.caution}</dd>
              </>
            )}
          </dl>
        </section>
      ))}
    </Layout>
  );
}
