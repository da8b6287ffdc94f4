import path from 'node:path';
import { nearest } from '../base/nearest.ts';
import { inRow, oneOf, phrase } from '../base/said.ts';
import { type Computed, compute } from '../pipeline.ts';
import type { SitePart } from '../publish/site-part.ts';
import { audienceOf, folderOf, languageOf, type RunCommand } from './commands.ts';
import { progressOf } from './effects.ts';
import { clearUpSooner } from './engine.ts';
import { Fault } from './fault.ts';
import { countProblems, countWords, formatProblems } from './format-problems.ts';
import { loadWorkspace } from './load-workspace.ts';
import { Session } from './session.ts';
import { writeSite } from './write-site.ts';

/** Entries from which on memory counts more than a twentieth of the time. */
const MANY_ENTRIES = 2000;

export const build: RunCommand = async (options, effects) => {
  const folder = folderOf(options, effects);
  const audience = audienceOf(options);
  effects.progress?.({ what: phrase('Reading and computing') });
  const session = new Session();
  const files = await loadWorkspace(folder, session);
  if (files.entries.length > MANY_ENTRIES) clearUpSooner();
  const computed = compute(files, audience, {
    language: languageOf(options),
    languages: effects.languages,
    session,
  });
  const { errors } = computed;
  if (errors.length > 0) effects.err(formatProblems(effects.sayer, errors, 'text', computed.problems));
  if (errors.length > 0 && audience === 'public') {
    effects.err(phrase('A public site is not built from entries with errors. The last good site was left as it is.\n'));
    return 1;
  }
  const output = path.resolve(effects.cwd, String(options.flags.out ?? path.join(folder, '_site')));
  const usual = computed.file.catalogue.workspace?.keys['access-default'] ?? 'internal';
  const held = computed.entries - computed.file.catalogue.entries.length;
  const part = partOf(options.flags.only, computed);
  const { addresses } = await writeSite({
    computed,
    folder,
    output,
    part,
    built: effects.today(),
    session,
    ...progressOf(effects),
  });
  const pages = addresses.length;
  if (options.flags.json) {
    const counted = countProblems(computed.problems);
    const held = { shown: computed.file.catalogue.entries.length, of: computed.entries };
    effects.out(
      inRow(
        [
          JSON.stringify(
            { format: 'kerfmark-build/1', audience, output, pages, entries: held, problems: counted },
            null,
            2,
          ),
          '\n',
        ],
        '',
      ),
    );
    return errors.length > 0 ? 1 : 0;
  }
  effects.out(
    phrase(
      '{0} pages for the audience {1} in {2}\n{3}{4}\n',
      pages,
      audience,
      output,
      held > 0
        ? phrase(
            '{0} of {1} entries are not shown to this audience{2}.\n',
            held,
            computed.entries,
            usual !== 'public' && audience === 'public'
              ? phrase('; entries that say nothing are {0} here (access-default in workspace.md)', usual)
              : '',
          )
        : '',
      countWords(computed.problems),
    ),
  );
  return errors.length > 0 ? 1 : 0;
};

/** `--only OB-1,OB-2`: the pages of these objects; `--only whole`: those that belong to no object. */
function partOf(only: unknown, { file }: Computed): SitePart {
  if (only === undefined) return 'all';
  if (only === 'whole') return 'whole file';
  const objects = String(only)
    .split(',')
    .map((one) => one.trim())
    .filter(Boolean);
  const known = file.catalogue.ofType('object').map((one) => one.id);
  const strange = objects.find((one) => !known.includes(one));
  if (strange !== undefined || objects.length === 0) {
    const near = strange === undefined ? [] : nearest(strange, known);
    const offer =
      near.length > 0
        ? phrase('Did you mean {0}?', oneOf(near))
        : phrase('Name objects by their ids, or write "whole".');
    throw new Fault(phrase('There is no object "{0}" for this audience. {1}', strange ?? '', offer));
  }
  return { objects };
}
