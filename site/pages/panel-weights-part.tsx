import type { JSX } from 'preact';
import { formatInterval } from '../../src/base/interval.ts';
import { cautionsOn } from '../../src/findings/cautions.ts';
import type { Weight } from '../../src/physical/panel-weight.ts';
import type { PanelFindings } from '../../src/physical/panels.ts';
import type { PageContext } from '../context.ts';
import { Cautions } from './cautions.tsx';
import { EntryLink, Scroll } from './parts.tsx';

interface Props {
  readonly page: PageContext;
  readonly panel: PanelFindings;
}

/** Weights, with the caution first and never a lower figure alone. */
export function WeightsPart({ page, panel }: Props): JSX.Element | null {
  const { weight, sectionWeights } = panel;
  if (weight.parts.length === 0 && weight.unweighed.length === 0 && !weight.weighed) return null;
  return (
    <section>
      <h2>Weight</h2>
      <Cautions list={cautionsOn('lifting')} />
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
