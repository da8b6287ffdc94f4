import type { Sayer } from '../language/sayer.ts';
import type { Step } from './effects.ts';

/** Shortest time between two lines, in milliseconds. */
const PAUSE_MS = 80;

/** One line of a terminal that is written over as the work goes on, and cleared before anything else is printed. */
export class ProgressLine {
  private readonly write: (text: string) => void;
  private readonly sayer: Sayer;
  private readonly columns: () => number;
  private readonly now: () => number;
  private last = Number.NEGATIVE_INFINITY;
  private what = '';
  private shown = false;

  constructor(sayer: Sayer, write: (text: string) => void, columns: () => number, now: () => number) {
    this.sayer = sayer;
    this.write = write;
    this.columns = columns;
    this.now = now;
  }

  /** Shows a step; steps that follow faster than the eye are passed over. */
  show({ what, done, all }: Step): void {
    const name = this.sayer.say(what);
    const isNew = name !== this.what;
    if (!isNew && this.now() - this.last < PAUSE_MS) return;
    this.last = this.now();
    this.what = name;
    this.shown = true;
    const words = all === undefined ? name : this.sayer.words('{0} {1} of {2}', name, done ?? 0, all);
    this.write(`\r\u001b[K${words.slice(0, Math.max(10, this.columns() - 1))}`);
  }

  /** Takes the line away. */
  clear(): void {
    if (!this.shown) return;
    this.shown = false;
    this.what = '';
    this.write('\r\u001b[K');
  }
}
