import type { Diagnostic } from '../base/diagnostic.ts';
import type { Entry } from '../model/entry.ts';

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
