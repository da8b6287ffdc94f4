import { Temporal } from 'temporal-polyfill/full';
import type { Day } from '../day.ts';
import { isoDay } from './through-temporal.ts';

const ERAS: Readonly<Record<string, string>> = {
  m: 'meiji',
  meiji: 'meiji',
  t: 'taisho',
  taisho: 'taisho',
  s: 'showa',
  showa: 'showa',
  h: 'heisei',
  heisei: 'heisei',
  r: 'reiwa',
  reiwa: 'reiwa',
};

const FIRST_YEAR: Readonly<Record<string, number>> = { meiji: 6 };

/** A date of a Japanese era: `showa 1-12-25`, `S1-12-25`; month and day may be missing. */
export interface EraDate {
  readonly era: string;
  readonly year: number;
  readonly month?: number;
  readonly day?: number;
}

/** Parses an era date; null where the text does not begin with an era's name or initial. */
export function parseEraDate(text: string): EraDate | null {
  const plain = text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase().trim();
  const found = /^([a-z]+)[ .-]?(\d{1,2})(?:[-.](\d{1,2})(?:[-.](\d{1,2}))?)?$/.exec(plain);
  const era = found?.[1] === undefined ? undefined : ERAS[found[1]];
  if (!found || era === undefined) return null;
  return {
    era,
    year: Number(found[2]),
    ...(found[3] === undefined ? {} : { month: Number(found[3]) }),
    ...(found[4] === undefined ? {} : { day: Number(found[4]) }),
  };
}

/**
 * Days of an era date, or null where era and year do not belong together (the library counts on
 * silently: Taisho 16) and before Meiji 6 (1873), when Japan still used a lunisolar calendar.
 */
export function eraDays(date: EraDate): { readonly first: Day; readonly last: Day } | null {
  if (date.year < (FIRST_YEAR[date.era] ?? 1)) return null;
  const months = date.month === undefined ? range(12) : [date.month];
  const days: Day[] = [];
  for (const month of months) {
    for (const day of date.day === undefined ? range(31) : [date.day]) {
      const value = eraDay(date.era, date.year, month, day);
      if (value !== null) days.push(value);
    }
  }
  return days.length === 0 ? null : { first: Math.min(...days), last: Math.max(...days) };
}

function eraDay(era: string, eraYear: number, month: number, day: number): Day | null {
  try {
    const date = Temporal.PlainDate.from({ calendar: 'japanese', era, eraYear, month, day }, { overflow: 'reject' });
    return date.era === era && date.eraYear === eraYear ? isoDay(date) : null;
  } catch {
    return null;
  }
}

function range(length: number): readonly number[] {
  return Array.from({ length }, (_, i) => i + 1);
}
