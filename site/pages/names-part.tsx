import type { JSX } from 'preact';
import type { Entry, Keys } from '../../src/model/entry.ts';
import { isLanguageTag, languageName, missingLanguages, otherTitles } from '../../src/publish/languages.ts';
import type { PageContext } from '../context.ts';
import { language, say, term, words } from '../say.ts';
import { EdtfWords } from './facts.tsx';

type Name = NonNullable<Keys<'place'>['names']>[number];

/** Names in the order in which they count here: those of the people whose name it is come first. */
const ORDER: readonly (Name['standing'] | undefined)[] = [
  'in local use',
  'official',
  undefined,
  'disputed',
  'trade name',
  'colonial',
];

/** The names of an object, a party or a place by who uses them, and the languages in which it has none. */
export function NamesPart({ page, entry }: { readonly page: PageContext; readonly entry: Entry }): JSX.Element | null {
  if (!['object', 'party', 'place'].includes(entry.type)) return null;
  const { names = [] } = entry.keys as { readonly names?: readonly Name[] };
  const languages = page.file.settings.languages;
  const inWords = (tag: string): string => languageName(tag, language().locale);
  const others = otherTitles(entry, languages);
  const missing = entry.standsIn ? [] : missingLanguages(entry, languages);
  if (names.length + others.length + missing.length === 0) return null;
  const sorted = [...names].sort((a, b) => ORDER.indexOf(a.standing) - ORDER.indexOf(b.standing));
  return (
    <section class="names">
      <h2>{say('Names')}</h2>
      <ul class="plain">
        {others.map(([language, title]) => (
          <li>
            <span lang={language} dir="auto">
              {title}
            </span>{' '}
            <span class="aside">{say('title in {0}', inWords(language))}</span>
          </li>
        ))}
        {sorted.map((name) => (
          <li>
            <OneName page={page} name={name} inWords={inWords} />
          </li>
        ))}
      </ul>
      {missing.length === 0 ? null : (
        <p class="aside">{say('No name or title in {0} is recorded yet.', missing.map(inWords).join(', '))}</p>
      )}
    </section>
  );
}

function OneName({
  page,
  name,
  inWords,
}: {
  readonly page: PageContext;
  readonly name: Name;
  readonly inWords: (tag: string) => string;
}): JSX.Element {
  const tag = name.language !== undefined && isLanguageTag(name.language) ? name.language : undefined;
  const facts: (JSX.Element | string)[] = [
    ...(name.romanised ? [<span lang={tag ? `${tag}-Latn` : undefined}>{name.romanised}</span>] : []),
    ...(name.language ? [inWords(name.language)] : []),
    ...(name.standing ? [term(name.standing)] : []),
    ...(name['used-by'] ? [words('used by {0}', name['used-by'])] : []),
    ...(name.from ? [<>{say('from {0}', <EdtfWords page={page} text={name.from} />)}</>] : []),
    ...(name.to ? [<>{say('to {0}', <EdtfWords page={page} text={name.to} />)}</>] : []),
  ];
  return (
    <>
      <span lang={tag} dir="auto">
        {name.text}
      </span>{' '}
      <span class="aside">
        {facts.map((fact, i) => (
          <>
            {i > 0 ? ', ' : ''}
            {fact}
          </>
        ))}
      </span>
    </>
  );
}
