/** Columns of a survey by hand: the key of `evidence`, and the words that the printed sheet has for it; in the order in which one looks. */
export const SHEET_WORDS = [
  ['id', 'id'],
  ['title', 'what, in a few words'],
  ['kind', 'kind'],
  ['face', 'face'],
  ['where', 'where'],
  ['seen-under', 'seen under'],
  ['observed.text', 'observed'],
  ['observed.grade', 'grade'],
  ['thickness', 'thickness'],
  ['over', 'lies over'],
  ['cuts', 'cuts'],
  ['fills', 'fills'],
] as const;

/** The key that a heading of a table means: the key itself, or the words of the printed sheet, in any letters. */
export function keyOfHeading(heading: string): string {
  const plain = heading.trim().toLowerCase().replace(/\s+/g, ' ');
  return SHEET_WORDS.find(([, words]) => words === plain)?.[0] ?? heading;
}
