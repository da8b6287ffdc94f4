#!/usr/bin/env node
import type { Effects } from './effects.ts';
import { prepareEngine } from './engine.ts';
import { ProgressLine } from './progress-line.ts';
import { run } from './run.ts';
import { TypedAnswers } from './typed-answers.ts';

const answers = new TypedAnswers();

/** Only where a person looks on: not in pipes, not in the log of a machine. */
const line =
  process.stderr.isTTY && process.env.TERM !== 'dumb'
    ? new ProgressLine(
        (text) => process.stderr.write(text),
        () => process.stderr.columns || 80,
        () => performance.now(),
      )
    : null;

const effects: Effects = {
  cwd: process.cwd(),
  program: process.env.npm_command === 'exec' ? 'npx kerfmark' : 'kerfmark',
  out: (text) => {
    line?.clear();
    process.stdout.write(text);
  },
  err: (text) => {
    line?.clear();
    process.stderr.write(text);
  },
  progress: (step) => line?.show(step),
  today: () => {
    const epoch = process.env.SOURCE_DATE_EPOCH;
    const now = epoch === undefined ? new Date() : new Date(Number(epoch) * 1000);
    return now.toISOString().slice(0, 10);
  },
  ask: (question) => answers.ask(question),
};

// A reader that stops early (head, less) is no fault.
process.stdout.on('error', (error: NodeJS.ErrnoException) => process.exit(error.code === 'EPIPE' ? 0 : 2));

prepareEngine(process.argv[2]);
process.exitCode = await run(process.argv.slice(2), effects);
line?.clear();
answers.close();
