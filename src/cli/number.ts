import path from 'node:path';
import { inRow, phrase } from '../base/said.ts';
import { numberText } from '../reading/number-text.ts';
import { folderOf, type RunCommand } from './commands.ts';
import { loadWorkspace } from './load-workspace.ts';
import { replaceText } from './replace-text.ts';

export const number: RunCommand = async (options, effects) => {
  const folder = folderOf(options, effects);
  const files = await loadWorkspace(folder);
  const told: { readonly file: string; readonly refs: readonly string[] }[] = [];
  for (const file of files.entries) {
    const { text, added } = numberText(file);
    if (added.length === 0) continue;
    told.push({ file: file.file, refs: added });
    if (!options.flags['dry-run']) await replaceText(path.join(folder, file.file), file.text, text);
  }
  const isTrial = options.flags['dry-run'] === true;
  if (options.flags.json) {
    effects.out(
      inRow([JSON.stringify({ format: 'kerfmark-refs/1', written: !isTrial, files: told }, null, 2), '\n'], ''),
    );
    return 0;
  }
  for (const { file, refs } of told) effects.out(inRow([file, ': ', refs.join(', '), '\n'], ''));
  const written = told.reduce((sum, { refs }) => sum + refs.length, 0);
  effects.out(
    written === 0
      ? phrase('Every inline statement has its ref.\n')
      : isTrial
        ? phrase(
            '{0, plural, one {# ref would be} other {# refs would be}} written; nothing else was changed.\n',
            written,
          )
        : phrase('{0, plural, one {# ref was} other {# refs were}} written; nothing else was changed.\n', written),
  );
  return 0;
};
