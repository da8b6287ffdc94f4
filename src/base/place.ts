/** A place in a text file: line and column count from 1, as editors show them. */
export interface Place {
  readonly file: string;
  readonly line: number;
  readonly column: number;
}
