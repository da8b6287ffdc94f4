#!/usr/bin/env node
import path from 'node:path';
import { sayerIn } from '../language/sayer.ts';
import type { Effects } from './effects.ts';
import { prepareEngine } from './engine.ts';
import { loadLanguages, terminalLanguage } from './languages.ts';
import { packageRoot } from './package-root.ts';
import { ProgressLine } from './progress-line.ts';
import { run } from './run.ts';
import { TypedAnswers } from './typed-answers.ts';

const answers = new TypedAnswers();
const languages = loadLanguages(path.join(packageRoot(), 'src', 'language'));
const sayer = sayerIn(terminalLanguage(languages, process.env));

/** Only where a person looks on: not in pipes, not in the log of a machine. */
const line =
  process.stderr.isTTY && process.env.TERM !== 'dumb'
    ? new ProgressLine(
        sayer,
        (text) => process.stderr.write(text),
        () => process.stderr.columns || 80,
        () => performance.now(),
      )
    : null;

const effects: Effects = {
  cwd: process.cwd(),
  program: process.env.npm_command === 'exec' ? 'npx kerfmark' : 'kerfmark',
  languages,
  sayer,
  out: (text) => {
    line?.clear();
    process.stdout.write(sayer.say(text));
  },
  err: (text) => {
    line?.clear();
    process.stderr.write(sayer.say(text));
  },
  progress: (step) => line?.show(step),
  today: () => {
    const epoch = process.env.SOURCE_DATE_EPOCH;
    const now = epoch === undefined ? new Date() : new Date(Number(epoch) * 1000);
    return now.toISOString().slice(0, 10);
  },
  ask: (question) => answers.ask(sayer.say(question)),
};

// A reader that stops early (head, less) is no fault.
process.stdout.on('error', (error: NodeJS.ErrnoException) => process.exit(error.code === 'EPIPE' ? 0 : 2));

prepareEngine(process.argv[2]);
process.exitCode = await run(process.argv.slice(2), effects);
line?.clear();
answers.close();
