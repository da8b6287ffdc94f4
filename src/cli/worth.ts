import type { CaseFile } from '../findings/case-file.ts';
import { leaveOneRootOut, type MovedBound, whatToCheckFirst } from '../findings/check-first.ts';
import { sayTitles } from '../findings/independence.ts';
import { sayChanged } from '../findings/range-changes.ts';
import { type EntryChange, sayChanges } from '../findings/worth-in-words.ts';
import { titleOf } from '../model/catalogue.ts';
import { compute } from '../pipeline.ts';
import type { FileStatement } from '../statements/statements.ts';
import { audienceOf, folderOf, type RunCommand } from './commands.ts';
import { Fault } from './fault.ts';
import { formatProblems } from './format-problems.ts';
import { loadWorkspace } from './load-workspace.ts';

export const worth: RunCommand = async (options, effects) => {
  const computed = compute(await loadWorkspace(folderOf(options, effects)), audienceOf(options));
  const { file, errors } = computed;
  const [id] = options.words;
  const chosen = file.statements.used.filter((one) => id === undefined || one.id === id || one.entry === id);
  if (id !== undefined && chosen.length === 0)
    throw new Fault(`There is no statement ${id} in the computation. "kerfmark dates --json" lists the statements.`);
  if (options.flags.json) effects.out(`${JSON.stringify(worthReport(file, chosen), null, 2)}\n`);
  else if (id === undefined) effects.out(checkFirst(file));
  else effects.out(`${chosen.map((one) => worthOf(file, one)).join('\n')}\n`);
  if (errors.length > 0) effects.err(formatProblems(errors, 'text', computed.problems));
  return errors.length > 0 ? 1 : 0;
};

function worthOf(file: CaseFile, statement: FileStatement): string {
  const { bounds, stretches, resolved } = file.worth.of(file.statements.used.indexOf(statement));
  const said = sayChanges(file, bounds, [statement]);
  const changes = [
    ...said.changes.map(({ effect, grades, ...one }) => `  ${effect}: ${sayChange(one)} (${grades.join(', ')})`),
    ...(said.finer > 0 ? [`  ${said.finer} dates move by less than what is printed`] : []),
  ];
  const gone = resolved.map((i) => `  resolved: contradiction ${i + 1}`);
  const none = changes.length + gone.length + stretches.length === 0 ? ['  nothing changes without it'] : [];
  const gaps = stretches.length > 0 ? ['  the separate stretches of a date with gaps become others'] : [];
  return [`${statement.id}: ${statement.text} (${statement.grade})`, ...gone, ...changes, ...gaps, ...none].join('\n');
}

function checkFirst(file: CaseFile): string {
  const { languages, printedGrade } = file.settings;
  const objects = file.catalogue.ofType('object').filter((one) => one.keys['key-events'] !== undefined);
  if (objects.length === 0)
    return 'No object names its key events yet. Add "key-events: [EV-...]" to an object to see what to check first.\n';
  return objects
    .map((object) => {
      const statements = whatToCheckFirst(file, object).map(({ statement, moved }, i) =>
        [
          `  ${i + 1}. ${statement.id}: ${statement.text} (${statement.grade})`,
          ...lines(file, moved, [statement]),
        ].join('\n'),
      );
      const roots = leaveOneRootOut(file, object).map(
        ({ root, statements: out, moved }) =>
          `  without ${sayTitles(file.catalogue, [root], languages)} [${root}] and what goes back to it alone (${out.map((one) => one.id).join(', ')}):\n${lines(file, moved, out).join('\n')}`,
      );
      return [
        `What to check first for ${titleOf(object, languages)} (${object.id}), on ${printedGrade} statements; for readers inside the institution`,
        ...(statements.length > 0 ? statements : ['  No statement below "established" moves its key events.']),
        ...(roots.length > 0 ? ['', '  One root left out after the other:', ...roots] : []),
      ].join('\n');
    })
    .join('\n\n')
    .concat('\n');
}

function lines(file: CaseFile, moved: readonly MovedBound[], withdrawn: readonly FileStatement[]): readonly string[] {
  return sayChanges(file, moved, withdrawn).changes.map((one) => `       ${sayChange(one)}`);
}

function sayChange({ of, title, was, is }: Pick<EntryChange, 'of' | 'title' | 'was' | 'is'>): string {
  return `${sayChanged(of, title)}: ${was} → ${is}`;
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
          was,
          is,
        })),
      };
    }),
  };
}
