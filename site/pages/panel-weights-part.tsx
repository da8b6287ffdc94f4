import type { JSX } from 'preact';
import { sayOutward } from '../../src/base/interval.ts';
import { cautionsOn } from '../../src/findings/cautions.ts';
import { sayWeight } from '../../src/physical/panel-weight.ts';
import type { PanelFindings } from '../../src/physical/panels.ts';
import type { PageContext } from '../context.ts';
import { said, say, words } from '../say.ts';
import { Cautions } from './cautions.tsx';
import { EntryLink, Scroll } from './parts.tsx';

interface Props {
  readonly page: PageContext;
  readonly panel: PanelFindings;
}

/** Weights, with the caution first and never a lower figure alone. */
export function WeightsPart({ page, panel }: Props): JSX.Element | null {
  const { weight, sectionWeights, isCut } = panel;
  if (isCut) return <NotTold what="Weight" />;
  if (weight.parts.length === 0 && weight.unweighed.length === 0 && !weight.weighed) return null;
  return (
    <section>
      <h2>{say('Weight')}</h2>
      <Cautions list={cautionsOn('lifting')} />
      <p>{say('The panel: {0}.', <strong>{said(sayWeight(weight))}</strong>)}</p>
      {sectionWeights.length > 0 ? (
        <ul>
          {sectionWeights.map((one, i) => (
            <li>{say('Section {0}: {1}.', i + 1, said(sayWeight(one)))}</li>
          ))}
        </ul>
      ) : null}
      <Scroll label={words('What the weight is made of')}>
        <table>
          <thead>
            <tr>
              <th scope="col">{say('Layer or pieces')}</th>
              <th scope="col">{say('Reckoned')}</th>
              <th scope="col">{say('kg')}</th>
              <th scope="col">{say('Density from')}</th>
            </tr>
          </thead>
          <tbody>
            {weight.parts.map((part) => (
              <tr>
                <th scope="row">
                  <EntryLink page={page} id={part.trace} />
                </th>
                <td>{said(part.words)}</td>
                <td>{said(sayOutward(part.kg, 1))}</td>
                <td>{said(part.source)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      {weight.unweighed.map((one) => (
        <p>
          {one.trace === null ? (
            <>{say('Not counted: {0}.', said(one.missing))}</>
          ) : (
            <>{say('{0} is not counted; it wants {1}.', <EntryLink page={page} id={one.trace} />, said(one.missing))}</>
          )}
        </p>
      ))}
    </section>
  );
}

/** In place of results that would be false without the entries that this audience does not see. */
export function NotTold({ what }: { readonly what: string }): JSX.Element {
  return (
    <section>
      <h2>{what}</h2>
      <p>
        {say(
          'Not told to this audience: entries of this panel are not shown, and without them the figures would be wrong.',
        )}
      </p>
    </section>
  );
}
