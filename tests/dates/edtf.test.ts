import { readFileSync } from 'node:fs';
import path from 'node:path';
import { parse } from 'edtf';
import { describe, expect, it } from 'vitest';
import { formatIsoDay } from '../../src/dates/day.ts';
import type { DateExpression, DateSettings } from '../../src/dates/expression.ts';
import { hullOfExpression } from '../../src/dates/expression.ts';
import { isDateProblem, readDate } from '../../src/dates/read-date.ts';
import { inEnglish } from '../spoken.ts';
import { PUBLISHED } from '../workspace.ts';

const NO_WIDTH: DateSettings = { circa: { year: 0, decade: 0, century: 0, month: 0, day: 0 }, sunsetDays: 1 };

const iso = (day: number): string =>
  day === Number.POSITIVE_INFINITY ? 'open' : day === Number.NEGATIVE_INFINITY ? 'open' : formatIsoDay(day);

function read(text: string, settings = NO_WIDTH): DateExpression {
  const result = readDate(text, 'gregorian', settings);
  if (isDateProblem(result)) throw new Error(inEnglish(result.message));
  return result;
}

function range(text: string, settings = NO_WIDTH): string {
  const { first, last } = hullOfExpression(read(text, settings));
  return `${iso(first)} ${iso(last)}`;
}

// Library of Congress, EDTF specification, 4 February 2019: every example string with its day range.
// Times of day are not used, so the day is the one written. Seasons have no days in the standard:
// 2001-21 is our own envelope. Y171010000S3: the specification's example contradicts its rule; the rule is taken.
const LOC: readonly (readonly [string, string])[] = [
  ['1985-04-12', '1985-04-12 1985-04-12'],
  ['1985-04', '1985-04-01 1985-04-30'],
  ['1985', '1985-01-01 1985-12-31'],
  ['1985-04-12T23:20:30', '1985-04-12 1985-04-12'],
  ['1985-04-12T23:20:30Z', '1985-04-12 1985-04-12'],
  ['1985-04-12T23:20:30-04', '1985-04-12 1985-04-12'],
  ['1985-04-12T23:20:30+04:30', '1985-04-12 1985-04-12'],
  ['1964/2008', '1964-01-01 2008-12-31'],
  ['2004-06/2006-08', '2004-06-01 2006-08-31'],
  ['2004-02-01/2005-02-08', '2004-02-01 2005-02-08'],
  ['2004-02-01/2005-02', '2004-02-01 2005-02-28'],
  ['2004-02-01/2005', '2004-02-01 2005-12-31'],
  ['2005/2006-02', '2005-01-01 2006-02-28'],
  ['Y170000002', '+170000002-01-01 +170000002-12-31'],
  ['Y-170000002', '-170000002-01-01 -170000002-12-31'],
  ['2001-21', '2001-03-01 2001-06-21'],
  ['1984?', '1984-01-01 1984-12-31'],
  ['2004-06~', '2004-06-01 2004-06-30'],
  ['2004-06-11%', '2004-06-11 2004-06-11'],
  ['201X', '2010-01-01 2019-12-31'],
  ['20XX', '2000-01-01 2099-12-31'],
  ['2004-XX', '2004-01-01 2004-12-31'],
  ['1985-04-XX', '1985-04-01 1985-04-30'],
  ['1985-XX-XX', '1985-01-01 1985-12-31'],
  ['1985-04-12/..', '1985-04-12 open'],
  ['1985-04/..', '1985-04-01 open'],
  ['1985/..', '1985-01-01 open'],
  ['../1985-04-12', 'open 1985-04-12'],
  ['../1985-04', 'open 1985-04-30'],
  ['../1985', 'open 1985-12-31'],
  ['1985-04-12/', '1985-04-12 open'],
  ['1985-04/', '1985-04-01 open'],
  ['1985/', '1985-01-01 open'],
  ['/1985-04-12', 'open 1985-04-12'],
  ['/1985-04', 'open 1985-04-30'],
  ['/1985', 'open 1985-12-31'],
  ['-1985', '-001985-01-01 -001985-12-31'],
  ['Y-17E7', '-170000000-01-01 -170000000-12-31'],
  ['1950S2', '1900-01-01 1999-12-31'],
  ['Y171010000S3', '+171000000-01-01 +171999999-12-31'],
  ['Y3388E2S3', '+338000-01-01 +338999-12-31'],
  ['2001-34', '2001-04-01 2001-06-30'],
  ['[1667,1668,1670..1672]', '1667-01-01 1672-12-31'],
  ['[..1760-12-03]', 'open 1760-12-03'],
  ['[1760-12..]', '1760-12-01 open'],
  ['[1760-01,1760-02,1760-12..]', '1760-01-01 open'],
  ['[1667,1760-12]', '1667-01-01 1760-12-31'],
  ['[..1984]', 'open 1984-12-31'],
  ['{1667,1668,1670..1672}', '1667-01-01 1672-12-31'],
  ['{1960,1961-12}', '1960-01-01 1961-12-31'],
  ['{..1984}', 'open 1984-12-31'],
  ['2004-06~-11', '2004-06-11 2004-06-11'],
  ['2004?-06-11', '2004-06-11 2004-06-11'],
  ['?2004-06-~11', '2004-06-11 2004-06-11'],
  ['2004-%06-11', '2004-06-11 2004-06-11'],
  ['156X-12-25', '1560-12-25 1569-12-25'],
  ['15XX-12-25', '1500-12-25 1599-12-25'],
  ['XXXX-12-XX', '0000-12-01 9999-12-31'],
  ['1XXX-XX', '1000-01-01 1999-12-31'],
  ['1XXX-12', '1000-12-01 1999-12-31'],
  ['1984-1X', '1984-10-01 1984-12-31'],
  ['2004-06-~01/2004-06-~20', '2004-06-01 2004-06-20'],
  ['2004-06-XX/2004-07-03', '2004-06-01 2004-07-03'],
];

describe('EDTF (Library of Congress, 4 February 2019)', () => {
  it('has all 64 example strings (one string stands twice in the specification)', () => {
    expect(LOC.length).toBe(63 + 0);
    expect(new Set(LOC.map(([text]) => text)).size).toBe(63);
  });

  it.each(LOC)('%s covers %s', (text, expected) => {
    expect(range(text)).toBe(expected);
  });
});

describe('qualifiers that the parser refuses and the standard allows', () => {
  it.each([
    ['[1926~,1940]', '1926-01-01 1940-12-31'],
    ['[1926?,1930]', '1926-01-01 1930-12-31'],
    ['[1925..1931-05]', '1925-01-01 1931-05-31'],
    ['1950S2~', '1900-01-01 1999-12-31'],
    ['193X~', '1930-01-01 1939-12-31'],
    ['1984?/2004~-06', '1984-01-01 2004-06-30'],
  ])('%s covers %s', (text, expected) => {
    expect(range(text)).toBe(expected);
  });

  it('each of {1930,1931} stays apart', () => {
    const { shape } = read('{1930,1931}');
    expect(shape.kind === 'each' && shape.members.length).toBe(2);
  });
});

describe('traps of dates (chronology, section 2)', () => {
  it.each([
    ['[1925..1931]', '1925-01-01 1931-12-31'],
    ['193X', '1930-01-01 1939-12-31'],
    ['1923-XX-12', '1923-01-12 1923-12-12'],
    ['-193X', '-001939-01-01 -001930-12-31'],
    ['1923-23', '1923-09-01 1923-12-22'],
    ['0000', '0000-01-01 0000-12-31'],
  ])('%s covers %s', (text, expected) => {
    expect(range(text)).toBe(expected);
  });

  it.each([
    '1923-02-29',
    '1900-02-29',
    '1923-04-31',
    '1923-13',
    '1923-4',
    '19230412',
    '+1923',
    '1923~?',
    '10000',
    '1923..1931',
    '1938/1921',
    '',
    '..',
    'spring 1926',
    '1926-24',
    '[]',
    '1926/1927/1928',
  ])('refuses "%s"', (text) => {
    const result = readDate(text, 'gregorian', NO_WIDTH);
    expect(isDateProblem(result)).toBe(true);
  });

  it('keeps apart what is apart and merges what touches', () => {
    const members = (text: string) => {
      const { shape } = read(text);
      return shape.kind === 'one' ? shape.members.length : -1;
    };
    expect(members('[1925,1931]')).toBe(2);
    expect(members('[1925,1926,1931]')).toBe(2);
    expect(members('[1925..1928,1927..1931]')).toBe(1);
  });

  it('widens "about" by the workspace, before anything else, and one end alone', () => {
    const wide: DateSettings = { circa: { year: 10, decade: 10, century: 25, month: 3, day: 30 }, sunsetDays: 1 };
    expect(range('1910~', wide)).toBe('1900-01-01 1920-12-31');
    expect(range('192X~', wide)).toBe('1910-01-01 1939-12-31');
    expect(range('18XX~', wide)).toBe('1775-01-01 1924-12-31');
    expect(range('1926-06~', wide)).toBe('1926-03-01 1926-09-30');
    expect(range('1926-02~', wide)).toBe('1925-11-01 1926-05-31');
    expect(range('1926-06-15~', wide)).toBe('1926-05-16 1926-07-15');
    expect(range('1921~/1938', wide)).toBe('1911-01-01 1938-12-31');
    expect(range('1910%', wide)).toBe('1900-01-01 1920-12-31');
    expect(read('1910%', wide).uncertain && read('1910%', wide).approximate).toBe(true);
    expect(isDateProblem(readDate('1910~', 'gregorian', { circa: {}, sunsetDays: 1 }))).toBe(true);
  });

  it('cuts the ends of an interval by each other', () => {
    const { shape } = read('192X/1925');
    expect(
      shape.kind === 'lasted' && [iso(shape.a.first), iso(shape.a.last), iso(shape.b.first), iso(shape.b.last)],
    ).toEqual(['1920-01-01', '1925-12-31', '1925-01-01', '1925-12-31']);
  });
});

interface Case {
  readonly input: string;
  readonly agreed: boolean;
  readonly valid: boolean | null;
}

/**
 * Where we differ from strings that all public suites agree on, with the reason. The parser that we
 * use differs in all of these too, but for those marked ours.
 */
const DEVIATIONS: Readonly<Record<string, string>> = {
  '2005-07-25T10:10:10Z/2006-01-01T10:10:10Z': 'times of day are read and not used',
  '2005-07-25T10:10:10Z/2006-01': 'times of day are read and not used',
  '2005-07-25/2006-01-01T10:10:10Z': 'times of day are read and not used',
  '2004-06-11%/2004-%06': 'the ends overlap, so there is a reading',
  '2004-06-11%/2004-06~': 'the ends overlap, so there is a reading',
  '0000-01-03/0000-01': 'the ends overlap, so there is a reading',
  '0000-02/0000': 'the ends overlap, so there is a reading',
  '2012-23/2012-22': 'our envelopes of summer and autumn overlap in September',
  '2012-21/2012-22': 'two seasons in order; the suites know no intervals of seasons',
  '2012-24/2012-21': 'a winter asks for its months first (our own rule)',
  '1984?/2004~-06': 'the parser refuses a qualifier inside one end of an interval',
  'Y-61000/-2000': 'a year with Y is let pass inside an interval',
  '{-1667,1668, 1670..1672}': 'a space after a comma is let pass',
  ' 2020': 'spaces around a date are let pass',
  '2020 ': 'spaces around a date are let pass',
  ' 1863-03-29': 'spaces around a date are let pass',
  '1863-03-29 ': 'spaces around a date are let pass',
  '1900-02-29': 'there was no such day; the suites check the shape only',
  '2019-02-29': 'there was no such day; the suites check the shape only',
};

it('years, months and days that are read without the parser are those that the parser accepts', () => {
  const years = ['0000', '0001', '0999', '1900', '1926', '9999'];
  const months = Array.from({ length: 12 }, (_, i) => String(i + 1).padStart(2, '0'));
  const days = Array.from({ length: 28 }, (_, i) => String(i + 1).padStart(2, '0'));
  const dates = years.flatMap((year) => [
    year,
    ...months.flatMap((month) => [`${year}-${month}`, ...days.map((day) => `${year}-${month}-${day}`)]),
  ]);
  for (const date of dates) for (const mark of ['', '?', '~', '%']) expect(() => parse(date + mark)).not.toThrow();
  expect(dates.length).toBe(6 * (1 + 12 * 29));
});

describe('public test suites of EDTF (tests/published/edtf-cases.json: edtf-validate, edtf-java, edtf.js)', () => {
  const cases = (JSON.parse(readFileSync(path.join(PUBLISHED, 'edtf-cases.json'), 'utf8')) as Case[]).filter(
    (one) => one.agreed,
  );

  it('agrees with the undisputed strings at least as well as the parser used', () => {
    const accepts = (text: string): boolean => {
      const result = readDate(text, 'gregorian', NO_WIDTH);
      // A winter is EDTF; that we ask for its months is our own rule.
      return !isDateProblem(result) || result.code === 'date-winter';
    };
    const parserAccepts = (text: string): boolean => {
      try {
        parse(text);
        return true;
      } catch {
        return false;
      }
    };
    const ours = cases.filter((one) => accepts(one.input) !== one.valid).map((one) => one.input);
    const parsers = cases.filter((one) => parserAccepts(one.input) !== one.valid).map((one) => one.input);
    console.log(
      `undisputed EDTF strings: ${cases.length}; we differ in ${ours.length}, the parser in ${parsers.length}: ${ours.map((text) => `${text} (${DEVIATIONS[text] ?? '?'})`).join('; ')}`,
    );
    expect(cases.length).toBeGreaterThan(500);
    expect(ours.length).toBeLessThanOrEqual(parsers.length);
    expect(ours.filter((text) => DEVIATIONS[text] === undefined)).toEqual([]);
  });
});
