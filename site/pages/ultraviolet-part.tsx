import type { JSX } from 'preact';
import { cautionsOn } from '../../src/findings/cautions.ts';
import type { UltravioletReading } from '../../src/physical/ultraviolet.ts';
import type { PageContext } from '../context.ts';
import { said, say, term, words } from '../say.ts';
import { Cautions } from './cautions.tsx';
import { EntryLink, GradeMark, Scroll } from './parts.tsx';

/** What glows how, and which materials are known to look so: an inference, never above possible. */
export function UltravioletPart({
  page,
  readings,
  cautions = true,
}: {
  readonly page: PageContext;
  readonly readings: readonly UltravioletReading[];
  readonly cautions?: boolean;
}): JSX.Element | null {
  if (readings.length === 0) return null;
  return (
    <section>
      <h2>{say('Under ultraviolet')}</h2>
      {cautions ? <Cautions list={cautionsOn('ultraviolet')} /> : null}
      {readings.map((one) => (
        <>
          <p>
            {say(
              '{0}: {1}, {2} (observed, {3} {4}). {5}',
              <EntryLink page={page} id={one.trace.id} />,
              one.colour,
              term(one.strength),
              term(one.grade),
              <GradeMark grade={one.grade} />,
              <span class="aside">
                {say('Lamp: {0}; filter: {1}.', one.lamp ?? words('not recorded'), one.filter ?? words('not recorded'))}
              </span>,
            )}
          </p>
          {one.matches.length === 0 ? (
            <p class="aside">{say('No row of the table of looks fits this; that says nothing of the material.')}</p>
          ) : (
            <Scroll label={words('Materials with a fluorescence comparable to that of {0}', one.trace.id)}>
              <table class="stacking">
                <caption>
                  {say(
                    'Materials with a comparable fluorescence; a glow alone never names a material, and much of this was observed on other things than walls',
                  )}
                </caption>
                <thead>
                  <tr>
                    <th scope="col">{say('Material')}</th>
                    <th scope="col">{say('Published fluorescence')}</th>
                    <th scope="col">{say('Observed on')}</th>
                    <th scope="col">{say('Grade')}</th>
                    <th scope="col">{say('Note')}</th>
                    <th scope="col">{say('Source')}</th>
                  </tr>
                </thead>
                <tbody>
                  {one.matches.map((match) => (
                    <tr>
                      <th scope="row">{match.material}</th>
                      <td>
                        <span class="cell-label">{say('published fluorescence')}</span>
                        {match.look}, {term(match.strength)}
                      </td>
                      <td>
                        <span class="cell-label">{say('observed on')}</span>
                        {match.observedOn}
                      </td>
                      <td>
                        <span class="cell-label">{say('grade')}</span>
                        {term(match.grade)} <GradeMark grade={match.grade} />
                      </td>
                      <td>
                        <span class="cell-label">{say('note')}</span>
                        {match.note}
                      </td>
                      <td>
                        <span class="cell-label">{say('source')}</span>
                        {said(match.source)}
                      </td>
                    </tr>
                  ))}
                </tbody>
              </table>
            </Scroll>
          )}
        </>
      ))}
    </section>
  );
}
