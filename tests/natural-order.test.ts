import fc from 'fast-check';
import { expect, it } from 'vitest';
import { naturalOrder } from '../src/base/natural-order.ts';

/** The same order told the slow way: lists of runs, digits as numbers. */
function byRuns(a: string, b: string): number {
  const runsOf = (text: string): readonly string[] => text.toLowerCase().match(/\d+|\D/g) ?? [];
  const [left, right] = [runsOf(a), runsOf(b)];
  for (let i = 0; i < Math.min(left.length, right.length); i += 1) {
    const [one, other] = [left[i] as string, right[i] as string];
    const difference =
      /^\d/.test(one) && /^\d/.test(other) ? Number(one) - Number(other) : one < other ? -1 : one > other ? 1 : 0;
    if (difference !== 0) return difference;
  }
  return left.length - right.length || (a < b ? -1 : a > b ? 1 : 0);
}

it('puts ids in the order in which people count them', () => {
  const ids = ['CL-10', 'cl-2', 'CL-2', 'CL-2b', 'CL-02', 'PE-A.10', 'PE-A.9', 'CL'];
  expect([...ids].sort(naturalOrder)).toEqual(['CL', 'CL-02', 'CL-2', 'cl-2', 'CL-2b', 'CL-10', 'PE-A.9', 'PE-A.10']);
});

it('is the order of runs, for any ids', () => {
  const id = fc.string({ unit: fc.constantFrom('0', '1', '2', '9', '-', '.', 'A', 'a', 'B', 'é', 'Ω'), maxLength: 9 });
  fc.assert(
    fc.property(id, id, (a, b) => {
      expect(Math.sign(naturalOrder(a, b))).toBe(Math.sign(byRuns(a, b)));
    }),
    { seed: 7, numRuns: 5000 },
  );
});
