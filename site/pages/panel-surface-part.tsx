import type { JSX } from 'preact';
import { formatOutward } from '../../src/base/interval.ts';
import type { PanelFindings } from '../../src/physical/panels.ts';
import type { PageContext } from '../context.ts';
import { NotTold } from './panel-weights-part.tsx';
import { EntryLink, Joined, Scroll } from './parts.tsx';

interface Props {
  readonly page: PageContext;
  readonly panel: PanelFindings;
}

/** The surface by category, and motifs that an edge cuts. */
export function SurfacePart({ page, panel }: Props): JSX.Element | null {
  if (panel.isCut) return <NotTold what="Surface" />;
  if (panel.areas.length === 0) return null;
  return (
    <section>
      <h2>Surface</h2>
      <p>
        As far as it is traced; what nobody traced counts as original surface. Overlaps count once, what stands first in
        the table takes them. The shares are intervals, by the errors of tracing.
      </p>
      <Scroll label="Surface by category">
        <table>
          <thead>
            <tr>
              <th scope="col">Category</th>
              <th scope="col">cm²</th>
              <th scope="col">% of the panel</th>
              <th scope="col">By</th>
            </tr>
          </thead>
          <tbody>
            {panel.areas.map((one) => (
              <tr>
                <th scope="row">
                  {one.category === 'original surface' ? 'original surface, as far as traced' : one.category}
                </th>
                <td>{(one.squareMm / 100).toFixed(0)}</td>
                <td>{one.squareMm > 0 && one.perCent.most < 0.1 ? 'under 0.1' : formatOutward(one.perCent, 1)}</td>
                <td>
                  <Joined items={one.traces.map((id) => <EntryLink page={page} id={id} />)} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </section>
  );
}

/** Round motifs cut by an edge: how far the painting went on if they were full circles. */
export function MotifsPart({ page, panel }: Props): JSX.Element | null {
  if (panel.motifs.length === 0) return null;
  return (
    <section>
      <h2>Motifs cut by an edge</h2>
      {panel.motifs.map(({ shape, fit, beyond }) => (
        <p>
          <EntryLink page={page} id={shape.trace.id} />: a circle of radius {fit.circle.radius.toFixed(0)} mm (
          {fit.radius.least.toFixed(0)} mm to{' '}
          {fit.radius.most === null ? 'no upper end that the arc would settle' : `${fit.radius.most.toFixed(0)} mm`}),
          from {fit.arc.toFixed(0)}° of arc.{' '}
          {beyond.length > 0 ? (
            <>
              If the motif was a full circle, the painting went on{' '}
              {beyond.map(
                (one, i) => `${i > 0 ? ' and ' : ''}beyond the ${one.side} edge by ${one.least.toFixed(0)} mm at least`,
              )}
              .
            </>
          ) : null}
        </p>
      ))}
      <p class="aside">
        Geometric fit (Gander, Golub and Strebel 1994); the interval holds 95 of 100 trials with the errors of tracing.
        Points along one line err together, so that the true interval may be wider.
      </p>
    </section>
  );
}
