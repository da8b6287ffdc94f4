import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { reportPictures } from '../../site/report-pictures.tsx';
import { nearest } from '../base/nearest.ts';
import type { CaseFile } from '../findings/case-file.ts';
import { speakingFor } from '../language/languages.ts';
import { type Entry, isOfType } from '../model/entry.ts';
import { compute, hasErrors } from '../pipeline.ts';
import { composeAppendix, composeFile } from '../reports/provenance-file.ts';
import { audienceOf, type Command, folderOf, languageOf, type Options } from './commands.ts';
import type { Effects } from './effects.ts';
import { Fault, loadWorkspace } from './load-workspace.ts';
import { packageRoot, packageVersion } from './package-root.ts';
import { DOCUMENT_FLAGS, writeDocuments } from './write-documents.ts';

export const fileCommand: Command = {
  name: 'file',
  summary: 'writes the provenance file of an object: PDF for the archive, DOCX, Markdown, HTML',
  usage:
    'kerfmark file OBJECT [--format pdf,docx,md,html] [--out FOLDER] [--language TAG] [--json] [--in FOLDER] [--audience A]',
  examples: ['kerfmark file OB-panels', 'kerfmark file OB-panels --format pdf,docx --audience public'],
  words: 1,
  flags: DOCUMENT_FLAGS,
  run: (options, effects) => writeReport('file', composeFile, options, effects),
};

export const appendix: Command = {
  name: 'appendix',
  summary: 'writes the appendix to a publication of an object: evidence, technique, plates, documents, nil results',
  usage:
    'kerfmark appendix OBJECT [--format pdf,docx,md,html] [--out FOLDER] [--language TAG] [--json] [--in FOLDER] [--audience A]',
  examples: ['kerfmark appendix OB-panels --format docx', 'kerfmark appendix OB-panels --audience public'],
  words: 1,
  flags: DOCUMENT_FLAGS,
  run: (options, effects) => writeReport('appendix', composeAppendix, options, effects),
};

async function writeReport(
  kind: string,
  compose: typeof composeFile,
  options: Options,
  effects: Effects,
): Promise<number> {
  const folder = folderOf(options, effects);
  const { file, problems } = compute(await loadWorkspace(folder), audienceOf(options), {
    language: languageOf(options),
    inItsLanguage: true,
  });
  const object = objectNamed(file, options.words[0]);
  const styles = path.join(packageRoot(), 'site', 'styles');
  const drawings = await readFile(path.join(styles, 'drawings.css'), 'utf8');
  const plan = await readFile(path.join(styles, 'plan.css'), 'utf8');
  const making = { built: effects.today(), version: await packageVersion() };
  const { document, pictures } = speakingFor(file.settings.languages, () => {
    const made = reportPictures(file, object, { drawings, plan });
    return { document: compose(file, object, made.list, making), pictures: made.pictures };
  });
  await writeDocuments({ document, pictures, file, name: `${object.id}-${kind}`, folder }, options, effects);
  return hasErrors(problems) ? 1 : 0;
}

function objectNamed(file: CaseFile, id: string | undefined): Entry<'object'> {
  const found = id === undefined ? undefined : file.catalogue.resolve(id)?.entry;
  if (found && isOfType(found, 'object')) return found;
  const ids = file.catalogue.ofType('object').map((one) => one.id);
  const near = id === undefined ? [] : nearest(id, ids);
  throw new Fault(
    `${id === undefined ? 'Of which object?' : `There is no object "${id}".`} ${near.length > 0 ? `Did you mean ${near.join(', ')}?` : `The objects are: ${ids.join(', ') || 'none yet'}.`}`,
  );
}
