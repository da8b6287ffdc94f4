import { rankOf } from '../base/grade.ts';
import { civilOf, formatIsoDay } from '../dates/day.ts';
import type { CaseFile } from '../findings/case-file.ts';
import { sayDay } from '../language/date-words.ts';
import { ENGLISH } from '../language/language.ts';
import { sayerIn } from '../language/sayer.ts';
import { titleOf } from '../model/catalogue.ts';
import type { Entry } from '../model/entry.ts';
import type { Edge } from '../statements/file-statement.ts';

/** Any JSON object. */
export type Json = Readonly<Record<string, unknown>>;

/** A whole record: what the standard asks of every one. */
export interface LinkedArtRecord extends Json {
  readonly '@context': string;
  readonly id: string;
  readonly type: string;
  readonly _label: string;
}

/** The context of Linked Art 1.0; last where there are several. */
export const CONTEXT = 'https://linked.art/ns/v1/linked-art.json';

/** What marks an activity as one of provenance. */
export const PROVENANCE: Json = {
  id: 'http://vocab.getty.edu/aat/300055863',
  type: 'Type',
  _label: 'Provenance Activity',
};

/** Where an entry has its address; a scheme of our own where the workspace has none. */
export function uriOf({ catalogue }: CaseFile, id: string): string {
  const base = catalogue.workspace?.keys['base-url'];
  return base === undefined ? `urn:kerfmark:${id}` : `${base.replace(/\/$/, '')}/id/${id}`;
}

/** A reference to a record, with its label. */
export function ref(file: CaseFile, id: string, type: string): Json & { readonly id: string } {
  const entry = file.catalogue.get(id);
  return { id: uriOf(file, id), type, ...(entry ? { _label: titleOf(entry, file.settings.languages) } : {}) };
}

/** The names of an entry: its title in every language, then the names by who uses them, then its id. */
export function named(file: CaseFile, entry: Entry): readonly Json[] {
  const { title } = entry.keys;
  const titles = typeof title === 'string' ? [title] : Object.values(title);
  const names = (entry.keys as { names?: readonly { text: string; romanised?: string }[] }).names ?? [];
  const all = [...titles, ...names.flatMap((one) => [one.text, ...(one.romanised ? [one.romanised] : [])])];
  return [
    ...[...new Set(all)].map((content) => ({ type: 'Name', content })),
    {
      type: 'Identifier',
      content: entry.id,
      _label: `Id in ${file.catalogue.workspace ? titleOf(file.catalogue.workspace) : 'the file'}`,
    },
  ];
}

/** Words about a thing. */
export function statement(label: string, content: string): Json {
  return { type: 'LinguisticObject', _label: label, content };
}

/**
 * When something began and ended, at the printed grade, under `timespan`; the earliest and latest possible moments of both.
 * Nothing where nothing bounds it, since a time span without bounds or name is not allowed; a year before 1 cannot be
 * written as a date of the standard's API, so such a span carries its words only.
 */
export function timeSpan(file: CaseFile, id: string, edges: readonly [Edge, Edge]): Json {
  const rank = rankOf(file.settings.printedGrade);
  const [begin, end] = edges.map((edge) => {
    const moment = file.statements.moments.momentOf(id, edge);
    return moment ? file.rangesOf(moment)[rank] : undefined;
  });
  const bounds: readonly (readonly [string, number | undefined, 'first' | 'last'])[] = [
    ['begin_of_the_begin', begin?.earliest?.day, 'first'],
    ['end_of_the_begin', begin?.latest?.day, 'last'],
    ['begin_of_the_end', end?.earliest?.day, 'first'],
    ['end_of_the_end', end?.latest?.day, 'last'],
  ];
  return spanOf(bounds);
}

/** A time span of day bounds, or nothing. */
export function spanOf(bounds: readonly (readonly [string, number | undefined, 'first' | 'last'])[]): Json {
  const known = bounds.flatMap(([key, day, side]) =>
    day === undefined || !Number.isFinite(day) ? [] : [{ key, day, side }],
  );
  const written = known.flatMap(({ key, day, side }) =>
    civilOf(day).year >= 1
      ? [[key, `${formatIsoDay(day)}T${side === 'first' ? '00:00:00' : '23:59:59'}Z`] as const]
      : [],
  );
  if (known.length === 0) return {};
  // One of the two outer bounds, or a name: "begun by 1936" has neither bound.
  const isNamed = written.some(([key]) => key === 'begin_of_the_begin' || key === 'end_of_the_end');
  if (isNamed) return { timespan: { type: 'TimeSpan', ...Object.fromEntries(written) } };
  const words = known
    .map(
      ({ key, day }) =>
        `${key.replaceAll('_', ' ')}: ${sayerIn(ENGLISH).say(sayDay(day, civilOf(day).year >= 1 ? 'day' : 'year'))}`,
    )
    .join('; ');
  return {
    timespan: { type: 'TimeSpan', identified_by: [{ type: 'Name', content: words }], ...Object.fromEntries(written) },
  };
}
