import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { reportPictures } from '../../site/report-pictures.tsx';
import { nearest } from '../base/nearest.ts';
import type { CaseFile } from '../findings/case-file.ts';
import { speakingFor } from '../language/languages.ts';
import { type Entry, isOfType } from '../model/entry.ts';
import { compute } from '../pipeline.ts';
import { composeAppendix, composeFile } from '../reports/provenance-file.ts';
import { audienceOf, folderOf, languageOf, type Options, type RunCommand } from './commands.ts';
import type { Effects } from './effects.ts';
import { Fault } from './fault.ts';
import { loadWorkspace } from './load-workspace.ts';
import { packageRoot, packageVersion } from './package-root.ts';
import { writeDocuments } from './write-documents.ts';

export const fileCommand: RunCommand = (options, effects) => writeReport('file', composeFile, options, effects);

export const appendix: RunCommand = (options, effects) => writeReport('appendix', composeAppendix, options, effects);

async function writeReport(
  kind: string,
  compose: typeof composeFile,
  options: Options,
  effects: Effects,
): Promise<number> {
  const folder = folderOf(options, effects);
  const { file, errors } = compute(await loadWorkspace(folder), audienceOf(options), {
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
  return errors.length > 0 ? 1 : 0;
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
