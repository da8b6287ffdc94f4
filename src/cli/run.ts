import { parseArgs } from 'node:util';
import { nearest } from '../base/nearest.ts';
import { inRow, phrase, type Said } from '../base/said.ts';
import { COMMANDS } from './command-list.ts';
import type { Command, Options } from './commands.ts';
import type { Effects } from './effects.ts';
import { Fault } from './fault.ts';

const EVERY: Readonly<Record<string, 'value' | 'switch'>> = { in: 'value', audience: 'value', help: 'switch' };

/**
 * Runs one command line; returns the exit code: 0 clean, 1 problems in the entries, 2 fault.
 */
export async function run(line: readonly string[], effects: Effects): Promise<number> {
  const [name, ...rest] = line;
  if (name === undefined || name === '--help' || name === '-h' || name === 'help') {
    effects.out(overview());
    return 0;
  }
  const command = COMMANDS.find((one) => one.name === name);
  try {
    if (!command) {
      const [near] = nearest(
        name,
        COMMANDS.map((one) => one.name),
        1,
      );
      throw new Fault(
        phrase(
          'There is no command "{0}".{1}\n{2}',
          name,
          near ? phrase(' Did you mean "{0}"?', near) : '',
          overview(),
        ),
      );
    }
    const options = parse(command, rest);
    if (options.flags.help) {
      effects.out(helpOf(command));
      return 0;
    }
    const doing = await command.load();
    return await doing(options, asTyped(effects, options));
  } catch (error) {
    const folder = rest[rest.indexOf('--in') + 1];
    asTyped(effects, { words: [], flags: rest.includes('--in') && folder ? { in: folder } : {} }).err(
      inRow([faultWords(error), '\n'], ''),
    );
    return 2;
  }
}

/** Commands that are named in what the program prints, and work on a folder. */
const NAMED = /(?<![\w/-])kerfmark (check|new|serve|begin|dates|why|build|schema|explain)(?=["”\s.,;]|$)/g;

/** Effects that name commands as they must be typed here: with `npx` where it was used, and with the folder given. */
function asTyped(effects: Effects, { flags }: Options): Effects {
  const { program } = effects;
  if (program === undefined || flags.json || flags.format === 'json' || flags.format === 'sarif') return effects;
  const given = typeof flags.in === 'string' ? ` --in ${/\s/.test(flags.in) ? `"${flags.in}"` : flags.in}` : '';
  const typed = (text: string): string =>
    text.replace(NAMED, (_, name: string) => `${program} ${name}${name === 'explain' ? '' : given}`);
  const { say } = effects.sayer;
  return { ...effects, out: (said) => effects.out(typed(say(said))), err: (said) => effects.err(typed(say(said))) };
}

function parse(command: Command, rest: readonly string[]): Options {
  const flags = { ...EVERY, ...command.flags };
  try {
    const { values, positionals } = parseArgs({
      args: [...rest],
      allowPositionals: true,
      options: Object.fromEntries(
        Object.entries(flags).map(([flag, kind]) => [
          flag,
          { type: kind === 'value' ? 'string' : 'boolean', multiple: flag === 'without' },
        ]),
      ),
    });
    const most = command.words ?? 0;
    const without = (values as { without?: readonly string[] }).without;
    // "--without A, B": what stands after the comma came as a word of its own.
    const spread = without?.some((one) => one.trim().endsWith(',')) ? positionals.slice(most) : [];
    const stray = positionals.slice(most + spread.length);
    if (stray.length > 0)
      throw new Fault(phrase('"{0}" is not understood here.\nUsage: {1}', stray.join(' '), command.usage));
    const joined = without ? { ...values, without: [...without, ...spread].join(',') } : values;
    return { words: positionals.slice(0, most), flags: joined as Options['flags'] };
  } catch (error) {
    if (error instanceof Fault) throw error;
    throw new Fault(phrase('{0}.\nUsage: {1}', (error as Error).message.split('. To specify')[0], command.usage));
  }
}

function faultWords(error: unknown): Said {
  if (error instanceof Fault) return error.said;
  const { code, message } = systemErrorIn(error) ?? { code: undefined, message: '' };
  if (code === 'ENOSPC' || code === 'EDQUOT')
    return phrase('The disk is full. Nothing was changed: the last good site is still there. Make room and try again.');
  if (code === 'EROFS')
    return phrase(
      'The folder can only be read: {0}. Nothing was changed. Work on a copy, or name another folder with --out.',
      message,
    );
  if (code === 'EACCES' || code === 'EPERM') return phrase('Not allowed: {0}. Check who owns the folder.', message);
  if (code === 'EMFILE' || code === 'ENFILE')
    return phrase('Too many files are open on this computer. Close other programs and try again.');
  if (code === 'EADDRINUSE') return phrase('That port is in use. Try another with --port.');
  return phrase(
    'This is a mistake of the program, not of your entries. Please report it with these lines:\n{0}',
    ((error as Error).stack ?? String(error)).slice(0, 4000),
  );
}

/** What the system said, however deep other errors were wrapped around it. */
function systemErrorIn(error: unknown): NodeJS.ErrnoException | null {
  for (let at = error as ErrorAround | undefined, depth = 0; at && depth < 10; depth += 1) {
    if (typeof at.code === 'string' && /^E[A-Z]+$/.test(at.code)) return at;
    at = (at.originalError ?? at.cause) as ErrorAround | undefined;
  }
  return null;
}

type ErrorAround = NodeJS.ErrnoException & { readonly originalError?: unknown };

function overview(): Said {
  const width = Math.max(...COMMANDS.map((one) => one.name.length)) + 2;
  const lines = COMMANDS.map((one): Said => inRow([inRow(['  ', one.name.padEnd(width)], ''), one.summary], ''));
  return phrase(
    'kerfmark COMMAND [options]\n\n{0}\n\nEvery command takes --in FOLDER (the folder that holds entries/) and --help.\n',
    inRow(lines, '\n'),
  );
}

function helpOf(command: Command): Said {
  return phrase(
    '{0}: {1}\n\n  {2}\n\nExamples:\n{3}\n\nExit code: 0 clean, 1 problems in the entries, 2 fault.\n',
    command.name,
    command.summary,
    command.usage,
    command.examples.map((one) => `  ${one}`).join('\n'),
  );
}
