import path from 'node:path';
import { numberText } from '../reading/number-text.ts';
import { type Command, folderOf } from './commands.ts';
import { loadWorkspace } from './load-workspace.ts';
import { replaceText } from './replace-text.ts';

export const number: Command = {
  name: 'number',
  summary: 'writes the missing refs of inline statements, so that later insertions rename none',
  usage: 'kerfmark number [--in FOLDER] [--dry-run]',
  examples: ['kerfmark number --dry-run', 'kerfmark number'],
  flags: { 'dry-run': 'switch' },
  async run(options, effects) {
    const folder = folderOf(options, effects);
    const files = await loadWorkspace(folder);
    let written = 0;
    for (const file of files.entries) {
      const { text, added } = numberText(file);
      if (added.length === 0) continue;
      written += added.length;
      effects.out(`${file.file}: ${added.join(', ')}\n`);
      if (!options.flags['dry-run']) await replaceText(path.join(folder, file.file), file.text, text);
    }
    effects.out(
      written === 0
        ? 'Every inline statement has its ref.\n'
        : `${written} refs ${options.flags['dry-run'] ? 'would be' : 'were'} written; nothing else was changed.\n`,
    );
    return 0;
  },
};
