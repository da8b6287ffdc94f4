import { inRow, named, phrase, type Said } from '../base/said.ts';
import type { CaseFile } from '../findings/case-file.ts';
import { leaveOneRootOut, type MovedBound, whatToCheckFirst } from '../findings/check-first.ts';
import { sayTitles } from '../findings/independence.ts';
import { sayChanged } from '../findings/range-changes.ts';
import { type EntryChange, sayChanges } from '../findings/worth-in-words.ts';
import { titleOf } from '../model/catalogue.ts';
import { compute } from '../pipeline.ts';
import { sayStatement } from '../statements/say-statement.ts';
import type { FileStatement } from '../statements/statements.ts';
import { audienceOf, folderOf, type RunCommand } from './commands.ts';
import { Fault } from './fault.ts';
import { formatProblems } from './format-problems.ts';
import { loadWorkspace } from './load-workspace.ts';

export const worth: RunCommand = async (options, effects) => {
  const computed = compute(await loadWorkspace(folderOf(options, effects)), audienceOf(options), {
    spoken: effects.sayer.language,
  });
  const { file, errors } = computed;
  const [id] = options.words;
  const chosen = file.statements.used.filter((one) => id === undefined || one.id === id || one.entry === id);
  if (id !== undefined && chosen.length === 0)
    throw new Fault(
      phrase('There is no statement {0} in the computation. "kerfmark dates --json" lists the statements.', id),
    );
  if (options.flags.json) effects.out(inRow([JSON.stringify(worthReport(file, chosen), null, 2), '\n'], ''));
  else if (id === undefined) effects.out(file.sayer.say(checkFirst(file)));
  else effects.out(file.sayer.say(inRow([...chosen.flatMap((one) => [worthOf(file, one), '\n'])], '')));
  if (errors.length > 0) effects.err(formatProblems(effects.sayer, errors, 'text', computed.problems));
  return errors.length > 0 ? 1 : 0;
};

function worthOf(file: CaseFile, statement: FileStatement): Said {
  const { bounds, stretches, resolved } = file.worth.of(file.statements.used.indexOf(statement));
  const told = sayChanges(file, bounds, [statement]);
  const changes: readonly Said[] = [
    ...told.changes.map(
      ({ effect, grades, ...one }): Said =>
        inRow(['  ', named(effect), ': ', sayChange(one), ' (', inRow(grades.map(named), ', '), ')'], ''),
    ),
    ...(told.finer > 0 ? [phrase('  {0} dates move by less than what is printed', told.finer)] : []),
  ];
  const gone = resolved.map((i): Said => phrase('  resolved: contradiction {0}', i + 1));
  const none: readonly Said[] =
    changes.length + gone.length + stretches.length === 0 ? [phrase('  nothing changes without it')] : [];
  const gaps: readonly Said[] =
    stretches.length > 0 ? [phrase('  the separate stretches of a date with gaps become others')] : [];
  const head: Said = inRow([statement.id, ': ', sayStatement(statement.says), ' (', named(statement.grade), ')'], '');
  return inRow([head, ...gone, ...changes, ...gaps, ...none], '\n');
}

function checkFirst(file: CaseFile): Said {
  const { languages, printedGrade } = file.settings;
  const objects = file.catalogue.ofType('object').filter((one) => one.keys['key-events'] !== undefined);
  if (objects.length === 0)
    return phrase(
      'No object names its key events yet. Add "key-events: [EV-...]" to an object to see what to check first.\n',
    );
  return inRow(
    [
      inRow(
        objects.map((object): Said => {
          const statements = whatToCheckFirst(file, object).map(({ statement, moved }, i) =>
            inRow(
              [
                inRow(
                  [
                    '  ',
                    i + 1,
                    '. ',
                    statement.id,
                    ': ',
                    sayStatement(statement.says),
                    ' (',
                    named(statement.grade),
                    ')',
                  ],
                  '',
                ),
                ...lines(file, moved, [statement]),
              ],
              '\n',
            ),
          );
          const roots = leaveOneRootOut(file, object).map(
            ({ root, statements: out, moved }): Said =>
              phrase(
                '  without {0} [{1}] and what goes back to it alone ({2}):\n{3}',
                sayTitles(file.catalogue, [root], languages),
                root,
                out.map((one) => one.id).join(', '),
                inRow(lines(file, moved, out), '\n'),
              ),
          );
          return inRow(
            [
              phrase(
                'What to check first for {0} ({1}), on {2} statements; for readers inside the institution',
                titleOf(object, languages),
                object.id,
                named(printedGrade),
              ),
              ...(statements.length > 0
                ? statements
                : [phrase('  No statement below "established" moves its key events.')]),
              ...(roots.length > 0 ? [phrase('\n  One independent origin left out after the other:'), ...roots] : []),
            ],
            '\n',
          );
        }),
        '\n\n',
      ),
      '\n',
    ],
    '',
  );
}

function lines(file: CaseFile, moved: readonly MovedBound[], withdrawn: readonly FileStatement[]): readonly Said[] {
  return sayChanges(file, moved, withdrawn).changes.map((one): Said => inRow(['       ', sayChange(one)], ''));
}

function sayChange({ of, title, was, is }: Pick<EntryChange, 'of' | 'title' | 'was' | 'is'>): Said {
  return inRow([sayChanged(of, title), ': ', was, ' → ', is], '');
}

function worthReport(file: CaseFile, chosen: readonly FileStatement[]): unknown {
  return {
    format: 'kerfmark-worth/1',
    statements: chosen.map((one) => {
      const { bounds, resolved } = file.worth.of(file.statements.used.indexOf(one));
      return {
        id: one.id,
        grade: one.grade,
        resolved: resolved.map((i) => file.contradictions[i]?.statements.map((s) => s.id)),
        changes: sayChanges(file, bounds, [one]).changes.map(({ entry, of, grades, effect, was, is }) => ({
          entry,
          of,
          grades,
          effect,
          was: file.sayer.say(was),
          is: file.sayer.say(is),
        })),
      };
    }),
  };
}
