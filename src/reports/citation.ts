import type { Sayer } from '../language/sayer.ts';
import type { Keys } from '../model/entry.ts';
import { type Inline, joined, plainWords } from './inline.ts';

/** What a citation is made from; names and dates are in words already. */
export interface CitedSource {
  readonly kind: Keys<'source'>['kind'];
  readonly title: string;
  /** Names as they are written: "Ada Thorn", "the diocesan clerk". */
  readonly authors: readonly string[];
  /** Those of the authors that are no persons: firms, houses, offices. */
  readonly bodies: readonly string[];
  readonly recipient: string | null;
  /** "4 March 1926", "about 1908"; null where the source bears no date. */
  readonly date: string | null;
  readonly placeWritten: string | null;
  readonly container: string | null;
  readonly publisher: string | null;
  readonly publisherPlace: string | null;
  readonly volume: string | null;
  readonly page: string | null;
  readonly lot: string | null;
  readonly url: string | null;
  /** Of a label: the object that it is on, and its number. */
  readonly on: string | null;
  readonly seen: string | null;
  readonly box: string | null;
  readonly folder: string | null;
  readonly item: string | null;
  readonly referenceCode: string | null;
  readonly series: string | null;
  readonly collection: string | null;
  readonly repository: string | null;
  readonly repositoryPlace: string | null;
  /** "questioned" or "shown false"; null where nobody doubts it. */
  readonly doubted: string | null;
}

/** Kinds that are published; all others lie in an archive. */
const PUBLISHED: readonly CitedSource['kind'][] = ['book', 'article', 'newspaper', 'catalogue', 'law'];

/** True for what is published; a catalogue or newspaper kept in an archive is published all the same. */
export function isPublished({ kind }: CitedSource): boolean {
  return PUBLISHED.includes(kind);
}

/**
 * A note for the first mention, in the logic of *The Chicago Manual of Style* (17th ed., 14.221 to 14.231): the item first, the
 * largest body last; no quotation marks but for titles; day, month, year. `hereafter` announces the short form of a
 * collection that is cited again.
 *
 * @param locator page, folio or number; '' for none
 */
export function firstMention(
  sayer: Sayer,
  source: CitedSource,
  locator = '',
  hereafter: string | null = null,
): readonly Inline[] {
  const { words } = sayer;
  if (isPublished(source)) return [...joined([...publication(sayer, source), [locator]]), doubtOf(source)];
  const announced = hereafter === null ? '' : words(' (hereafter {0})', hereafter);
  return [
    ...joined([item(sayer, source), [locator], dateOf(source), ...archive(sayer, source)]),
    announced,
    doubtOf(source),
  ];
}

/** A note for a later mention: who and what in short, the locator, the collection. */
export function laterMention(sayer: Sayer, source: CitedSource, locator = ''): readonly Inline[] {
  const { words, list } = sayer;
  if (isPublished(source)) {
    const short = shortTitle(source.title);
    const title: readonly Inline[] = source.kind === 'article' ? [`“${short}”`] : [{ italic: short }];
    const parts = joined([
      [list(source.authors.map((one) => shortName(source, one)))],
      title,
      source.lot ? [words('lot {0}', source.lot)] : [],
      [locator],
    ]);
    return [...parts, doubtOf(source)];
  }
  const short = isLetter(source)
    ? words('{0} to {1}', list(source.authors.map((one) => shortName(source, one))), surname(source.recipient ?? ''))
    : shortTitle(withoutDate(source));
  const date = isLetter(source) || source.kind === 'photograph' ? dateOf(source) : [];
  return [...joined([[short], [locator], date, [collectionName(source) ?? '']]), doubtOf(source)];
}

/** The collection by which archival sources are grouped and announced; null where none is named. */
export function collectionName({ collection, repository }: CitedSource): string | null {
  return collection ?? repository?.split(',')[0] ?? null;
}

/** A source that is questioned or false says so wherever it is cited. */
function doubtOf({ doubted }: CitedSource): string {
  return doubted === null ? '' : ` (${doubted})`;
}

/** Where a collection lies: "Papers of the firm. Town archive, Marseille". */
export function collectionEntry(sayer: Sayer, source: CitedSource): string {
  const { words } = sayer;
  const home = [source.collection === null ? null : source.repository, source.repositoryPlace]
    .filter(Boolean)
    .join(', ');
  const rest = source.collection === null ? (source.repository?.split(',').slice(1).join(',').trim() ?? '') : home;
  const place = source.collection === null && source.repositoryPlace ? source.repositoryPlace : '';
  const tail = [rest, place].filter(Boolean).join(', ');
  return [collectionName(source) ?? words('Without repository'), tail].filter(Boolean).join('. ').concat('.');
}

/** A published work as the bibliography has it: surname first, full stops between the parts. */
export function bibliographyEntry(sayer: Sayer, source: CitedSource): readonly Inline[] {
  const [first, ...others] = source.authors;
  const authors =
    first === undefined ? '' : [source.bodies.includes(first) ? first : inverted(first), ...others].join(', ');
  const [title, ...rest] = titleParts(sayer, source);
  const parts: readonly (readonly Inline[])[] = [[authors], title ?? [], ...rest, [imprint(source)]];
  const runs = joined(parts, '. ');
  // A name that ends in an initial brings its own full stop.
  const dotted = runs.map((one) => (typeof one === 'string' ? one.replace(/\.\. /g, '. ') : one));
  const merged = dotted.flatMap((one, i) =>
    one === '. ' && String(dotted[i - 1] ?? '').endsWith('.') ? [' '] : [one],
  );
  return plainWords(merged).endsWith('.') ? merged : [...merged, '.'];
}

function isLetter({ kind, authors, recipient }: CitedSource): boolean {
  return (kind === 'letter' || kind === 'invoice') && authors.length > 0 && recipient !== null;
}

/** The item itself: sender to recipient; who was heard; what a label is on; else author and description. */
function item(sayer: Sayer, source: CitedSource): readonly Inline[] {
  const { words, list } = sayer;
  const authors = list(source.authors);
  const placed = source.placeWritten ? `, ${source.placeWritten}` : '';
  if (isLetter(source)) {
    const kind = source.kind === 'invoice' ? words(', invoice') : '';
    return [words('{0} to {1}{2}{3}', authors, source.recipient, kind, placed)];
  }
  const title = withoutDate(source);
  switch (source.kind) {
    case 'interview':
      return [authors === '' ? title : words('{0}, interview: {1}', authors, title)];
    case 'label':
      return joined([
        [title],
        [source.on ? words('on {0}', source.on) : ''],
        [source.seen ? words('seen {0}', source.seen) : ''],
      ]);
    case 'photograph':
      return joined([[authors], [title]]);
    default:
      return [authors === '' || title.includes(authors) ? `${title}${placed}` : `${authors}, ${title}${placed}`];
  }
}

/** Parts of a published work up to its imprint: authors stand before them. */
function titleParts(
  sayer: Sayer,
  { kind, title, container, volume, page, lot }: CitedSource,
): readonly (readonly Inline[])[] {
  const { words } = sayer;
  if (kind === 'article')
    return [
      [`“${title}”`],
      container === null ? [] : [{ italic: container }, volume ? ` ${volume}` : '', page ? `: ${page}` : ''],
    ];
  if (kind === 'newspaper') return [container ? [`“${title}”`] : [title], container ? [{ italic: container }] : []];
  return [[{ italic: title }], [volume ? words('vol. {0}', volume) : ''], [lot ? words('lot {0}', lot) : '']];
}

function publication(sayer: Sayer, source: CitedSource): readonly (readonly Inline[])[] {
  const { list } = sayer;
  const authors = list(source.authors);
  const shown = source.title.includes(authors) ? '' : authors;
  const undated: CitedSource = { ...source, title: withoutDate(source) };
  const [title = [], ...rest] = titleParts(sayer, undated);
  if (source.kind === 'article' || source.kind === 'newspaper') return [[shown], title, ...rest, dateOf(source)];
  const facts = imprint(source);
  const [volume = [], lot = []] = rest;
  return [[shown], [...title, facts === '' ? '' : ` (${facts})`], volume, lot];
}

/** Place: publisher, year. */
function imprint({ kind, publisher, publisherPlace, date }: CitedSource): string {
  if (kind === 'article' || kind === 'newspaper') return date ?? '';
  const year = /\d{4}/.exec(date ?? '')?.[0] ?? date ?? '';
  const house = [publisherPlace, publisher].filter(Boolean).join(': ');
  return [house, year].filter(Boolean).join(', ');
}

function dateOf({ date }: CitedSource): readonly Inline[] {
  return date === null ? [] : [date];
}

/** Box, folder, item or reference code; series, collection, repository, town, address. */
function archive(sayer: Sayer, source: CitedSource): readonly (readonly Inline[])[] {
  const { words } = sayer;
  const inBox = [
    source.box === null ? '' : words('box {0}', source.box),
    source.folder === null ? '' : words('folder {0}', source.folder),
    source.item ?? '',
  ].filter(Boolean);
  const where = inBox.length > 0 ? inBox : [source.referenceCode ?? ''];
  return [
    ...where.map((one) => [one]),
    [source.series ?? ''],
    [source.collection ?? ''],
    [source.repository ?? ''],
    [source.repositoryPlace ?? ''],
    [source.url ?? ''],
  ];
}

/** A title without the date that stands beside it: "Report of the ephor, 1929" with 12 September 1929. */
function withoutDate({ title, date }: CitedSource): string {
  const year = /\d{4}/.exec(date ?? '')?.[0];
  if (year === undefined) return title;
  return title.replace(new RegExp(`,\\s+(?:\\d{1,2}\\s+)?(?:\\p{L}+\\s+)?${year}$`, 'u'), '');
}

/** A title up to its first comma, colon or bracket, and no more than eight words. */
function shortTitle(title: string): string {
  const head = title.split(/[,:;(]/)[0] as string;
  const words = head.trim().split(/\s+/).slice(0, 8);
  // Never cut behind a word that leans on the next.
  while (words.length > 2 && /^(?:of|the|on|in|and|at|for|to|a|an|de|la|le|du|des|von|der)$/i.test(words.at(-1) ?? ''))
    words.pop();
  return words.join(' ');
}

/** How an author is named later: a person by the surname, a body by its whole name. */
function shortName({ bodies }: CitedSource, name: string): string {
  return bodies.includes(name) ? name : surname(name);
}

/** The last name of a person; a body or an office keeps its whole name. */
function surname(name: string): string {
  const words = name.trim().split(/\s+/);
  const isPerson =
    words.length > 1 && words.length < 5 && words.every((one) => /^\p{Lu}/u.test(one)) && !/[,&]/.test(name);
  return isPerson ? (words.at(-1) as string) : name;
}

function inverted(name: string): string {
  const last = surname(name);
  return last === name ? name : `${last}, ${name.slice(0, -last.length).trim()}`;
}
