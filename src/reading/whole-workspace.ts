import type { Diagnostic } from '../base/diagnostic.ts';
import { nearest } from '../base/nearest.ts';
import { oneOf, phrase, type Said } from '../base/said.ts';
import { ENTRY_SCHEMAS, type Entry, isOfType } from '../model/entry.ts';
import { keyNames } from '../model/walk-fields.ts';
import { CURRENT_FORMAT } from './upgrade-text.ts';

/** Checks that concern the workspace as a whole: exactly one entry with its settings. */
export function checkWhole(entries: readonly Entry[], leftOut: readonly string[] = []): readonly Diagnostic[] {
  const [first, ...more] = entries.filter((entry) => entry.type === 'workspace');
  // A workspace entry that cannot be read is there, and its own problems are told.
  if (!first && leftOut.includes('workspace')) return [];
  if (!first) {
    return [
      {
        code: 'workspace-missing',
        severity: 'error',
        place: { file: 'entries', line: 1, column: 1 },
        message: phrase('no entry of type workspace was found, so there are no settings'),
        mend: phrase(
          'write entries/workspace.md with type: workspace, title and institution; "kerfmark begin" makes one',
        ),
      },
    ];
  }
  const twice = more.map(
    (entry): Diagnostic => ({
      code: 'workspace-twice',
      severity: 'error',
      place: entry.placeOf(['type']),
      message: phrase('there is more than one entry of type workspace'),
      mend: phrase('keep one; move its settings there'),
      entry: entry.id,
      related: [{ place: first.placeOf(['id']), text: phrase('the other one') }],
    }),
  );
  return [...twice, ...newerFormat(first)];
}

/** A workspace that a later program wrote may say what this one would misread. */
function newerFormat(workspace: Entry): readonly Diagnostic[] {
  const format = isOfType(workspace, 'workspace') ? (workspace.keys.format ?? 0) : 0;
  if (format <= CURRENT_FORMAT) return [];
  return [
    {
      code: 'workspace-format',
      severity: 'error',
      place: workspace.placeOf(['format']),
      message: phrase(
        'the workspace is of format {0}, and this program knows formats up to {1}',
        format,
        CURRENT_FORMAT,
      ),
      mend: phrase(
        'use a newer version of the program; do not lower the number, since the entries may be written otherwise',
      ),
      entry: workspace.id,
    },
  ];
}

/** Names under `withhold` must be keys that the type has, at any depth: a slip would publish what was to be kept. */
export function checkWithheld(entries: readonly Entry[]): readonly Diagnostic[] {
  return entries.flatMap((entry) =>
    (entry.keys.withhold ?? []).flatMap((name, i): readonly Diagnostic[] => {
      const known = new Set([...keyNames(ENTRY_SCHEMAS[entry.type]), 'image']);
      if (known.has(name)) return [];
      const near = nearest(name, known, 2);
      return [
        {
          code: 'withhold-unknown',
          severity: 'error',
          place: entry.placeOf(['withhold', i]),
          entry: entry.id,
          message: phrase('"{0}" is no key of this type, so that nothing would be withheld', name),
          mend: name.includes('.')
            ? phrase(
                'write the last word alone ({0}); it is withheld wherever it stands in the entry',
                name.slice(name.lastIndexOf('.') + 1),
              )
            : near.length > 0
              ? phrase('did you mean {0}?', oneOf(near))
              : phrase('write the key as it stands in the entry'),
        },
      ];
    }),
  );
}

/** Panels that an entry names must be panels of its object, and an object names each panel once. */
export function checkPanels(entries: readonly Entry[]): readonly Diagnostic[] {
  const objects = new Map(entries.flatMap((entry) => (isOfType(entry, 'object') ? [[entry.id, entry] as const] : [])));
  const twice = [...objects.values()].flatMap((object) => {
    const ids = (object.keys.panels ?? []).map((panel) => panel.id);
    const index = ids.findIndex((id, i) => ids.indexOf(id) < i);
    return index === -1
      ? []
      : [
          panelProblem(
            object,
            ['panels', index, 'id'],
            'panel-twice',
            phrase('the object has two panels "{0}"', ids[index]),
            phrase('give one of them another name'),
          ),
        ];
  });
  const unknown = entries.flatMap((entry) => {
    const keys = entry.keys as { object?: unknown; panel?: unknown };
    const panels = typeof keys.object === 'string' ? objects.get(keys.object)?.keys.panels : undefined;
    if (typeof keys.panel !== 'string' || panels === undefined || panels.some((panel) => panel.id === keys.panel))
      return [];
    const names = panels.map((panel) => panel.id).join(', ');
    return [
      panelProblem(
        entry,
        ['panel'],
        'unknown-panel',
        phrase('the object {0} has no panel "{1}"', String(keys.object), keys.panel),
        phrase('its panels are: {0}', names),
      ),
    ];
  });
  const covered = entries.flatMap((entry) => {
    if (!isOfType(entry, 'examination')) return [];
    return (entry.keys.covered ?? []).flatMap((one, i) => {
      const asked = one.object === undefined ? entry.keys.objects : [one.object];
      const panels = asked
        .flatMap((id) => objects.get(id.split('/')[0] as string)?.keys.panels ?? [])
        .map((panel) => panel.id);
      if (panels.length === 0 || panels.includes(one.panel)) return [];
      return [
        panelProblem(
          entry,
          ['covered', i, 'panel'],
          'unknown-panel',
          phrase('the object {0} has no panel "{1}"', oneOf(asked), one.panel),
          phrase('its panels are: {0}', panels.join(', ')),
        ),
      ];
    });
  });
  return [...twice, ...unknown, ...covered];
}

function panelProblem(
  entry: Entry,
  path: readonly (string | number)[],
  code: string,
  message: Said,
  mend: Said,
): Diagnostic {
  return { code, severity: 'error', place: entry.placeOf(path), message, mend, entry: entry.id };
}
