import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { fromWords } from '../../src/dates/from-words.ts';
import { isDateProblem, readDate } from '../../src/dates/read-date.ts';
import { PUBLISHED } from '../workspace.ts';

describe('dates as people write them', () => {
  it.each([
    ['spring 1926', '1926-21', null],
    ['12 April 1926', '1926-04-12', null],
    ['April 12, 1926', '1926-04-12', null],
    ['April 1926', '1926-04', null],
    ['1926', '1926', null],
    ['about 1926', '1926~', null],
    ['c. 1926', '1926~', null],
    ['probably 1926', '1926?', null],
    ['1920s', '192X', null],
    ['19th century', '18XX', null],
    ['before 1924', '1923', 'by'],
    ['after 1923', '1924', 'not-before'],
    ['by 1951', '1951', 'by'],
    ['between 1925 and 1931', '[1925..1931]', null],
    ['1925 or 1931', '[1925,1931]', null],
    ['from 1921 to 1938', '1921/1938', null],
    ['1921–1938', '1921/1938', null],
  ])('%s is %s', (words, edtf, sense) => {
    expect(fromWords(words)).toEqual({ edtf, sense });
    expect(isDateProblem(readDate(edtf, 'gregorian', { circa: { year: 10 }, sunsetDays: 1 }))).toBe(false);
  });

  it.each(['', 'some time ago', 'winter 1926', 'the year of the flood', '31 Foo 1926'])(
    '"%s" is not guessed at',
    (words) => {
      expect(fromWords(words)).toBeNull();
    },
  );

  it('public phrases (tests/published/natural-dates.json: python-edtf, MIT): agreement is printed', () => {
    const { pairs } = JSON.parse(readFileSync(path.join(PUBLISHED, 'natural-dates.json'), 'utf8')) as {
      pairs: { text: string; edtf: string | null }[];
    };
    let read = 0;
    let same = 0;
    for (const one of pairs) {
      const result = fromWords(one.text);
      if (!result) continue;
      read += 1;
      if (result.edtf === one.edtf) same += 1;
      expect(
        isDateProblem(
          readDate(result.edtf, 'gregorian', {
            circa: { year: 10, decade: 10, century: 25, month: 3, day: 30 },
            sunsetDays: 1,
          }),
        ),
        JSON.stringify(one),
      ).toBe(false);
    }
    console.log(
      `natural phrases: ${pairs.length}; read ${read}; same EDTF ${same} (the list partly follows an older draft and its own seasons)`,
    );
    expect(read).toBeGreaterThan(20);
  });
});
