import { compute } from '../pipeline.ts';
import { audienceOf, choiceOf, folderOf, type RunCommand } from './commands.ts';
import { formatProblems, PROBLEM_FORMATS } from './format-problems.ts';
import { loadWorkspace } from './load-workspace.ts';

export const check: RunCommand = async (options, effects) => {
  const files = await loadWorkspace(folderOf(options, effects));
  const { problems, errors } = compute(files, audienceOf(options, 'restricted'), {
    spoken: effects.sayer.language,
    today: effects.today(),
  });
  const format = options.flags.json ? 'json' : choiceOf(options, 'format', PROBLEM_FORMATS, 'text');
  effects.out(formatProblems(effects.sayer, problems, format));
  return errors.length > 0 ? 1 : 0;
};
