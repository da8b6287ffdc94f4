import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { reportPictures } from '../../site/report-pictures.tsx';
import { nearest } from '../base/nearest.ts';
import { inRow, phrase } from '../base/said.ts';
import type { CaseFile } from '../findings/case-file.ts';
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
    languages: effects.languages,
  });
  const object = objectNamed(file, options.words[0]);
  const styles = path.join(packageRoot(), 'site', 'styles');
  const drawings = await readFile(path.join(styles, 'drawings.css'), 'utf8');
  const plan = await readFile(path.join(styles, 'plan.css'), 'utf8');
  const making = { built: effects.today(), version: await packageVersion() };
  const { list, pictures } = reportPictures(file, object, { drawings, plan });
  const document = compose(file, object, list, making);
  await writeDocuments({ document, pictures, file, name: `${object.id}-${kind}`, folder }, options, effects);
  return errors.length > 0 ? 1 : 0;
}

function objectNamed(file: CaseFile, id: string | undefined): Entry<'object'> {
  const found = id === undefined ? undefined : file.catalogue.resolve(id)?.entry;
  if (found && isOfType(found, 'object')) return found;
  const ids = file.catalogue.ofType('object').map((one) => one.id);
  const near = id === undefined ? [] : nearest(id, ids);
  throw new Fault(
    inRow(
      [
        id === undefined ? phrase('Of which object?') : phrase('There is no object "{0}".', id),
        ' ',
        near.length > 0
          ? phrase('Did you mean {0}?', near.join(', '))
          : phrase('The objects are: {0}.', ids.join(', ') || phrase('none yet')),
      ],
      '',
    ),
  );
}
