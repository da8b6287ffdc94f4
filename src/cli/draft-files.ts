import path from 'node:path';
import { inRow, phrase, type Said } from '../base/said.ts';
import type { EntryType } from '../model/entry-type-names.ts';
import { readWorkspace } from '../reading/reading.ts';
import type { Effects } from './effects.ts';
import { freeId, writeNew } from './entry-files.ts';
import { formatProblems, saidProblems } from './format-problems.ts';
import { loadWorkspace } from './load-workspace.ts';

/** A draft that waits for its id. */
export interface Draft {
  /** An id of its own, where the material has one. */
  readonly id: string | null;
  readonly title: string;
  /** Where it comes from: `row 7`. */
  readonly from: string;
  text(id: string): string;
}

/**
 * Tells what the drafts would be and which problems they would have, and writes them where `write` says so. Files that
 * are there are never overwritten: an id that is taken is told, and its draft is left out.
 */
export async function writeDraftFiles(
  folder: string,
  type: EntryType,
  drafts: readonly Draft[],
  { write, json }: { readonly write: boolean; readonly json: boolean },
  effects: Effects,
): Promise<number> {
  const files = await loadWorkspace(folder);
  const before = readWorkspace(files);
  const taken = new Set(
    [...before.catalogue.entries.map((one) => one.id), ...before.leftOut].map((id) => id.toLowerCase()),
  );
  const skipped: Said[] = [];
  const settled = drafts.flatMap((draft) => {
    const id = draft.id ?? freeId(type, draft.title, taken);
    if (taken.has(id.toLowerCase())) {
      skipped.push(phrase('{0}: the id {1} is taken already', draft.from, id));
      return [];
    }
    taken.add(id.toLowerCase());
    return [{ ...draft, id, file: `entries/~import/${id}.md`, whole: draft.text(id) }];
  });
  const after = readWorkspace({
    ...files,
    entries: [...files.entries, ...settled.map((one) => ({ file: one.file, text: one.whole }))],
  });
  const problems = after.problems.filter((one) => settled.some(({ file }) => file === one.place.file));
  const isFaulty = problems.some((one) => one.severity === 'error');
  const told = problems.map((one) => {
    const from = settled.find(({ file }) => file === one.place.file)?.from ?? '';
    return { ...one, message: phrase('{0}: {1}', from, one.message) };
  });
  if (json) {
    const files = write ? await writeAll(folder, type, settled) : [];
    const entries = settled.map(({ id, title, from, whole }) => ({ id, title, from, text: whole }));
    const report = {
      format: 'kerfmark-drafts/1',
      written: files,
      entries,
      leftOut: skipped.map(effects.sayer.say),
      problems: saidProblems(effects.sayer, told),
    };
    effects.out(inRow([JSON.stringify(report, null, 2), '\n'], ''));
    return isFaulty && write ? 1 : 0;
  }
  for (const one of settled)
    effects.out(
      inRow([write ? phrase('Entry') : phrase('Would write'), ' ', one.id, ' (', one.from, '): ', one.title, '\n'], ''),
    );
  for (const one of skipped) effects.out(phrase('Left out, {0}.\n', one));
  if (problems.length > 0) effects.out(inRow(['\n', formatProblems(effects.sayer, told, 'text', told)], ''));
  if (!write) {
    effects.out(
      phrase(
        '\nNothing was written. With --write, {0} drafts are; entries with problems can be mended afterwards.\n',
        settled.length,
      ),
    );
    return 0;
  }
  for (const file of await writeAll(folder, type, settled))
    effects.out(phrase('Written: {0}\n', path.relative(effects.cwd, file)));
  effects.out(phrase('These are drafts with access "internal": check them, then type: kerfmark check\n'));
  return isFaulty ? 1 : 0;
}

async function writeAll(
  folder: string,
  type: EntryType,
  drafts: readonly { readonly id: string; readonly whole: string }[],
): Promise<readonly string[]> {
  const written: string[] = [];
  for (const one of drafts) written.push(await writeNew(folder, type, one.id, one.whole));
  return written;
}
