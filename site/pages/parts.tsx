import type { ComponentChildren, JSX } from 'preact';
import { GRADE_LETTER, GRADES, type Grade } from '../../src/base/grade.ts';
import { sayRange } from '../../src/findings/printed-range.ts';
import { titleOf } from '../../src/model/catalogue.ts';
import type { Entry } from '../../src/model/entry.ts';
import { entryPath, reasonPath } from '../../src/publish/page-paths.ts';
import { sayStatement } from '../../src/statements/say-statement.ts';
import type { FileStatement, Moment } from '../../src/statements/statements.ts';
import type { PageContext } from '../context.ts';
import { said, say, term, words } from '../say.ts';

/** Holds a wide table; can be scrolled sideways with the keyboard too. */
export function Scroll({
  label,
  children,
}: {
  readonly label: string;
  readonly children: ComponentChildren;
}): JSX.Element {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section class="scroll" tabIndex={0} aria-label={label}>
      {children}
    </section>
  );
}

/** A link to an entry by its title. */
export function EntryLink({ page, id }: { readonly page: PageContext; readonly id: string }): JSX.Element {
  const target = page.file.catalogue.resolve(id.split('#')[0] as string);
  if (!target) return <span>{id}</span>;
  const part = target.part === null ? '' : words(', panel {0}', target.part);
  return (
    <a href={page.href(entryPath(id))}>
      {titleOf(target.entry, page.file.settings.languages)}
      {part}
    </a>
  );
}

/** A statement's id as a small link to where it is written. */
export function StatementLink({
  page,
  statement,
}: {
  readonly page: PageContext;
  readonly statement: FileStatement;
}): JSX.Element {
  return (
    <a
      class={statement.kind === 'passage' ? 'ref long' : 'ref'}
      href={page.href(entryPath(statement.id))}
      title={said(sayStatement(statement.says))}
    >
      {statement.id}
    </a>
  );
}

/** The letter of a grade, spelled out for those who do not see it. */
export function GradeMark({ grade }: { readonly grade: Grade }): JSX.Element {
  return (
    <abbr class="letter" title={term(grade)}>
      {GRADE_LETTER[grade]}
    </abbr>
  );
}

const EDGE_WORDS: Readonly<Record<Moment['edge'], string>> = {
  start: 'beginning',
  end: 'end',
  begins: 'begins',
  ends: 'ends',
  moment: 'when left',
  delivery: 'delivery',
};

/** Ranges of an entry's moments at the four grades, each a link to its reason. */
export function RangeTable({
  page,
  entry,
  caption,
}: {
  readonly page: PageContext;
  readonly entry: Entry;
  readonly caption: string;
}): JSX.Element | null {
  const moments = page.file.statements.moments.ofEntry(entry.id);
  if (moments.length === 0) return null;
  return (
    <Scroll label={words('Dates')}>
      <table class="ranges">
        <caption>{caption}</caption>
        <thead>
          <tr>
            <th scope="col">{say('On statements that are')}</th>
            {moments.map((moment) => (
              <th scope="col">{term(EDGE_WORDS[moment.edge])}</th>
            ))}
          </tr>
        </thead>
        <tbody>
          {GRADES.map((grade, rank) => (
            <tr>
              <th scope="row">{term(grade)}</th>
              {moments.map((moment) => (
                <RangeCell page={page} moment={moment} rank={rank} />
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

function RangeCell({
  page,
  moment,
  rank,
}: {
  readonly page: PageContext;
  readonly moment: Moment;
  readonly rank: number;
}): JSX.Element {
  const range = page.file.rangesOf(moment)[rank];
  if (!range) return <td />;
  return (
    <td>
      <a href={page.href(`${reasonPath(moment.entry)}#${moment.edge}-${range.grade}`)}>{said(sayRange(range))}</a>
      {range.consistent ? null : <span class="disputed"> {say('statements disagree')}</span>}
    </td>
  );
}

/** Things in a row of a sentence: `a, b and c`. */
export function Joined({
  items,
  last = words(' and '),
}: {
  readonly items: readonly JSX.Element[];
  readonly last?: string;
}): JSX.Element {
  return (
    <>
      {items.map((item, i) => (
        <>
          {i === 0 ? '' : i === items.length - 1 ? last : ', '}
          {item}
        </>
      ))}
    </>
  );
}

/** A list of statements with grade, source and reason; those not used say why. */
export function StatementList({
  page,
  statements,
}: {
  readonly page: PageContext;
  readonly statements: readonly FileStatement[];
}): JSX.Element {
  return (
    <ul class="statements">
      {statements.map((one) => (
        <li>
          {said(sayStatement(one.says))} <StatementLink page={page} statement={one} /> <GradeMark grade={one.grade} />
          {one.gradeNote === '' ? null : <span class="aside">, {said(one.gradeNote)}</span>}
          {one.source === null ? null : (
            <span class="aside"> {say('Source: {0}.', <EntryLink page={page} id={one.source} />)}</span>
          )}
          {one.notUsed === null ? null : (
            <span class="aside"> {say('Not used in the computation, because {0}.', said(one.notUsed))}</span>
          )}
        </li>
      ))}
    </ul>
  );
}
