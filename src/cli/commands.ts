import path from 'node:path';
import { ACCESS, type Access } from '../base/access.ts';
import { phrase, type Said } from '../base/said.ts';
import type { LineStyle } from '../custody/write-line.ts';
import type { Effects } from './effects.ts';
import { Fault } from './fault.ts';

/** Options that a command was given, after parsing. */
export interface Options {
  readonly words: readonly string[];
  readonly flags: Readonly<Record<string, string | boolean | undefined>>;
}

/** The doing of a command; returns the exit code: 0 clean, 1 problems in the entries. */
export type RunCommand = (options: Options, effects: Effects) => Promise<number>;

/** One command: what it does in a line, how it is typed, and how its doing is loaded. */
export interface Command {
  readonly name: string;
  readonly summary: Said;
  readonly usage: string;
  readonly examples: readonly string[];
  /** Words that may stand before the flags; none where it is missing. */
  readonly words?: number;
  /** Flags beyond --in, --audience and --help: name to whether it takes a value. */
  readonly flags: Readonly<Record<string, 'value' | 'switch'>>;
  /** Loads the doing, and with it all that it needs: no command waits for what another one uses. */
  load(): Promise<RunCommand>;
}

/** The folder that holds `entries/`. */
export function folderOf(options: Options, effects: Effects): string {
  return path.resolve(effects.cwd, String(options.flags.in ?? '.'));
}

/** The audience asked for; internal where none was named. */
export function audienceOf(options: Options, usual: Access = 'internal'): Access {
  const given = options.flags.audience;
  if (given === undefined) return usual;
  if (!ACCESS.includes(given as Access)) {
    throw new Fault(phrase('"{0}" is no audience. The audiences are: {1}.', String(given), ACCESS.join(', ')));
  }
  return given as Access;
}

/** The language to show first (`--language fr`); null where none was named. */
export function languageOf(options: Options): string | null {
  const given = options.flags.language;
  if (given === undefined) return null;
  if (typeof given === 'string' && /^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$/.test(given)) return given;
  throw new Fault(phrase('"{0}" is no language. Write its tag, such as fr or el.', String(given)));
}

/** A flag whose value must be one of some words. */
export function choiceOf<Word extends string>(
  options: Options,
  flag: string,
  words: readonly Word[],
  usual: Word,
): Word {
  const given = options.flags[flag];
  if (given === undefined) return usual;
  if (!words.includes(given as Word))
    throw new Fault(
      phrase('"{0}" cannot stand after --{1}. Write one of: {2}.', String(given), flag, words.join(', ')),
    );
  return given as Word;
}

/** The flags of a command that writes documents. */
export const DOCUMENT_FLAGS = { format: 'value', out: 'value', language: 'value', json: 'switch' } as const;

/** Flags that say how a provenance line is set. */
export const LINE_FLAGS = { 'latest-first': 'switch', 'periods-direct': 'switch' } as const;

/** How provenance lines are written or read: by flags, else as the workspace has it. */
export function lineStyleOf(options: Options, usual: LineStyle): LineStyle {
  return {
    order: options.flags['latest-first'] ? 'latest first' : usual.order,
    marks: options.flags['periods-direct'] ? 'period is direct' : usual.marks,
  };
}
