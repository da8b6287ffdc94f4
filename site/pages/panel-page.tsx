import type { JSX } from 'preact';
import { sayChance } from '../../src/physical/measured-reasons.ts';
import type { PanelFindings } from '../../src/physical/panels.ts';
import { measuredPath } from '../../src/publish/page-paths.ts';
import { facesOf } from '../../src/publish/panel-faces.ts';
import type { PageContext } from '../context.ts';
import { colon, said, say, term, words } from '../say.ts';
import { ComparePart } from './compare-part.tsx';
import { FourChainsPart } from './four-chains-part.tsx';
import { Layout } from './layout.tsx';
import { CoveragePart } from './panel-coverage-part.tsx';
import { LayersPart } from './panel-layers-part.tsx';
import { PlanPart } from './panel-plan-part.tsx';
import { SectionsPart } from './panel-sections-part.tsx';
import { MotifsPart, SurfacePart } from './panel-surface-part.tsx';
import { WeightsPart } from './panel-weights-part.tsx';
import { EntryLink, Scroll } from './parts.tsx';
import { UltravioletPart } from './ultraviolet-part.tsx';

interface Props {
  readonly page: PageContext;
  readonly panel: PanelFindings;
}

/** A panel measured: plan with key, surface, sections, motifs, weights, layers, edges that may join. */
export function PanelPage({ page, panel }: Props): JSX.Element {
  const { geometry } = panel;
  const { object, label } = geometry;
  const name = words('Panel {0}{1}', geometry.panel, label ? `${colon()}${label}` : '');
  return (
    <Layout
      page={page}
      title={name}
      standing={
        <>{say('Panel {0} of {1}, as it is measured.', geometry.panel, <EntryLink page={page} id={object.id} />)}</>
      }
      script="compare.js"
    >
      <h1>{name}</h1>
      <p class="lead">
        {say(
          'Every result below opens its reasons: {0}, from which traces, by which published method.',
          <a href={page.href(measuredPath(object.id, geometry.panel))}>{say('how they were computed')}</a>,
        )}
      </p>
      {facesOf(panel).map((plan, i) => (
        <PlanPart page={page} plan={plan} outlineTraced={geometry.outlineTraced} isFirst={i === 0} />
      ))}
      <ComparePart page={page} panel={panel} />
      <SurfacePart page={page} panel={panel} />
      <SectionsPart page={page} panel={panel} />
      <MotifsPart page={page} panel={panel} />
      <WeightsPart page={page} panel={panel} />
      <LayersPart page={page} panel={panel} />
      <UltravioletPart
        page={page}
        readings={page.file.physical.ultraviolet.filter(
          ({ trace: { keys } }) => keys.object === object.id && keys.panel === geometry.panel,
        )}
      />
      <CoveragePart page={page} panel={panel} />
      <Joins page={page} panel={panel} />
      <FourChainsPart page={page} object={object} panel={geometry.panel} />
      <Registrations page={page} panel={panel} />
    </Layout>
  );
}

function Joins({ page, panel }: Props): JSX.Element | null {
  const { object, panel: name } = panel.geometry;
  const mine = page.file.physical.joinsOf(object.id, name);
  if (mine.length === 0) return null;
  return (
    <section>
      <h2>{say('Edges that may join')}</h2>
      {mine.map(({ first, second, join, byChance, pairs, alikeMm }) => (
        <p>
          {say(
            '{0} and {1} may join: they run alike over {2} mm, to {3} mm, no finer than they are traced. Of edges as rough, {4}; {5} compared. That edges run alike does not say that they belong together.',
            <EntryLink page={page} id={first.trace.id} />,
            <EntryLink page={page} id={second.trace.id} />,
            Math.round(join.matched),
            alikeMm.toFixed(1),
            said(sayChance(byChance)),
            words('{0, plural, one {one pair was} other {# pairs were}}', pairs),
          )}
        </p>
      ))}
    </section>
  );
}

function Registrations({ page, panel }: Props): JSX.Element | null {
  const figures = [...panel.geometry.figures, ...panel.geometry.back.figures];
  if (figures.length === 0) return null;
  return (
    <section>
      <h2>{say('Photographs in the frame')}</h2>
      <Scroll label={words('Registration of figures')}>
        <table>
          <caption>{say('Control points and how far the map misses them, in mm')}</caption>
          <thead>
            <tr>
              <th scope="col">{say('Figure')}</th>
              <th scope="col">{say('Map')}</th>
              <th scope="col">{say('Root mean square')}</th>
              <th scope="col">{say('Off by about')}</th>
              <th scope="col">{say('Each point')}</th>
            </tr>
          </thead>
          <tbody>
            {figures.map(({ figure, registration }) => (
              <tr>
                <th scope="row">
                  <EntryLink page={page} id={figure.id} />
                </th>
                <td>{term(registration.kind)}</td>
                <td>{registration.rootMeanSquareMm.toFixed(2)}</td>
                <td>{registration.errorMm === null ? words('cannot be told') : registration.errorMm.toFixed(2)}</td>
                <td>{registration.residualsMm.map((one) => one.toFixed(2)).join(', ')}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </section>
  );
}
