import { phrase, type Said } from '../base/said.ts';
/** The format of a workspace that this program writes. It grows by one whenever something written before must be written otherwise. */
export const CURRENT_FORMAT = 2;

/** One step from a format to the next: how the text of an entry has to read. */
export interface Upgrade {
  /** The format that it leads to. */
  readonly to: number;
  readonly what: Said;
  /** The text as it has to read; the same text where nothing is to be done. */
  change(text: string): string;
}

/** All steps, in order. They are kept for ever, so that every old workspace can be opened. */
export const UPGRADES: readonly Upgrade[] = [
  {
    to: 1,
    what: phrase('the workspace says of which format it is'),
    // Files written before the first format bear no number; nothing else in them has to change.
    change: (text) =>
      /^type:[ \t]*["']?workspace\b/m.test(text)
        ? text.replace(/^(type:[ \t]*["']?workspace\b.*)$/m, '$1\nformat: 1')
        : text,
  },
  {
    to: 2,
    what: phrase('letters lie in entries/sent, each with the values that it rests on'),
    // The letters themselves are moved by the command; the entries that name them are written with them.
    change: (text) =>
      /^type:[ \t]*["']?workspace\b/m.test(text) ? text.replace(/^format:[ \t]*1[ \t]*$/m, 'format: 2') : text,
  },
];

/**
 * Applies the steps from a format on, each to the text that the one before left.
 *
 * @param format the format of the workspace; 0 where it does not say
 */
export function upgradeText(text: string, format: number, steps: readonly Upgrade[] = UPGRADES): string {
  return steps.filter((one) => one.to > format).reduce((left, one) => one.change(left), text);
}
