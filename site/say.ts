import type { ComponentChildren } from 'preact';
import { language } from '../src/language/spoken.ts';

export { dated, language, sayList, speaking, term, words } from '../src/language/spoken.ts';

/** A text of the interface with elements among its words. */
export function say(message: string, ...parts: readonly ComponentChildren[]): ComponentChildren {
  const said = language().messages[message] ?? message;
  if (parts.length === 0) return said;
  return said.split(/\{(\d)\}/).map((piece, i) => (i % 2 === 0 ? piece : parts[Number(piece)]));
}
