import type { Access } from '../base/access.ts';
import type { Diagnostic } from '../base/diagnostic.ts';
import { phrase, type Said } from '../base/said.ts';
import type { CaseFile } from '../findings/case-file.ts';
import { answeredFor } from '../findings/inquiry-doubts.ts';
import type { Catalogue } from '../model/catalogue.ts';
import type { Entry, KeyPath } from '../model/entry.ts';
import { type SentFile, valuesFileOf } from '../model/sent-file.ts';
import { sameStatement, sayLetterStatement } from './letter-changes.ts';
import { type LetterValues, letterStatementOf, readLetterValues } from './letter-values.ts';

/** A line of the list of cited statements at the end of a document that was sent: `EV-removal#1`, and its words. */
const CITED = /^- `([^`]+)`: (.*)$/gm;

/** Statements that a document that was sent cites, with the words that they had then. */
export function citedIn(text: string): ReadonlyMap<string, string> {
  return new Map([...text.matchAll(CITED)].map(([, id = '', words = '']) => [id, words]));
}

/**
 * Checks what was sent: the file is there, nobody changed it, and every statement that it cites is still there, says what
 * it said, and is as sure as it was. Values are compared; a letter that keeps none cannot be compared, and is never called
 * changed.
 *
 * @param fileFor the workspace computed for an audience
 */
export function checkLetters(
  catalogue: Catalogue,
  sent: ReadonlyMap<string, SentFile>,
  fileFor: (audience: Access) => CaseFile,
): readonly Diagnostic[] {
  return catalogue.ofType('inquiry').flatMap((inquiry): readonly Diagnostic[] => {
    const named = inquiry.keys['sent-file'];
    const keys = inquiry.keys.cites ?? [];
    if (!named) return gone(inquiry, keys, fileFor);
    const file = sent.get(named.file);
    if (!file) return [missing(inquiry, named.file)];
    if (file.sha256 !== named.sha256.toLowerCase()) return [changed(inquiry, 'sha256', named.file, file.sha256)];
    const cited = [...new Set([...keys, ...citedIn(file.text ?? '').keys()])];
    const sum = named['values-sha256'];
    if (sum === undefined)
      return [...gone(inquiry, cited, fileFor), ...(cited.length === 0 ? [] : [notComparable(inquiry, named.file)])];
    if (file.values === null || file.values.sha256 !== sum.toLowerCase())
      return [
        file.values === null
          ? missing(inquiry, valuesFileOf(named.file))
          : changed(inquiry, 'values-sha256', named.file, file.values.sha256),
      ];
    const values = readLetterValues(file.values.text);
    if (!values) return [...gone(inquiry, cited, fileFor), notComparable(inquiry, named.file)];
    const kept = new Set(values.statements.map((one) => one.id));
    const asWords = [...citedIn(file.text ?? '').keys()].filter((id) => !kept.has(id));
    return [
      ...gone(inquiry, cited, fileFor),
      ...otherwise(inquiry, values, fileFor(answeredFor(inquiry)), fileFor('restricted')),
      ...(asWords.length === 0 ? [] : [keptAsWords(inquiry, named.file, asWords)]),
    ];
  });
}

/** Cited statements that are no longer in the file, whoever may see them. */
function gone(
  inquiry: Entry<'inquiry'>,
  cited: readonly string[],
  fileFor: (audience: Access) => CaseFile,
): readonly Diagnostic[] {
  if (cited.length === 0) return [];
  const whole = fileFor('restricted');
  return cited
    .filter((id) => whole.statement(id) === null)
    .map((id) =>
      problem(
        inquiry,
        pathOf(inquiry, id),
        'cited-gone',
        phrase('the document that was sent cites {0}, which is no longer in the file', id),
        phrase(
          'bring the statement back; one that is no longer held stays, as a claim with standing: withdrawn, or with another grade',
        ),
      ),
    );
}

/** A cited statement that says what it said, and is more or less sure: that is research, which the asker may have to hear of. */
function regraded(inquiry: Entry<'inquiry'>, id: string, was: Said, is: Said): Diagnostic {
  return {
    ...problem(
      inquiry,
      pathOf(inquiry, id),
      'cited-changed',
      phrase('the document that was sent cites {0} as “{1}”, and now it says “{2}”', id, was, is),
      phrase('if the answer would be another one by this, tell the one who asked'),
    ),
    severity: 'doubt',
  };
}

/** Cited statements that say something else now, or are more or less sure. */
function otherwise(
  inquiry: Entry<'inquiry'>,
  values: LetterValues,
  facts: CaseFile,
  whole: CaseFile,
): readonly Diagnostic[] {
  return values.statements.flatMap((was): readonly Diagnostic[] => {
    // What the asker may no longer see is compared all the same.
    const statement = facts.statement(was.id) ?? whole.statement(was.id);
    const is = statement && letterStatementOf(statement);
    if (!is || sameStatement(was, is)) return [];
    const told = [sayLetterStatement(whole, was), sayLetterStatement(whole, is)] as const;
    if (sameStatement(was, { ...is, grade: was.grade })) return [regraded(inquiry, was.id, ...told)];
    return [
      problem(
        inquiry,
        pathOf(inquiry, was.id),
        'cited-changed',
        phrase('the document that was sent cites {0} as “{1}”, and now it says “{2}”', was.id, ...told),
        phrase('let it stand as it was, and write the new statement under a ref of its own'),
      ),
    ];
  });
}

function pathOf(inquiry: Entry<'inquiry'>, id: string): KeyPath {
  const index = (inquiry.keys.cites ?? []).indexOf(id);
  return index === -1 ? ['sent-file'] : ['cites', index];
}

function missing(inquiry: Entry<'inquiry'>, file: Said): Diagnostic {
  return problem(
    inquiry,
    ['sent-file', 'file'],
    'sent-file-missing',
    phrase('the document "{0}" that was sent is not there', file),
    phrase('put it back under this name; "kerfmark answer ID --keep" puts letters into entries/sent/'),
  );
}

function changed(inquiry: Entry<'inquiry'>, key: 'sha256' | 'values-sha256', file: string, sha256: string): Diagnostic {
  return problem(
    inquiry,
    ['sent-file', key],
    'sent-file-changed',
    key === 'sha256'
      ? phrase('{0} is not the file that was sent: its checksum is {1}', file, sha256)
      : phrase('the values beside {0} are not those that were kept: their checksum is {1}', file, sha256),
    phrase(
      'what was sent is kept as sent: bring back the old file; a correction is a new answer with a file of its own',
    ),
  );
}

function notComparable(inquiry: Entry<'inquiry'>, file: string): Diagnostic {
  return {
    ...problem(
      inquiry,
      ['sent-file'],
      'sent-not-comparable',
      phrase('{0} keeps only sentences, so what it rests on cannot be compared with the file as it is now', file),
      phrase('"kerfmark upgrade" writes its values, where its sentences are still those of the file'),
    ),
    severity: 'note',
  };
}

/** Statements whose sentences stayed words when an older letter was read. */
function keptAsWords(inquiry: Entry<'inquiry'>, file: string, ids: readonly string[]): Diagnostic {
  return {
    ...problem(
      inquiry,
      ['sent-file'],
      'sent-not-comparable',
      phrase(
        '{0} keeps these statements only as sentences, so they cannot be compared with the file as it is now: {1}',
        file,
        ids.join(', '),
      ),
      phrase('nothing has to be done; the letter itself tells what was said'),
    ),
    severity: 'note',
  };
}

function problem(entry: Entry, path: KeyPath, code: string, message: Said, mend: Said): Diagnostic {
  return { code, severity: 'error', place: entry.placeOf(path), message, mend, entry: entry.id };
}
