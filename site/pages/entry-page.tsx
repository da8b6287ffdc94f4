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
import type { PageContext } from '../context.ts';
import { Cautions } from './cautions.tsx';
import { Margin, Neighbours } from './entry-margin.tsx';
import { Facts } from './facts.tsx';
import { FourChainsPart } from './four-chains-part.tsx';
import { IndependenceSection } from './independence-section.tsx';
import { Layout } from './layout.tsx';
import { NamesPart } from './names-part.tsx';
import { EntryLink, GradeMark, RangeTable, StatementLink } from './parts.tsx';
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
  const html = argumentHtml(entry.argument, entry.id, (target) => linkTarget(page, target));
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
        <Picture page={page} entry={entry} />
        <Cautions list={cautionsFor(entry)} />
        {html === '' ? null : <div class="argument-text" dangerouslySetInnerHTML={{ __html: html }} />}
        <NamesPart page={page} entry={entry} />
        <RangeTable
          page={page}
          entry={entry}
          caption="Dates, on statements of each grade or better; each opens its reason"
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
            <a href={page.href(reportPath(entry.id, 'file'))}>The provenance file</a> and{' '}
            <a href={page.href(reportPath(entry.id, 'appendix'))}>the appendix to a publication</a>, as they are
            printed.
          </p>
        ) : null}
        {isOfType(entry, 'inquiry') ? (
          <p>
            <a href={page.href(answerPath(entry.id))}>The answer</a>, composed from the file
            {entry.keys['sent-file'] ? ', with what was sent and what has changed since' : ''}.
          </p>
        ) : null}
        <Facts page={page} entry={entry} />
        {(entry.withheld ?? []).length > 0 ? (
          <p class="aside">Some particulars of this entry are not shown to this audience.</p>
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
  const kind = keys.kind === undefined ? entry.type : `${entry.type}, ${keys.kind}`;
  return (
    <>
      {keys.object === undefined ? null : (
        <>
          {keys.panel === undefined ? '' : `Panel ${keys.panel} of `}
          <EntryLink page={page} id={keys.object} />,{' '}
        </>
      )}
      {register ? <a href={page.href(`register/${register.name}.html`)}>{register.title}</a> : 'The file'}: {kind}.
    </>
  );
}

function factsLine(page: PageContext, entry: Entry): readonly (JSX.Element | string)[] {
  const keys = entry.keys as { grade?: 'established'; standing?: string; recorded?: string; by?: string };
  const parts: (JSX.Element | string)[] = [<code>{entry.id}</code>];
  if (keys.grade)
    parts.push(
      <>
        {keys.grade} <GradeMark grade={keys.grade} />
      </>,
    );
  if (keys.standing && entry.type === 'claim') parts.push(keys.standing);
  if (keys.by)
    parts.push(
      <>
        recorded by <EntryLink page={page} id={keys.by} />
        {keys.recorded ? `, ${keys.recorded}` : ''}
      </>,
    );
  if (page.file.catalogue.audience !== 'public') parts.push(`access: ${entry.access}`);
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
            <a href={page.href(closePath(entry.id))}>Look closer</a>
          </>
        ) : null}
        {page.file.catalogue.audience === 'public' ? null : (
          <>
            {'. '}
            <a href={page.href(tracingPath(entry.id))}>Trace on it</a>.
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
      <h2>Statements</h2>
      <dl class="statement-list">
        {statements.map((one) => (
          <>
            <dt id={one.entry === entry.id ? statementAnchor(one.id.split('#')[1] ?? 'claim') : undefined}>
              <StatementLink page={page} statement={one} /> {one.grade} <GradeMark grade={one.grade} />
            </dt>
            <dd>
              {one.text}.{one.why === null ? null : <span class="aside"> Why: {one.why}.</span>}
              {one.gradeNote === '' ? null : (
                <span class="aside">
                  {' '}
                  Stated as {one.statedGrade}: {one.gradeNote}.
                </span>
              )}
              {one.source === null ? null : (
                <span class="aside">
                  {' '}
                  Source: <EntryLink page={page} id={one.source} />.
                </span>
              )}
              {one.notUsed === null ? null : (
                <span class="aside"> Not used in the computation, because {one.notUsed}.</span>
              )}
              <StandingInDispute page={page} statement={one} />
            </dd>
          </>
        ))}
      </dl>
      <p class="aside">{sayRootCount(countRoots(page.file.catalogue, statements))}.</p>
    </section>
  );
}

/** Panels and sections of an object, each with an address of its own. */
function Panels({ page, entry }: { readonly page: PageContext; readonly entry: Entry }): JSX.Element | null {
  if (!isOfType(entry, 'object') || partsOfObject(entry).length === 0) return null;
  const traces = page.file.catalogue.ofType('evidence').filter((trace) => trace.keys.object === entry.id);
  return (
    <section>
      <h2>Panels</h2>
      {(entry.keys.panels ?? []).map((panel) => (
        <div id={`part-${panel.id}`}>
          <h3>
            Panel {panel.id}
            {panel.label ? `: ${panel.label}` : ''}
          </h3>
          <p>
            {[
              panel.width && panel.height ? `${panel.width} × ${panel.height} mm` : '',
              panel.thickness ? `${panel.thickness} mm thick` : '',
            ]
              .filter(Boolean)
              .join(', ')}
            {panel.width && panel.height ? (
              <>
                {'. '}
                <a href={page.href(panelPath(entry.id, panel.id))}>Plan, areas, sections, weights</a>.
              </>
            ) : null}
          </p>
          {(panel.sections ?? []).length > 0 ? (
            <ul>
              {(panel.sections ?? []).map((section) => (
                <li id={`part-${panel.id}.${section.id}`}>
                  Section {panel.id}.{section.id}
                  {section.label ? `, ${section.label}` : ''}
                  {section['key-number'] ? `, marked ${section['key-number']}` : ''}
                  {section.crate ? `, crate ${section.crate}` : ''}
                  {section['stated-size'] ? `, stated as ${section['stated-size']}` : ''}
                  {section['stated-weight'] ? `, ${section['stated-weight']} stated` : ''}
                </li>
              ))}
            </ul>
          ) : null}
          <ul class="plain">
            {traces
              .filter((trace) => trace.keys.panel === panel.id)
              .map((trace) => (
                <li>
                  {trace.keys.kind}: <EntryLink page={page} id={trace.id} />
                </li>
              ))}
          </ul>
        </div>
      ))}
    </section>
  );
}
