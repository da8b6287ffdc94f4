import type { JSX } from 'preact';
import { inLanguage, titleOf } from '../../src/model/catalogue.ts';
import type { Entry } from '../../src/model/entry.ts';
import { entryPath } from '../../src/publish/page-paths.ts';
import type { PageContext, TiledPicture } from '../context.ts';
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
      title={`Closer: ${title}`}
      standing={
        <>
          Looking closely at <a href={page.href(entryPath(figure.id))}>{title}</a>.
        </>
      }
      usesGrades={false}
      script="close.js"
    >
      <h1>{title}</h1>
      <div id="close" class="close-board">
        <p class="close-tools" hidden>
          <button type="button" name="nearer">
            Nearer
          </button>{' '}
          <button type="button" name="farther">
            Farther
          </button>{' '}
          <button type="button" name="whole">
            The whole
          </button>{' '}
          <span class="aside">or the wheel, two fingers, the keys + − 0 and the arrows</span>
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
        {tiles.width} × {tiles.height} pixels. {figure.keys.credit ? `${figure.keys.credit}. ` : ''}
        <a href={whole}>The picture alone</a>.
      </p>
      <script
        type="application/json"
        id="close-data"
        dangerouslySetInnerHTML={{ __html: JSON.stringify(data).replaceAll('<', '\\u003c') }}
      />
    </Layout>
  );
}
