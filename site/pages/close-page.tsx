import type { JSX } from 'preact';
import { inLanguage, titleOf } from '../../src/model/catalogue.ts';
import type { Entry } from '../../src/model/entry.ts';
import { entryPath } from '../../src/publish/page-paths.ts';
import type { PageContext, TiledPicture } from '../context.ts';
import { say, words } from '../say.ts';
import { Layout } from './layout.tsx';

/** A large figure to look at closely; without a script the whole picture at its full size. */
export function ClosePage({
  page,
  figure,
  tiles,
}: {
  readonly page: PageContext;
  readonly figure: Entry<'figure'>;
  readonly tiles: TiledPicture;
}): JSX.Element {
  const languages = page.file.settings.languages;
  const title = titleOf(figure, languages);
  const whole = page.href(`${tiles.address}/full/max/0/default.jpg`);
  const data = { ...tiles, address: page.href(tiles.address) };
  return (
    <Layout
      page={page}
      title={words('Closer: {0}', title)}
      standing={<>{say('Looking closely at {0}.', <a href={page.href(entryPath(figure.id))}>{title}</a>)}</>}
      usesGrades={false}
      script="close.js"
    >
      <h1>{title}</h1>
      <div id="close" class="close-board">
        <p class="close-tools" hidden>
          <button type="button" name="nearer">
            {say('Nearer')}
          </button>{' '}
          <button type="button" name="farther">
            {say('Farther')}
          </button>{' '}
          <button type="button" name="whole">
            {say('The whole')}
          </button>{' '}
          <span class="aside">{say('or the wheel, two fingers, the keys + − 0 and the arrows')}</span>
        </p>
        <div class="close-view">
          <img
            src={whole}
            alt={inLanguage(figure.keys.alternative, languages)}
            width={tiles.width}
            height={tiles.height}
          />
        </div>
      </div>
      <p>
        {say(
          '{0} × {1} pixels. {2}{3}.',
          tiles.width,
          tiles.height,
          figure.keys.credit ? `${figure.keys.credit}. ` : '',
          <a href={whole}>{say('The picture alone')}</a>,
        )}
      </p>
      <script
        type="application/json"
        id="close-data"
        dangerouslySetInnerHTML={{ __html: JSON.stringify(data).replaceAll('<', '\\u003c') }}
      />
    </Layout>
  );
}
