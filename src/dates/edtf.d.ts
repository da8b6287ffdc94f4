declare module 'edtf' {
  /** Throws where the text is no EDTF. */
  export function parse(
    text: string,
    constraints?: { seasonIntervals?: boolean; seasonUncertainty?: boolean },
  ): unknown;
}
