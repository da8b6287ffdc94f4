import { oncePer } from '../base/once.ts';
import { type Chronology, computeChronology, type Trial, type Tried } from './chronology.ts';
import { AXIOM } from './compiled.ts';
import { type Part, partOf, tiedGroups } from './part-of-network.ts';
import type { Reason } from './reason-finder.ts';

/** What a trial answers, and the moments of which the answer may be another than that of the file as it stands. */
export interface LocalTrial extends Tried {
  readonly moments: readonly number[];
}

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

/**
 * Opens the trials of a chronology; `withdrawn`: statements that do not stand in it already. Nothing but moments tied to a
 * statement can move with it, so a trial in a large file costs what it costs in a small one, and answers the same.
 */
export function openTrials(standing: Chronology, withdrawn: ReadonlySet<number>): Trials {
  const { compiled } = standing;
  const groups = tiedGroups(compiled, new Uint8Array(compiled.network.statements.length).fill(1));
  const groupOf = new Map(groups.flatMap((group) => group.map((one) => [one, group] as const)));
  const pieceOf = oncePer((group: readonly number[]): Piece => cutOut(standing, group, withdrawn));
  return {
    tiedTo: (statement) => groupOf.get(statement) ?? [statement],
    of(trial) {
      const touched = [...(trial.withdrawn ?? []), ...(trial.ranks?.keys() ?? [])];
      const own = new Set(touched.flatMap((one) => [groupOf.get(one) ?? []]).filter((group) => group.length > 0));
      const tried = [...own].map((group) => {
        const piece = pieceOf(group);
        return { piece, chronology: tryIn(piece, trial, withdrawn) };
      });
      const at = new Map(tried.flatMap((one) => one.piece.part.moments.map((moment) => [moment, one] as const)));
      return {
        moments: [...at.keys()].sort((a, b) => a - b),
        day(rank, moment, side) {
          const one = at.get(moment);
          return one
            ? one.chronology.day(rank, one.piece.moments.get(moment) as number, side)
            : standing.day(rank, moment, side);
        },
        reason(rank, moment, side) {
          const one = at.get(moment);
          return one
            ? inWhole(one.piece, one.chronology.reason(rank, one.piece.moments.get(moment) as number, side))
            : standing.reason(rank, moment, side);
        },
      };
    },
  };
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
