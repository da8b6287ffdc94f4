import type { Access } from '../base/access.ts';
import { oneLine } from '../base/one-line.ts';
import type { CaseFile } from '../findings/case-file.ts';
import { answeredFor } from '../findings/inquiry-doubts.ts';
import type { Catalogue } from '../model/catalogue.ts';
import { OLD_SENT_FOLDER, SENT_FOLDER, type SentFile, valuesFileOf } from '../model/sent-file.ts';
import { citedIn } from './check-letters.ts';
import { languageOfLetter, sentenceOf } from './format-1/sentences.ts';
import { formatLetterValues, letterValuesOf } from './letter-values.ts';

/** What a letter of the first format becomes. */
export interface UpgradedLetter {
  /** The file of the entry whose letter it is. */
  readonly entry: string;
  /** Where the letter lies, and where it is to lie. */
  readonly from: string;
  readonly to: string;
  /** The values to be written beside it; null where none of its sentences is still that of the file. */
  readonly values: { readonly file: string; readonly text: string } | null;
  /** Cited statements whose sentences are others now, so that they stay words; and how many became values. */
  readonly asWords: readonly string[];
  readonly asValues: number;
}

/**
 * Letters of the first format, which hold only sentences, and lie outside the entries. Where the sentence of a statement as
 * the first format would make it out of the file of now is the letter's, the statement has not changed since, and its values
 * are those of now. All other sentences stay words.
 *
 * @param fileFor the workspace computed for an audience, in a language
 * @param program the version of this program
 */
export function upgradeLetters(
  catalogue: Catalogue,
  sent: ReadonlyMap<string, SentFile>,
  fileFor: (audience: Access, language: string | null) => CaseFile,
  program: string,
): readonly UpgradedLetter[] {
  return catalogue.ofType('inquiry').flatMap((inquiry): readonly UpgradedLetter[] => {
    const named = inquiry.keys['sent-file'];
    const letter = named && sent.get(named.file);
    if (!named || !letter || letter.sha256 !== named.sha256.toLowerCase()) return [];
    const isOld = named.file.startsWith(`${OLD_SENT_FOLDER}/`);
    const to = isOld ? `${SENT_FOLDER}/${named.file.slice(OLD_SENT_FOLDER.length + 1)}` : named.file;
    const language = named['values-sha256'] === undefined && letter.text ? languageOfLetter(letter.text) : null;
    const cited = language === null ? new Map<string, string>() : citedIn(letter.text ?? '');
    if (!isOld && cited.size === 0) return [];
    const facts = fileFor(answeredFor(inquiry), language);
    const alike = [...cited].filter(([id, words]) => {
      const statement = facts.statement(id);
      return statement !== null && oneLine(sentenceOf(statement.says, language ?? 'en')) === oneLine(words);
    });
    const ids = alike.map(([id]) => id);
    if (!isOld && ids.length === 0) return [];
    const text = formatLetterValues(letterValuesOf(facts, ids, null, program));
    return [
      {
        entry: inquiry.file,
        from: named.file,
        to,
        values: ids.length === 0 ? null : { file: valuesFileOf(to), text },
        asWords: [...cited.keys()].filter((id) => !ids.includes(id)),
        asValues: ids.length,
      },
    ];
  });
}

/**
 * The text of the entry of a letter, with the new place of the letter and the checksum of its values; as it stands where it
 * names the letter in a way that is not understood.
 *
 * @param sha256 of the letter
 * @param valuesSha256 of the values; null where there are none
 */
export function entryOfLetter(
  text: string,
  { from, to }: Pick<UpgradedLetter, 'from' | 'to'>,
  sha256: string,
  valuesSha256: string | null,
): string {
  const [first = '', ...rest] = text.split(/(?<=\n)(?=sent-file:)/);
  const after = rest.join('');
  if (after === '') return text;
  const moved = after.replace(from, () => to);
  if (valuesSha256 === null) return first + moved;
  const sum = new RegExp(`^(.*?)(["']?${sha256}["']?)`, 'im');
  return (
    first +
    moved.replace(sum, (_, before: string, written: string) => {
      const indent = /^\s*/.exec(before)?.[0] ?? '';
      return before.includes('{')
        ? `${before}${written}, values-sha256: ${valuesSha256}`
        : `${before}${written}\n${indent}values-sha256: ${valuesSha256}`;
    })
  );
}
