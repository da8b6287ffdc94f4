import type { JSX } from 'preact';
import { cautionsFor } from '../../src/findings/cautions.ts';
import { countRoots, sayRootCount } from '../../src/findings/independence.ts';
import { inLanguage, partsOfObject, titleOf } from '../../src/model/catalogue.ts';
import { type Entry, isOfType } from '../../src/model/entry.ts';
import { argumentHtml } from '../../src/publish/argument-html.ts';
import {
  answerPath,
  closePath,
  entryPath,
  panelPath,
  REGISTERS,
  reportPath,
  statementAnchor,
  tracingPath,
} from '../../src/publish/page-paths.ts';
import { sayStatement } from '../../src/statements/say-statement.ts';
import type { PageContext } from '../context.ts';
import { colon, footnoteWords, said, say, term, words } from '../say.ts';
import { Cautions } from './cautions.tsx';
import { Margin, Neighbours } from './entry-margin.tsx';
import { Facts } from './facts.tsx';
import { FourChainsPart } from './four-chains-part.tsx';
import { IndependenceSection } from './independence-section.tsx';
import { Layout } from './layout.tsx';
import { NamesPart } from './names-part.tsx';
import { EntryLink, GradeMark, Joined, RangeTable, StatementLink } from './parts.tsx';
import { ProblemsOfEntry } from './problem-list.tsx';
import { StandingInDispute } from './standing-in-dispute.tsx';
import { UltravioletPart } from './ultraviolet-part.tsx';
import { WorthSection } from './worth-section.tsx';

/** An entry as a catalogue entry: title, line of facts, argument; what it rests on and what rests on it in the margin. */
export function EntryPage({ page, entry }: { readonly page: PageContext; readonly entry: Entry }): JSX.Element {
  const { file } = page;
  const languages = file.settings.languages;
  const title = titleOf(entry, languages);
  const register = REGISTERS.find((one) => (one.types as readonly string[]).includes(entry.type));
  const html = argumentHtml(entry.argument, entry.id, (target) => linkTarget(page, target), 2, footnoteWords());
  return (
    <Layout page={page} title={title} standing={<Standing page={page} entry={entry} />}>
      <article class="entry">
        <h1>{title}</h1>
        <p class="facts-line">
          {factsLine(page, entry).map((part, i) => (
            <>
              {i > 0 ? ' · ' : ''}
              {part}
            </>
          ))}
        </p>
        <ProblemsOfEntry page={page} id={entry.id} />
        {entry.drawnFrom ? (
          <p>
            {say(
              'From the act: {0}. This holding is told by it, and by no entry of its own.',
              <Joined items={entry.drawnFrom.map((id) => <EntryLink page={page} id={id} />)} />,
            )}
          </p>
        ) : null}
        <Picture page={page} entry={entry} />
        <Cautions list={cautionsFor(entry)} />
        {html === '' ? null : <div class="argument-text" dangerouslySetInnerHTML={{ __html: html }} />}
        <NamesPart page={page} entry={entry} />
        <RangeTable
          page={page}
          entry={entry}
          caption={words('Dates, on statements of each grade or better; each opens its reason')}
        />
        <Statements page={page} entry={entry} />
        <WorthSection page={page} entry={entry} />
        {isOfType(entry, 'source') ? <IndependenceSection page={page} source={entry} /> : null}
        <UltravioletPart
          page={page}
          readings={file.physical.ultraviolet.filter(({ trace }) => trace.id === entry.id)}
          cautions={false}
        />
        {isOfType(entry, 'object') ? <FourChainsPart page={page} object={entry} /> : null}
        <Panels page={page} entry={entry} />
        {isOfType(entry, 'object') && entry.keys['part-of'] === undefined ? (
          <p>
            {say(
              '{0} and {1}, as they are printed.',
              <a href={page.href(reportPath(entry.id, 'file'))}>{say('The provenance file')}</a>,
              <a href={page.href(reportPath(entry.id, 'appendix'))}>{say('the appendix to a publication')}</a>,
            )}
          </p>
        ) : null}
        {isOfType(entry, 'inquiry') ? (
          <p>
            {say(
              '{0}, composed from the file{1}.',
              <a href={page.href(answerPath(entry.id))}>{say('The answer')}</a>,
              entry.keys['sent-file'] ? words(', with what was sent and what has changed since') : '',
            )}
          </p>
        ) : null}
        <Facts page={page} entry={entry} />
        {(entry.withheld ?? []).length > 0 ? (
          <p class="aside">{say('Some particulars of this entry are not shown to this audience.')}</p>
        ) : null}
      </article>
      <Margin page={page} entry={entry} />
      {register ? <Neighbours page={page} entry={entry} types={register.types} /> : null}
    </Layout>
  );
}

function linkTarget(page: PageContext, target: string): { readonly href: string; readonly title: string } | null {
  const found = page.file.catalogue.resolve(target.split('#')[0] as string);
  return found
    ? { href: page.href(entryPath(target)), title: titleOf(found.entry, page.file.settings.languages) }
    : null;
}

function Standing({ page, entry }: { readonly page: PageContext; readonly entry: Entry }): JSX.Element {
  const keys = entry.keys as { object?: string; panel?: string; kind?: string };
  const register = REGISTERS.find((one) => (one.types as readonly string[]).includes(entry.type));
  const kind = keys.kind === undefined ? term(entry.type) : `${term(entry.type)}, ${term(keys.kind)}`;
  return (
    <>
      {keys.object === undefined ? null : (
        <>
          {keys.panel === undefined ? '' : words('Panel {0} of ', keys.panel)}
          <EntryLink page={page} id={keys.object} />,{' '}
        </>
      )}
      {register ? <a href={page.href(`register/${register.name}.html`)}>{term(register.title)}</a> : words('The file')}
      {colon()}
      {term(kind)}.
    </>
  );
}

function factsLine(page: PageContext, entry: Entry): readonly (JSX.Element | string)[] {
  const keys = entry.keys as { grade?: 'established'; standing?: string; recorded?: string; by?: string };
  const parts: (JSX.Element | string)[] = [<code>{entry.id}</code>];
  if (keys.grade)
    parts.push(
      <>
        {term(keys.grade)} <GradeMark grade={keys.grade} />
      </>,
    );
  if (keys.standing && entry.type === 'claim') parts.push(term(keys.standing));
  if (keys.by)
    parts.push(
      <>
        {say('recorded by {0}{1}', <EntryLink page={page} id={keys.by} />, keys.recorded ? `, ${keys.recorded}` : '')}
      </>,
    );
  if (page.file.catalogue.audience !== 'public') parts.push(words('access: {0}', term(entry.access)));
  return parts;
}

function Picture({ page, entry }: { readonly page: PageContext; readonly entry: Entry }): JSX.Element | null {
  const source = page.pictures.get(entry.id);
  if (source === undefined || !isOfType(entry, 'figure')) return null;
  const languages = page.file.settings.languages;
  return (
    <figure>
      <img src={page.href(source)} alt={inLanguage(entry.keys.alternative, languages)} />
      <figcaption>
        {titleOf(entry, languages)}
        {entry.keys.technique ? `, ${entry.keys.technique}` : ''}
        {entry.keys.credit ? `. ${entry.keys.credit}` : ''}
        {page.tiles.has(entry.id) ? (
          <>
            {'. '}
            <a href={page.href(closePath(entry.id))}>{say('Look closer')}</a>
          </>
        ) : null}
        {page.file.catalogue.audience === 'public' ? null : (
          <>
            {'. '}
            <a href={page.href(tracingPath(entry.id))}>{say('Trace on it')}</a>.
          </>
        )}
      </figcaption>
    </figure>
  );
}

function Statements({ page, entry }: { readonly page: PageContext; readonly entry: Entry }): JSX.Element | null {
  const statements = page.file.statementsAbout(entry.id);
  if (statements.length === 0) return null;
  return (
    <section>
      <h2>{say('Statements')}</h2>
      <dl class="statement-list">
        {statements.map((one) => (
          <>
            <dt id={one.entry === entry.id ? statementAnchor(one.id.split('#')[1] ?? 'claim') : undefined}>
              <StatementLink page={page} statement={one} /> {term(one.grade)} <GradeMark grade={one.grade} />
            </dt>
            <dd>
              {said(sayStatement(one.says))}.
              {one.why === null ? null : <span class="aside"> {say('Why: {0}.', one.why)}</span>}
              {one.gradeNote === '' ? null : (
                <span class="aside"> {say('Stated as {0}: {1}.', term(one.statedGrade), said(one.gradeNote))}</span>
              )}
              {one.source === null ? null : (
                <span class="aside"> {say('Source: {0}.', <EntryLink page={page} id={one.source} />)}</span>
              )}
              {one.notUsed === null ? null : (
                <span class="aside"> {say('Not used in the computation, because {0}.', said(one.notUsed))}</span>
              )}
              <StandingInDispute page={page} statement={one} />
            </dd>
          </>
        ))}
      </dl>
      <p class="aside">{said(sayRootCount(countRoots(page.file.catalogue, statements)))}.</p>
    </section>
  );
}

/** Panels and sections of an object, each with an address of its own. */
function Panels({ page, entry }: { readonly page: PageContext; readonly entry: Entry }): JSX.Element | null {
  if (!isOfType(entry, 'object') || partsOfObject(entry).length === 0) return null;
  const traces = page.file.catalogue.onObject('evidence', entry.id);
  return (
    <section>
      <h2>{say('Panels')}</h2>
      {(entry.keys.panels ?? []).map((panel) => (
        <div id={`part-${panel.id}`}>
          <h3>{say('Panel {0}{1}', panel.id, panel.label ? `${colon()}${panel.label}` : '')}</h3>
          <p>
            {[
              panel.width && panel.height ? words('{0} × {1} mm', panel.width, panel.height) : '',
              panel.thickness ? words('{0} mm thick', panel.thickness) : '',
            ]
              .filter(Boolean)
              .join(', ')}
            {panel.width && panel.height ? (
              <>
                {'. '}
                <a href={page.href(panelPath(entry.id, panel.id))}>{say('Plan, areas, sections, weights')}</a>.
              </>
            ) : null}
          </p>
          {(panel.sections ?? []).length > 0 ? (
            <ul>
              {(panel.sections ?? []).map((section) => (
                <li id={`part-${panel.id}.${section.id}`}>
                  {say(
                    'Section {0}.{1}{2}{3}{4}{5}{6}',
                    panel.id,
                    section.id,
                    section.label ? `, ${section.label}` : '',
                    section['key-number'] ? words(', marked {0}', section['key-number']) : '',
                    section.crate ? words(', crate {0}', section.crate) : '',
                    section['stated-size'] ? words(', stated as {0}', section['stated-size']) : '',
                    section['stated-weight'] ? words(', {0} stated', section['stated-weight']) : '',
                  )}
                </li>
              ))}
            </ul>
          ) : null}
          <ul class="plain">
            {traces
              .filter((trace) => trace.keys.panel === panel.id)
              .map((trace) => (
                <li>
                  {term(trace.keys.kind)}
                  {colon()}
                  <EntryLink page={page} id={trace.id} />
                </li>
              ))}
          </ul>
        </div>
      ))}
    </section>
  );
}
