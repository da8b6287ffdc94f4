import { compute, hasErrors } from '../pipeline.ts';
import { audienceOf, type Command, choiceOf, folderOf } from './commands.ts';
import { formatProblems, PROBLEM_FORMATS } from './format-problems.ts';
import { loadWorkspace } from './load-workspace.ts';

export const check: Command = {
  name: 'check',
  summary: 'reads all entries and says what is wrong, where, and how to mend it',
  usage: 'kerfmark check [--in FOLDER] [--format text|json|sarif | --json] [--audience A]',
  examples: ['kerfmark check', 'kerfmark check --in ../lerakos --format sarif'],
  flags: { format: 'value', json: 'switch' },
  async run(options, effects) {
    const files = await loadWorkspace(folderOf(options, effects));
    const { problems } = compute(files, audienceOf(options, 'restricted'));
    const format = options.flags.json ? 'json' : choiceOf(options, 'format', PROBLEM_FORMATS, 'text');
    effects.out(formatProblems(problems, format));
    return hasErrors(problems) ? 1 : 0;
  },
};
