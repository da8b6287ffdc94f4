import type { JSX } from 'preact';
import { rankOf } from '../../src/base/grade.ts';
import { rootsOf } from '../../src/findings/independence.ts';
import { fromTo, sayRange } from '../../src/findings/printed-range.ts';
import { titleOf } from '../../src/model/catalogue.ts';
import type { Entry } from '../../src/model/entry.ts';
import { entryPath, REGISTERS, type RegisterName } from '../../src/publish/page-paths.ts';
import type { PageContext } from '../context.ts';
import { said, say, term, words } from '../say.ts';
import { Layout } from './layout.tsx';
import { EntryLink, Joined, Scroll } from './parts.tsx';

interface Column {
  readonly head: string;
  cell(entry: Entry, page: PageContext): JSX.Element | string;
}

const key =
  (name: string) =>
  (entry: Entry): string =>
    term(String((entry.keys as Record<string, unknown>)[name] ?? ''));
const link =
  (name: string) =>
  (entry: Entry, page: PageContext): JSX.Element | string => {
    const id = (entry.keys as Record<string, unknown>)[name];
    return typeof id === 'string' ? <EntryLink page={page} id={id} /> : '';
  };

const dates: Column = {
  head: 'Date',
  cell(entry, page) {
    const moments = page.file.statements.moments.ofEntry(entry.id);
    const rank = rankOf(page.file.settings.printedGrade);
    const first = moments[0] ? page.file.rangesOf(moments[0])[rank] : undefined;
    const lastMoment = moments.at(-1);
    const last = lastMoment ? page.file.rangesOf(lastMoment)[rank] : undefined;
    return first && last ? said(sayRange(fromTo(first, last))) : '';
  },
};

const COLUMNS: Readonly<Record<RegisterName, readonly Column[]>> = {
  events: [{ head: 'Kind', cell: key('kind') }, { head: 'Place', cell: link('place') }, dates],
  evidence: [
    { head: 'Kind', cell: (entry) => key('kind')(entry) || entry.type },
    { head: 'Panel', cell: key('panel') },
    { head: 'Face', cell: key('face') },
    dates,
  ],
  claims: [
    { head: 'About', cell: link('about') },
    { head: 'Source', cell: link('source') },
    { head: 'Grade', cell: key('grade') },
    { head: 'Standing', cell: key('standing') },
  ],
  sources: [
    { head: 'Kind', cell: key('kind') },
    { head: 'Repository', cell: key('repository') },
    { head: 'Copied from', cell: (entry, page) => parents(entry, page) },
    { head: 'Goes back to', cell: (entry, page) => roots(entry, page) },
  ],
  holdings: [
    {
      head: 'Holder',
      cell: (entry, page) =>
        link('holder')(entry, page) || link('asserted-by')(entry, page) || words('known, not disclosed'),
    },
    {
      head: 'Capacity',
      cell: (entry) => key('capacity')(entry) || words('title asserted: {0}', key('interest')(entry)),
    },
    dates,
  ],
  parties: [
    { head: 'Is', cell: key('is') },
    { head: 'Role', cell: key('role') },
  ],
  places: [
    { head: 'Kind', cell: key('kind') },
    { head: 'Within', cell: link('within') },
  ],
  searches: [
    { head: 'Repository', cell: key('repository') },
    { head: 'Looked for', cell: key('for') },
    { head: 'Outcome', cell: key('outcome') },
  ],
  questions: [
    { head: 'Type', cell: (entry) => entry.type },
    { head: 'State', cell: key('state') },
  ],
  letters: [
    { head: 'Type', cell: (entry) => entry.type },
    { head: 'State', cell: key('state') },
  ],
  laws: [
    { head: 'Territory', cell: key('jurisdiction') },
    { head: 'Standing', cell: key('standing') },
    { head: 'How sure', cell: key('how-sure') },
  ],
};

function parents(entry: Entry, page: PageContext): JSX.Element | string {
  const from = (entry.keys as { 'derives-from'?: 'unknown' | readonly string[] })['derives-from'];
  if (from === undefined) return '';
  return from === 'unknown' ? (
    words('not known')
  ) : (
    <>
      {from.map((id, i) => (
        <>
          {i > 0 ? ', ' : ''}
          <EntryLink page={page} id={id} />
        </>
      ))}
    </>
  );
}

/** The root sources; "itself" where it copies none. */
function roots(entry: Entry, page: PageContext): JSX.Element | string {
  const { known, unknown } = rootsOf(page.file.catalogue, entry.id);
  const all = [...known, ...unknown];
  if (all.length === 1 && all[0] === entry.id) return unknown.size > 0 ? words('not known') : words('itself');
  const count = unknown.size === 0 ? String(all.length) : `${Math.max(1, known.size)}–${all.length}`;
  return (
    <>
      {all.length > 1 ? words('{0} independent origins: ', count) : ''}
      <Joined items={all.map((id) => <EntryLink page={page} id={id} />)} />
    </>
  );
}

/** A register: a table of entries, sorted and filtered by a script where there is one. */
export function RegisterPage({ page, name }: { readonly page: PageContext; readonly name: RegisterName }): JSX.Element {
  const register = REGISTERS.find((one) => one.name === name) ?? REGISTERS[0];
  const entries = page.file.catalogue.entries.filter((entry) =>
    (register.types as readonly string[]).includes(entry.type),
  );
  const columns = COLUMNS[name];
  return (
    <Layout
      page={page}
      title={term(register.title)}
      script="registers.js"
      standing={<>{say('{0} of the file.', <a href={page.href('registers.html')}>{say('Registers')}</a>)}</>}
    >
      <h1>{term(register.title)}</h1>
      {entries.length === 0 ? (
        <p>{say('No entry of this kind is recorded.')}</p>
      ) : (
        <Scroll label={words('Register')}>
          <table class="register" data-register>
            <caption>{words('{0, plural, one {One entry} other {# entries}}', entries.length)}</caption>
            <thead>
              <tr>
                <th scope="col">{say('Title')}</th>
                <th scope="col">{say('Id')}</th>
                {columns.map((column) => (
                  <th scope="col">{term(column.head)}</th>
                ))}
              </tr>
            </thead>
            <tbody>
              {entries.map((entry) => (
                <tr>
                  <th scope="row">
                    <a href={page.href(entryPath(entry.id))}>{titleOf(entry, page.file.settings.languages)}</a>
                  </th>
                  <td>
                    <code>{entry.id}</code>
                  </td>
                  {columns.map((column) => (
                    <td>{column.cell(entry, page)}</td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </Scroll>
      )}
    </Layout>
  );
}

/** The list of registers. */
export function RegistersPage({ page }: { readonly page: PageContext }): JSX.Element {
  const count = (types: readonly string[]): number =>
    page.file.catalogue.entries.filter((entry) => types.includes(entry.type)).length;
  return (
    <Layout
      page={page}
      title={words('Registers')}
      standing={words('Everything that the file holds, by kind.')}
      usesGrades={false}
    >
      <h1>{say('Registers')}</h1>
      <ul>
        {REGISTERS.map((one) => (
          <li>
            <a href={page.href(`register/${one.name}.html`)}>{term(one.title)}</a>, {count(one.types)}
          </li>
        ))}
      </ul>
    </Layout>
  );
}
