import type { Diagnostic } from '../base/diagnostic.ts';
import { sentLanguage } from '../language/sent-language.ts';
import type { Catalogue } from '../model/catalogue.ts';
import type { Entry, KeyPath } from '../model/entry.ts';
import type { SentFile } from '../model/sent-file.ts';
import type { FileStatements } from '../statements/statements.ts';

/** A line of the list of cited statements at the end of a document that was sent: `EV-removal#1`, and its words. */
const CITED = /^- `([^`]+)`: (.*)$/gm;

/** Statements that a document that was sent cites, with the words that they had then. */
export function citedIn(text: string): ReadonlyMap<string, string> {
  return new Map([...text.matchAll(CITED)].map(([, id = '', words = '']) => [id, words]));
}

/**
 * Checks what was sent: the file is there, nobody changed it, and every statement that it cites is still there and
 * still says what it said, in the language of the document. The grade of a statement may change; that is research, not another meaning.
 */
export function checkSentAnswers(
  catalogue: Catalogue,
  sent: ReadonlyMap<string, SentFile>,
  statements: (language: string | null) => FileStatements,
): readonly Diagnostic[] {
  const titles = new Set(catalogue.entries.flatMap(titlesOf));
  return catalogue.ofType('inquiry').flatMap((inquiry): readonly Diagnostic[] => {
    const named = inquiry.keys['sent-file'];
    if (!named) return citedGone(inquiry, new Map(), () => statements(null), titles);
    const file = sent.get(named.file);
    if (!file) {
      return [
        problem(
          inquiry,
          ['sent-file', 'file'],
          'sent-file-missing',
          `the document "${named.file}" that was sent is not there`,
          'put it back into the folder "sent" beside entries/ under this name; "kerfmark answer ID --keep" puts it there',
        ),
      ];
    }
    if (file.sha256 !== named.sha256.toLowerCase()) {
      return [
        problem(
          inquiry,
          ['sent-file', 'sha256'],
          'sent-file-changed',
          `${named.file} is not the file that was sent: its checksum is ${file.sha256}`,
          'what was sent is kept as sent: bring back the old file; a correction is a new answer with a file of its own',
        ),
      ];
    }
    const text = file.text ?? '';
    return citedGone(inquiry, citedIn(text), () => statements(sentLanguage(text)), titles);
  });
}

function citedGone(
  inquiry: Entry<'inquiry'>,
  inFile: ReadonlyMap<string, string>,
  statements: () => FileStatements,
  titles: ReadonlySet<string>,
): readonly Diagnostic[] {
  const cited = [...new Set([...(inquiry.keys.cites ?? []), ...inFile.keys()])];
  if (cited.length === 0) return [];
  const now = new Map(statements().all.map((one) => [one.id, one.text]));
  return cited.flatMap((id): readonly Diagnostic[] => {
    const index = (inquiry.keys.cites ?? []).indexOf(id);
    const path = index === -1 ? ['sent-file'] : ['cites', index];
    const [was, is] = [inFile.get(id), now.get(id)];
    if (is === undefined) {
      return [
        problem(
          inquiry,
          path,
          'cited-gone',
          `the document that was sent cites ${id}, which is no longer in the file`,
          'bring the statement back; one that is no longer held stays, as a claim with standing: withdrawn, or with another grade',
        ),
      ];
    }
    if (was === undefined || saysTheSame(was, is, titles)) return [];
    return [
      problem(
        inquiry,
        path,
        'cited-changed',
        `the document that was sent cites ${id} as “${was}”, and now it says “${is}”`,
        'let it stand as it was, and write the new statement under a ref of its own',
      ),
    ];
  });
}

/**
 * True where two wordings of a statement say the same. The title of an entry may be corrected: a quoted title may differ
 * where no entry bears the old one any more. One that now belongs to another entry is another meaning.
 */
function saysTheSame(was: string, is: string, titles: ReadonlySet<string>): boolean {
  const quoted = /(?<!written |écrit )(?:“([^”]*)”|«\u00a0([^»]*)\u00a0»)/g;
  const [before, now] = [oneLine(was), oneLine(is)];
  if (before.replace(quoted, '“”') !== now.replace(quoted, '“”')) return false;
  const names = [...now.matchAll(quoted)].map(([, name, other]) => name ?? other);
  return [...before.matchAll(quoted)].every(([, name, other], i) => {
    const title = name ?? other ?? '';
    return title === names[i] || !titles.has(title);
  });
}

/** Titles of an entry in all its languages. */
function titlesOf({ keys: { title } }: Entry): readonly string[] {
  return (typeof title === 'string' ? [title] : Object.values(title)).map(oneLine);
}

/** Words as a list in a document has them. */
export function oneLine(words: string): string {
  return words.replace(/\s+/g, ' ').trim();
}

function problem(entry: Entry, path: KeyPath, code: string, message: string, mend: string): Diagnostic {
  return { code, severity: 'error', place: entry.placeOf(path), message, mend, entry: entry.id };
}
