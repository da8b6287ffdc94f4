/**
 * Compares two ids in natural order: digit runs as numbers, the rest letter by letter without
 * regard to case (CL-2 before CL-10); full ties fall back to code units, so the order is total.
 */
export function naturalOrder(a: string, b: string): number {
  const [left, right] = [a.toLowerCase(), b.toLowerCase()];
  let [i, j] = [0, 0];
  while (i < left.length && j < right.length) {
    const [endLeft, endRight] = [endOfDigits(left, i), endOfDigits(right, j)];
    if (endLeft > i && endRight > j) {
      const difference = Number(left.slice(i, endLeft)) - Number(right.slice(j, endRight));
      if (difference !== 0) return difference;
      [i, j] = [endLeft, endRight];
    } else {
      const difference = left.charCodeAt(i) - right.charCodeAt(j);
      if (difference !== 0) return difference;
      i += 1;
      j += 1;
    }
  }
  return left.length - i - (right.length - j) || (a < b ? -1 : a > b ? 1 : 0);
}

/** Where the run of digits that begins at a place ends: the place itself where none begins. */
function endOfDigits(text: string, start: number): number {
  let end = start;
  while (isDigit(text.charCodeAt(end))) end += 1;
  return end;
}

function isDigit(code: number): boolean {
  return code >= 48 && code <= 57;
}
