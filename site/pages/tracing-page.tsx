import type { JSX } from 'preact';
import { inLanguage, titleOf } from '../../src/model/catalogue.ts';
import type { Entry } from '../../src/model/entry.ts';
import { EVIDENCE_KINDS } from '../../src/model/types/evidence.ts';
import { entryPath } from '../../src/publish/page-paths.ts';
import type { PageContext } from '../context.ts';
import { colon, say, term, words } from '../say.ts';
import { Layout } from './layout.tsx';

/** Tracing on a photograph: points by mouse or keyboard, the shape as text to copy into an entry. For internal readers. */
export function TracingPage({
  page,
  figure,
}: {
  readonly page: PageContext;
  readonly figure: Entry<'figure'>;
}): JSX.Element {
  const languages = page.file.settings.languages;
  const title = titleOf(figure, languages);
  const registered = page.file.physical.panels
    .flatMap(({ geometry }) => [...geometry.figures, ...geometry.back.figures])
    .find((one) => one.figure.id === figure.id);
  const data = {
    figure: figure.id,
    scale: page.scales.get(figure.id) ?? 1,
    matrix: registered?.registration.matrix ?? null,
  };
  // What can be saved into: traces of this object that have no shape yet, and stand in an entry of their own.
  const open = page.file.catalogue
    .ofType('evidence')
    .filter(
      ({ keys, file }) =>
        keys.object === figure.keys.object &&
        (figure.keys.panel === undefined || keys.panel === figure.keys.panel) &&
        keys.shape === undefined &&
        file.endsWith('.md'),
    );
  return (
    <Layout
      page={page}
      title={words('Trace on: {0}', title)}
      standing={
        <>{say('Tracing on {0}; for internal readers.', <a href={page.href(entryPath(figure.id))}>{title}</a>)}</>
      }
      usesGrades={false}
      script="tracing.js"
    >
      <h1>{say('Trace on: {0}', title)}</h1>
      <p class="lead">
        {say(
          'Click on the photograph to set points, or go to it with the Tab key: arrow keys move the cross (with Shift in larger steps), Enter sets a point, Backspace takes the last one away, Escape all, and Escape again or Ctrl+Z brings them back. What is not saved is kept in this browser. Then copy the line below the picture into the entry of the trace, or, in the preview of “kerfmark serve”, save it.{0}',
          registered ? '' : words(' This figure has no control points, so nothing can be measured on it yet.'),
        )}
      </p>
      <div id="tracing">
        <p class="no-script">{say('Tracing needs scripts, which do not run here.')}</p>
        <fieldset class="choices">
          <legend>{say('Shape')}</legend>
          {(['line', 'area', 'arc', 'point'] as const).map((kind) => (
            <label>
              <input type="radio" name="kind" value={kind} checked={kind === 'line'} /> {term(kind)}
            </label>
          ))}
          {/* biome-ignore lint/a11y/noLabelWithoutControl: the field is among the words */}
          <label>
            {say('traced to about {0} mm', <input type="number" name="error" value="2" min="0.1" step="0.1" />)}
          </label>
        </fieldset>
        <div class="tracing-board">
          <img
            src={page.href(page.pictures.get(figure.id) ?? '')}
            alt={inLanguage(figure.keys.alternative, languages)}
          />
          <svg
            // biome-ignore lint/a11y/noNoninteractiveTabindex: points are set here by keyboard
            tabIndex={0}
            role="application"
            aria-label={words('The photograph: arrow keys, Enter, Backspace, Escape')}
          />
        </div>
        <p role="status" />
        <p>
          <label for="shape-text">{say('For the entry of the trace')}</label>
          <textarea id="shape-text" readOnly rows={3} />
        </p>
        <p>
          <button type="button" name="copy">
            {say('Copy')}
          </button>{' '}
          <button type="button" name="back">
            {say('Take the last point away')}
          </button>{' '}
          <button type="button" name="clear">
            {say('Begin anew')}
          </button>
        </p>
        <fieldset class="choices save" hidden>
          <legend>{say('Save it')}</legend>
          {/* biome-ignore lint/a11y/noLabelWithoutControl: the field is among the words */}
          <label>
            {say(
              'into {0}',
              <select name="into">
                <option value="">{say('a new trace')}</option>
                {open.map((trace) => (
                  <option value={trace.id}>
                    {trace.id}
                    {colon()}
                    {titleOf(trace, languages)}
                  </option>
                ))}
              </select>,
            )}
          </label>
          {/* biome-ignore lint/a11y/noLabelWithoutControl: the field is among the words */}
          <label class="of-new">{say('title {0}', <input type="text" name="title" maxLength={200} />)}</label>
          {/* biome-ignore lint/a11y/noLabelWithoutControl: the field is among the words */}
          <label class="of-new">
            {say(
              'kind {0}',
              <select name="is">
                {EVIDENCE_KINDS.map((kind) => (
                  <option value={kind}>{term(kind)}</option>
                ))}
              </select>,
            )}
          </label>
          <button type="button" name="save">
            {say('Save')}
          </button>
        </fieldset>
        <p class="aside save" hidden>
          {say(
            'Saved into the folder of this preview: a new file, or one line more in an entry without a shape. What stands in a file is never changed.',
          )}
        </p>
      </div>
      <script
        type="application/json"
        id="tracing-data"
        dangerouslySetInnerHTML={{ __html: JSON.stringify(data).replaceAll('<', '\\u003c') }}
      />
    </Layout>
  );
}
