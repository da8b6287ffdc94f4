/** The id of the element in which a page brings the words of its scripts. */
export const WORDS_OF_SCRIPT = 'script-words';

/** A text of a script, in the language of its page: `{0}`, `{1}` stand for parts. */
export function told(message: string, ...parts: readonly (string | number)[]): string {
  const texts = document.getElementById(WORDS_OF_SCRIPT)?.textContent ?? '{}';
  const said = (JSON.parse(texts) as Readonly<Record<string, string>>)[message] ?? message;
  return said.replace(/\{(\d)\}/g, (_, index: string) => String(parts[Number(index)] ?? ''));
}
