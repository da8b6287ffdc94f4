import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { nearest } from '../base/nearest.ts';
import { inLines, inRow, phrase, type Said } from '../base/said.ts';
import type { CaseFile } from '../findings/case-file.ts';
import { ANSWER_DOUBTS } from '../findings/inquiry-doubts.ts';
import { missingForAnswer } from '../findings/missing-for-answer.ts';
import type { Language } from '../language/language.ts';
import type { Sayer } from '../language/sayer.ts';
import { changesToday, namedIn } from '../letters/letter-today.ts';
import { formatLetterValues, letterValuesOf } from '../letters/letter-values.ts';
import { titleOf } from '../model/catalogue.ts';
import type { Entry } from '../model/entry.ts';
import { SENT_FOLDER, valuesFileOf } from '../model/sent-file.ts';
import { type Computed, compute } from '../pipeline.ts';
import { answerTo, draftWords } from '../reports/answer.ts';
import type { ReportDocument } from '../reports/document.ts';
import { behindOf } from '../reports/source-book.ts';
import { documentMarkdown } from '../typeset/markdown.ts';
import { audienceOf, folderOf, languageOf, type RunCommand } from './commands.ts';
import type { Effects } from './effects.ts';
import { Fault } from './fault.ts';
import { loadWorkspace, sha256Of } from './load-workspace.ts';
import { packageVersion } from './package-root.ts';
import { writeDocuments } from './write-documents.ts';

export const answer: RunCommand = async (options, effects) => {
  const folder = folderOf(options, effects);
  const computed = compute(await loadWorkspace(folder), audienceOf(options, 'restricted'), {
    language: languageOf(options),
    languages: effects.languages,
  });
  const inquiry = inquiryNamed(computed, options.words[0]);
  const tag = languageOf(options) ?? languageAsked(inquiry, effects.languages);
  const { document: composed, facts } = answerTo(inquiry, computed.file.catalogue, (audience) =>
    computed.fileFor(audience, tag),
  );
  const isSent = inquiry.keys['sent-file'] !== undefined && !options.flags.changes && !options.flags.keep;
  // An approval does not make an answer while something is missing: it prints as a draft, and goes out nowhere.
  const missing = isSent || inquiry.keys['approved-by'] === undefined ? [] : missingToGive(computed, inquiry, facts);
  const draft = isSent ? again(facts.sayer) : missing.length > 0 ? draftWords(facts.sayer) : composed.draft;
  const document = { ...composed, draft };
  const text = documentMarkdown(document, behindOf(facts));
  if (options.flags.json)
    effects.out(inRow([JSON.stringify({ format: 'kerfmark-document/1', ...document }, null, 2), '\n'], ''));
  else if (options.flags.changes) effects.out(tellChanges(computed, inquiry, document, facts));
  else if ((options.flags.keep || options.flags.format) && missing.length > 0) throw notReady(inquiry, missing);
  else if (options.flags.keep) await keep(folder, computed, inquiry, { document, facts, text }, effects);
  else if (options.flags.format)
    await writeDocuments({ document, pictures: [], file: facts, name: inquiry.id, folder }, options, effects);
  else effects.out(text);
  return computed.errors.length > 0 ? 1 : 0;
};

/** On every page of an answer that is composed anew after one was sent. */
function again({ words }: Sayer): string {
  return words('Composed again from the file as it is now; not the answer that was sent');
}

function inquiryNamed({ file }: Computed, id: string | undefined): Entry<'inquiry'> {
  const all = file.catalogue.ofType('inquiry');
  const found = all.find((one) => one.id === id);
  if (found) return found;
  const ids = all.map((one) => one.id);
  const near = id === undefined ? [] : nearest(id, ids);
  throw new Fault(
    inRow(
      [
        id === undefined ? phrase('Which inquiry?') : phrase('There is no inquiry "{0}".', id),
        ' ',
        near.length > 0
          ? phrase('Did you mean {0}?', near.join(', '))
          : ids.length === 0
            ? phrase('The file holds none yet; "kerfmark new inquiry" makes one.')
            : phrase('The inquiries are: {0}.', ids.join(', ')),
      ],
      '',
    ),
  );
}

/** The language in which was asked, where documents can be composed in it. */
function languageAsked({ keys: { language } }: Entry<'inquiry'>, languages: readonly Language[]): string | null {
  return languages.find(({ tag }) => tag === language)?.tag ?? null;
}

function tellChanges({ sent }: Computed, inquiry: Entry<'inquiry'>, document: ReportDocument, facts: CaseFile): Said {
  const kept = inquiry.keys['sent-file'];
  const letter = kept && sent.get(kept.file);
  if (!kept || !letter)
    return phrase('{0} has no sent-file. "kerfmark answer {0} --keep" keeps an approved answer as sent.\n', inquiry.id);
  const today = changesToday(letter, facts, document);
  if (today === null)
    return phrase(
      '{0} keeps only sentences, so what it rests on cannot be compared with the file as it is now. "kerfmark upgrade" writes its values, where its sentences are still those of the file.\n',
      kept.file,
    );
  const { changes, statementsOnly } = today;
  const limit = statementsOnly
    ? phrase('{0} keeps only the statements that it cites; nothing else of it was compared.\n', kept.file)
    : '';
  if (changes.length === 0)
    return statementsOnly
      ? phrase('No statement that {0} cites is otherwise today; nothing else of it was kept to compare.\n', kept.file)
      : phrase('Nothing that {0} rests on is otherwise today.\n', kept.file);
  const blocks = changes.map(({ of, was, is }) =>
    inRow(
      [of, ...(was === null ? [] : [phrase('  was: {0}', was)]), ...(is === null ? [] : [phrase('  is:  {0}', is)])],
      '\n',
    ),
  );
  return inRow([inRow(blocks, '\n\n'), '\n', limit], '');
}

/** An answer, the file that it was made from, and its text. */
interface Letter {
  readonly document: ReportDocument;
  readonly facts: CaseFile;
  readonly text: string;
}

/** What is missing before an approved answer can be given: what it cannot stand without, and doubts that are open. */
function missingToGive({ problems, whole }: Computed, inquiry: Entry<'inquiry'>, facts: CaseFile): readonly Said[] {
  const open = problems.filter(({ entry, code }) => entry === inquiry.id && ANSWER_DOUBTS.includes(code));
  return [
    ...missingForAnswer(inquiry, facts.catalogue, whole),
    ...open
      .filter(({ code }) => code !== 'approved-not-ready')
      .map(({ message, code }) => inRow([message, ` [${code}]`], '')),
  ];
}

/** Said before anything is written. */
function notReady(inquiry: Entry<'inquiry'>, missing: readonly Said[]): Fault {
  return new Fault(
    phrase(
      '{0} cannot be given as the museum’s answer yet, whoever has approved it:\n{1}\nMend it, or answer for a doubt under signed-off (code, by, on, why); nothing was written.',
      titleOf(inquiry),
      inLines(missing.map((one) => inRow(['  - ', one], ''))),
    ),
  );
}

/** Writes the text and what it rests on beside the entries, never over another file, and says what to add to the entry. */
async function keep(
  folder: string,
  { errors }: Computed,
  inquiry: Entry<'inquiry'>,
  { document, facts, text }: Letter,
  effects: Effects,
): Promise<void> {
  if (document.draft !== null)
    throw new Fault(
      phrase(
        '{0} is not approved, so it is not kept as sent. Fill in approved-by and approved-on first.',
        titleOf(inquiry),
      ),
    );
  if (errors.length > 0)
    throw new Fault(phrase('There are errors in the entries; "kerfmark check" lists them. Mend them first.'));
  const { cites, rests } = namedIn(document);
  const name = `${SENT_FOLDER}/${inquiry.id}.md`;
  const values = formatLetterValues(letterValuesOf(facts, cites, rests, await packageVersion()));
  await mkdir(path.join(folder, SENT_FOLDER), { recursive: true });
  for (const [file, bytes] of [
    [name, text],
    [valuesFileOf(name), values],
  ] as const)
    await writeFile(path.join(folder, file), bytes, { flag: 'wx' }).catch((error: NodeJS.ErrnoException) => {
      if (error.code !== 'EEXIST') throw error;
      throw new Fault(phrase('{0} exists already and is left as it is. A correction is an inquiry of its own.', file));
    });
  const keys = [
    'state: sent',
    `sent-on: "${effects.today()}"`,
    `sent-file: { file: ${name}, sha256: ${sha256Of(text)}, values-sha256: ${sha256Of(values)} }`,
    ...(cites.length > 0 ? [`cites: [${cites.map((id) => `"${id}"`).join(', ')}]`] : []),
  ];
  effects.out(phrase('Written: {0}\nAdd to {1}:\n\n{2}\n', name, inquiry.file, keys.join('\n')));
}
