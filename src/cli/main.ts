#!/usr/bin/env node
import { createInterface } from 'node:readline/promises';
import type { Effects } from './effects.ts';
import { run } from './run.ts';

const effects: Effects = {
  cwd: process.cwd(),
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
  today: () => {
    const epoch = process.env.SOURCE_DATE_EPOCH;
    const now = epoch === undefined ? new Date() : new Date(Number(epoch) * 1000);
    return now.toISOString().slice(0, 10);
  },
  ask: async (question) => {
    if (!process.stdin.isTTY) return null;
    const reader = createInterface({ input: process.stdin, output: process.stdout });
    const answer = await reader.question(question);
    reader.close();
    return answer;
  },
};

// A reader that stops early (head, less) is no fault.
process.stdout.on('error', (error: NodeJS.ErrnoException) => process.exit(error.code === 'EPIPE' ? 0 : 2));

process.exitCode = await run(process.argv.slice(2), effects);
