import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { ROOT } from '../workspace.ts';

/** Words that deny. */
export const DENIES =
  /\b(?:no|none|nothing|never|nobody|nowhere)\b|\bnot (?:recorded|known|bounded|named|told|seen|yet)\b/i;

/** Words of a sentence that says that it speaks of what is shown alone. */
export const SHOWN = /\bshown (?:here|to)/;

/** Messages that deny and may be said to anybody, by what they speak of: nothing that a file could hold. */
export const PLAIN = Object.values(
  JSON.parse(readFileSync(path.join(ROOT, 'tests/truth/plain-negatives.json'), 'utf8')) as Record<string, string[]>,
).flat();

const sentencesOf = (text: string): readonly string[] =>
  text
    .split(/(?<=[.;:!?])\s+|\n/)
    .map((one) => one.replace(/\s+/g, ' ').trim())
    .filter((one) => one !== '');

/** The words of a page or of a document, one line an element that holds words. */
function wordsOf(name: string, text: string): string {
  if (!name.endsWith('.html')) return text.replace(/\\(?=[[\]])/g, '');
  return text
    .replace(/<(script|style)[^>]*>.*?<\/\1>/gs, '')
    .replace(
      /<\/?(?:p|li|td|th|h\d|dt|dd|figcaption|div|caption|text|title|summary|option|label|legend)\b[^>]*>/g,
      '\n',
    )
    .replace(/<[^>]+>/g, '')
    .replace(/&#39;|&quot;|&lt;|&gt;|&amp;|&nbsp;/g, (one) => ENTITIES[one] as string);
}

const ENTITIES: Readonly<Record<string, string>> = {
  '&#39;': "'",
  '&quot;': '"',
  '&lt;': '<',
  '&gt;': '>',
  '&amp;': '&',
  '&nbsp;': ' ',
};

/** Ids and numbers of notes, which say nothing. */
const IDS = /\b(?:[A-Z]{2}-[\w./-]+)|\[\^?\d+\]/g;

/** What entries and tables say in words of their own that a page sets beside a label, and a sentence about gaps in general. */
const OF_ENTRIES = [
  /^published fluorescence/,
  /^dark(?: violet)?, none/,
  /^Strength none/,
  /^it says nothing of anybody’s conduct\.$/,
  /no tool marks \(established\)/,
  /\(no access\)\.$/,
  /^How acquired not known$/,
  /^not recorded as anything else(?: [\d.]+ to [\d.]+ %|:)?$/,
  /\| not known \|$/,
  /^not seen Of all panels:$/,
];

/** Letters and digits alone, in small letters. */
function lettersOf(text: string): string {
  return text
    .normalize('NFC')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}\n]+/gu, '');
}

/** Every text below a folder, as one line of words. */
function textsBelow(folder: string, pattern: RegExp): string {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((one) => one.isFile() && pattern.test(one.name))
    .map((one) => readFileSync(path.join(one.parentPath, one.name), 'utf8').replace(/\s+/g, ' '))
    .join('\n');
}

/** What the words may come from besides the program: entries, and tables and texts that speak of no file. */
const HELD = [
  textsBelow(path.join(ROOT, 'entries'), /\.(?:md|ya?ml)$/),
  textsBelow(path.join(ROOT, 'src/reference'), /\.(?:json|tsv)$/),
  textsBelow(path.join(ROOT, 'src/language/en'), /\.md$/),
]
  .map(lettersOf)
  .join('\n');

/** Each sentence of them, alone or after a label; any words where a part stands. */
const PLAIN_SENTENCES = PLAIN.flatMap(sentencesOf)
  .filter((one) => DENIES.test(one))
  .map((one) => {
    const words = one.replace(/^(?:\{\d\} )+|[.;:]$/g, '').replace(/[.*+?^$()[\]\\|]/g, '\\$&');
    return new RegExp(`^(?:.*[^\\p{L}])?${words.replace(/\{\d\}/g, '.*').replace(/[{}]/g, '\\$&')}[.;:]?$`, 'isu');
  });

/** Sentences that deny, and neither say that they speak of what is shown nor come from an entry or a table. */
export function bareDenials(texts: readonly (readonly [string, string])[]): readonly string[] {
  const found = new Map<string, string>();
  for (const [name, text] of texts)
    for (const sentence of sentencesOf(wordsOf(name, text).replace(IDS, ' ')))
      if (
        DENIES.test(sentence) &&
        !SHOWN.test(sentence) &&
        !HELD.includes(lettersOf(sentence)) &&
        !OF_ENTRIES.some((one) => one.test(sentence)) &&
        !PLAIN_SENTENCES.some((one) => one.test(sentence))
      )
        found.set(sentence, `${name}: ${sentence.slice(0, 160)}`);
  return [...found.values()];
}
