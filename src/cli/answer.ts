import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { nearest } from '../base/nearest.ts';
import { LANGUAGES, speakingFor } from '../language/languages.ts';
import { sentLanguage } from '../language/sent-language.ts';
import { words } from '../language/spoken.ts';
import { titleOf } from '../model/catalogue.ts';
import type { Entry } from '../model/entry.ts';
import { type Computed, compute } from '../pipeline.ts';
import { answerTo } from '../reports/answer.ts';
import { passagesOf, type ReportDocument } from '../reports/document.ts';
import { behindOf } from '../reports/source-book.ts';
import { changesSince } from '../typeset/changes.ts';
import { documentMarkdown } from '../typeset/markdown.ts';
import { audienceOf, folderOf, languageOf, type RunCommand } from './commands.ts';
import type { Effects } from './effects.ts';
import { Fault } from './fault.ts';
import { loadWorkspace, SENT, sha256Of } from './load-workspace.ts';
import { writeDocuments } from './write-documents.ts';

export const answer: RunCommand = async (options, effects) => {
  const folder = folderOf(options, effects);
  const computed = compute(await loadWorkspace(folder), audienceOf(options, 'restricted'), {
    language: languageOf(options),
    inItsLanguage: true,
  });
  const inquiry = inquiryNamed(computed, options.words[0]);
  const tag = options.flags.changes
    ? sentLanguage(sentText(computed, inquiry) ?? '')
    : (languageOf(options) ?? languageAsked(inquiry));
  const languages = tag === null ? computed.file.settings.languages : [tag];
  const { document: composed, facts } = speakingFor(languages, () =>
    answerTo(inquiry, computed.file.catalogue, (audience) => computed.fileFor(audience, tag)),
  );
  const isSent = inquiry.keys['sent-file'] !== undefined && !options.flags.changes && !options.flags.keep;
  const document = isSent ? { ...composed, draft: speakingFor(languages, again) } : composed;
  const text = documentMarkdown(document, behindOf(facts));
  if (options.flags.json) effects.out(`${JSON.stringify({ format: 'kerfmark-document/1', ...document }, null, 2)}\n`);
  else if (options.flags.changes) effects.out(speakingFor(languages, () => tellChanges(computed, inquiry, text)));
  else if (options.flags.keep) await keep(folder, computed, inquiry, document, text, effects);
  else if (options.flags.format)
    await writeDocuments({ document, pictures: [], file: facts, name: inquiry.id, folder }, options, effects);
  else effects.out(text);
  return computed.errors.length > 0 ? 1 : 0;
};

/** On every page of an answer that is composed anew after one was sent. */
function again(): string {
  return words('Composed again from the file as it is now; not the answer that was sent');
}

function inquiryNamed({ file }: Computed, id: string | undefined): Entry<'inquiry'> {
  const all = file.catalogue.ofType('inquiry');
  const found = all.find((one) => one.id === id);
  if (found) return found;
  const ids = all.map((one) => one.id);
  const near = id === undefined ? [] : nearest(id, ids);
  throw new Fault(
    `${id === undefined ? 'Which inquiry?' : `There is no inquiry "${id}".`} ${
      near.length > 0
        ? `Did you mean ${near.join(', ')}?`
        : ids.length === 0
          ? 'The file holds none yet; "kerfmark new inquiry" makes one.'
          : `The inquiries are: ${ids.join(', ')}.`
    }`,
  );
}

/** The language in which was asked, where documents can be composed in it. */
function languageAsked({ keys: { language } }: Entry<'inquiry'>): string | null {
  return LANGUAGES.find(({ tag }) => tag === language)?.tag ?? null;
}

/** The text of what was sent; null where it is none that can be compared. */
function sentText({ sent }: Computed, { keys }: Entry<'inquiry'>): string | null {
  const named = keys['sent-file'];
  return (named && sent.get(named.file)?.text) ?? null;
}

function tellChanges(computed: Computed, inquiry: Entry<'inquiry'>, today: string): string {
  const named = inquiry.keys['sent-file'];
  const text = sentText(computed, inquiry);
  if (!named || text === null)
    return `${inquiry.id} has no sent-file whose text can be compared. "kerfmark answer ${inquiry.id} --keep" keeps an approved answer as sent.\n`;
  const changes = changesSince(text, today);
  if (changes.length === 0) return `Nothing that ${named.file} says would be said otherwise today.\n`;
  return `${changes
    .map(({ heading, was, is }) =>
      [heading, ...was.map((one) => `  was: ${one}`), ...is.map((one) => `  is:  ${one}`)].join('\n'),
    )
    .join('\n\n')}\n`;
}

/** Writes the text beside the entries, never over another file, and says what to add to the entry. */
async function keep(
  folder: string,
  { errors }: Computed,
  inquiry: Entry<'inquiry'>,
  document: ReportDocument,
  text: string,
  effects: Effects,
): Promise<void> {
  if (document.draft !== null)
    throw new Fault(
      `${titleOf(inquiry)} is not approved, so it is not kept as sent. Fill in approved-by and approved-on first.`,
    );
  if (errors.length > 0)
    throw new Fault('There are errors in the entries; "kerfmark check" lists them. Mend them first.');
  const name = `${SENT}/${inquiry.id}.md`;
  await mkdir(path.join(folder, SENT), { recursive: true });
  await writeFile(path.join(folder, name), text, { flag: 'wx' }).catch((error: NodeJS.ErrnoException) => {
    if (error.code !== 'EEXIST') throw error;
    throw new Fault(`${name} exists already and is left as it is. A correction is an inquiry of its own.`);
  });
  const cites = [...new Set(passagesOf(document).flatMap((one) => one.cites))].sort();
  effects.out(
    `Written: ${name}\nAdd to ${inquiry.file}:\n\nstate: sent\nsent-on: "${effects.today()}"\nsent-file: { file: ${name}, sha256: ${sha256Of(text)} }\n${cites.length > 0 ? `cites: [${cites.map((id) => `"${id}"`).join(', ')}]\n` : ''}`,
  );
}
