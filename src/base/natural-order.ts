/**
 * Compares two ids in natural order: digit runs as numbers, the rest letter by letter without
 * regard to case (CL-2 before CL-10); full ties fall back to code units, so the order is total.
 */
export function naturalOrder(a: string, b: string): number {
  const left = runsOf(a);
  const right = runsOf(b);
  for (let i = 0; i < Math.min(left.length, right.length); i += 1) {
    const difference = compareRuns(left[i] as string, right[i] as string);
    if (difference !== 0) return difference;
  }
  return left.length - right.length || (a < b ? -1 : a > b ? 1 : 0);
}

function runsOf(text: string): readonly string[] {
  return text.toLowerCase().match(/\d+|\D/g) ?? [];
}

function compareRuns(a: string, b: string): number {
  const bothNumbers = /^\d/.test(a) && /^\d/.test(b);
  if (bothNumbers) return Number(a) - Number(b);
  return a < b ? -1 : a > b ? 1 : 0;
}
