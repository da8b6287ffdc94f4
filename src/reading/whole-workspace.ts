import type { Diagnostic } from '../base/diagnostic.ts';
import { type Entry, isOfType } from '../model/entry.ts';

/** Checks that concern the workspace as a whole: exactly one entry with its settings. */
export function checkWhole(entries: readonly Entry[]): readonly Diagnostic[] {
  const [first, ...more] = entries.filter((entry) => entry.type === 'workspace');
  if (!first) {
    return [
      {
        code: 'workspace-missing',
        severity: 'error',
        place: { file: 'entries', line: 1, column: 1 },
        message: 'no entry of type workspace was found, so there are no settings',
        mend: 'write entries/workspace.md with type: workspace, title and institution; "kerfmark begin" makes one',
      },
    ];
  }
  return more.map((entry) => ({
    code: 'workspace-twice',
    severity: 'error',
    place: entry.placeOf(['type']),
    message: 'there is more than one entry of type workspace',
    mend: 'keep one; move its settings there',
    entry: entry.id,
    related: [{ place: first.placeOf(['id']), text: 'the other one' }],
  }));
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
            `the object has two panels "${ids[index]}"`,
            'give one of them another name',
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
        `the object ${String(keys.object)} has no panel "${keys.panel}"`,
        `its panels are: ${names}`,
      ),
    ];
  });
  return [...twice, ...unknown];
}

function panelProblem(
  entry: Entry,
  path: readonly (string | number)[],
  code: string,
  message: string,
  mend: string,
): Diagnostic {
  return { code, severity: 'error', place: entry.placeOf(path), message, mend, entry: entry.id };
}
