import { parse } from '@retorquere/bibtex-parser';
import type { CaseFile } from '../findings/case-file.ts';
import { titleOf } from '../model/catalogue.ts';
import { type Entry, isOfType, type Keys } from '../model/entry.ts';

/** An item of CSL-JSON (csl-data 1.0), as far as sources have places for it. */
export interface CslItem {
  readonly id: string;
  readonly type: string;
  readonly title?: string;
  readonly author?: readonly CslName[];
  readonly recipient?: readonly CslName[];
  readonly issued?: { readonly 'date-parts'?: readonly (readonly (number | string)[])[]; readonly literal?: string };
  readonly [key: string]: unknown;
}

interface CslName {
  readonly family?: string;
  readonly given?: string;
  readonly literal?: string;
}

/** Kinds of source and types of CSL; the first of a kind is the one that is written. */
const TYPES: readonly (readonly [kind: Keys<'source'>['kind'], csl: string])[] = [
  ['book', 'book'],
  ['article', 'article-journal'],
  ['article', 'article-magazine'],
  ['article', 'chapter'],
  ['newspaper', 'article-newspaper'],
  ['letter', 'personal_communication'],
  ['photograph', 'graphic'],
  ['map', 'map'],
  ['interview', 'interview'],
  ['report', 'report'],
  ['law', 'legislation'],
  ['catalogue', 'pamphlet'],
  ['other', 'manuscript'],
];

/** Keys that are the same thing under two names. */
const SAME: readonly (readonly [key: keyof Keys<'source'>, csl: string])[] = [
  ['container-title', 'container-title'],
  ['publisher', 'publisher'],
  ['publisher-place', 'publisher-place'],
  ['volume', 'volume'],
  ['page', 'page'],
  ['url', 'URL'],
  ['language', 'language'],
  ['repository', 'archive'],
  ['repository-place', 'archive-place'],
  ['collection', 'archive_collection'],
  ['reference-code', 'archive_location'],
];

/** A source as keys of an entry, not yet given an id. */
export type SourceKeys = Readonly<Record<string, string | readonly string[]>>;

/** Reads an item of CSL-JSON into the keys of a source; null where it has no title. */
export function sourceFromCsl(item: CslItem): SourceKeys | null {
  if (typeof item.title !== 'string' || item.title.trim() === '') return null;
  const kind = TYPES.find(([, csl]) => csl === item.type)?.[0] ?? 'other';
  const date = dateOf(item.issued);
  const authors = (item.author ?? []).map(wordsOfName).filter(Boolean);
  const recipient = (item.recipient ?? []).map(wordsOfName).join(' and ');
  const same = SAME.flatMap(([key, csl]) => {
    const value = item[csl];
    return typeof value === 'string' || typeof value === 'number' ? [[key, String(value)] as const] : [];
  });
  return {
    kind,
    title: item.title.replace(/\s+/g, ' ').trim(),
    ...(authors.length > 0 ? { author: authors } : {}),
    ...(recipient === '' ? {} : { recipient }),
    ...(date === null ? {} : { 'date-on-it': date }),
    ...Object.fromEntries(same),
  };
}

/** Sources as CSL-JSON; names stay as they are written, dates as EDTF where they are no plain days. */
export function cslOf(file: CaseFile): readonly CslItem[] {
  return file.catalogue.ofType('source').map(({ id, keys, ...entry }): CslItem => {
    const name = (one: string): CslName => {
      const party = file.catalogue.get(one);
      const words = party ? titleOf(party, file.settings.languages) : one;
      return party && isOfType(party, 'party') && party.keys.is !== 'person' ? { literal: words } : nameOfWords(words);
    };
    const same = SAME.flatMap(([key, csl]) => (keys[key] === undefined ? [] : [[csl, String(keys[key])] as const]));
    return {
      id,
      type: TYPES.find(([kind]) => kind === keys.kind)?.[1] ?? 'manuscript',
      title: titleOf({ ...entry, id, keys } as Entry, file.settings.languages),
      ...(keys.author ? { author: keys.author.map(name) } : {}),
      ...(keys.recipient ? { recipient: [{ literal: keys.recipient }] } : {}),
      ...(keys['date-on-it'] ? { issued: issuedOf(keys['date-on-it']) } : {}),
      genre: keys.kind,
      ...Object.fromEntries(same),
    };
  });
}

/** Reads BibTeX into items of CSL-JSON; what cannot be parsed is told with its words. */
export function cslFromBibtex(text: string): {
  readonly items: readonly CslItem[];
  readonly problems: readonly string[];
} {
  const library = parse(text, { sentenceCase: false });
  const types: Readonly<Record<string, string>> = {
    article: 'article-journal',
    book: 'book',
    incollection: 'chapter',
    inbook: 'chapter',
    techreport: 'report',
    unpublished: 'manuscript',
    booklet: 'pamphlet',
  };
  const items = library.entries.map(({ key, type, fields }): CslItem => {
    const all = fields as unknown as Readonly<Record<string, unknown>>;
    const field = (name: string): string | undefined => {
      const value = all[name];
      return value === undefined ? undefined : Array.isArray(value) ? value.join(', ') : String(value);
    };
    const names = (all.author ?? []) as readonly { lastName?: string; firstName?: string; name?: string }[];
    const pairs: readonly (readonly [string, string | undefined])[] = [
      ['container-title', field('journal') ?? field('journaltitle') ?? field('booktitle')],
      ['publisher', field('publisher')],
      ['publisher-place', field('address') ?? field('location')],
      ['volume', field('volume')],
      ['page', field('pages')?.replace('–', '-')],
      ['URL', field('url')],
      ['language', field('langid') ?? field('language')],
    ];
    const date = field('date') ?? field('year');
    return {
      id: key,
      type: types[type] ?? 'manuscript',
      title: field('title') ?? '',
      author: names.map((one) =>
        one.lastName
          ? { family: one.lastName, ...(one.firstName ? { given: one.firstName } : {}) }
          : { literal: one.name ?? '' },
      ),
      ...(date ? { issued: issuedOf(date) } : {}),
      ...Object.fromEntries(pairs.filter(([, value]) => value !== undefined)),
    };
  });
  return { items, problems: library.errors.map((one) => one.error) };
}

/** CSL-JSON items as BibTeX, for published works only; braces keep capitals. */
export function bibtexOf(items: readonly CslItem[]): string {
  const types: Readonly<Record<string, string>> = {
    book: 'book',
    'article-journal': 'article',
    report: 'techreport',
    pamphlet: 'booklet',
  };
  const plain = (text: unknown): string =>
    String(text)
      .replace(/[\\{}]/g, ' ')
      .replace(/([%&#$_])/g, '\\$1');
  return items
    .filter((one) => one.type in types)
    .map((item) => {
      const year = item.issued?.['date-parts']?.[0]?.[0];
      const fields: readonly (readonly [string, unknown])[] = [
        [
          'author',
          (item.author ?? [])
            .map((one) => (one.family ? `${one.family}, ${one.given ?? ''}` : `{${one.literal}}`))
            .join(' and '),
        ],
        ['title', `{${plain(item.title)}}`],
        [item.type === 'article-journal' ? 'journal' : 'note', item['container-title']],
        ['publisher', item.publisher],
        ['address', item['publisher-place']],
        ['volume', item.volume],
        ['pages', item.page],
        ['year', year],
        ['url', item.URL],
      ];
      const lines = fields.flatMap(([name, value]) =>
        value === undefined || value === ''
          ? []
          : [`  ${name} = {${name === 'author' || name === 'title' ? value : plain(value)}}`],
      );
      return `@${types[item.type]}{${item.id},\n${lines.join(',\n')}\n}\n`;
    })
    .join('\n');
}

function wordsOfName({ family, given, literal }: CslName): string {
  return literal ?? [given, family].filter(Boolean).join(' ');
}

/** Given names and family name of words in the usual order; one word, or words with small letters, stay whole. */
function nameOfWords(words: string): CslName {
  const parts = words.split(' ');
  const isPerson =
    parts.length > 1 && parts.length < 5 && parts.every((one) => /^\p{Lu}/u.test(one)) && !/[,&]/.test(words);
  return isPerson ? { family: parts.at(-1) as string, given: parts.slice(0, -1).join(' ') } : { literal: words };
}

function dateOf(issued: CslItem['issued']): string | null {
  const parts = issued?.['date-parts']?.[0];
  if (!parts || parts.length === 0) return issued?.literal ?? null;
  const [year, month, day] = parts.map(Number);
  if (year === undefined || !Number.isFinite(year)) return null;
  return [
    String(year).padStart(4, '0'),
    ...[month, day].filter((one) => one !== undefined).map((one) => String(one).padStart(2, '0')),
  ].join('-');
}

function issuedOf(edtf: string): NonNullable<CslItem['issued']> {
  return /^\d{4}(-\d{2}){0,2}$/.test(edtf) ? { 'date-parts': [edtf.split('-').map(Number)] } : { literal: edtf };
}
