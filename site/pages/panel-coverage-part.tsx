import type { JSX } from 'preact';
import { titleOf } from '../../src/model/catalogue.ts';
import { coverageOf, FACES } from '../../src/physical/coverage.ts';
import type { PanelFindings } from '../../src/physical/panels.ts';
import { extentOf } from '../../src/publish/panel-faces.ts';
import type { PageContext } from '../context.ts';
import { CoverageFigure } from '../drawings/coverage-figure.tsx';
import { say, semicolon, term, words } from '../say.ts';
import { EntryLink, Joined, Scroll } from './parts.tsx';

/** What was looked at, by each examination; what was looked for and not seen; what could not be reached. */
export function CoveragePart({
  page,
  panel: { geometry },
}: {
  readonly page: PageContext;
  readonly panel: PanelFindings;
}): JSX.Element | null {
  const list = coverageOf(page.file.catalogue, geometry.object.id, geometry.panel);
  if (list.length === 0) return null;
  const { width, height } = extentOf(geometry.outline);
  const languages = page.file.settings.languages;
  const ids = (entries: readonly { readonly id: string }[]): readonly JSX.Element[] =>
    entries.map(({ id }) => <EntryLink page={page} id={id} />);
  return (
    <section>
      <h2>{say('What was looked at')}</h2>
      <p>
        {say(
          'The panel laid open, once for each examination: tinted where it looked, crossed where it could not reach, blank where it did not look. That something was looked for and not seen proves no absence.',
        )}
      </p>
      <div class="coverages">
        {list.map((one) => (
          <figure>
            <CoverageFigure coverage={one} name={titleOf(one.examination, languages)} ratio={height / width} />
            <figcaption>
              <EntryLink page={page} id={one.examination.id} />
            </figcaption>
          </figure>
        ))}
      </div>
      <Scroll label={words('What was looked at')}>
        <table class="stacking">
          <thead>
            <tr>
              <th scope="col">{say('Examination')}</th>
              {FACES.map((face) => (
                <th scope="col">{term(face)}</th>
              ))}
              <th scope="col">{say('Looked for, not seen')}</th>
              <th scope="col">{say('Not accessible')}</th>
            </tr>
          </thead>
          <tbody>
            {list.map((one) => (
              <tr>
                <th scope="row">
                  <EntryLink page={page} id={one.examination.id} />
                </th>
                {FACES.map((face) => (
                  <td>
                    <span class="cell-label">{term(face)}</span>
                    {term(one.faces[face])}
                  </td>
                ))}
                <td>
                  <span class="cell-label">{say('not seen')}</span>
                  <Joined items={ids(one.notSeen)} />
                  {inGeneral(one.notSeenWords)}
                </td>
                <td>
                  <span class="cell-label">{say('not accessible')}</span>
                  <Joined items={ids(one.notAccessible)} />
                  {inGeneral(one.notAccessibleWords)}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </section>
  );
}

/** What the examination says of all that it looked at; it may concern other panels. */
function inGeneral(words: readonly string[]): JSX.Element | null {
  return words.length === 0 ? null : <span class="aside"> {say('Of all panels: {0}.', words.join(semicolon()))}</span>;
}
