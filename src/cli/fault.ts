import type { Said } from '../base/said.ts';
import { ENGLISH } from '../language/language.ts';
import { sayerIn } from '../language/sayer.ts';

/** A fault that stops a command: exit code 2, words instead of a stack trace. */
export class Fault extends Error {
  /** What is told, in the language of whoever reads it. */
  readonly said: Said;

  constructor(said: Said) {
    super(sayerIn(ENGLISH).say(said));
    this.said = said;
  }
}
