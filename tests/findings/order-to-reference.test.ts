import { describe, expect, it } from 'vitest';
import { heldAtReference, orderToReference, type ReferenceDays } from '../../src/findings/order-to-reference.ts';
import { seededRandom } from '../../src/geometry/seeded-random.ts';

/** What one possible course of things is to one possible reference. */
function orderOf(from: number, to: number | null, start: number, end: number): string {
  if (end < from) return 'before';
  if (to === null) return start >= from ? 'after' : 'partly';
  if (start > to) return 'after';
  return start >= from && end <= to ? 'within' : 'partly';
}

const days = (first: number, last: number): readonly number[] =>
  Array.from({ length: last - first + 1 }, (_, i) => first + i);

describe('order of dates against a reference date or period', () => {
  it('is what all possible courses have in common, else undetermined: 3,000 random cases against brute force', () => {
    const random = seededRandom(7);
    const pick = (n: number): number => Math.floor(random() * n);
    const seen = new Map<string, number>();
    for (let i = 0; i < 3000; i += 1) {
      const from = pick(14);
      const reference: ReferenceDays = {
        from: { first: from, last: from + pick(2) },
        to: i % 3 === 0 ? null : { first: from + 2 + pick(5), last: 0 },
      };
      const to = reference.to && { first: reference.to.first, last: reference.to.first + pick(2) };
      const start = { earliest: pick(18), latest: 0 };
      start.latest = start.earliest + pick(6);
      const end = { earliest: start.earliest + pick(6), latest: 0 };
      end.latest = Math.max(end.earliest, start.latest) + pick(6);
      const courses = new Set(
        days(reference.from.first, reference.from.last).flatMap((f) =>
          (to ? days(to.first, to.last) : [null]).flatMap((t) =>
            days(start.earliest, start.latest).flatMap((s) =>
              days(end.earliest, end.latest)
                .filter((e) => e >= s)
                .map((e) => orderOf(f, t, s, e)),
            ),
          ),
        ),
      );
      const expected = courses.size === 1 ? [...courses][0] : 'undetermined';
      const answer = orderToReference({ from: reference.from, to }, start, end);
      seen.set(answer, (seen.get(answer) ?? 0) + 1);
      // With uncertain days of the reference itself, "partly" may be left undetermined; never the other way.
      if (answer === 'undetermined' && expected === 'partly') continue;
      expect(answer).toBe(expected);
    }
    for (const answer of ['before', 'within', 'after', 'partly', 'undetermined'])
      expect(seen.get(answer) ?? 0, answer).toBeGreaterThan(40);
  });

  it('is exact where the reference is one day or a period of certain days', () => {
    const random = seededRandom(8);
    const pick = (n: number): number => Math.floor(random() * n);
    for (let i = 0; i < 3000; i += 1) {
      const from = { first: pick(14), last: 0 };
      from.last = from.first;
      const last = from.first + 2 + pick(5);
      const to = i % 3 === 0 ? null : { first: last, last };
      const start = { earliest: pick(18), latest: 0 };
      start.latest = start.earliest + pick(6);
      const end = { earliest: start.earliest + pick(6), latest: 0 };
      end.latest = Math.max(end.earliest, start.latest) + pick(6);
      const courses = new Set(
        days(start.earliest, start.latest).flatMap((s) =>
          days(end.earliest, end.latest)
            .filter((e) => e >= s)
            .map((e) => orderOf(from.first, to?.first ?? null, s, e)),
        ),
      );
      expect(orderToReference({ from, to }, start, end)).toBe(courses.size === 1 ? [...courses][0] : 'undetermined');
    }
  });

  it('knows open bounds', () => {
    const [low, high] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
    const law = { from: { first: 100, last: 100 }, to: null };
    expect(orderToReference(law, { earliest: low, latest: high }, { earliest: low, latest: high })).toBe(
      'undetermined',
    );
    expect(orderToReference(law, { earliest: low, latest: 99 }, { earliest: low, latest: 99 })).toBe('before');
    expect(orderToReference(law, { earliest: 100, latest: high }, { earliest: 100, latest: high })).toBe('after');
  });
});

describe('who had it then', () => {
  const period = { from: { first: 100, last: 100 }, to: { first: 200, last: 200 } };

  it('throughout only where it began by the first day and ended not before the last', () => {
    expect(heldAtReference(period, { earliest: 50, latest: 100 }, { earliest: 200, latest: 300 })).toBe('throughout');
    expect(heldAtReference(period, { earliest: 50, latest: 101 }, { earliest: 200, latest: 300 })).toBe('part');
    expect(heldAtReference(period, { earliest: 50, latest: 100 }, { earliest: 199, latest: 300 })).toBe('part');
    expect(heldAtReference(period, { earliest: 0, latest: 10 }, { earliest: 20, latest: 99 })).toBe('not');
    expect(heldAtReference(period, { earliest: 201, latest: 210 }, { earliest: 220, latest: 300 })).toBe('not');
  });

  it('says only "not excluded" where nothing bounds the side that matters', () => {
    const [low, high] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
    expect(heldAtReference(period, { earliest: low, latest: 150 }, { earliest: 250, latest: 300 })).toBe('part');
    expect(heldAtReference(period, { earliest: 50, latest: 90 }, { earliest: 95, latest: high })).toBe('open');
    expect(heldAtReference(period, { earliest: low, latest: 90 }, { earliest: 150, latest: 300 })).toBe('part');
    expect(heldAtReference(period, { earliest: low, latest: 250 }, { earliest: 251, latest: 300 })).toBe('open');
    expect(heldAtReference(period, { earliest: low, latest: 100 }, { earliest: 200, latest: high })).toBe('throughout');
    expect(heldAtReference(period, { earliest: low, latest: 10 }, { earliest: low, latest: 99 })).toBe('not');
  });

  it('for part of it: by brute force over every beginning and end that the bounds allow', () => {
    const random = seededRandom(3);
    const pick = (n: number): number => Math.floor(random() * n);
    const counts = { part: 0, throughout: 0, other: 0 };
    for (let trial = 0; trial < 1500; trial += 1) {
      const [b1, e2] = [pick(10), 4 + pick(8)];
      const begins = { earliest: b1, latest: b1 + pick(6) };
      const ends = { earliest: Math.max(b1, e2 - pick(6)), latest: Math.max(b1, e2) };
      const days = { from: { first: 4, last: 4 }, to: { first: 8, last: 8 } };
      const held: [number, number][] = [];
      for (let b = begins.earliest; b <= begins.latest; b += 1)
        for (let e = Math.max(b, ends.earliest); e <= ends.latest; e += 1) held.push([b, e]);
      if (held.length === 0) continue;
      const answer = heldAtReference(days, begins, ends);
      const throughout = held.every(([b, e]) => b <= 4 && e >= 8);
      // Some one day of the period on which it was held whatever the true days are.
      const part = [4, 5, 6, 7, 8].some((day) => held.every(([b, e]) => b <= day && e >= day));
      if (answer === 'throughout' || answer === 'part') expect(answer === 'throughout' ? throughout : part).toBe(true);
      if (begins.latest <= ends.earliest) expect(answer === 'throughout' || answer === 'part').toBe(throughout || part);
      counts[answer === 'throughout' || answer === 'part' ? answer : 'other'] += 1;
    }
    expect(Math.min(counts.part, counts.throughout, counts.other)).toBeGreaterThan(20);
  });

  it('on a single day', () => {
    const day = { from: { first: 100, last: 100 }, to: null };
    expect(heldAtReference(day, { earliest: 1, latest: 100 }, { earliest: 100, latest: 300 })).toBe('throughout');
  });
});
