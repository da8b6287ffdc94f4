import type { JSX } from 'preact';
import { titleOf } from '../../src/model/catalogue.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { PanelFindings } from '../../src/physical/panels.ts';
import { facesOf } from '../../src/publish/panel-faces.ts';
import type { PageContext } from '../context.ts';
import { shownUnder } from '../drawings/panel-plan.tsx';
import { say, words } from '../say.ts';

/**
 * Two photographs of one front, each laid into the frame, so that a place in one is the same place in the other. Without a
 * script they stand side by side; with it the second lies over the first and is uncovered by a slider.
 */
export function ComparePart({
  page,
  panel,
}: {
  readonly page: PageContext;
  readonly panel: PanelFindings;
}): JSX.Element | null {
  const [front] = facesOf(panel);
  const figures = front ? shownUnder(page, front) : [];
  const [first, second] = figures;
  if (!first || !second) return null;
  const name = (figure: Entry<'figure'>): string =>
    figure.keys.technique ?? titleOf(figure, page.file.settings.languages);
  const image = (figure: Entry<'figure'>, alt: string): JSX.Element => (
    <img src={page.href(page.plans.get(figure.id) ?? '')} alt={alt} />
  );
  return (
    <section class="compare">
      <h2>{say('Two lights compared')}</h2>
      <div class="compare-choices choices" hidden>
        {(['left', 'right'] as const).map((side, at) => (
          <label>
            {side === 'left' ? words('On the left') : words('On the right')}{' '}
            <select name={side}>
              {figures.map((figure, i) => (
                <option value={page.href(page.plans.get(figure.id) ?? '')} selected={i === at}>
                  {name(figure)}
                </option>
              ))}
            </select>
          </label>
        ))}
        {/* biome-ignore lint/a11y/noLabelWithoutControl: the field is among the words */}
        <label>{say('Border between them {0}', <input type="range" min="0" max="100" value="50" step="1" />)}</label>
      </div>
      <div class="compare-board">
        {image(first, words('Panel {0}, {1}', panel.geometry.panel, name(first)))}
        {image(second, words('Panel {0}, {1}', panel.geometry.panel, name(second)))}
      </div>
      <p class="compare-told aside">{say('Left: {0}; right: {1}.', name(first), name(second))}</p>
      <p class="aside">
        {say('Both are laid into the frame of the panel by their control points; how well is told below.')}
      </p>
    </section>
  );
}
