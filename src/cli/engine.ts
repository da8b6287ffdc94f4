import { setFlagsFromString } from 'node:v8';

/** What the engine may be told; a test says whether it still knows the words, since it would complain of others. */
export const ENGINE_FLAGS = {
  /** A command is over before most of its functions have paid for being compiled a second time: a third of its work is spared. */
  compileLate: '--interrupt-budget=1000000',
  /** A large site leaves much behind while it is made: less than half the memory for a little time. */
  clearUpSooner: '--heap-growing-percent=25',
} as const;

/** Commands that work long enough for compiled code to pay. */
const LONG: readonly string[] = ['build', 'serve'];

/** Tells the engine, before anything is loaded, what kind of work comes. */
export function prepareEngine(command: string | undefined): void {
  if (command !== undefined && !LONG.includes(command)) setFlagsFromString(ENGINE_FLAGS.compileLate);
}

/** Tells the engine that much will be left behind. */
export function clearUpSooner(): void {
  setFlagsFromString(ENGINE_FLAGS.clearUpSooner);
}
