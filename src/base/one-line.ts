/** Words as a list in a document has them. */
export function oneLine(words: string): string {
  return words.replace(/\s+/g, ' ').trim();
}
