import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { nearest } from '../base/nearest.ts';
import { inRow, phrase } from '../base/said.ts';
import type { RunCommand } from './commands.ts';
import { Fault } from './fault.ts';
import { packageRoot } from './package-root.ts';

export const explain: RunCommand = async (options, effects) => {
  const folder = path.join(packageRoot(), 'docs', 'messages');
  const codes = (await readdir(folder)).map((name) => name.replace(/\.md$/, ''));
  const code = options.words[0]?.replace(/^\[|\]$/g, '');
  if (code === undefined || !codes.includes(code)) {
    const [near] = code === undefined ? [] : nearest(code, codes, 1);
    throw new Fault(
      inRow(
        [
          code === undefined
            ? phrase('Which message? Its code stands in square brackets, such as [date-winter].')
            : phrase('There is no message "{0}".', code),
          near ? phrase(' Did you mean "{0}"?', near) : '',
        ],
        '',
      ),
    );
  }
  effects.out(await readFile(path.join(folder, `${code}.md`), 'utf8'));
  return 0;
};
