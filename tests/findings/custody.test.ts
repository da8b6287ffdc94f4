import { describe, expect, it } from 'vitest';
import { readLine } from '../../src/custody/read-line.ts';
import { civilOf, dayOf, formatIsoDay } from '../../src/dates/day.ts';
import { findChains } from '../../src/findings/custody-chains.ts';
import { sayGap } from '../../src/findings/custody-words.ts';
import { lineOfChain } from '../../src/findings/provenance-line.ts';
import { seededRandom } from '../../src/geometry/seeded-random.ts';
import { samePiece } from '../../src/model/pieces.ts';
import { inEnglish } from '../spoken.ts';
import { computeFiles, entries, filesOf, ROOT } from '../workspace.ts';

const START = dayOf(1930, 1, 1);
const SPAN = 9;

interface Bound {
  readonly edge: 0 | 1 | 2 | 3;
  readonly sense: 'by' | 'not-before' | 'within';
  readonly day: number;
}

/** Two holdings with random bounds in nine days; the passage direct, not direct, or not said. */
function randomPair(random: () => number) {
  const pick = (n: number): number => Math.floor(random() * n);
  const bounds = Array.from(
    { length: 3 + pick(4) },
    (): Bound => ({
      edge: pick(4) as Bound['edge'],
      sense: (['by', 'not-before', 'within'] as const)[pick(3)] ?? 'by',
      day: pick(SPAN),
    }),
  );
  // Every moment is bounded somewhere, so that every gap has a greatest length.
  const all = [
    ...bounds,
    { edge: 0, sense: 'not-before', day: 0 } as const,
    { edge: 3, sense: 'by', day: SPAN - 1 } as const,
  ];
  return { bounds: all, passage: (['direct', 'not direct', null] as const)[pick(3)] ?? null };
}

/** Least and greatest days from the end of the first to the beginning of the second, over all assignments; null where there is none. */
function bruteForce({ bounds, passage }: ReturnType<typeof randomPair>): readonly [number, number] | null {
  const holds = (at: readonly number[]): boolean =>
    (at[0] as number) <= (at[1] as number) &&
    (at[2] as number) <= (at[3] as number) &&
    bounds.every(({ edge, sense, day }) => {
      const value = at[edge] as number;
      return sense === 'by' ? value <= day : sense === 'not-before' ? value >= day : value === day;
    }) &&
    (passage === null ||
      ((at[2] as number) - (at[1] as number) >= 0 &&
        (passage !== 'direct' || (at[2] as number) - (at[1] as number) <= 1)));
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let a = 0; a < SPAN; a += 1)
    for (let b = a; b < SPAN; b += 1)
      for (let c = 0; c < SPAN; c += 1)
        for (let d = c; d < SPAN; d += 1)
          if (holds([a, b, c, d])) {
            least = Math.min(least, c - b);
            most = Math.max(most, c - b);
          }
  return least === Number.POSITIVE_INFINITY ? null : [least, most];
}

function fileOf({ bounds, passage }: ReturnType<typeof randomPair>): Record<string, string> {
  const stated = (edge: number): string => {
    const list = bounds
      .filter((one) => one.edge === edge)
      .map((one) => `{ date: "${formatIsoDay(START + one.day)}", sense: ${one.sense}, grade: established }`);
    return list.length === 0 ? '' : `${edge % 2 === 0 ? 'begins' : 'ends'}: [${list.join(', ')}]\n`;
  };
  const holding = (n: number, more: string): string =>
    `type: holding\ntitle: Holding ${n}\ncapacity: possessor\nobjects: [OB-c]\n${stated(2 * n - 2)}${stated(2 * n - 1)}${more}`;
  return entries({
    'OB-c': 'type: object\ntitle: A piece',
    'HO-1': holding(1, ''),
    'HO-2': holding(2, passage === null ? 'from: HO-1' : `from: HO-1\npassage: { is: ${passage}, grade: established }`),
  });
}

describe('gaps', () => {
  it('have the least and the greatest length that brute force finds', () => {
    const random = seededRandom(11);
    let compared = 0;
    let positive = 0;
    for (let trial = 0; trial < 400; trial += 1) {
      const pair = randomPair(random);
      const wanted = bruteForce(pair);
      const chain = findChains(computeFiles(fileOf(pair)).file, 0)[0];
      if (!wanted || !chain) continue;
      const gap = chain.gaps[0];
      // Up to a day between them is no gap.
      if (wanted[1] <= 1) expect(gap, JSON.stringify(pair)).toBeUndefined();
      else expect([gap?.least, gap?.most], JSON.stringify(pair)).toEqual([Math.max(0, wanted[0]), wanted[1]]);
      compared += 1;
      if (wanted[0] > 0) positive += 1;
    }
    expect(compared).toBeGreaterThan(80);
    expect(positive).toBeGreaterThan(5);
  });

  it('are told in round words that keep their bounds', () => {
    const told = (least: number, most: number | null, precision: 'day' | 'month' | 'year'): string =>
      inEnglish(sayGap({ least, most, precision }));
    expect(told(0, null, 'day')).toBe('length not known');
    expect(told(0, 30, 'day')).toBe('up to 30 days');
    expect(told(0, 760, 'day')).toBe('up to 25 months');
    // No finer than the coarser of the two ends.
    expect(told(0, 30, 'month')).toBe('up to 1 month');
    expect(told(20, 760, 'month')).toBe('up to 25 months');
    expect(told(40, 760, 'month')).toBe('1 month to 25 months');
    expect(told(0, 760, 'year')).toBe('up to about 2 years');
    expect(told(0, 100, 'year')).toBe('less than a year');
    expect(told(3653, 4383, 'day')).toBe('about 10 years to about 12 years');
  });
});

describe('the demonstration file', () => {
  const { file } = computeFiles(filesOf(ROOT));
  const chains = findChains(file);

  it('has a chain for panels A and B, another for panel C that parted company, one for the strip', () => {
    expect(chains.map((one) => [one.object.id, one.panels.join()])).toEqual([
      ['OB-lerakos', 'A,B'],
      ['OB-lerakos', 'C'],
      ['OB-strip', 'S'],
    ]);
    expect(chains[0]?.holdings.map((one) => one.holding.id)).toEqual([
      'HO-monastery',
      'HO-unknown',
      'HO-castagnou',
      'HO-dray',
      'HO-thornquist',
      'HO-wexcombe',
    ]);
  });

  it('a title is disputed where somebody disputes: who contests it, and a request for return that is open', () => {
    expect(
      chains[0]?.disputes.map((one) => ('request' in one ? one.request.id : [one.title.id, one.contestedBy])),
    ).toEqual([['TI-monastery', ['PA-wexcombe']], 'RQ-2025-1']);
    expect(file.doubts.filter((one) => one.code === 'titles-for-one-time')).toEqual([]);
  });

  it('a search stands beside a gap only where it concerns the piece', () => {
    const gap = chains[1]?.gaps.find((one) => one.after.id === 'HO-thornquist-C');
    expect(gap?.searches.map((one) => one.id)).toEqual(['SE-accounts', 'SE-marseille']);
    // From the month in which the register has it with the firm to the day of the deed.
    expect([gap?.least, gap?.most]).toEqual([0, dayOf(1951, 4, 2) - dayOf(1933, 11, 1)]);
  });

  it('the line is read again as the same holders, passages and years', () => {
    for (const chain of chains.slice(0, 2)) {
      const read = readLine(lineOfChain(file, chain));
      expect(read['kept-as-text']).toEqual([]);
      expect(read.holdings).toHaveLength(chain.holdings.length);
      const year = (day: number): number | null => (Number.isFinite(day) ? civilOf(day).year : null);
      chain.holdings.forEach((one, i) => {
        // Where nobody was there for certain, only an end is told.
        const told = read.holdings[i]?.begins.latest ?? read.holdings[i]?.ends.latest;
        expect(told, one.holding.id).toBe(year(one.begunBy));
        expect(read.holdings[i]?.notes, one.holding.id).toEqual([i + 1]);
      });
    }
  });

  it('a holder who is known but not named is no gap and is never named', () => {
    const line = lineOfChain(file, chains[2] as (typeof chains)[number]);
    expect(line).toContain('nown, not disclosed');
    expect(chains[2]?.gaps).toEqual([]);
  });
});

it('an object, its panel and a section of that are one piece; two panels or two sections are not', () => {
  const pieces = ['OB-a', 'OB-a/A', 'OB-a/A.1', 'OB-a/A.2', 'OB-a/B', 'OB-a.b', 'OB-ab/A'];
  const same = pieces.map((one) => pieces.filter((other) => samePiece(one, other)));
  expect(same).toEqual([
    ['OB-a', 'OB-a/A', 'OB-a/A.1', 'OB-a/A.2', 'OB-a/B'],
    ['OB-a', 'OB-a/A', 'OB-a/A.1', 'OB-a/A.2'],
    ['OB-a', 'OB-a/A', 'OB-a/A.1'],
    ['OB-a', 'OB-a/A', 'OB-a/A.2'],
    ['OB-a', 'OB-a/B'],
    ['OB-a.b'],
    ['OB-ab/A'],
  ]);
});
