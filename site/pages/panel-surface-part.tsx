import type { JSX } from 'preact';
import { sayOutward } from '../../src/base/interval.ts';
import { sayRadius } from '../../src/physical/panel-motifs.ts';
import type { PanelFindings } from '../../src/physical/panels.ts';
import type { PageContext } from '../context.ts';
import { said, say, term, words } from '../say.ts';
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
      <h2>{say('Surface')}</h2>
      <p>
        {say(
          'As far as it is traced; what nobody traced is not recorded as anything else, and may be original or not. Overlaps count once, what stands first in the table takes them. The shares are intervals, by the errors of tracing.',
        )}
      </p>
      <Scroll label={words('Surface by category')}>
        <table>
          <thead>
            <tr>
              <th scope="col">{say('Category')}</th>
              <th scope="col">{say('cm²')}</th>
              <th scope="col">{say('% of the panel')}</th>
              <th scope="col">{say('By')}</th>
            </tr>
          </thead>
          <tbody>
            {panel.areas.map((one) => (
              <tr>
                <th scope="row">{term(one.category)}</th>
                <td>{(one.squareMm / 100).toFixed(0)}</td>
                <td>
                  {one.squareMm > 0 && one.perCent.most < 0.1 ? words('under 0.1') : said(sayOutward(one.perCent, 1))}
                </td>
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
      <h2>{say('Motifs cut by an edge')}</h2>
      {panel.motifs.map(({ shape, fit, beyond }) => (
        <p>
          {say(
            '{0}: a circle of radius {1} mm ({2}), from {3}° of arc. {4}',
            <EntryLink page={page} id={shape.trace.id} />,
            fit.circle.radius.toFixed(0),
            said(sayRadius(fit)),
            fit.arc.toFixed(0),
            beyond.length > 0 ? (
              <>
                {say(
                  'If the motif was a full circle, the painting went on {0}.',
                  beyond.map((one, i) =>
                    words(
                      '{0}beyond the {1} edge by {2} mm at least',
                      i > 0 ? words(' and ') : '',
                      one.side,
                      one.least.toFixed(0),
                    ),
                  ),
                )}
              </>
            ) : null,
          )}
        </p>
      ))}
      <p class="aside">
        {say(
          'Geometric fit (Gander, Golub and Strebel 1994); the interval holds the true radius in at least 95 of 100 simulated arcs with the stated error of tracing, also where the points of a line are all off in one way. Without a stated error there is none.',
        )}
      </p>
    </section>
  );
}
