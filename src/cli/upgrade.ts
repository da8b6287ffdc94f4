import { mkdir, readFile, rm, rmdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { createTwoFilesPatch } from 'diff';
import { inRow, phrase, type Said } from '../base/said.ts';
import { entryOfLetter, type UpgradedLetter, upgradeLetters } from '../letters/upgrade-letters.ts';
import type { Entry } from '../model/entry.ts';
import { OLD_SENT_FOLDER } from '../model/sent-file.ts';
import { compute } from '../pipeline.ts';
import type { WorkspaceFiles } from '../reading/reading.ts';
import { readWorkspace } from '../reading/reading.ts';
import { CURRENT_FORMAT, UPGRADES, upgradeText } from '../reading/upgrade-text.ts';
import { CACHE_FOLDER } from './cache-folder.ts';
import { folderOf, type RunCommand } from './commands.ts';
import type { Effects } from './effects.ts';
import { Fault } from './fault.ts';
import { loadWorkspace, sha256Of } from './load-workspace.ts';
import { packageVersion } from './package-root.ts';
import { replaceText } from './replace-text.ts';

export const upgrade: RunCommand = async (options, effects) => {
  const folder = folderOf(options, effects);
  const files = await loadWorkspace(folder);
  const { workspace } = readWorkspace(files).catalogue;
  if (!workspace)
    throw new Fault(phrase('The workspace entry cannot be read; "kerfmark check" says why. Mend it first.'));
  const format = formatOf(workspace);
  if (format > CURRENT_FORMAT)
    throw new Fault(
      phrase(
        'This workspace is of format {0}; this program knows formats up to {1}. Use a newer version of the program.',
        format,
        CURRENT_FORMAT,
      ),
    );
  const letters = lettersOf(files, effects, await packageVersion());
  const changed = files.entries.flatMap(({ file, text }) => {
    const is = letters
      .filter((one) => one.entry === file)
      .reduce((left, one) => withLetter(left, one, files), upgradeText(text, format));
    return is === text ? [] : [{ file, was: text, is }];
  });
  const isTrial = options.flags['dry-run'] === true;
  if (!isTrial) {
    for (const one of letters) await placeLetter(folder, one);
    for (const one of changed) await write(folder, format, one);
    // The old place is given up only when everything names the new one.
    for (const { from, to } of letters) if (from !== to) await rm(path.join(folder, from));
    await removeEmptied(folder);
  }
  if (options.flags.json) {
    const report = { format: 'kerfmark-upgrade/1', from: format, to: CURRENT_FORMAT, written: !isTrial };
    effects.out(
      inRow(
        [
          JSON.stringify(
            { ...report, files: changed.map((one) => one.file), letters: letters.map(toldLetter) },
            null,
            2,
          ),
          '\n',
        ],
        '',
      ),
    );
    return 0;
  }
  if (changed.length === 0 && letters.length === 0) {
    effects.out(phrase('The workspace is of format {0}, the present one. There is nothing to do.\n', CURRENT_FORMAT));
    return 0;
  }
  for (const { to, what } of UPGRADES.filter((one) => one.to > format))
    effects.out(phrase('Format {0}: {1}.\n', to, what));
  for (const one of letters) effects.out(sayLetter(one));
  if (isTrial)
    for (const { file, was, is } of changed) effects.out(inRow(['\n', createTwoFilesPatch(file, file, was, is)], ''));
  effects.out(
    isTrial
      ? phrase('\n{0} would change. "kerfmark upgrade" writes it.\n', counted(changed.length))
      : phrase('{0} changed. The texts as they were stand in {1}.\n', counted(changed.length), backupOf(format)),
  );
  return 0;
};

/** Letters of older workspaces, as they are to lie and what is to be written beside them. */
function lettersOf(files: WorkspaceFiles, { languages }: Effects, program: string): readonly UpgradedLetter[] {
  const { whole, sent, fileFor } = compute(files, 'restricted', { languages });
  return upgradeLetters(whole, sent, fileFor, program);
}

function withLetter(text: string, letter: UpgradedLetter, { sent }: WorkspaceFiles): string {
  const sum = letter.values && sha256Of(letter.values.text);
  return entryOfLetter(text, letter, sent.get(letter.from)?.sha256 ?? '', sum);
}

/** Puts a copy of a letter into its new place, and its values beside it; nothing is written over. */
async function placeLetter(folder: string, { from, to, values }: UpgradedLetter): Promise<void> {
  await mkdir(path.join(folder, path.dirname(to)), { recursive: true });
  if (values) await writeNew(path.join(folder, values.file), Buffer.from(values.text));
  if (from !== to) await writeNew(path.join(folder, to), await readFile(path.join(folder, from)));
}

/** Writes a file; one that is there already with the same bytes, of an upgrade that was broken off, is left. */
async function writeNew(file: string, bytes: Buffer): Promise<void> {
  await writeFile(file, bytes, { flag: 'wx' }).catch(async (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EEXIST') throw error;
    if (!bytes.equals(await readFile(file)))
      throw new Fault(phrase('{0} exists already and is left as it is. Move it away first.', file));
  });
}

/** Takes away the folder in which letters lay, where nothing is left in it. */
async function removeEmptied(folder: string): Promise<void> {
  await rmdir(path.join(folder, OLD_SENT_FOLDER)).catch(() => undefined);
}

function sayLetter({ from, to, asWords, asValues }: UpgradedLetter): Said {
  return phrase(
    '{0} goes to {1}; {2, plural, one {# statement is} other {# statements are}} kept as values{3}\n',
    from,
    to,
    asValues,
    asWords.length === 0 ? '' : phrase(', these stay words: {0}', asWords.join(', ')),
  );
}

function toldLetter({ from, to, asWords, asValues }: UpgradedLetter): unknown {
  return { from, to, asValues, asWords };
}

/** The format that a workspace entry names; 0 where it names none. */
function formatOf({ keys }: Entry<'workspace'>): number {
  return keys.format ?? 0;
}

function counted(files: number): Said {
  return phrase('{0, plural, one {One file} other {# files}}', files);
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
    throw new Fault(phrase('{0} was changed while it was read, so it is left as it is. Try again.', file));
}
