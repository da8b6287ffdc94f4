import { describe, expect, it } from 'vitest';
import { draftEntries } from '../../src/custody/line-entries.ts';
import { readLine } from '../../src/custody/read-line.ts';
import { computeFiles, entries } from '../workspace.ts';

/*
 * Lines of our own. The conventions are those of the AAM Guide to Provenance Research (2001, from memory): a semicolon for a direct passage, a
 * period where it was not or is not known, dealers and houses in parentheses, life dates in square brackets.
 */

const NONE = { earliest: null, latest: null };
const only = (text: string) => readLine(text).holdings[0];

describe('reading one holding', () => {
  it.each([
    ['A. Rey, Nice, by 1912', { earliest: null, latest: 1912 }, { earliest: 1912, latest: null }],
    ['A. Rey, Nice, 1912', { earliest: null, latest: 1912 }, { earliest: 1912, latest: null }],
    ['A. Rey, Nice, in 1912', { earliest: null, latest: 1912 }, { earliest: 1912, latest: null }],
    ['A. Rey, Nice, until 1912', NONE, { earliest: 1912, latest: 1912 }],
    ['A. Rey, Nice, until at least 1912', NONE, { earliest: 1912, latest: null }],
    ['A. Rey, Nice, before 1912', { earliest: null, latest: 1911 }, NONE],
    ['A. Rey, Nice, 1912–1920', { earliest: 1912, latest: 1912 }, { earliest: 1920, latest: 1920 }],
    ['A. Rey, Nice, 3 May 1912 until June 1920', { earliest: 1912, latest: 1912 }, { earliest: 1920, latest: 1920 }],
    ['sold 3 May 1912 to A. Rey, Nice', { earliest: 1912, latest: 1912 }, NONE],
    ['purchased by A. Rey, Nice, May 3, 1912', { earliest: 1912, latest: 1912 }, NONE],
    ['A. Rey, Nice', NONE, NONE],
  ])('%s', (text, begins, ends) => {
    expect(only(text)).toMatchObject({ holder: 'A. Rey', place: 'Nice', begins, ends });
  });

  it.each([
    ['(A. Rey, Nice)', 'A. Rey', 'dealer', null],
    ['gift 1951 to Wexcombe Museum of Art', 'Wexcombe Museum of Art', null, 'gift'],
    ['by descent to his nephew Carl Rey, Nice', 'Carl Rey', null, 'descent'],
    ['estate of A. Rey', 'estate of A. Rey', 'estate', null],
    ['(Rey sale, Maison Doubs, Paris, 3 May 1912, lot 14)', 'Maison Doubs', 'auction', 'auction'],
    ['his sale, Maison Doubs, Paris, 3 May 1912, no. 14', 'Maison Doubs', 'auction', 'auction'],
    ['confiscated 1942 by the district office', 'the district office', null, 'confiscation'],
    ['traded 1930 to (B. Sand, Paris)', 'B. Sand', 'dealer', 'exchange'],
  ])('%s', (text, holder, capacity, acquired) => {
    expect(only(text)).toMatchObject({ holder, capacity, 'acquired-by': acquired });
  });

  it('agents, sharers, lots and notes have their own places', () => {
    const read = readLine(
      'A. Rey [1860-1931], Nice;[1] sold 1928 through (C. Lind, Bern) to (B. Sand, Paris) on joint account with (D. Ost, London); (sale, Maison Doubs, Paris, 3 May 1930, lot 14).\n\n[1] Label.\n[2] Not used.',
    );
    expect(read.holdings).toHaveLength(3);
    expect(read.holdings[0]).toMatchObject({ 'life-dates': '1860-1931', notes: [1], 'passage-to-next': 'direct' });
    expect(read.holdings[1]).toMatchObject({
      holder: 'B. Sand',
      through: [{ holder: 'C. Lind', place: 'Bern' }],
      'shared-with': [{ holder: 'D. Ost', place: 'London' }],
    });
    expect(read.holdings[2]).toMatchObject({ lot: '14', 'passage-to-next': null });
    expect(read['note-texts'].map((one) => one.text)).toEqual(['Label.', 'Not used.']);
  });

  it.each([
    'Mr. and Mrs. J. B. Rey, Nice',
    'Dr. A. Rey, St. Moritz',
    'Capt. A. Rey, Jr., Nice',
    'Rey & Co., Ltd., Nice',
    'Mme. Rey née Lind, Nice, 3 Sept. 1912',
  ])('no period of an abbreviation parts a holding: %s', (text) => {
    expect(readLine(`${text}. B. Sand, Paris.`).holdings).toHaveLength(2);
    expect(readLine(`${text}. B. Sand, Paris.`).holdings[0]?.['passage-to-next']).toBe('not direct');
  });

  it('doubts: about the holder, about a date, about a way', () => {
    expect(only('possibly A. Rey, Nice')).toMatchObject({ holder: 'A. Rey', hedge: 'possibly' });
    expect(only('probably purchased 1912 by A. Rey')).toMatchObject({
      hedge: 'probably',
      begins: { earliest: 1912, latest: 1912 },
    });
    expect(only('A. Rey, Nice, by 1912 until 1920?')).toMatchObject({
      hedge: null,
      ends: { earliest: 1912, latest: null },
    });
    expect(only('A. Rey, Nice, c. 1912')).toMatchObject({ 'begins-circa': true });
  });

  it('a gap that the line states parts its neighbours; stock numbers are no years; a death ends a holding', () => {
    const read = readLine(
      'A. Rey, Nice, until 1941; [gap]; B. Sand, Paris, by 1945; (Quill and Co., stock no. 1123), 1950.',
    );
    expect(read.holdings.map((one) => [one.holder, one['passage-to-next']])).toEqual([
      ['A. Rey', 'not direct'],
      ['B. Sand', 'direct'],
      ['Quill and Co.', null],
    ]);
    expect(read['kept-as-text'].map((one) => one.text)).toEqual(['[gap]']);
    expect(read.holdings[2]?.begins).toEqual({ earliest: null, latest: 1950 });
    expect(only('A. Rey, Nice, until his death in 1912')?.ends).toEqual({ earliest: 1912, latest: 1912 });
  });

  it('either house style is read: the marks exchanged, the latest first; holdings come in the order of time', () => {
    const earliest = readLine('A. Rey, by 1912. B. Sand, 1920; C. Lind, 1930.', {
      order: 'earliest first',
      marks: 'period is direct',
    });
    expect(earliest.holdings.map((one) => one['passage-to-next'])).toEqual(['direct', 'not direct', null]);
    const latest = readLine('C. Lind, 1930; B. Sand, 1920. A. Rey, by 1912.', {
      order: 'latest first',
      marks: 'semicolon is direct',
    });
    expect(latest.holdings.map((one) => [one.holder, one['passage-to-next']])).toEqual([
      ['A. Rey', 'not direct'],
      ['B. Sand', 'direct'],
      ['C. Lind', null],
    ]);
  });

  it('what tells no holding is kept as text, and spans are those of the text', () => {
    const text = 'A. Rey, Nice. The panel was described in a letter of that year. B. Sand, Paris.';
    const read = readLine(text);
    expect(read.holdings.map((one) => text.slice(...one.span))).toEqual(['A. Rey, Nice', 'B. Sand, Paris']);
    expect(read['kept-as-text'].map((one) => one.text)).toEqual(['The panel was described in a letter of that year']);
  });

  it.each([
    '',
    ' ',
    ';;;',
    '...',
    '(((',
    ']]][[[',
    '[1][2]',
    'Notes:',
    '\u202e\u0000',
    '["'.repeat(2000),
    'sold to '.repeat(500),
  ])('hostile text never stops it: %j', (text) => {
    expect(readLine(text).format).toBe('kerfmark-line/1');
  });
});

describe('drafts of a line', () => {
  it('are entries that read without an error, linked in order, and say the words they come from', () => {
    const text =
      'A. Rey: "the elder" [1860-1931], Nice, by 1912; sold 1920 to (B. Sand & Co., Paris). Private collection, until at least 1944; (sale, Maison Doubs, Paris, 3 May 1948, lot 14); purchased 1948 by Wexcombe Museum of Art.';
    let count = 0;
    const drafts = draftEntries(text, readLine(text), {
      object: 'OB-line',
      source: null,
      grade: 'possible',
      idFor: (type) => {
        count += 1;
        return `${type === 'party' ? 'PA' : 'HO'}-draft-${count}`;
      },
    });
    const base = entries({ 'OB-line': 'type: object\ntitle: A panel' });
    for (const one of drafts)
      base[`entries/${one.id}.md`] =
        `---\nid: ${one.id}\ntype: ${one.type}\n${one.keys.join('\n')}\n---\n\n${one.body}\n`;
    const { file, problems } = computeFiles(base);
    expect(problems.filter((one) => one.severity === 'error')).toEqual([]);
    const holdings = file.catalogue.ofType('holding');
    expect(holdings).toHaveLength(5);
    expect(holdings.filter((one) => one.keys.from !== undefined)).toHaveLength(4);
    expect(JSON.stringify(holdings.map((one) => one.argument))).toContain('sold 1920 to (B. Sand & Co., Paris)');
  });
});
