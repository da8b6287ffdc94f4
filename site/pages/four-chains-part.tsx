import type { JSX } from 'preact';
import { sayCertain, sayExactly, sayStretch } from '../../src/findings/custody-words.ts';
import { fourChains } from '../../src/findings/four-chains.ts';
import { titleOf } from '../../src/model/catalogue.ts';
import type { Entry } from '../../src/model/entry.ts';
import { entryPath } from '../../src/publish/page-paths.ts';
import type { PageContext } from '../context.ts';
import { BAND_NAMES, ChainsFigure } from '../drawings/chains-figure.tsx';
import { Scroll } from './parts.tsx';

/** State, place, custody and title of an object or a panel, side by side; nothing where nothing of it is dated. */
export function FourChainsPart({
  page,
  object,
  panel = null,
}: {
  readonly page: PageContext;
  readonly object: Entry<'object'>;
  readonly panel?: string | null;
}): JSX.Element | null {
  const steps = fourChains(page.file, object, panel);
  if (steps.length === 0) return null;
  const name = `${titleOf(object, page.file.settings.languages)}${panel === null ? '' : `, panel ${panel}`}`;
  return (
    <section>
      <h2>State, place, custody, title</h2>
      <p>
        Four chains that are never mixed: what was sold need not have been taken down, what was taken down need not have
        left the country. On probable statements or better.
      </p>
      <figure class="wide drawing">
        <ChainsFigure file={page.file} steps={steps} hrefOf={(id) => page.href(entryPath(id))} />
        <figcaption>
          Between two ticks: an act took place some time in this stretch; a filled bar: certainly under way. Solid: held
          or lasting throughout; dashed: possibly; a point: recorded then, and nothing says since when or until when. A
          thin line: a title as somebody asserts it. Arrows: nothing bounds that end. Dealers and agents stand in
          parentheses; letters before a name are panels.
        </figcaption>
      </figure>
      <details class="as-table">
        <summary>The four chains as a table</summary>
        <Scroll label={`State, place, custody and title of ${name}`}>
          <table class="stacking">
            <thead>
              <tr>
                <th scope="col">Step</th>
                <th scope="col">Chain</th>
                <th scope="col">Panels</th>
                <th scope="col">Certainly</th>
                <th scope="col">Possibly</th>
              </tr>
            </thead>
            <tbody>
              {steps.map((step) => (
                <tr>
                  <th scope="row">
                    <a href={page.href(entryPath(step.entry))}>{step.name}</a>
                  </th>
                  <td>
                    <span class="cell-label">chain </span>
                    {BAND_NAMES[step.band]}
                  </td>
                  <td>
                    <span class="cell-label">panels </span>
                    {step.panels.length > 0 ? step.panels.join(', ') : 'all'}
                  </td>
                  <td>
                    <span class="cell-label">certainly </span>
                    {step.is === 'lasting' && step.band !== 'title'
                      ? sayCertain(step)
                      : step.throughout
                        ? sayExactly(step.throughout)
                        : 'not told'}
                  </td>
                  <td>
                    <span class="cell-label">possibly </span>
                    {sayStretch(step.possibly)}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </Scroll>
      </details>
    </section>
  );
}
