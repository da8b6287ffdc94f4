import type { Said } from '../base/said.ts';
import type { Language } from '../language/language.ts';
import type { Sayer } from '../language/sayer.ts';
/** A step of long work: what is done, and how much of it where that can be counted. */
export interface Step {
  readonly what: Said;
  readonly done?: number;
  readonly all?: number;
}

/** What a command may do to the world; handed in as one argument, so that tests can replace it. */
export interface Effects {
  readonly cwd: string;
  /** How the program was called (`npx kerfmark`), so that it names commands as they must be typed; `kerfmark` where missing. */
  readonly program?: string;
  /** The languages that are spoken. */
  readonly languages: readonly Language[];
  /** Who says what the terminal prints. */
  readonly sayer: Sayer;
  out(text: Said): void;
  err(text: Said): void;
  /** Tells how far long work is, where somebody looks on; nothing in pipes. */
  progress?(step: Step): void;
  /** Today, as an ISO date; from SOURCE_DATE_EPOCH where that is set, so that builds can be repeated. */
  today(): string;
  /** Asks a question on the terminal; null where nobody can answer. */
  ask(question: Said): Promise<string | null>;
}

/** The progress of effects as a property to hand on; nothing where nobody looks on. */
export function progressOf(effects: Effects): { readonly progress?: (step: Step) => void } {
  const { progress } = effects;
  return progress ? { progress } : {};
}
