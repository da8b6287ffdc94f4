import { measured, phrase, type Said } from './said.ts';

/** A number known to lie between two ends, both included; never one number where the truth is a range. */
export interface Interval {
  readonly least: number;
  readonly most: number;
}

/** Product of intervals that do not go below zero. */
export function times(...factors: readonly Interval[]): Interval {
  return factors.reduce((a, b) => ({ least: a.least * b.least, most: a.most * b.most }), { least: 1, most: 1 });
}

/** Sum of intervals; 0 to 0 for none. */
export function plus(...terms: readonly Interval[]): Interval {
  return terms.reduce((a, b) => ({ least: a.least + b.least, most: a.most + b.most }), { least: 0, most: 0 });
}

/** An interval rounded outward, so that the told ends hold the true ones: 38.2 to 67.4 becomes "38 to 68". */
export function sayOutward({ least, most }: Interval, decimals: number): Said {
  const unit = 10 ** decimals;
  // A billionth of slack keeps a value that is a whole number but for rounding from growing by one.
  const [from, to] = [Math.floor(least * unit + 1e-9) / unit, Math.ceil(most * unit - 1e-9) / unit];
  return from === to ? measured(from, decimals) : numbersTo(measured(from, decimals), measured(to, decimals));
}

/** An interval: `12.2 to 18.4`, or one number where both ends are told alike. */
export function sayInterval({ least, most }: Interval, decimals: number): Said {
  return least.toFixed(decimals) === most.toFixed(decimals)
    ? measured(least, decimals)
    : numbersTo(measured(least, decimals), measured(most, decimals));
}

function numbersTo(from: Said, to: Said): Said {
  return phrase('{0} to {1}', from, to, 'number', 'number');
}
