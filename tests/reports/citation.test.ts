import { describe, expect, it } from 'vitest';
import {
  bibliographyEntry,
  type CitedSource,
  collectionEntry,
  firstMention,
  laterMention,
} from '../../src/reports/citation.ts';
import { type Inline, plainWords } from '../../src/reports/inline.ts';
import { english } from '../spoken.ts';

/*
 * The logic of The Chicago Manual of Style, 17th ed., 14.221 to 14.231 (manuscript collections: the item first, the largest
 * body last; no quotation marks but for titles; day, month, year; a short form at later mentions), 14.100 to 14.140 (books),
 * 14.168 to 14.178 (articles). Photographs, labels and backs of objects: the object as the archive (common practice, from
 * memory). All persons, firms and places are invented.
 */

const NONE: CitedSource = {
  kind: 'other',
  title: '',
  authors: [],
  bodies: [],
  recipient: null,
  date: null,
  placeWritten: null,
  container: null,
  publisher: null,
  publisherPlace: null,
  volume: null,
  page: null,
  lot: null,
  url: null,
  on: null,
  seen: null,
  box: null,
  folder: null,
  item: null,
  referenceCode: null,
  series: null,
  collection: null,
  repository: null,
  repositoryPlace: null,
  doubted: null,
};

const PAPERS = { collection: 'Quill Gallery records', repository: 'City Archive', repositoryPlace: 'Port Sable' };

const marked = (runs: readonly Inline[]): string =>
  runs.map((one) => (typeof one === 'string' ? one : `*${one.italic}*`)).join('');

const ROWS: readonly (readonly [
  what: string,
  source: Partial<CitedSource>,
  locator: string,
  first: string,
  later: string,
])[] = [
  [
    'letter',
    {
      kind: 'letter',
      title: 'Letter',
      authors: ['Ada Quill'],
      recipient: 'Bram Loft',
      date: '4 March 1926',
      box: '12',
      folder: '3',
      ...PAPERS,
    },
    '',
    'Ada Quill to Bram Loft, 4 March 1926, box 12, folder 3, Quill Gallery records, City Archive, Port Sable',
    'Quill to Loft, 4 March 1926, Quill Gallery records',
  ],
  [
    'stock book',
    { kind: 'ledger', title: 'Stock book, 1920-1938', referenceCode: 'QG 4', ...PAPERS },
    'p. 112',
    'Stock book, 1920-1938, p. 112, QG 4, Quill Gallery records, City Archive, Port Sable',
    'Stock book, p. 112, Quill Gallery records',
  ],
  [
    'invoice',
    {
      kind: 'invoice',
      title: 'Invoice',
      authors: ['Ada Quill'],
      recipient: 'Mira Stone',
      date: '2 May 1927',
      box: '1',
      ...PAPERS,
    },
    'no. 88',
    'Ada Quill to Mira Stone, invoice, no. 88, 2 May 1927, box 1, Quill Gallery records, City Archive, Port Sable',
    'Quill to Stone, no. 88, 2 May 1927, Quill Gallery records',
  ],
  [
    'inventory',
    {
      kind: 'inventory',
      title: 'Inventory of the chapel, 1914',
      authors: ['the parish clerk'],
      date: '12 July 1914 (julian)',
      referenceCode: 'Inv. 3',
      repository: 'Diocesan Archive, Orle',
    },
    'fol. 11v',
    'the parish clerk, Inventory of the chapel, fol. 11v, 12 July 1914 (julian), Inv. 3, Diocesan Archive, Orle',
    'Inventory of the chapel, fol. 11v, Diocesan Archive',
  ],
  [
    'photograph',
    {
      kind: 'photograph',
      title: 'Sections leaning in a yard',
      authors: ['Pia Rell'],
      date: 'about 1908',
      item: 'no. 88',
      series: 'Rell prints',
      repository: 'School of Orle',
    },
    '',
    'Pia Rell, Sections leaning in a yard, about 1908, no. 88, Rell prints, School of Orle',
    'Sections leaning in a yard, about 1908, School of Orle',
  ],
  [
    'label on an object',
    {
      kind: 'label',
      title: 'Trade label',
      on: 'Panel B, 1951.20.2',
      seen: '4 May 2025',
      repository: 'Wexcombe Museum of Art',
    },
    '',
    'Trade label, on Panel B, 1951.20.2, seen 4 May 2025, Wexcombe Museum of Art',
    'Trade label, Wexcombe Museum of Art',
  ],
  [
    'interview',
    {
      kind: 'interview',
      title: 'Conversation on the earthquake',
      authors: ['a woman of the island'],
      date: 'August 1974',
      item: 'tape 12',
      repository: 'Island Folklore Collection',
    },
    '4:10',
    'a woman of the island, interview: Conversation on the earthquake, 4:10, August 1974, tape 12, Island Folklore Collection',
    'Conversation on the earthquake, 4:10, Island Folklore Collection',
  ],
  [
    'auction lot',
    {
      kind: 'catalogue',
      title: 'Peintures murales',
      authors: ['Maison Aubry'],
      bodies: ['Maison Aubry'],
      publisher: 'Maison Aubry',
      publisherPlace: 'Vellin',
      date: '3 June 1926',
      lot: '27',
    },
    '',
    'Maison Aubry, *Peintures murales* (Vellin: Maison Aubry, 1926), lot 27',
    'Maison Aubry, *Peintures murales*, lot 27',
  ],
  [
    'newspaper',
    { kind: 'newspaper', title: 'The earthquake', container: 'Island Voice', date: '26 April 1933' },
    'p. 2',
    '“The earthquake”, *Island Voice*, 26 April 1933, p. 2',
    '*The earthquake*, p. 2',
  ],
  [
    'book',
    {
      kind: 'book',
      title: 'Island Refectories',
      authors: ['Tom Marland'],
      publisher: 'Aldwick Press',
      publisherPlace: 'London',
      date: '1961',
    },
    '88',
    'Tom Marland, *Island Refectories* (London: Aldwick Press, 1961), 88',
    'Marland, *Island Refectories*, 88',
  ],
  [
    'article',
    {
      kind: 'article',
      title: 'Cut walls',
      authors: ['Una Frey', 'Tom Marland'],
      container: 'Journal of Walls',
      volume: '12',
      page: '3-30',
      date: '1971',
    },
    '14',
    'Una Frey and Tom Marland, “Cut walls”, *Journal of Walls* 12: 3-30, 1971, 14',
    'Frey and Marland, “Cut walls”, 14',
  ],
  [
    'map',
    {
      kind: 'map',
      title: 'Plan of the harbour',
      date: '1890',
      referenceCode: 'M 17',
      repository: 'Port Office, Orle',
      url: 'https://example.org/m17',
    },
    '',
    'Plan of the harbour, 1890, M 17, Port Office, Orle, https://example.org/m17',
    'Plan of the harbour, Port Office',
  ],
  [
    'customs register',
    {
      kind: 'customs paper',
      title: 'Register of arrivals, November 1933',
      date: '9 November 1933',
      referenceCode: '1933/11',
      repository: 'Port Archive, Vellin',
    },
    'no. 2211',
    'Register of arrivals, no. 2211, 9 November 1933, 1933/11, Port Archive, Vellin',
    'Register of arrivals, no. 2211, Port Archive',
  ],
];

describe('citations: first and later mention', () => {
  it('there are at least twelve archival and published kinds', () => {
    expect(new Set(ROWS.map(([, { kind }]) => kind)).size).toBeGreaterThanOrEqual(12);
  });

  it.each(ROWS)('%s', (_, source, locator, first, later) => {
    expect(marked(firstMention(english, { ...NONE, ...source }, locator))).toBe(first);
    expect(marked(laterMention(english, { ...NONE, ...source }, locator))).toBe(later);
  });

  it('a source that is questioned or false says so at every mention', () => {
    const [, source] = ROWS[1] as (typeof ROWS)[number];
    const doubted = { ...NONE, ...source, doubted: 'questioned' };
    expect(plainWords(firstMention(english, doubted, 'p. 1'))).toMatch(/ \(questioned\)$/);
    expect(plainWords(laterMention(english, doubted, 'p. 1'))).toMatch(/ \(questioned\)$/);
  });

  it('a collection that is cited again is announced', () => {
    const [, source] = ROWS[0] as (typeof ROWS)[number];
    expect(plainWords(firstMention(english, { ...NONE, ...source }, '', 'Quill Gallery records'))).toMatch(
      / Port Sable \(hereafter Quill Gallery records\)$/,
    );
  });

  it('the bibliography begins with the collection, and with the surname of an author', () => {
    const row = (n: number): CitedSource => ({ ...NONE, ...(ROWS[n] as (typeof ROWS)[number])[1] });
    expect(collectionEntry(english, row(0))).toBe('Quill Gallery records. City Archive, Port Sable.');
    expect(collectionEntry(english, row(3))).toBe('Diocesan Archive. Orle.');
    expect(marked(bibliographyEntry(english, row(9)))).toBe(
      'Marland, Tom. *Island Refectories*. London: Aldwick Press, 1961.',
    );
    expect(marked(bibliographyEntry(english, row(10)))).toBe(
      'Frey, Una, Tom Marland. “Cut walls”. *Journal of Walls* 12: 3-30. 1971.',
    );
  });
});
