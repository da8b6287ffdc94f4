import type { JSX } from 'preact';
import type { PanelFindings } from '../../src/physical/panels.ts';
import { entryPath, panelPath } from '../../src/publish/page-paths.ts';
import type { PageContext } from '../context.ts';
import { LayerFigure } from '../drawings/layer-figure.tsx';
import { EntryLink, Joined, Scroll } from './parts.tsx';

interface Props {
  readonly page: PageContext;
  readonly panel: PanelFindings;
}

/** What lies over, cuts or fills what. */
export function LayersPart({ page, panel }: Props): JSX.Element | null {
  const { layers, geometry } = panel;
  if (layers.lines.length === 0 && layers.loops.length === 0) return null;
  const drawing = page.layers.get(panelPath(geometry.object.id, geometry.panel));
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
      {drawing ? (
        <figure class="drawing">
          <Scroll label="Layer diagram">
            <LayerFigure drawing={drawing} panel={geometry.panel} link={(unit) => page.href(entryPath(unit))} />
          </Scroll>
          <figcaption>Units joined by no line have no order to each other.</figcaption>
        </figure>
      ) : null}
      <ul>
        {layers.lines.map((one) => (
          <li>
            {box(one.upper)} <em>{one.kinds.join(' and ')}</em> {box(one.lower)}
          </li>
        ))}
      </ul>
      {layers.loops.map((loop) => (
        <p>
          A loop, each above the next and the last above the first: <Joined items={loop.map(box)} />. They{' '}
          <a href={page.href('contradictions.html')}>cannot all be right</a>.
        </p>
      ))}
      {drawing && drawing.apart.length > 0 ? (
        <p class="aside">
          Without any relation: <Joined items={drawing.apart.map((id) => <EntryLink page={page} id={id} />)} />.
        </p>
      ) : null}
    </section>
  );
}
