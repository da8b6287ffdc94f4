import type { JSX } from 'preact';
import { groupBy } from '../../src/base/group-by.ts';
import { oncePerBoth } from '../../src/base/once.ts';
import type { RestingBound } from '../../src/findings/resting.ts';
import type { Catalogue } from '../../src/model/catalogue.ts';
import { titleOf } from '../../src/model/catalogue.ts';
import type { Entry } from '../../src/model/entry.ts';
import { reasonPath } from '../../src/publish/page-paths.ts';
import type { PageContext } from '../context.ts';
import { colon, say, sayList, words } from '../say.ts';
import { EntryLink, GradeMark } from './parts.tsx';

/** What the entry rests on, what links to it, and which dates rest on it. */
export function Margin({ page, entry }: { readonly page: PageContext; readonly entry: Entry }): JSX.Element {
  const { catalogue } = page.file;
  const restsOn = [...new Set(catalogue.linksFrom(entry.id).map((link) => link.to))];
  const linked = [...new Set(catalogue.linksTo(entry.id).map((link) => link.from))];
  const bounds = page.resting.get(entry.id) ?? [];
  return (
    <aside class="margin" aria-label={words('Links of this entry')}>
      <LinkList page={page} head={words('Rests on, or names')} ids={restsOn} />
      <LinkList page={page} head={words('Cited by')} ids={linked} />
      <section>
        <h2>{say('Dates whose reasons cite it')}</h2>
        {bounds.length === 0 ? (
          <p>{say('No computed date of another entry.')}</p>
        ) : (
          <ul>
            {[...groupBy(bounds, (bound) => bound.moment.entry)].map(([id, list]) => (
              <RestingEntry page={page} id={id} bounds={list} />
            ))}
          </ul>
        )}
      </section>
    </aside>
  );
}

/** Entries under a head; nothing where there are none. */
function LinkList({
  page,
  head,
  ids,
}: {
  readonly page: PageContext;
  readonly head: string;
  readonly ids: readonly string[];
}): JSX.Element | null {
  if (ids.length === 0) return null;
  return (
    <section>
      <h2>{head}</h2>
      <ul>
        {ids.map((id) => (
          <li>
            <EntryLink page={page} id={id} />
          </li>
        ))}
      </ul>
    </section>
  );
}

/** The bounds of one other entry that rest on this one, told together. */
function RestingEntry({
  page,
  id,
  bounds,
}: {
  readonly page: PageContext;
  readonly id: string;
  readonly bounds: readonly RestingBound[];
}): JSX.Element {
  const other = page.file.catalogue.get(id);
  const [first] = bounds;
  const sides = (['earliest', 'latest'] as const).filter((side) => bounds.some((bound) => bound.side === side));
  const told = sayList(sides.map((side) => (side === 'earliest' ? words('not earlier') : words('not later'))));
  return (
    <li>
      <a href={page.href(`${reasonPath(id)}#${first?.moment.edge}-${first?.grade}`)}>
        {other ? titleOf(other, page.file.settings.languages) : id}
      </a>
      {colon()}
      {told} <GradeMark grade={first?.grade ?? 'conjectural'} />
    </li>
  );
}

interface Register {
  readonly all: readonly Entry[];
  /** Places in it by id. */
  readonly at: ReadonlyMap<string, number>;
}

const registerOf = oncePerBoth((catalogue: Catalogue, types: string): Register => {
  const all = catalogue.entries.filter((one) => types.split(' ').includes(one.type));
  return { all, at: new Map(all.map((one, i) => [one.id, i])) };
});

/** The entries before and after this one in its register. */
export function Neighbours({
  page,
  entry,
  types,
}: {
  readonly page: PageContext;
  readonly entry: Entry;
  readonly types: readonly string[];
}): JSX.Element {
  const { all, at: places } = registerOf(page.file.catalogue, types.join(' '));
  const at = places.get(entry.id) ?? -1;
  const before = all[at - 1];
  const after = all[at + 1];
  return (
    <nav class="neighbours" aria-label={words('Neighbouring entries')}>
      {before ? <span>{say('Before: {0}', <EntryLink page={page} id={before.id} />)}</span> : <span />}
      {after ? <span>{say('Next: {0}', <EntryLink page={page} id={after.id} />)}</span> : <span />}
    </nav>
  );
}
