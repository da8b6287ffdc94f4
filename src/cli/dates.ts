import { GRADES } from '../base/grade.ts';
import type { CaseFile } from '../findings/case-file.ts';
import { datesReport } from '../findings/dates-report.ts';
import { sayRange } from '../findings/printed-range.ts';
import { titleOf } from '../model/catalogue.ts';
import { compute, hasErrors } from '../pipeline.ts';
import { audienceOf, type Command, folderOf, type Options } from './commands.ts';
import { countWords, formatProblems } from './format-problems.ts';
import { Fault, loadWorkspace } from './load-workspace.ts';

export const dates: Command = {
  name: 'dates',
  summary: 'prints the range of every moment at each grade, and what contradicts what',
  usage: 'kerfmark dates [--in FOLDER] [--json] [--audience A] [--without ID,ID]',
  examples: ['kerfmark dates', 'kerfmark dates --json --audience public', 'kerfmark dates --without CL-4,EV-removal#2'],
  flags: { json: 'switch', without: 'value' },
  async run(options, effects) {
    const files = await loadWorkspace(folderOf(options, effects));
    const withdrawn = withdrawnOf(options);
    const { file, problems } = compute(files, audienceOf(options), withdrawn);
    const unknown = withdrawn.filter((id) => !file.statement(id));
    if (unknown.length > 0)
      throw new Fault(
        `There is no statement ${unknown.join(', ')} for this audience. "kerfmark dates --json" lists the statements.`,
      );
    const errors = problems.filter((one) => one.severity === 'error');
    if (options.flags.json) effects.out(`${JSON.stringify(datesReport(file), null, 2)}\n`);
    else effects.out(table(file));
    if (errors.length > 0)
      effects.err(`${formatProblems(errors, 'text')}The ranges rest on the entries that could be read.\n`);
    else if (problems.length > 0 && !options.flags.json)
      effects.err(`${countWords(problems)} "kerfmark check" shows them.\n`);
    return hasErrors(problems) ? 1 : 0;
  },
};

/** Statements named after --without. */
export function withdrawnOf(options: Options): readonly string[] {
  const text = options.flags.without;
  return typeof text === 'string'
    ? text
        .split(',')
        .map((id) => id.trim())
        .filter((id) => id !== '')
    : [];
}

function table(file: CaseFile): string {
  const lines: string[] = [];
  if (file.withdrawn.length > 0)
    lines.push(`A trial without ${file.withdrawn.join(', ')}; the file itself is not changed.`, '');
  for (const moment of file.statements.moments.all) {
    const entry = file.catalogue.get(moment.entry);
    lines.push(`${moment.entry} ${moment.edge}${entry ? `  ${titleOf(entry, file.settings.languages)}` : ''}`);
    for (const range of file.rangesOf(moment)) {
      const because = [
        ...new Set([...(range.earliest?.because ?? []), ...(range.latest?.because ?? [])].map((one) => one.id)),
      ];
      const told = [
        ...(range.consistent ? [] : ['contradicted']),
        ...(because.length > 0 ? [`rests on ${because.join(', ')}`] : []),
        ...(range.setAside.length > 0 ? [`set aside: ${range.setAside.map((one) => one.id).join(', ')}`] : []),
      ];
      lines.push(`  ${range.grade.padEnd(12)} ${sayRange(range).padEnd(34)} ${told.join('; ')}`.trimEnd());
    }
  }
  lines.push('', contradictionWords(file));
  return `${lines.join('\n')}\n`;
}

function contradictionWords(file: CaseFile): string {
  if (file.contradictions.length === 0)
    return `No statements contradict each other at any of the grades (${GRADES.join(', ')}).`;
  const lines = file.contradictions.flatMap((one) => [
    `${one.kind === 'order' ? 'A loop of order' : 'Statements that cannot all be right'} (${one.grade}): ${one.statements.map((s) => s.id).join(', ')}`,
    ...one.statements.map((s) => `    ${s.id}: ${s.text} (${s.grade})`),
    `    Ways out: ${one.waysOut.map((way) => `without ${way.map((s) => s.id).join(' and ')}`).join('; or ')}`,
  ]);
  return lines.join('\n');
}
