import { describe, expect, it } from 'vitest';
import { datesReport } from '../../src/findings/dates-report.ts';
import { computeFiles, entries } from '../workspace.ts';

const OBJECT = { 'OB-a': 'type: object\ntitle: A panel' };
const holding = (capacity: string, more: string) =>
  `type: holding\ntitle: A holding\ncapacity: ${capacity}\nobjects: [OB-a]\n${more}`;

const range = (list: Record<string, string>, entry: string, edge: string) => {
  const { file } = computeFiles(entries({ ...OBJECT, ...list }));
  const moment = datesReport(file).moments.find((one) => one.entry === entry && one.edge === edge);
  return [moment?.ranges[1]?.earliest ?? null, moment?.ranges[1]?.latest ?? null];
};

describe('passage from one holding to the next (small traps of the chronology)', () => {
  it("a possessor's time is not ended by a direct passage to an agent", () => {
    const files = {
      'HO-a': holding('possessor', 'begins: [{ date: "1920", grade: established }]'),
      'HO-b': holding(
        'agent or dealer',
        'from: HO-a\npassage: { is: direct, grade: established }\nbegins: [{ date: "1926-05-01", grade: established }]',
      ),
    };
    expect(range(files, 'HO-a', 'ends')).toEqual(['1926-05-01', null]);
  });

  it('between possessors it is ended, the next day at the latest', () => {
    const files = {
      'HO-a': holding('possessor', 'begins: [{ date: "1920", grade: established }]'),
      'HO-b': holding(
        'possessor',
        'from: HO-a\npassage: { is: direct, grade: established }\nbegins: [{ date: "1926-05-01", grade: established }]',
      ),
    };
    expect(range(files, 'HO-a', 'ends')).toEqual(['1926-04-30', '1926-05-01']);
  });

  it.each([
    ['1927-01-01', 0],
    ['1927-01-02', 1],
  ])('31 December 1926, then %s: %i contradictions with "direct"', (begins, contradictions) => {
    const { file } = computeFiles(
      entries({
        ...OBJECT,
        'HO-a': holding('possessor', 'ends: [{ date: "1926-12-31", grade: established }]'),
        'HO-b': holding(
          'possessor',
          `from: HO-a\npassage: { is: direct, grade: established }\nbegins: [{ date: "${begins}", grade: established }]`,
        ),
      }),
    );
    expect(file.contradictions.length).toBe(contradictions);
  });
});
