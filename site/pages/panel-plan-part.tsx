import type { ComponentChildren, JSX } from 'preact';
import { inLanguage, titleOf } from '../../src/model/catalogue.ts';
import { entryPath, planFilePath, platePath } from '../../src/publish/page-paths.ts';
import type { PanelFace } from '../../src/publish/panel-faces.ts';
import { MARK_WORDS, numberShapes } from '../../src/publish/plan-marks.ts';
import type { PageContext } from '../context.ts';
import { MarkSample } from '../drawings/mark-sample.tsx';
import { PanelPlan, shownUnder } from '../drawings/panel-plan.tsx';
import { colon, say, term, words } from '../say.ts';
import { Scroll } from './parts.tsx';

interface Props {
  readonly page: PageContext;
  readonly plan: PanelFace;
  readonly outlineTraced: boolean;
  /** True for the first plan of the page. */
  readonly isFirst: boolean;
}

/** The plan of one face with what can be shown and hidden, all without a script. */
export function PlanPart({ page, plan, outlineTraced, isFirst }: Props): JSX.Element {
  const shapes = numberShapes(plan.shapes);
  const marks = [...new Set(shapes.map((one) => one.mark))];
  const under = shownUnder(page, plan);
  const languages = page.file.settings.languages;
  return (
    <section class="plan-desk" aria-label={words('Plan, {0}', term(plan.face))}>
      {plan.face === 'back' ? <h2>{say('The back')}</h2> : null}
      {shapes.length === 0 ? (
        <p>
          {say(
            'No trace of this {0} has a shape yet; the plan shows its outline.',
            plan.face === 'back' ? words('back') : words('panel'),
          )}
        </p>
      ) : null}
      {under.length > 0 ? (
        <fieldset class="choices">
          <legend>{say('Under the lines')}</legend>
          <Choice name={`under-${plan.face}`} checked>
            {say('bare paper')}
          </Choice>
          {under.map((figure, i) => (
            <Choice name={`under-${plan.face}`} pick={i + 1}>
              {figure.keys.technique ?? titleOf(figure, languages)}
            </Choice>
          ))}
        </fieldset>
      ) : null}
      {marks.length > 0 ? (
        <fieldset class="choices">
          <legend>{say('Lines shown')}</legend>
          {marks.map((mark) => (
            <label>
              <input type="checkbox" class={`show-${mark}`} checked /> <MarkSample mark={mark} />{' '}
              {term(MARK_WORDS[mark])}
            </label>
          ))}
        </fieldset>
      ) : null}
      <figure class="plan-figure">
        <PanelPlan
          page={page}
          plan={plan}
          under={under}
          link={(trace) => page.href(entryPath(trace))}
          patterns={isFirst}
        />
        <figcaption>
          {say(
            'In millimetres from the lower left corner of the {0}{1}; {2}.{3}',
            term(plan.face),
            plan.face === 'back' ? words(', as one sees it when the panel is turned') : '',
            outlineTraced ? words('outline as traced') : words('outline by the stated width and height'),
            under.map(
              (figure) =>
                ` ${inLanguage(figure.keys.title, languages)}${figure.keys.credit ? `${colon()}${figure.keys.credit}` : ''}.`,
            ),
          )}
        </figcaption>
      </figure>
      <p class="plan-files">
        <a href={page.href(platePath(plan.object, plan.panel, plan.face))}>
          {say('Plate to print, at a stated scale')}
        </a>
        {' · '}
        <a href={page.href(planFilePath(plan.object, plan.panel, plan.face))} download>
          {say('The drawing as an SVG file, in true size')}
        </a>
      </p>
      <PlanKey page={page} plan={plan} />
    </section>
  );
}

/** What every number on a plan is. */
export function PlanKey({ page, plan }: Pick<Props, 'page' | 'plan'>): JSX.Element | null {
  const shapes = numberShapes(plan.shapes);
  if (shapes.length === 0) return null;
  const first = shapes.filter((one, i) => shapes.findIndex((other) => other.number === one.number) === i);
  return (
    <Scroll label={plan.face === 'back' ? words('Key of the plan of the back') : words('Key of the plan')}>
      <table class="stacking">
        <caption>{say('Key: from the top, from the left')}</caption>
        <thead>
          <tr>
            <th scope="col">{say('No.')}</th>
            <th scope="col">{say('Trace')}</th>
            <th scope="col">{say('Drawn as')}</th>
            <th scope="col">{say('Traced to')}</th>
          </tr>
        </thead>
        <tbody>
          {first.map(({ number, shape, mark }) => (
            <tr>
              <td>
                <span class="cell-label">{say('number')}</span>
                {number}
              </td>
              <th scope="row">
                <a href={page.href(entryPath(shape.trace.id))}>{titleOf(shape.trace, page.file.settings.languages)}</a>
              </th>
              <td>
                <span class="cell-label">{say('drawn as')}</span>
                <MarkSample mark={mark} /> {term(MARK_WORDS[mark])}
              </td>
              <td>{say('{0}{1} mm', <span class="cell-label">{say('traced to')}</span>, shape.errorMm.toFixed(1))}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

function Choice({
  name,
  pick,
  checked = false,
  children,
}: {
  readonly name: string;
  readonly pick?: number;
  readonly checked?: boolean;
  readonly children: ComponentChildren;
}): JSX.Element {
  return (
    <label>
      <input type="radio" name={name} class={pick === undefined ? undefined : `pick-${pick}`} checked={checked} />{' '}
      {children}
    </label>
  );
}
