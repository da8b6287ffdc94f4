import { oncePerName } from '../base/once.ts';
import type { CaseFile } from '../findings/case-file.ts';
import type { Sayer } from '../language/sayer.ts';
import { titleOf } from '../model/catalogue.ts';
import { type Entry, isOfType } from '../model/entry.ts';
import { sayStatement } from '../statements/say-statement.ts';
import type { CitedSource } from './citation.ts';
import { nameOf, sayDate } from './say-entry.ts';

/** The sources of a file as they are cited, and where in them a statement stands. */
export interface SourceBook {
  /** Who says what is said of them. */
  readonly sayer: Sayer;
  /** Null for what is no source. */
  cited(id: string): CitedSource | null;
  /** True for a name that stands in for an entry that is not shown: it leads nowhere. */
  standsIn(id: string): boolean;
  /** Page, folio or number by which statements cite a source, each once. */
  locators(source: string, statements: readonly string[]): string;
  /** All sources of the file, in natural order of their ids. */
  readonly ids: readonly string[];
}

/** Opens the source book of a file. */
export function sourceBookOf(file: CaseFile): SourceBook {
  return {
    sayer: file.sayer,
    cited: oncePerName((id: string) => {
      const entry = file.catalogue.get(id);
      return entry && isOfType(entry, 'source') ? citedSource(file, entry) : null;
    }),
    standsIn: (id) => file.catalogue.get(id)?.standsIn === true,
    locators: (source, statements) =>
      [...new Set(statements.flatMap((id) => locatorOf(file, source, id) ?? []))].join(file.sayer.semicolon),
    ids: file.catalogue.ofType('source').map((one) => one.id),
  };
}

function citedSource(file: CaseFile, { keys, ...entry }: Entry<'source'>): CitedSource {
  const on = keys.object === undefined ? undefined : file.catalogue.resolve(keys.object)?.entry;
  const numbers = on && isOfType(on, 'object') ? (on.keys['accession-numbers'] ?? []) : [];
  const text = (key: keyof typeof keys): string | null => {
    const value = keys[key];
    return typeof value === 'string' ? value : null;
  };
  return {
    kind: keys.kind,
    title: titleOf({ ...entry, keys } as Entry, file.settings.languages),
    authors: (keys.author ?? []).map((one) => (file.catalogue.get(one) ? nameOf(file, one) : one)),
    bodies: (keys.author ?? []).flatMap((one) => {
      const party = file.catalogue.get(one);
      return party && isOfType(party, 'party') && party.keys.is !== 'person' ? [nameOf(file, one)] : [];
    }),
    recipient: keys.recipient ?? null,
    date: keys['date-on-it'] === undefined ? null : sayDateOnIt(file, keys['date-on-it'], keys.calendar),
    placeWritten: text('place-written'),
    container: text('container-title'),
    publisher: text('publisher'),
    publisherPlace: text('publisher-place'),
    volume: text('volume'),
    page: text('page'),
    lot: text('lot'),
    url: text('url'),
    on: on ? [nameOf(file, keys.object ?? ''), ...numbers].join(', ') : null,
    seen: keys['date-read'] === undefined ? null : sayDate(file, keys['date-read']),
    box: text('box'),
    folder: text('folder'),
    item: text('item'),
    referenceCode: text('reference-code'),
    series: text('series'),
    collection: text('collection'),
    repository: text('repository'),
    repositoryPlace: text('repository-place'),
    doubted: doubtedOf(file.sayer, keys.authenticity),
  };
}

/** Whether the authenticity of a source is in doubt, in the words of the entry. */
function doubtedOf(sayer: Sayer, authenticity: Entry<'source'>['keys']['authenticity']): string | null {
  const { term } = sayer;
  const is = typeof authenticity === 'string' ? authenticity : authenticity?.is;
  return is === 'questioned' || is === 'shown false' ? term(is) : null;
}

/** The date that a document bears stays in its own calendar, which is named. */
function sayDateOnIt(file: CaseFile, edtf: string, calendar: string | undefined): string {
  const { words, term } = file.sayer;
  const date = sayDate(file, edtf);
  return calendar === undefined || calendar === 'gregorian'
    ? date
    : words('{0} ({1} calendar)', date, term(calendar.charAt(0).toUpperCase() + calendar.slice(1)));
}

/** Where in a source a statement stands, as its entry says. */
function locatorOf(file: CaseFile, source: string, id: string): string | null {
  const statement = file.statement(id);
  if (statement?.source !== source) return null;
  const entry = file.catalogue.get(statement.entry);
  if (!entry) return null;
  if (isOfType(entry, 'claim')) return entry.keys.locator ?? null;
  const at = statement.path.reduce<unknown>(
    (value, key) => (value as Readonly<Record<string | number, unknown>> | undefined)?.[key],
    entry.keys,
  );
  const locator = (at as { locator?: unknown } | undefined)?.locator;
  return typeof locator === 'string' ? locator : null;
}

/** What a renderer needs of a file: its sources, and the words of its statements. */
export function behindOf(file: CaseFile): { readonly book: SourceBook; statement(id: string): string | null } {
  const say = (id: string): string | null => {
    const statement = file.statement(id);
    return statement && file.sayer.say(sayStatement(statement.says));
  };
  return { book: sourceBookOf(file), statement: say };
}
