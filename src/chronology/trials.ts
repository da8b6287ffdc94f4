import { oncePer } from '../base/once.ts';
import { type Chronology, computeChronology, type Trial, type Tried } from './chronology.ts';
import { AXIOM } from './compiled.ts';
import type { Contradiction } from './contradictions.ts';
import { type Part, partOf, tiedGroups } from './part-of-network.ts';
import type { Reason } from './reason-finder.ts';

/** What a trial answers of the whole file, and the moments of which the answer may be another than as it stands. */
export interface LocalTrial extends Tried {
  readonly moments: readonly number[];
  /** Contradictions in the trial, in statements of the whole network; those of other groups stay as they are. */
  readonly contradictions: readonly TriedContradiction[];
}

/** Statements that cannot all be right in a trial. */
export type TriedContradiction = Pick<Contradiction, 'kind' | 'rank' | 'statements'>;

/** Trials of a chronology, each computed only in what is tied to the statements that it is about. */
export interface Trials {
  of(trial: Trial): LocalTrial;
  /** Statements that are tied to one, itself included, whatever their grades. */
  tiedTo(statement: number): readonly number[];
}

/** What is tied together, as a network of its own with its own chronology as it stands. */
interface Piece {
  readonly part: Part;
  readonly standing: Chronology;
  /** Moments and statements of the whole network to those of the piece. */
  readonly moments: ReadonlyMap<number, number>;
  readonly statements: ReadonlyMap<number, number>;
}

/** A piece in a trial. */
interface TriedPiece {
  readonly piece: Piece;
  readonly chronology: Chronology;
}

/** Trials that are remembered, so that those who ask for the same one do not compute it again; the oldest goes first. */
const MOST_REMEMBERED = 400;

/**
 * Opens the trials of a chronology; `withdrawn`: statements that do not stand in it already. Nothing but moments tied to a
 * statement can move with it, so a trial in a large file costs what it costs in a small one, and answers the same. The
 * commands, the pages and the live page all try in this way.
 */
export function openTrials(standing: Chronology, withdrawn: ReadonlySet<number> = new Set()): Trials {
  const { compiled } = standing;
  const groups = tiedGroups(compiled, new Uint8Array(compiled.network.statements.length).fill(1));
  const groupOf = new Map(groups.flatMap((group) => group.map((one) => [one, group] as const)));
  const pieceOf = oncePer((group: readonly number[]): Piece => cutOut(standing, group, withdrawn));
  const tryOut = (trial: Trial): LocalTrial => {
    const touched = [...(trial.withdrawn ?? []), ...(trial.ranks?.keys() ?? [])];
    const own = new Set(touched.flatMap((one) => [groupOf.get(one) ?? []]).filter((group) => group.length > 0));
    const pieces = [...own].map(pieceOf);
    return answersOf(
      standing,
      pieces.map((piece) => ({ piece, chronology: tryIn(piece, trial, withdrawn) })),
    );
  };
  const known = new Map<string, LocalTrial>();
  return {
    tiedTo: (statement) => groupOf.get(statement) ?? [statement],
    of(trial) {
      const key = `${[...(trial.withdrawn ?? [])].join(',')} ${[...(trial.ranks ?? [])].join(';')}`;
      const before = known.get(key);
      if (before) return before;
      const fresh = tryOut(trial);
      const [oldest] = known.keys();
      if (known.size >= MOST_REMEMBERED && oldest !== undefined) known.delete(oldest);
      known.set(key, fresh);
      return fresh;
    },
  };
}

/** The answers of the pieces that were tried, and of the file as it stands for all others. */
function answersOf(standing: Chronology, tried: readonly TriedPiece[]): LocalTrial {
  const at = new Map(tried.flatMap((one) => one.piece.part.moments.map((moment) => [moment, one] as const)));
  const ask = <Answer>(
    moment: number,
    inTrial: (one: TriedPiece, local: number) => Answer,
    asItStands: () => Answer,
  ): Answer => {
    const one = at.get(moment);
    return one ? inTrial(one, one.piece.moments.get(moment) as number) : asItStands();
  };
  return {
    moments: [...at.keys()].sort((a, b) => a - b),
    get contradictions() {
      const inPieces = new Set(tried.flatMap(({ piece }) => piece.part.statements));
      const others = standing.disagreements.contradictions.filter(
        ({ statements }) => !inPieces.has(statements[0] ?? -1),
      );
      return [...others, ...tried.flatMap(({ piece, chronology }) => contradictionsOf(piece, chronology))];
    },
    day: (rank, moment, side) =>
      ask(
        moment,
        ({ chronology }, local) => chronology.day(rank, local, side),
        () => standing.day(rank, moment, side),
      ),
    reason: (rank, moment, side) =>
      ask(
        moment,
        ({ piece, chronology }, local) => inWhole(piece, chronology.reason(rank, local, side)),
        () => standing.reason(rank, moment, side),
      ),
    isContradicted: (rank, moment) =>
      ask(
        moment,
        ({ chronology }, local) => chronology.isContradicted(rank, local),
        () => standing.isContradicted(rank, moment),
      ),
    crossing: (rank, moment) =>
      ask(
        moment,
        ({ chronology }, local) => chronology.crossing(rank, local),
        () => standing.crossing(rank, moment),
      ),
  };
}

function contradictionsOf({ part }: Piece, { disagreements }: Chronology): readonly TriedContradiction[] {
  return disagreements.contradictions.map(({ kind, rank, statements }) => ({
    kind,
    rank,
    statements: statements.map((one) => part.statements[one] as number),
  }));
}

function cutOut({ compiled }: Chronology, group: readonly number[], withdrawn: ReadonlySet<number>): Piece {
  const part = partOf(compiled, group);
  const statements = new Map(part.statements.map((one, local) => [one, local]));
  return {
    part,
    statements,
    moments: new Map(part.moments.map((one, local) => [one, local])),
    standing: computeChronology(part.compiled.network, { withdrawn: localOf(statements, withdrawn) }),
  };
}

function tryIn({ part, statements, standing }: Piece, trial: Trial, withdrawn: ReadonlySet<number>): Chronology {
  const ranks = [...(trial.ranks ?? [])].flatMap(([one, rank]) => {
    const local = statements.get(one);
    return local === undefined ? [] : [[local, rank] as const];
  });
  const less = localOf(statements, [...withdrawn, ...(trial.withdrawn ?? [])]);
  return computeChronology(part.compiled.network, { withdrawn: less, ranks: new Map(ranks) }, standing);
}

function localOf(statements: ReadonlyMap<number, number>, wanted: Iterable<number>): ReadonlySet<number> {
  return new Set([...wanted].flatMap((one) => statements.get(one) ?? []));
}

/** A reason of a piece in moments and statements of the whole network. */
function inWhole({ part }: Piece, { statements, steps }: Reason): Reason {
  const whole = (owner: number): number => (owner === AXIOM ? AXIOM : (part.statements[owner] as number));
  return {
    statements: statements.map(whole),
    steps: steps.map((step) => ({
      ...step,
      owner: whole(step.owner),
      moment: part.moments[step.moment] as number,
    })),
  };
}
