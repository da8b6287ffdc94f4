import type { ComponentChildren, JSX } from 'preact';
import { GRADE_LETTER, GRADES } from '../../src/base/grade.ts';
import { oncePer } from '../../src/base/once.ts';
import { dayOf } from '../../src/dates/day.ts';
import { sayDay } from '../../src/language/date-words.ts';
import { textOf } from '../../src/language/language.ts';
import type { Catalogue } from '../../src/model/catalogue.ts';
import { titleOf } from '../../src/model/catalogue.ts';
import { REGISTERS } from '../../src/publish/page-paths.ts';
import type { PageContext } from '../context.ts';
import { language, said, say, term, words } from '../say.ts';
import { SCRIPT_MESSAGES } from '../script-messages.ts';
import { WORDS_OF_SCRIPT } from '../scripts/told.ts';
import { LinkToLines } from './problem-list.tsx';

const POLICY =
  "default-src 'none'; img-src 'self' data:; style-src 'self'; font-src 'self'; script-src 'self'; connect-src 'self'; base-uri 'none'; form-action 'none'";

interface LayoutProps {
  readonly page: PageContext;
  readonly title: string;
  /** Where this page stands in the file, as a sentence. */
  readonly standing: ComponentChildren;
  readonly children: ComponentChildren;
  /** Explains the letters of the grades at the foot. */
  readonly usesGrades?: boolean;
  /** The script of this page; most have none. */
  readonly script?: string;
}

/** The frame of every page: words of navigation at the head, how to cite and for whom at the foot. */
export function Layout({ page, title, standing, children, usesGrades = true, script }: LayoutProps): JSX.Element {
  const workspace = page.file.catalogue.workspace;
  const name = workspace ? titleOf(workspace, page.file.settings.languages) : words('Untitled workspace');
  return (
    <html lang={language().tag}>
      <head>
        <meta charset="utf-8" />
        <meta http-equiv="Content-Security-Policy" content={POLICY} />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta name="color-scheme" content="light dark" />
        <meta name="referrer" content="no-referrer" />
        <title>{title === name ? name : `${title} · ${name}`}</title>
        <link rel="icon" href={page.href('assets/mark.svg')} type="image/svg+xml" />
        <link rel="stylesheet" href={page.href('assets/fonts/fonts.css')} />
        <link rel="stylesheet" href={page.href('assets/kerfmark.css')} />
        <link rel="stylesheet" href={page.href('assets/plan.css')} />
        <link rel="stylesheet" href={page.href('assets/drawings.css')} />
        {script ? <ScriptWords script={script} /> : null}
        {script ? <script src={page.href(`assets/${script}`)} defer /> : null}
      </head>
      <body>
        <a class="skip" href="#main">
          {say('To the text')}
        </a>
        <header class="head">
          <p class="file-name">
            <a href={page.href('index.html')}>{name}</a>
          </p>
          <Navigation page={page} />
        </header>
        <Banner page={page} />
        <main id="main">
          <p class="standing">{standing}</p>
          {children}
        </main>
        <Foot page={page} title={title} usesGrades={usesGrades} />
      </body>
    </html>
  );
}

const firstObject = oncePer((catalogue: Catalogue) =>
  catalogue.ofType('object').find((object) => object.keys['part-of'] === undefined),
);

function Navigation({ page }: { readonly page: PageContext }): JSX.Element {
  const object = firstObject(page.file.catalogue);
  const links: readonly (readonly [string, string])[] = [
    ...(object ? [[`entry/${object.id}.html`, words('Object')] as const] : []),
    ['chronology.html', words('Chronology')],
    ['trial.html', words('Withdraw and see')],
    ['contradictions.html', words('Contradictions')],
    ['references.html', words('Reference dates')],
    ['register/evidence.html', words('Evidence')],
    ['register/sources.html', words('Documents')],
    ['custody.html', words('Custody')],
    ['places.html', words('Places')],
    ['research.html', words('Research')],
    ['registers.html', words('Registers')],
    ['method.html', words('Method')],
    ['search.html', words('Search')],
    ...(page.file.catalogue.audience === 'public' ? [] : [['doubts.html', words('Doubts')] as const]),
  ];
  return (
    <nav aria-label={words('Main')}>
      <ul class="words">
        {links.map(([path, words]) => (
          <li>
            <a href={page.href(path)} aria-current={page.path === path ? 'page' : undefined}>
              {words}
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}

/** Says that entries could not be read; only previews are built with such entries. */
function Banner({ page }: { readonly page: PageContext }): JSX.Element | null {
  const errors = page.problems.filter((one) => one.severity === 'error');
  if (page.errors === 0) return null;
  return (
    <aside class="banner" aria-label={words('Problems in the entries')}>
      <p>
        {say(
          '{0} {1}The dates below rest on what could be read.',
          <strong>
            {say('{0} in the entries.', words('{0, plural, one {One problem} other {# problems}}', page.errors))}
          </strong>,
          page.leftOut.length > 0
            ? words('Left out here: {0}. ', page.leftOut.join(', '))
            : words('Statements with problems are left out here. '),
        )}
      </p>
      {errors.length === 0 ? null : (
        <ol>
          {errors.slice(0, 12).map((one) => (
            <li>
              <code>
                {one.place.file}:{one.place.line}:{one.place.column}
              </code>{' '}
              {said(one.message)}. <em>{say('Mend:')}</em> {said(one.mend)}. <LinkToLines page={page} problem={one} />
            </li>
          ))}
        </ol>
      )}
      {page.errors > 12 || page.errors > errors.length ? <p>{say('“kerfmark check” lists them all.')}</p> : null}
    </aside>
  );
}

function Foot({
  page,
  title,
  usesGrades,
}: {
  readonly page: PageContext;
  readonly title: string;
  readonly usesGrades: boolean;
}): JSX.Element {
  const { file } = page;
  const workspace = file.catalogue.workspace;
  const keys = workspace?.keys;
  const [year, month, day] = page.built.split('-').map(Number) as [number, number, number];
  const built = said(sayDay(dayOf(year, month, day), 'day'));
  const silent = keys?.['unshown-note']?.off === true;
  return (
    <footer class="foot">
      {usesGrades ? (
        <p>
          {say(
            'Grades: {0}. {1}; {2}.',
            GRADES.map((grade, i) => (
              <>
                {i > 0 ? ', ' : ''}
                {term(grade)} <span class="letter">{GRADE_LETTER[grade]}</span>
              </>
            )),
            <a href={page.href('method.html')}>{say('What they mean')}</a>,
            <a href={page.href('marks.html')}>{say('the marks of the drawings')}</a>,
          )}
        </p>
      ) : null}
      <p class="cite">
        {say(
          'How to cite: “{0}”, {1}{2}, {3}, Kerfmark {4}.',
          title,
          <cite>{workspace ? titleOf(workspace, file.settings.languages) : ''}</cite>,
          keys?.institution ? `, ${keys.institution}` : '',
          built,
          page.version,
        )}
      </p>
      <p>
        {say(
          'Built for the audience {0}. {1}',
          <em>{term(file.catalogue.audience)}</em>,
          file.catalogue.holdsMore && !silent
            ? words(
                'This file holds entries that are not shown to this audience; dates and gaps printed here rest on the shown entries only.',
              )
            : '',
        )}
      </p>
      {language().notice === '' ? null : <p>{language().notice}</p>}
      <p class="respond">
        <strong>{say('Know more, or disagree?')}</strong>{' '}
        {keys?.['how-to-respond'] ?? words('Write to the institution that keeps this file.')} {keys?.contact ?? ''}
      </p>
      <p class="registers-line">
        {say(
          'Registers: {0}',
          REGISTERS.map((one, i) => (
            <>
              {i > 0 ? ' · ' : ''}
              <a href={page.href(`register/${one.name}.html`)}>{term(one.title)}</a>
            </>
          )),
        )}
      </p>
    </footer>
  );
}

/** The words of the page's script, where they are not those that stand in it. */
function ScriptWords({ script }: { readonly script: string }): JSX.Element | null {
  const spoken = language();
  const told = (SCRIPT_MESSAGES[script] ?? []).flatMap((one) => {
    const text = textOf(spoken, one);
    return text === undefined ? [] : [[one, text]];
  });
  if (told.length === 0) return null;
  const text = JSON.stringify(Object.fromEntries(told)).replaceAll('<', '\\u003c');
  return <script type="application/json" id={WORDS_OF_SCRIPT} dangerouslySetInnerHTML={{ __html: text }} />;
}
