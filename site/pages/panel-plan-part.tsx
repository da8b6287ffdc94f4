import type { ComponentChildren, JSX } from 'preact';
import { inLanguage, titleOf } from '../../src/model/catalogue.ts';
import type { PanelFindings } from '../../src/physical/panels.ts';
import { entryPath } from '../../src/publish/page-paths.ts';
import { MARK_WORDS, type Mark, numberShapes } from '../../src/publish/plan-marks.ts';
import type { PageContext } from '../context.ts';
import { PanelPlan, shownUnder } from '../drawings/panel-plan.tsx';
import { Scroll } from './parts.tsx';

interface Props {
  readonly page: PageContext;
  readonly panel: PanelFindings;
}

/** The plan with what can be shown and hidden, all without a script. */
export function PlanPart({ page, panel }: Props): JSX.Element {
  const shapes = numberShapes(panel);
  const marks = [...new Set(shapes.map((one) => one.mark))];
  const under = shownUnder(page, panel);
  return (
    <div class="plan-desk">
      {shapes.length === 0 ? <p>No trace of this panel has a shape yet; the plan shows its outline.</p> : null}
      {under.length > 0 ? (
        <fieldset class="choices">
          <legend>Under the lines</legend>
          <Choice name="under" id="under-none" checked>
            bare paper
          </Choice>
          {under.map((figure, i) => (
            <Choice name="under" id={`under-${i + 1}`}>
              {figure.keys.technique ?? titleOf(figure, page.file.settings.languages)}
            </Choice>
          ))}
        </fieldset>
      ) : null}
      {marks.length > 0 ? (
        <fieldset class="choices">
          <legend>Lines shown</legend>
          {marks.map((mark) => (
            <label>
              <input type="checkbox" id={`show-${mark}`} checked /> <MarkSample mark={mark} /> {MARK_WORDS[mark]}
            </label>
          ))}
        </fieldset>
      ) : null}
      <figure class="plan-figure">
        <PanelPlan page={page} panel={panel} />
        <figcaption>
          In millimetres from the lower left corner of the front;{' '}
          {panel.geometry.outlineTraced ? 'outline as traced' : 'outline by the stated width and height'}.
          {under.map(
            (figure) =>
              ` ${inLanguage(figure.keys.title, page.file.settings.languages)}${figure.keys.credit ? `: ${figure.keys.credit}` : ''}.`,
          )}
        </figcaption>
      </figure>
      {shapes.length > 0 ? (
        <Scroll label="Key of the plan">
          <table class="stacking">
            <caption>Key: from the top, from the left</caption>
            <thead>
              <tr>
                <th scope="col">No.</th>
                <th scope="col">Trace</th>
                <th scope="col">Drawn as</th>
                <th scope="col">Traced to</th>
              </tr>
            </thead>
            <tbody>
              {shapes.map(({ number, shape, mark }) => (
                <tr>
                  <td>{number}</td>
                  <th scope="row">
                    <a href={page.href(entryPath(shape.trace.id))}>
                      {titleOf(shape.trace, page.file.settings.languages)}
                    </a>
                  </th>
                  <td>{MARK_WORDS[mark]}</td>
                  <td>{shape.errorMm.toFixed(1)} mm</td>
                </tr>
              ))}
            </tbody>
          </table>
        </Scroll>
      ) : null}
    </div>
  );
}

function Choice({
  name,
  id,
  checked = false,
  children,
}: {
  readonly name: string;
  readonly id: string;
  readonly checked?: boolean;
  readonly children: ComponentChildren;
}): JSX.Element {
  return (
    <label>
      <input type="radio" name={name} id={id} checked={checked} /> {children}
    </label>
  );
}

/** The mark as it is drawn on the plan, small. */
function MarkSample({ mark }: { readonly mark: Mark }): JSX.Element {
  const area = ['fill', 'addition', 'retouching', 'loss'].includes(mark);
  return (
    <svg class="plan sample" viewBox="0 0 34 16" aria-hidden="true">
      <g class={`mark mark-${mark}`}>
        {mark === 'point' ? (
          <circle class="shape" cx={17} cy={8} r={5} />
        ) : (
          <path class="shape" d={area ? 'M3 3H31V13H3Z' : 'M2 8H32'} />
        )}
        {mark === 'section-joint' ? <path class="joint-gap" d="M2 8H32" /> : null}
        {mark === 'cut-edge' ? <path class="ticks" d="M8 8V14M17 8V14M26 8V14" /> : null}
      </g>
    </svg>
  );
}
