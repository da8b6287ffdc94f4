/** The candidates nearest to a mistyped word by edit distance, nearest first; only plausible ones. */
export function nearest(word: string, candidates: Iterable<string>, most = 3): readonly string[] {
  const limit = Math.max(2, Math.ceil(word.length * 0.4));
  const scored: { readonly text: string; readonly distance: number }[] = [];
  for (const text of candidates) {
    const distance = editDistance(word.toLowerCase(), text.toLowerCase());
    if (distance <= limit) scored.push({ text, distance });
  }
  scored.sort((a, b) => a.distance - b.distance || (a.text < b.text ? -1 : 1));
  return scored.slice(0, most).map((one) => one.text);
}

/** Edits between two words: letters put in, taken out, changed, or two neighbours exchanged. */
export function editDistance(a: string, b: string): number {
  let before: number[] = [];
  let above = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const change = at(above, j - 1) + (a[i - 1] === b[j - 1] ? 0 : 1);
      let best = Math.min(change, at(above, j) + 1, at(row, j - 1) + 1);
      const exchanged = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (exchanged) best = Math.min(best, at(before, j - 2) + 1);
      row.push(best);
    }
    before = above;
    above = row;
  }
  return at(above, b.length);
}

function at(row: readonly number[], index: number): number {
  return row[index] ?? Number.POSITIVE_INFINITY;
}
