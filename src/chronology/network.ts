/**
 * The network of moments: difference constraints on whole days
 * (Dechter, Meiri and Pearl, Artificial Intelligence 49, 1991). It knows no walls: moments are
 * numbers, statements are ids with a rank.
 */

/** Stands for the origin of time in a link: a bound on one moment alone. */
export const ORIGIN = -1;

/**
 * One constraint: `to` lies at least `days` after `from` (negative: at most that many before).
 * With `from` = ORIGIN the moment `to` is not before day `days`; with `to` = ORIGIN the moment
 * `from` is not after day `-days`. `role` names the sentence that explains it.
 */
export interface Link {
  readonly from: number;
  readonly to: number;
  readonly days: number;
  readonly role: string;
}

/** A statement of the file: withdrawn or kept as a whole. */
export interface NetworkStatement {
  readonly id: string;
  /** Rank of its effective grade, 0 (established) to 3 (conjectural). */
  readonly rank: number;
  /** What holds whatever member of `choice` is true: the hull. */
  readonly links: readonly Link[];
  /** For a date with gaps: one list of links a member, of which exactly one holds. */
  readonly choice?: readonly (readonly Link[])[];
  /** True for after, before, over, cuts, fills, and same-as: what a loop of order is made of. */
  readonly order?: 'order' | 'same';
}

/** Moments 0 to `moments - 1`, what always holds (starts before ends), and the statements. */
export interface Network {
  readonly moments: number;
  readonly axioms: readonly Link[];
  readonly statements: readonly NetworkStatement[];
}

/** Number of grades. */
export const RANKS = 4;
