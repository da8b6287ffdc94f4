import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { GRADES } from '../base/grade.ts';
import { inRow, named, phrase, type Said } from '../base/said.ts';
import { draftEntries } from '../custody/line-entries.ts';
import type { ReadLine } from '../custody/line-types.ts';
import { readLine } from '../custody/read-line.ts';
import { USUAL_STYLE } from '../custody/write-line.ts';
import { isOfType } from '../model/entry.ts';
import { readWorkspace } from '../reading/reading.ts';
import { folderOf, lineStyleOf, type Options } from './commands.ts';
import type { Effects } from './effects.ts';
import { freeId, writeNew } from './entry-files.ts';
import { Fault } from './fault.ts';
import { loadWorkspace } from './load-workspace.ts';

/** Reads a provenance line, or several as JSON lines, and makes draft entries of one. */
export async function importLine(name: string, options: Options, effects: Effects): Promise<number> {
  const file = path.resolve(effects.cwd, name);
  const text = await readFile(file, 'utf8').catch(() => {
    throw new Fault(phrase('There is no file {0} that can be read as text.', file));
  });
  const lines = linesOf(text);
  if (options.flags.json) {
    for (const line of lines) {
      const read = readLine(line.text, lineStyleOf(options, USUAL_STYLE));
      effects.out(inRow([JSON.stringify(line.id === null ? read : { id: line.id, ...read }), '\n'], ''));
    }
    return 0;
  }
  if (lines.length !== 1)
    throw new Fault(
      phrase(
        '{0} holds {1} lines. Entries are made from one line at a time; --json reads them all.',
        name,
        lines.length,
      ),
    );
  return writeDrafts((lines[0] as { text: string }).text, options, effects);
}

/** Plain text is one line; JSON lines are objects with `id` and `text`. */
function linesOf(text: string): readonly { readonly id: string | null; readonly text: string }[] {
  const plain = text.replace(/^\ufeff/, '');
  if (!/^\s*\{/.test(plain)) return [{ id: null, text: plain.trim() }];
  return plain
    .split('\n')
    .filter((one) => one.trim() !== '')
    .map((one, i) => {
      let read: unknown;
      try {
        read = JSON.parse(one);
      } catch {
        throw new Fault(
          phrase(
            'Line {0} of the file is no JSON. Give one object a line, with "id" and "text", or plain text.',
            i + 1,
          ),
        );
      }
      const { id, text: words } = read as { id?: unknown; text?: unknown };
      if (typeof words !== 'string') throw new Fault(phrase('Line {0} of the file has no "text".', i + 1));
      return { id: id === undefined ? null : String(id), text: words };
    });
}

async function writeDrafts(text: string, options: Options, effects: Effects): Promise<number> {
  const folder = folderOf(options, effects);
  const { catalogue, leftOut } = readWorkspace(await loadWorkspace(folder));
  const object = String(options.flags.object ?? '');
  const target = catalogue.resolve(object);
  if (!target || !isOfType(target.entry, 'object'))
    throw new Fault(
      phrase(
        'Say which object the line is about: --object ID. The objects are: {0}.',
        catalogue
          .ofType('object')
          .map((one) => one.id)
          .join(', ') || phrase('none yet'),
      ),
    );
  const source = options.flags.source === undefined ? null : String(options.flags.source);
  if (source !== null && catalogue.get(source)?.type !== 'source')
    throw new Fault(phrase('There is no source "{0}" in the file.', source));
  const grade = String(options.flags.grade ?? 'possible');
  if (!(GRADES as readonly string[]).includes(grade))
    throw new Fault(phrase('"{0}" is no grade. The grades are: {1}.', grade, GRADES.join(', ')));
  const taken = new Set([...catalogue.entries.map((one) => one.id), ...leftOut].map((id) => id.toLowerCase()));
  const idFor = (type: 'holding' | 'party', words: string): string => {
    const id = freeId(type, words, taken);
    taken.add(id.toLowerCase());
    return id;
  };
  const read = readLine(text, lineStyleOf(options, USUAL_STYLE));
  const drafts = draftEntries(text, read, { object, source, grade, idFor });
  effects.out(tell(read));
  for (const draft of drafts) {
    const body = [
      '---',
      `id: ${draft.id}`,
      `type: ${draft.type}`,
      ...draft.keys,
      'access: internal',
      '---',
      '',
      draft.body,
    ].join('\n');
    if (options.flags['dry-run']) effects.out(phrase('Would write {0}\n', draft.id));
    else
      effects.out(
        phrase('Written: {0}\n', path.relative(effects.cwd, await writeNew(folder, draft.type, draft.id, `${body}\n`))),
      );
  }
  effects.out(
    phrase('These are drafts: check names, kinds of party, capacities and grades, then type: kerfmark check\n'),
  );
  return 0;
}

function tell(read: ReadLine): Said {
  const years = (range: ReadLine['holdings'][number]['begins']): string =>
    range.earliest === null && range.latest === null ? '' : `${range.earliest ?? ''}..${range.latest ?? ''}`;
  const lines: readonly Said[] = [
    ...read.holdings.map(
      (one, i): Said =>
        phrase(
          '{0}. {1}{2}{3}: begins {4}, ends {5}{6}',
          i + 1,
          one.holder || phrase('(not named)'),
          one.place ? inRow([', ', one.place], '') : '',
          one.capacity ? phrase(' ({0})', named(one.capacity)) : '',
          years(one.begins) || phrase('not said'),
          years(one.ends) || phrase('not said'),
          one['passage-to-next'] ? phrase('; passage to the next {0}', named(one['passage-to-next'])) : '',
        ),
    ),
    ...read['kept-as-text'].map((one) =>
      phrase('Kept as text, not read: “{0}”', one.text.replace(/\s+/g, ' ').slice(0, 160)),
    ),
    ...(read['keeps-convention']
      ? []
      : [phrase('The line does not keep to the convention of marks; look at every passage.')]),
  ];
  return inRow([...lines.flatMap((one): readonly Said[] => [one, '\n'])], '');
}
