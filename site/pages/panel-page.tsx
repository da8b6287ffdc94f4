import type { JSX } from 'preact';
import { sayChance } from '../../src/physical/measured-reasons.ts';
import type { PanelFindings } from '../../src/physical/panels.ts';
import { measuredPath } from '../../src/publish/page-paths.ts';
import { facesOf } from '../../src/publish/panel-faces.ts';
import type { PageContext } from '../context.ts';
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
  const name = `Panel ${geometry.panel}${label ? `: ${label}` : ''}`;
  return (
    <Layout
      page={page}
      title={name}
      standing={
        <>
          Panel {geometry.panel} of <EntryLink page={page} id={object.id} />, as it is measured.
        </>
      }
      script="compare.js"
    >
      <h1>{name}</h1>
      <p class="lead">
        Every result below opens its reasons:{' '}
        <a href={page.href(measuredPath(object.id, geometry.panel))}>how they were computed</a>, from which traces, by
        which published method.
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
      <h2>Edges that may join</h2>
      {mine.map(({ first, second, join, byChance, pairs, errorMm }) => (
        <p>
          <EntryLink page={page} id={first.trace.id} /> and <EntryLink page={page} id={second.trace.id} /> may join:
          they run alike over {Math.round(join.matched)} mm, to {join.deviation.toFixed(1)} mm (root mean square); they
          are traced to {errorMm.toFixed(1)} mm together. Of edges as rough, {sayChance(byChance)};{' '}
          {pairs === 1 ? 'one pair was' : `${pairs} pairs were`} compared. That edges run alike does not say that they
          belong together.
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
      <h2>Photographs in the frame</h2>
      <Scroll label="Registration of figures">
        <table>
          <caption>Control points and how far the map misses them, in mm</caption>
          <thead>
            <tr>
              <th scope="col">Figure</th>
              <th scope="col">Map</th>
              <th scope="col">Root mean square</th>
              <th scope="col">Off by about</th>
              <th scope="col">Each point</th>
            </tr>
          </thead>
          <tbody>
            {figures.map(({ figure, registration }) => (
              <tr>
                <th scope="row">
                  <EntryLink page={page} id={figure.id} />
                </th>
                <td>{registration.kind}</td>
                <td>{registration.rootMeanSquareMm.toFixed(2)}</td>
                <td>{registration.errorMm === null ? 'cannot be told' : registration.errorMm.toFixed(2)}</td>
                <td>{registration.residualsMm.map((one) => one.toFixed(2)).join(', ')}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </section>
  );
}
