import { answer } from './answer.ts';
import { begin } from './begin.ts';
import { build } from './build.ts';
import { check } from './check.ts';
import type { Command } from './commands.ts';
import { custody } from './custody.ts';
import { dates } from './dates.ts';
import { explain } from './explain.ts';
import { exportCommand } from './export.ts';
import { appendix, fileCommand } from './file.ts';
import { importCommand } from './import.ts';
import { newEntry } from './new-entry.ts';
import { number } from './number.ts';
import { panels } from './panels.ts';
import { references } from './references.ts';
import { schema } from './schema.ts';
import { serve } from './serve.ts';
import { card, sheet } from './sheet.ts';
import { upgrade } from './upgrade.ts';
import { why } from './why.ts';
import { worth } from './worth.ts';

/** All commands, in the order in which the help tells them. */
export const COMMANDS: readonly Command[] = [
  begin,
  newEntry,
  importCommand,
  check,
  explain,
  dates,
  why,
  worth,
  references,
  custody,
  panels,
  answer,
  fileCommand,
  appendix,
  exportCommand,
  sheet,
  card,
  serve,
  build,
  number,
  upgrade,
  schema,
];
