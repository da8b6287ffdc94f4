/** A run of words in a note or a bibliography; plain words, or a title set in italics. */
export type Inline = string | { readonly italic: string };

/** Runs as plain words. */
export function plainWords(runs: readonly Inline[]): string {
  return runs.map((one) => (typeof one === 'string' ? one : one.italic)).join('');
}

/** Runs joined by a comma and a space; empty ones are left out. */
export function joined(parts: readonly (readonly Inline[])[], by = ', '): readonly Inline[] {
  const filled = parts.filter((one) => plainWords(one) !== '');
  return filled.flatMap((one, i) => (i === 0 ? one : [by, ...one]));
}
