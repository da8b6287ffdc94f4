import type { JSX } from 'preact';
import { GRADES } from '../../src/base/grade.ts';
import { whatToCheckFirst } from '../../src/findings/check-first.ts';
import { dossierOf } from '../../src/findings/dossier.ts';
import { eventsInOrder } from '../../src/findings/event-order.ts';
import { fromTo, sayRange } from '../../src/findings/printed-range.ts';
import { shownRank } from '../../src/findings/range-changes.ts';
import { titleOf } from '../../src/model/catalogue.ts';
import type { Entry } from '../../src/model/entry.ts';
import { argumentHtml } from '../../src/publish/argument-html.ts';
import { entryPath } from '../../src/publish/page-paths.ts';
import { sayStatement } from '../../src/statements/say-statement.ts';
import type { PageContext } from '../context.ts';
import { colon, footnoteWords, said, say, semicolon, term, words } from '../say.ts';
import { EventTable, eventRanges } from './event-table.tsx';
import { Layout } from './layout.tsx';
import { EntryLink, StatementLink } from './parts.tsx';

/** The opening page: for each object what is known, its key events, and what is in dispute. */
export function OpeningPage({ page }: { readonly page: PageContext }): JSX.Element {
  const { file } = page;
  const { workspace } = file.catalogue;
  const objects = file.catalogue.ofType('object').filter((object) => object.keys['key-events'] !== undefined);
  const title = workspace ? titleOf(workspace, file.settings.languages) : words('Untitled workspace');
  const html = workspace
    ? argumentHtml(
        workspace.argument,
        'workspace',
        (target) => {
          const found = file.catalogue.resolve(target.split('#')[0] as string);
          return found
            ? { href: page.href(entryPath(target)), title: titleOf(found.entry, file.settings.languages) }
            : null;
        },
        2,
        footnoteWords(),
      )
    : '';
  return (
    <Layout page={page} title={title} standing={workspace?.keys.institution ?? words('A research file.')}>
      <h1>{title}</h1>
      {html === '' ? null : <div class="argument-text" dangerouslySetInnerHTML={{ __html: html }} />}
      {objects.length === 0 && file.catalogue.audience !== 'public' ? (
        <p>
          {say(
            'No object names its key events yet. Add “key-events: [EV-...]” to an object to see them here. {0} holds all events.',
            <a href={page.href('chronology.html')}>{say('The chronology')}</a>,
          )}
        </p>
      ) : null}
      {objects.map((object) => (
        <ObjectSummary page={page} object={object} isAlone={objects.length === 1} />
      ))}
    </Layout>
  );
}

function ObjectSummary({
  page,
  object,
  isAlone,
}: {
  readonly page: PageContext;
  readonly object: Entry<'object'>;
  /** True where the file tells of no other object, so that every question is about it. */
  readonly isAlone: boolean;
}): JSX.Element {
  const { file } = page;
  const wanted = object.keys['key-events'] ?? [];
  const events = eventsInOrder(file).filter((event) => wanted.includes(event.id));
  const contradictions = file.contradictions.filter((one) =>
    one.moments.some((moment) => wanted.includes(moment.entry)),
  );
  const questions = file.catalogue
    .ofType('question')
    .filter((one) => one.keys.state !== 'answered' && (isAlone || dossierOf(file, object.id).has(one.id)));
  return (
    <section class="object-summary">
      <h2>
        <EntryLink page={page} id={object.id} />
      </h2>
      <p class="known">{knownSentence(page, events)}</p>
      <EventTable
        page={page}
        events={events}
        label={words('Key events')}
        caption={words('Key events, from the earliest beginning to the latest end')}
      />
      {contradictions.length > 0 ? (
        <p>
          {say(
            '{0} in these dates: {1}.',
            <a href={page.href('contradictions.html')}>
              {words('{0, plural, one {One contradiction} other {# contradictions}}', contradictions.length)}
            </a>,
            contradictions.map((one, i) => (
              <>
                {i > 0 ? semicolon() : ''}
                {one.statements.map((s, k) => (
                  <>
                    {k > 0 ? ', ' : ''}
                    <StatementLink page={page} statement={s} />
                  </>
                ))}
              </>
            )),
          )}
        </p>
      ) : (
        <p>{say('No contradiction touches these events.')}</p>
      )}
      <CheckFirst page={page} object={object} />
      {questions.length > 0 ? (
        <p>
          {say(
            'Open: {0}.',
            questions.map((one, i) => (
              <>
                {i > 0 ? semicolon() : ''}
                <EntryLink page={page} id={one.id} />
              </>
            )),
          )}
        </p>
      ) : null}
    </section>
  );
}

/** The three statements that most hangs on; for readers inside the institution. */
function CheckFirst({
  page,
  object,
}: {
  readonly page: PageContext;
  readonly object: Entry<'object'>;
}): JSX.Element | null {
  const first = page.file.catalogue.audience === 'public' ? [] : whatToCheckFirst(page.file, object).slice(0, 3);
  if (first.length === 0) return null;
  return (
    <p>
      <a href={page.href('check-first.html')}>{say('What to check first')}</a>
      {colon()}
      {first.map(({ statement }, i) => (
        <>
          {i > 0 ? semicolon() : ''}
          {said(sayStatement(statement.says))} <StatementLink page={page} statement={statement} />
        </>
      ))}
      .
    </p>
  );
}

/** One sentence of what is known, made from the key events at the grade that is printed. */
function knownSentence(page: PageContext, events: readonly Entry<'event'>[]): string {
  const parts = events.map((event) => {
    const [starts = [], ends = []] = eventRanges(page, event);
    const rank = shownRank(page.file.settings.printedGrade, starts, ends);
    const range = said(sayRange(fromTo(starts[rank], ends[rank])));
    const grade = GRADES[rank] === page.file.settings.printedGrade ? '' : ` (${term(GRADES[rank] ?? '')})`;
    return `${lower(titleOf(event, page.file.settings.languages))}, ${range}${grade}`;
  });
  if (parts.length === 0) return '';
  return words('On {0} statements: {1}.', term(page.file.settings.printedGrade), parts.join(semicolon()));
}

function lower(title: string): string {
  return /^[A-Z][a-z]/.test(title) ? title.charAt(0).toLowerCase() + title.slice(1) : title;
}
