/** A file of the workspace as text; `file` is its path from the workspace's folder, with `/`. */
export interface TextFile {
  readonly file: string;
  readonly text: string;
}

/** Offsets at which the lines of a text begin; CRLF and LF count alike. */
export function lineStarts(text: string): readonly number[] {
  const starts = [0];
  for (let i = text.indexOf('\n'); i !== -1; i = text.indexOf('\n', i + 1)) starts.push(i + 1);
  return starts;
}

/** Line and column (both from 1) of an offset. */
export function positionAt(
  starts: readonly number[],
  offset: number,
): { readonly line: number; readonly column: number } {
  let low = 0;
  let high = starts.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((starts[middle] as number) <= offset) low = middle;
    else high = middle - 1;
  }
  return { line: low + 1, column: offset - (starts[low] as number) + 1 };
}
