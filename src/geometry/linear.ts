/**
 * Solves a least-squares problem by Householder reflections (Golub 1965): the x that makes |Ax - b|
 * least. `rows` are the rows of A, all of one length n <= rows. Null where the columns are, to one part
 * in 10^9 of the largest, not independent.
 */
export function leastSquares(rows: readonly (readonly number[])[], right: readonly number[]): readonly number[] | null {
  const n = rows[0]?.length ?? 0;
  const a = rows.map((row, i) => [...row, right[i] as number]);
  if (a.length < n) return null;
  const scale = Math.max(...a.flatMap((row) => row.slice(0, n).map(Math.abs)), 0);
  for (let k = 0; k < n; k += 1) {
    const norm = Math.hypot(...a.slice(k).map((row) => row[k] as number));
    if (norm <= 1e-9 * scale) return null;
    reflect(a, k, n, norm);
  }
  const x = new Array<number>(n).fill(0);
  for (let k = n - 1; k >= 0; k -= 1) {
    const row = a[k] as number[];
    let sum = row[n] as number;
    for (let j = k + 1; j < n; j += 1) sum -= (row[j] as number) * (x[j] as number);
    x[k] = sum / (row[k] as number);
  }
  return x;
}

/** Makes column k zero below its diagonal. */
function reflect(a: number[][], k: number, n: number, norm: number): void {
  const pivot = (a[k] as number[])[k] as number;
  const alpha = pivot > 0 ? -norm : norm;
  const v = a.slice(k).map((row, i) => (row[k] as number) - (i === 0 ? alpha : 0));
  const length2 = v.reduce((sum, value) => sum + value * value, 0);
  for (let j = k; j <= n; j += 1) {
    const dot = v.reduce((sum, value, i) => sum + value * ((a[k + i] as number[])[j] as number), 0);
    v.forEach((value, i) => {
      const row = a[k + i] as number[];
      row[j] = (row[j] as number) - (2 * dot * value) / length2;
    });
  }
}
