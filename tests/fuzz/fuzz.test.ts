import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { readLine } from '../../src/custody/read-line.ts';
import { CALENDARS } from '../../src/dates/calendars/calendar.ts';
import { readDate } from '../../src/dates/read-date.ts';
import { inEnglish } from '../spoken.ts';
import { computeFiles, filesOf, ROOT } from '../workspace.ts';
import { mutate } from './mutate.ts';

/** Mutations in the suite; `FUZZ=10000 npx vitest run tests/fuzz` tries as many as one likes. */
const TIMES = Number(process.env.FUZZ ?? 700);

/** Seeds that once found something; they are tried every time. */
const FOUND: readonly number[] = [
  // Keys that begin with an empty line: the search for the line of a slip never came to its end.
  5363,
];

const base = filesOf(path.join(ROOT, 'tests/messages/base'));
const entries = readdirSync(path.join(ROOT, 'entries'), { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.md') && name !== 'workspace.md')
  .sort()
  .map((name) => readFileSync(path.join(ROOT, 'entries', name), 'utf8'));

/** What is wrong with what was said of a mutated entry; empty where nothing is. */
function faultsOf(text: string): readonly string[] {
  const file = 'entries/mutated.md';
  const { problems } = computeFiles({ ...base, [file]: text });
  const lines = text.split(/\r\n|\r|\n/).length;
  return problems.flatMap(({ code, place, message, mend }) => {
    if ([message, mend].some((one) => inEnglish(one).trim() === '')) return [`${code}: says nothing`];
    if (place.line < 1 || place.column < 1) return [`${code}: stands nowhere`];
    if (place.file === file && place.line > lines + 1) return [`${code}: line ${place.line} of ${lines}`];
    return [];
  });
}

describe('mutated entries', () => {
  const seeds = [...FOUND, ...Array.from({ length: TIMES }, (_, i) => i + 1)];

  it(`${seeds.length} of them: no crash, every message has words and a place`, () => {
    const wrong: string[] = [];
    for (const seed of seeds) {
      const text = mutate(entries[seed % entries.length] as string, seed);
      try {
        wrong.push(...faultsOf(text).map((fault) => `seed ${seed}: ${fault}`));
      } catch (error) {
        wrong.push(`seed ${seed}: ${(error as Error).stack?.slice(0, 400)}`);
      }
    }
    expect(wrong.slice(0, 10)).toEqual([]);
  }, 3_600_000);
});

it('mutated dates are read or refused, in every calendar', () => {
  const dates = [
    '1931',
    '1931~',
    '1931-05',
    '[1925..1931]',
    '1921/1926',
    '{1925,1931}',
    '1931-05-12?',
    '193X',
    '../1931',
    'Y-20000',
    '1931-21',
  ];
  const settings = { circa: { year: 5, decade: 5, century: 25, month: 1, day: 10 }, sunsetDays: 1 };
  for (let seed = 1; seed <= TIMES * 5; seed += 1) {
    const text = mutate(dates[seed % dates.length] as string, seed);
    const calendar = CALENDARS[seed % CALENDARS.length] as (typeof CALENDARS)[number];
    expect(readDate(text, calendar, settings), `${seed} ${text}`).toBeDefined();
  }
});

it('mutated provenance lines are read, whatever stands in them, and spans lie inside the line', () => {
  const lines = [
    'Purchased by Adela Thornquist [1884-1969], Boston, between 1936 and 1938; given to the museum, 1951.',
    '(Castagnou et fils, Marseille, by 1933); sold through (Harlan Dray, New York) to Adela Thornquist, c. 1936.[1]\n\n[1] The ledger.',
    'By descent to his son, until at least 1931; (sale, A house, London, 4 May 1932, lot 12).',
  ];
  for (let seed = 1; seed <= TIMES * 2; seed += 1) {
    const text = mutate(lines[seed % lines.length] as string, seed);
    for (const { span } of readLine(text).holdings) {
      expect(span[0], String(seed)).toBeGreaterThanOrEqual(0);
      expect(span[1], String(seed)).toBeLessThanOrEqual(text.length);
    }
  }
});
