import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { createTwoFilesPatch } from 'diff';
import type { Entry } from '../model/entry.ts';
import { readWorkspace } from '../reading/reading.ts';
import { CURRENT_FORMAT, UPGRADES, upgradeText } from '../reading/upgrade-text.ts';
import { CACHE_FOLDER } from './cache-folder.ts';
import { folderOf, type RunCommand } from './commands.ts';
import { Fault } from './fault.ts';
import { loadWorkspace } from './load-workspace.ts';
import { replaceText } from './replace-text.ts';

export const upgrade: RunCommand = async (options, effects) => {
  const folder = folderOf(options, effects);
  const files = await loadWorkspace(folder);
  const { workspace } = readWorkspace(files).catalogue;
  if (!workspace) throw new Fault('The workspace entry cannot be read; "kerfmark check" says why. Mend it first.');
  const format = formatOf(workspace);
  if (format > CURRENT_FORMAT)
    throw new Fault(
      `This workspace is of format ${format}; this program knows formats up to ${CURRENT_FORMAT}. Use a newer version of the program.`,
    );
  const changed = files.entries.flatMap(({ file, text }) => {
    const is = upgradeText(text, format);
    return is === text ? [] : [{ file, was: text, is }];
  });
  const isTrial = options.flags['dry-run'] === true;
  if (!isTrial) for (const one of changed) await write(folder, format, one);
  if (options.flags.json) {
    const report = { format: 'kerfmark-upgrade/1', from: format, to: CURRENT_FORMAT, written: !isTrial };
    effects.out(`${JSON.stringify({ ...report, files: changed.map((one) => one.file) }, null, 2)}\n`);
    return 0;
  }
  if (changed.length === 0) {
    effects.out(`The workspace is of format ${CURRENT_FORMAT}, the present one. There is nothing to do.\n`);
    return 0;
  }
  for (const { to, what } of UPGRADES.filter((one) => one.to > format)) effects.out(`Format ${to}: ${what}.\n`);
  if (isTrial) for (const { file, was, is } of changed) effects.out(`\n${createTwoFilesPatch(file, file, was, is)}`);
  effects.out(
    isTrial
      ? `\n${counted(changed.length)} would change. "kerfmark upgrade" writes it.\n`
      : `${counted(changed.length)} changed. The texts as they were stand in ${backupOf(format)}.\n`,
  );
  return 0;
};

/** The format that a workspace entry names; 0 where it names none. */
function formatOf({ keys }: Entry<'workspace'>): number {
  return keys.format ?? 0;
}

function counted(files: number): string {
  return files === 1 ? 'One file' : `${files} files`;
}

/** Where texts are kept as they were. */
function backupOf(format: number): string {
  return `${CACHE_FOLDER}/format-${format}`;
}

/** Keeps the text as it was, then writes the new one; a file that was changed meanwhile is left alone. */
async function write(
  folder: string,
  format: number,
  { file, was, is }: { readonly file: string; readonly was: string; readonly is: string },
): Promise<void> {
  const kept = path.join(folder, backupOf(format), file);
  await mkdir(path.dirname(kept), { recursive: true });
  await writeFile(kept, was);
  if (!(await replaceText(path.join(folder, file), was, is)))
    throw new Fault(`${file} was changed while it was read, so it is left as it is. Try again.`);
}
