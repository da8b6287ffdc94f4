/** Lines of an answer that say who asked; for restricted readers only. */
const ASKER = /^(- \*\*(?:Asked by|Under what authority):\*\*) .*$/gm;

/** A document as it was sent, for a reader who may not see who asked. */
export function withoutAsker(markdown: string): string {
  return markdown.replace(ASKER, '$1 shown to restricted readers only');
}
