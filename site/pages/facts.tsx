import type { JSX } from 'preact';
import { CALENDARS, type CalendarName } from '../../src/dates/calendars/calendar.ts';
import { isDateProblem, readDate } from '../../src/dates/read-date.ts';
import { sayExpression } from '../../src/language/date-words.ts';
import { ENTRY_SCHEMAS, type Entry } from '../../src/model/entry.ts';
import { findNotedFields, type NotedField } from '../../src/model/walk-fields.ts';
import { isLanguageTag } from '../../src/publish/languages.ts';
import type { PageContext } from '../context.ts';
import { language, said, say, semicolon, term, words } from '../say.ts';
import { EntryLink } from './parts.tsx';

/** Keys that the page shows elsewhere. */
const SHOWN_ELSEWHERE = [
  'id',
  'type',
  'title',
  'access',
  'withhold',
  'by',
  'recorded',
  'stated',
  'relations',
  'begins',
  'ends',
  'held',
  'panels',
  'alternative',
  'grade',
  'standing',
  'may-be-named',
  'names',
];

/** Keys with free text in which words of the trade are usual: such a word is told in the language of the page. */
const USUAL_WORDS = [
  'acquired-by',
  'act',
  'grade',
  'how-sure',
  'kind',
  'method',
  'retroactive',
  'rights',
  'role',
  'state',
  'tests',
];

/** Keys that may hold one text a language. */
const IN_LANGUAGES = ['quote', 'translation', 'text', 'reply', 'describes', 'description', 'public-text'];

/** The keys of an entry as a list of facts, ids as links, dates in words. */
export function Facts({ page, entry }: { readonly page: PageContext; readonly entry: Entry }): JSX.Element | null {
  const isAssertion = entry.type === 'title';
  const hidden = isAssertion
    ? SHOWN_ELSEWHERE.filter((key) => !['begins', 'ends', 'standing'].includes(key))
    : SHOWN_ELSEWHERE;
  const facts = Object.entries(entry.keys).filter(([key, value]) => !hidden.includes(key) && value !== undefined);
  if (facts.length === 0) return null;
  const notes = new Map(
    findNotedFields(ENTRY_SCHEMAS[entry.type], entry.keys).map((field) => [field.path.join(' '), field]),
  );
  return (
    <section>
      <h2>{say('Recorded')}</h2>
      <dl class="facts">
        {facts.map(([key, value]) => (
          <>
            <dt>{label(key)}</dt>
            <dd>
              <Value page={page} value={value} path={key} notes={notes} />
            </dd>
          </>
        ))}
      </dl>
    </section>
  );
}

interface ValueProps {
  readonly page: PageContext;
  readonly value: unknown;
  readonly path: string;
  readonly notes: ReadonlyMap<string, NotedField>;
}

function Value({ page, value, path, notes }: ValueProps): JSX.Element {
  if (Array.isArray(value)) {
    if (value.every((part) => typeof part === 'number')) return <>{value.join(', ')}</>;
    return (
      <ul class="plain">
        {value.map((part, i) => (
          <li>
            <Value page={page} value={part} path={`${path} ${i}`} notes={notes} />
          </li>
        ))}
      </ul>
    );
  }
  if (value !== null && typeof value === 'object') {
    return (
      <div class="map">
        {Object.entries(value).map(([key, part], i) => (
          <>
            {i > 0 ? semicolon() : ''}
            <span class="map-key">{label(key)}</span>{' '}
            <Value page={page} value={part} path={`${path} ${key}`} notes={notes} />
          </>
        ))}
      </div>
    );
  }
  const note = notes.get(path);
  if (note?.note.refersTo && page.file.catalogue.resolve(String(value)))
    return <EntryLink page={page} id={String(value)} />;
  if (note?.note.holds === 'date') return <DateValue page={page} field={note} />;
  const isOwnText = note !== undefined && !USUAL_WORDS.includes(path.split(' ').at(-1) ?? '');
  return (
    <span lang={languageAt(path, notes)}>
      {value === true ? words('yes') : value === false ? words('no') : isOwnText ? String(value) : term(String(value))}
    </span>
  );
}

/** The language that the keys around a text tell: that of its map, of the name beside it, of the quotation. */
function languageAt(path: string, notes: ReadonlyMap<string, NotedField>): string | undefined {
  const keys = path.split(' ');
  const [around, last] = keys.slice(-2);
  if (last !== undefined && IN_LANGUAGES.includes(around ?? '')) return last;
  const beside = (key: string): string | undefined => notes.get([...keys.slice(0, -1), key].join(' '))?.value;
  const told =
    last === 'text' || last === 'romanised'
      ? beside('language')
      : last === 'quote'
        ? beside('quote-language')
        : undefined;
  if (told === undefined || !isLanguageTag(told)) return undefined;
  return last === 'romanised' ? `${told}-Latn` : told;
}

function DateValue({ page, field }: { readonly page: PageContext; readonly field: NotedField }): JSX.Element {
  const calendar = (field.parent as { calendar?: string } | null)?.calendar as CalendarName | undefined;
  return <EdtfWords page={page} text={field.value} calendar={calendar} />;
}

/** A date in words, with its EDTF beside it where that says it otherwise. */
export function EdtfWords({
  page,
  text,
  calendar,
}: {
  readonly page: PageContext;
  readonly text: string;
  readonly calendar?: CalendarName | undefined;
}): JSX.Element {
  const known = calendar !== undefined && CALENDARS.includes(calendar) ? calendar : 'gregorian';
  const result = readDate(text, known, page.file.settings.dates);
  const inWords = isDateProblem(result) ? text : said(sayExpression(result));
  return (
    <span data-edtf={text}>
      {inWords}
      {inWords === text ? '' : <span class="aside"> ({text})</span>}
    </span>
  );
}

function label(key: string): string {
  const plain = key.replaceAll('-', ' ');
  const name = plain.charAt(0).toUpperCase() + plain.slice(1);
  return language().keys[name] ?? name;
}
