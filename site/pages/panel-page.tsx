import type { ComponentChildren, JSX } from 'preact';
import { formatInterval } from '../../src/base/interval.ts';
import { inLanguage, titleOf } from '../../src/model/catalogue.ts';
import type { Weight } from '../../src/physical/panel-weight.ts';
import type { PanelFindings } from '../../src/physical/panels.ts';
import { entryPath } from '../../src/publish/page-paths.ts';
import cautions from '../../src/reference/cautions.json' with { type: 'json' };
import type { PageContext } from '../context.ts';
import { MARK_WORDS, type Mark, numberShapes, PanelPlan, shownUnder } from '../drawings/panel-plan.tsx';
import { Layout } from './layout.tsx';
import { EntryLink, Scroll } from './parts.tsx';

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
    >
      <h1>{name}</h1>
      <Plan page={page} panel={panel} />
      <Surface page={page} panel={panel} />
      <SectionsPart page={page} panel={panel} />
      <Motifs page={page} panel={panel} />
      <Weights page={page} panel={panel} />
      <Layers page={page} panel={panel} />
      <Joins page={page} panel={panel} />
      <Registrations page={page} panel={panel} />
    </Layout>
  );
}

/** The plan with what can be shown and hidden, all without a script. */
function Plan({ page, panel }: Props): JSX.Element {
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

function Surface({ page, panel }: Props): JSX.Element | null {
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
                <th scope="row">{one.category}</th>
                <td>{(one.squareMm / 100).toFixed(0)}</td>
                <td>{formatInterval(one.perCent, 1)}</td>
                <td>
                  {one.traces.map((id, i) => (
                    <>
                      {i > 0 ? ', ' : ''}
                      <EntryLink page={page} id={id} />
                    </>
                  ))}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </section>
  );
}

function SectionsPart({ page, panel }: Props): JSX.Element | null {
  const { sections, joints, dangling, tooFew, upright, level } = panel.sections;
  if (joints.length === 0) return null;
  const named =
    (panel.geometry.object.keys.panels ?? []).find((one) => one.id === panel.geometry.panel)?.sections ?? [];
  const match = named.length === sections.length;
  return (
    <section>
      <h2>Sections</h2>
      <p>
        The pieces that the section joints make of the outline, numbered from the top and from the left.{' '}
        {match ? 'Beside them what the object says of its sections, in the same order.' : ''}
      </p>
      <Scroll label="Sections">
        <table>
          <thead>
            <tr>
              <th scope="col">Section</th>
              <th scope="col">Width × height, mm</th>
              <th scope="col">cm²</th>
              {match ? <th scope="col">Said of it</th> : null}
            </tr>
          </thead>
          <tbody>
            {sections.map((one, i) => (
              <tr>
                <th scope="row">{one.number}</th>
                <td>
                  {Math.round(one.width)} × {Math.round(one.height)}
                </td>
                <td>{(one.squareMm / 100).toFixed(0)}</td>
                {match ? <td>{saidOf(named[i])}</td> : null}
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      {dangling.map(({ joint, at }) => (
        <p>
          <EntryLink page={page} id={joint.trace.id} /> ends inside a section, at ({Math.round(at[0])},{' '}
          {Math.round(at[1])}); it divides nothing there.
        </p>
      ))}
      <p>
        {tooFew
          ? 'Too few joints to ask whether they stand at a regular distance.'
          : [upright, level]
              .map((found, i) =>
                found
                  ? `${i === 0 ? 'Upright' : 'Level'} joints: ${found.isRegular ? `a module of ${found.module.toFixed(0)} mm` : 'no regular distance'}; random lines do as well in ${(100 * found.byChance).toFixed(1)} of 100 cases.`
                  : '',
              )
              .join(' ')}
      </p>
    </section>
  );
}

function saidOf(section: Readonly<Record<string, unknown>> | undefined): string {
  return Object.entries(section ?? {})
    .map(([key, value]) => (key === 'id' ? `section ${String(value)}` : `${key.replaceAll('-', ' ')} ${String(value)}`))
    .join(', ');
}

function Motifs({ page, panel }: Props): JSX.Element | null {
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

function Weights({ page, panel }: Props): JSX.Element | null {
  const { weight, sectionWeights } = panel;
  if (weight.parts.length === 0 && weight.unweighed.length === 0 && !weight.weighed) return null;
  return (
    <section>
      <h2>Weight</h2>
      {cautions
        .filter((one) => one.subject === 'lifting')
        .map((one) => (
          <p class="caution">
            {one.text} <span class="aside">{one.source}.</span>
          </p>
        ))}
      <p>
        The panel: <Kilograms weight={weight} />
      </p>
      {sectionWeights.length > 0 ? (
        <ul>
          {sectionWeights.map((one, i) => (
            <li>
              Section {i + 1}: <Kilograms weight={one} />
            </li>
          ))}
        </ul>
      ) : null}
      <Scroll label="What the weight is made of">
        <table>
          <thead>
            <tr>
              <th scope="col">Layer or pieces</th>
              <th scope="col">Reckoned</th>
              <th scope="col">kg</th>
              <th scope="col">Density from</th>
            </tr>
          </thead>
          <tbody>
            {weight.parts.map((part) => (
              <tr>
                <th scope="row">
                  <EntryLink page={page} id={part.trace} />
                </th>
                <td>{part.words}</td>
                <td>{formatInterval(part.kg, 1)}</td>
                <td>{part.source}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      {weight.unweighed.map((one) => (
        <p>
          <EntryLink page={page} id={one.trace} /> is not counted; it wants {one.missing}.
        </p>
      ))}
    </section>
  );
}

/** Never a lower figure alone. */
function Kilograms({ weight }: { readonly weight: Weight }): JSX.Element {
  return (
    <>
      {weight.weighed ? <>by a scale {formatInterval(weight.weighed, 1)} kg; </> : null}
      calculated {formatInterval(weight.kg, 0)} kg;{' '}
      <strong>plan for not less than {Math.ceil(weight.kg.most)} kg</strong>; weigh before lifting.
    </>
  );
}

function Layers({ page, panel }: Props): JSX.Element | null {
  const { layers } = panel;
  if (layers.lines.length === 0) return null;
  const box = (i: number): JSX.Element => (
    <>
      {(layers.boxes[i] ?? []).map((id, k) => (
        <>
          {k > 0 ? ', the same as ' : ''}
          <EntryLink page={page} id={id} />
        </>
      ))}
    </>
  );
  return (
    <section>
      <h2>Layers</h2>
      <p>
        What lies over, cuts or fills what; the later first. Relations that others already say are left out here
        {layers.redundant.length > 0 ? ` (${layers.redundant.length})` : ''}; all of them bound dates.
      </p>
      <ul>
        {layers.lines.map((one) => (
          <li>
            {box(one.upper)} <em>{one.kinds.join(' and ')}</em> {box(one.lower)}
          </li>
        ))}
      </ul>
      {layers.loops.map((loop) => (
        <p>
          A loop, each above the next and the last above the first:{' '}
          {loop.map((i, k) => (
            <>
              {k > 0 ? '; ' : ''}
              {box(i)}
            </>
          ))}
          .
        </p>
      ))}
    </section>
  );
}

function Joins({ page, panel }: Props): JSX.Element | null {
  const { object, panel: name } = panel.geometry;
  const mine = page.file.physical.joins.filter(({ first, second }) =>
    [first, second].some(({ trace: { keys } }) => keys.object === object.id && keys.panel === name),
  );
  if (mine.length === 0) return null;
  return (
    <section>
      <h2>Edges that may join</h2>
      {mine.map(({ first, second, join, byChance }) => (
        <p>
          <EntryLink page={page} id={first.trace.id} /> and <EntryLink page={page} id={second.trace.id} /> may join:
          they run alike over {Math.round(join.matched)} mm, to {join.deviation.toFixed(1)} mm (root mean square). An
          edge as rough as the second, its steps shuffled, does as well in {(100 * byChance).toFixed(1)} of 100 cases.
          That edges run alike does not say that they belong together.
        </p>
      ))}
    </section>
  );
}

function Registrations({ page, panel }: Props): JSX.Element | null {
  if (panel.geometry.figures.length === 0) return null;
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
              <th scope="col">Each point</th>
            </tr>
          </thead>
          <tbody>
            {panel.geometry.figures.map(({ figure, registration }) => (
              <tr>
                <th scope="row">
                  <EntryLink page={page} id={figure.id} />
                </th>
                <td>{registration.kind}</td>
                <td>{registration.rootMeanSquareMm.toFixed(2)}</td>
                <td>{registration.residualsMm.map((one) => one.toFixed(2)).join(', ')}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </section>
  );
}
