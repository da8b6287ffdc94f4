import type { JSX } from 'preact';
import { sayCertain, sayExactly, sayStretch } from '../../src/findings/custody-words.ts';
import { fourChains } from '../../src/findings/four-chains.ts';
import { titleOf } from '../../src/model/catalogue.ts';
import type { Entry } from '../../src/model/entry.ts';
import { entryPath } from '../../src/publish/page-paths.ts';
import type { PageContext } from '../context.ts';
import { BAND_NAMES, ChainsFigure } from '../drawings/chains-figure.tsx';
import { said, say, term, words } from '../say.ts';
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
  const name = `${titleOf(object, page.file.settings.languages)}${panel === null ? '' : words(', panel {0}', panel)}`;
  return (
    <section>
      <h2>{say('State, place, custody, title')}</h2>
      <p>
        {say(
          'Four chains that are never mixed: what was sold need not have been taken down, what was taken down need not have left the country. On probable statements or better.',
        )}
      </p>
      <figure class="wide drawing">
        <ChainsFigure file={page.file} steps={steps} hrefOf={(id) => page.href(entryPath(id))} />
        <figcaption>
          {say(
            'Between two ticks: an act took place some time in this stretch; a filled bar: it had begun and had not ended. Solid: held or lasting throughout; dashed: possibly; a point: recorded then; since when, or until when, is open. A thin line: a title as somebody asserts it. Arrows: no limit known. Dealers and agents stand in parentheses; letters before a name are panels.',
          )}
        </figcaption>
      </figure>
      <details class="as-table">
        <summary>{say('The four chains as a table')}</summary>
        <Scroll label={words('State, place, custody and title of {0}', name)}>
          <table class="stacking">
            <thead>
              <tr>
                <th scope="col">{say('Step')}</th>
                <th scope="col">{say('Chain')}</th>
                <th scope="col">{say('Panels')}</th>
                <th scope="col">{say('Throughout')}</th>
                <th scope="col">{say('Possibly')}</th>
              </tr>
            </thead>
            <tbody>
              {steps.map((step) => (
                <tr>
                  <th scope="row">
                    <a href={page.href(entryPath(step.entry))}>{said(step.name)}</a>
                  </th>
                  <td>
                    <span class="cell-label">{say('chain')} </span>
                    {term(BAND_NAMES[step.band])}
                  </td>
                  <td>
                    <span class="cell-label">{say('panels')} </span>
                    {step.panels.length > 0 ? step.panels.join(', ') : words('all')}
                  </td>
                  <td>
                    <span class="cell-label">{say('throughout')} </span>
                    {step.is === 'lasting' && step.band !== 'title'
                      ? said(sayCertain(step))
                      : step.throughout
                        ? said(sayExactly(step.throughout))
                        : words('not told')}
                  </td>
                  <td>
                    <span class="cell-label">{say('possibly')} </span>
                    {said(sayStretch(step.possibly))}
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
