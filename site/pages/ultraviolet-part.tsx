import type { JSX } from 'preact';
import { cautionsOn } from '../../src/findings/cautions.ts';
import type { UltravioletReading } from '../../src/physical/ultraviolet.ts';
import type { PageContext } from '../context.ts';
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
      <h2>Under ultraviolet</h2>
      {cautions ? <Cautions list={cautionsOn('ultraviolet')} /> : null}
      {readings.map((one) => (
        <>
          <p>
            <EntryLink page={page} id={one.trace.id} />: {one.colour}, {one.strength} (observed, {one.grade}{' '}
            <GradeMark grade={one.grade} />
            ).{' '}
            <span class="aside">
              Lamp: {one.lamp ?? 'not recorded'}; filter: {one.filter ?? 'not recorded'}.
            </span>
          </p>
          {one.matches.length === 0 ? (
            <p class="aside">No row of the table of looks fits this; that says nothing of the material.</p>
          ) : (
            <Scroll label={`Materials known to look like ${one.trace.id}`}>
              <table class="stacking">
                <caption>
                  Known to look so, as an inference; a glow alone never names a material, and much of this was observed
                  on other things than walls
                </caption>
                <thead>
                  <tr>
                    <th scope="col">Material</th>
                    <th scope="col">Known look</th>
                    <th scope="col">Observed on</th>
                    <th scope="col">Grade</th>
                    <th scope="col">Note</th>
                    <th scope="col">Source</th>
                  </tr>
                </thead>
                <tbody>
                  {one.matches.map((match) => (
                    <tr>
                      <th scope="row">{match.material}</th>
                      <td>
                        <span class="cell-label">known look</span>
                        {match.look}, {match.strength}
                      </td>
                      <td>
                        <span class="cell-label">observed on</span>
                        {match.observedOn}
                      </td>
                      <td>
                        <span class="cell-label">grade</span>
                        {match.grade} <GradeMark grade={match.grade} />
                      </td>
                      <td>
                        <span class="cell-label">note</span>
                        {match.note}
                      </td>
                      <td>
                        <span class="cell-label">source</span>
                        {match.source} ({match.standing})
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
