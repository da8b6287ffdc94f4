import type { JSX } from 'preact';
import type { PanelFindings } from '../../src/physical/panels.ts';
import type { PageContext } from '../context.ts';
import { EntryLink, Joined } from './parts.tsx';

interface Props {
  readonly page: PageContext;
  readonly panel: PanelFindings;
}

/** What lies over, cuts or fills what. */
export function LayersPart({ page, panel }: Props): JSX.Element | null {
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
          A loop, each above the next and the last above the first: <Joined items={loop.map(box)} />.
        </p>
      ))}
    </section>
  );
}
