import type { JSX } from 'preact';
import type { PanelFindings } from '../../src/physical/panels.ts';
import { entryPath, panelPath } from '../../src/publish/page-paths.ts';
import type { PageContext } from '../context.ts';
import { LayerFigure } from '../drawings/layer-figure.tsx';
import { say, sayList, term, words } from '../say.ts';
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
          {k > 0 ? words(', the same as ') : ''}
          <EntryLink page={page} id={id} />
        </>
      ))}
    </>
  );
  return (
    <section>
      <h2>{say('Layers')}</h2>
      <p>
        {say(
          'What lies over, cuts or fills what; the later first. Relations that others already say are left out here{0}; all of them bound dates.',
          layers.redundant.length > 0 ? ` (${layers.redundant.length})` : '',
        )}
      </p>
      {drawing ? (
        <figure class="drawing">
          <Scroll label={words('Layer diagram')}>
            <LayerFigure drawing={drawing} panel={geometry.panel} link={(unit) => page.href(entryPath(unit))} />
          </Scroll>
          <figcaption>{say('Units joined by no line have no order to each other.')}</figcaption>
        </figure>
      ) : null}
      <ul>
        {layers.lines.map((one) => (
          <li>
            {box(one.upper)} <em>{sayList(one.kinds.map(term))}</em> {box(one.lower)}
          </li>
        ))}
      </ul>
      {layers.loops.map((loop) => (
        <p>
          {say(
            'A loop, each above the next and the last above the first: {0}. They {1}.',
            <Joined items={loop.map(box)} />,
            <a href={page.href('contradictions.html')}>{say('cannot all be right')}</a>,
          )}
        </p>
      ))}
      {drawing && drawing.apart.length > 0 ? (
        <p class="aside">
          {say(
            'Without any relation: {0}.',
            <Joined items={drawing.apart.map((id) => <EntryLink page={page} id={id} />)} />,
          )}
        </p>
      ) : null}
    </section>
  );
}
