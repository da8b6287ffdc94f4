/** Scripts that tell a language, or at least the direction of writing, by themselves. */
const SCRIPTS = [
  { letters: '\\p{Script=Greek}', attributes: 'lang="el"' },
  { letters: '\\p{Script=Hebrew}', attributes: 'lang="he" dir="rtl"' },
  { letters: '\\p{Script=Arabic}\\p{Script=Syriac}\\p{Script=Thaana}\\p{Script=Nko}', attributes: 'dir="rtl"' },
] as const;

/** Runs of one script, with the marks, digits and stops between its words. */
const RUNS = SCRIPTS.map(({ letters, attributes }) => ({
  run: new RegExp(
    `[${letters}][${letters}\\p{M}’'·]*(?:[\\s\\p{Nd},.;:·’'()«»-]+[${letters}][${letters}\\p{M}’'·]*)*`,
    'gu',
  ),
  attributes,
}));

/** Most pages hold no other script at all. */
const OTHER_SCRIPTS = /[\u0370-\u03ff\u0590-\u07ff\u1f00-\u1fff]/;

/** Elements whose text is not prose of the page. */
const SILENT = ['script', 'style', 'title', 'svg', 'option', 'textarea', 'code'];

/**
 * Marks words in another script with their language and direction, so that they are read aloud and set right: WCAG
 * 3.1.2. Elements that carry a `lang` or `dir` already are left alone. The pages are written by one renderer, so that
 * every element is closed and attributes are quoted.
 */
export function markLanguages(html: string): string {
  if (!OTHER_SCRIPTS.test(html)) return html;
  const open: { readonly name: string; readonly settled: boolean }[] = [];
  return html.replace(/<(\/?)([a-z][\w-]*)((?:"[^"]*"|[^>"])*)>|[^<]+/gi, (piece, closing, name, attributes) => {
    if (name === undefined) {
      return open.some((one) => one.settled) ? piece : markText(piece);
    }
    if (closing === '/') {
      const at = open.findLastIndex((one) => one.name === name);
      if (at !== -1) open.length = at;
    } else if (!attributes.endsWith('/') && !/^(meta|link|br|hr|img|input|col|wbr)$/.test(name)) {
      const settled = name !== 'html' && (SILENT.includes(name) || /\s(lang|dir)="/.test(attributes));
      open.push({ name, settled });
    }
    return piece;
  });
}

/** A single letter stays: it is a number or a sign. */
function markText(text: string): string {
  if (!OTHER_SCRIPTS.test(text)) return text;
  return RUNS.reduce(
    (marked, { run, attributes }) =>
      marked.replace(run, (words) => (words.length === 1 ? words : `<span ${attributes}>${words}</span>`)),
    text,
  );
}
