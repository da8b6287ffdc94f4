import { oncePerName } from '../base/once.ts';
import type { Active } from './bounds.ts';
import type { Stretch } from './choices.ts';
import type { Chronology } from './chronology.ts';
import { disputedIn, findDisagreements } from './contradictions.ts';
import { keptSets } from './kept-sets.ts';
import { Loosening } from './loosening.ts';
import { RANKS } from './network.ts';
import { type Part, partOf, tiedGroups } from './part-of-network.ts';
import { type Ranges, rangesOf } from './ranges.ts';
import type { Side } from './reasons.ts';

/** A bound that is another one when a statement is withdrawn; infinite days stand for "no limit known". */
export interface BoundChange {
  readonly rank: number;
  readonly moment: number;
  readonly side: Side;
  readonly before: number;
  readonly after: number;
}

/** Separate stretches of a moment that are others when a statement is withdrawn. */
export interface StretchChange {
  readonly rank: number;
  readonly moment: number;
  readonly before: readonly Stretch[];
  readonly after: readonly Stretch[];
}

/** What one statement is worth: all that is different without it, at each grade from its own on. */
export interface Worth {
  readonly bounds: readonly BoundChange[];
  readonly stretches: readonly StretchChange[];
  /** Contradictions that are gone, by their place in the list of the chronology. */
  readonly resolved: readonly number[];
}

/** Finds what statements are worth, on demand. */
export interface WorthFinder {
  of(statement: number): Worth;
  /** True where the worth is found without computing a whole group anew. */
  isQuick(statement: number): boolean;
}

/** Moments and statements that are tied together, as a network of their own. */
interface Group {
  readonly part: Part;
  readonly splits: boolean;
  /** False where not every contradiction of the group could be listed, or a search was cut off. */
  readonly settled: boolean;
  readonly localOf: ReadonlyMap<number, number>;
}

/**
 * Weighs the statements of a chronology: `of(s)` equals computing everything anew without s. Only
 * the moments tied to s can change. Where s is in no contradiction and no date with gaps is tied to
 * it, only the bounds that hang on s are computed (see Loosening); else its group as a whole, from
 * the contradictions already known; those are sought anew only where they could not all be listed.
 */
export function weighStatements(chronology: Chronology): WorthFinder {
  const finder = new Finder(chronology);
  return { of: (statement) => finder.of(statement), isQuick: (statement) => finder.isQuick(statement) };
}

class Finder {
  private readonly chronology: Chronology;
  private readonly groups: readonly Group[];
  private readonly groupOf = new Map<number, Group>();
  private readonly inDispute: ReadonlySet<number>;
  /** What a statement is worth, each weighed once. */
  readonly of = oncePerName((statement: number): Worth => this.weigh(statement));
  private readonly loosening = oncePerName((rankAndSide: `${number} ${Side}`): Loosening => this.loosen(rankAndSide));

  constructor(chronology: Chronology) {
    this.chronology = chronology;
    const { compiled, grades, disagreements } = chronology;
    const all = grades[RANKS - 1]?.all as Active;
    const unfinished = new Set(disagreements.unfinished.flat());
    this.groups = tiedGroups(compiled, all).map((statements): Group => {
      const part = partOf(compiled, statements);
      const cutOff = part.moments.some((moment) => grades.some((grade) => grade.ranges.inexact.has(moment)));
      return {
        part,
        splits: part.compiled.splitting.length > 0,
        settled: !cutOff && !statements.some((one) => unfinished.has(one)),
        localOf: new Map(statements.map((one, local) => [one, local])),
      };
    });
    for (const group of this.groups) for (const one of group.part.statements) this.groupOf.set(one, group);
    this.inDispute = new Set(disagreements.disputed.flatMap((one) => [...one]));
  }

  isQuick(statement: number): boolean {
    const group = this.groupOf.get(statement);
    return group === undefined || (group.settled && !group.splits && !this.inDispute.has(statement));
  }

  private weigh(statement: number): Worth {
    const { contradictions } = this.chronology.disagreements;
    const resolved = contradictions.flatMap((one, i) => (one.statements.includes(statement) ? [i] : []));
    const group = this.groupOf.get(statement);
    if (!group) return { bounds: [], stretches: [], resolved };
    return { ...(this.isQuick(statement) ? this.loosened(statement) : this.recomputed(statement, group)), resolved };
  }

  private loosened(statement: number): Omit<Worth, 'resolved'> {
    const bounds: BoundChange[] = [];
    const { compiled } = this.chronology;
    for (let rank = compiled.network.statements[statement]?.rank ?? 0; rank < RANKS; rank += 1) {
      for (const side of ['earliest', 'latest'] as const) {
        const { ranges } = this.chronology.grades[rank] as Chronology['grades'][number];
        for (const { moment, day } of this.loosening(`${rank} ${side}`).without(statement)) {
          bounds.push({ rank, moment, side, before: ranges[side][moment] as number, after: day });
        }
      }
    }
    return { bounds: bounds.sort(compareChanges), stretches: [] };
  }

  private loosen(rankAndSide: `${number} ${Side}`): Loosening {
    const [rank, side] = rankAndSide.split(' ') as [string, Side];
    const { kept, ranges } = this.chronology.grades[Number(rank)] as Chronology['grades'][number];
    return new Loosening(this.chronology.compiled, kept, ranges.hull[side], side);
  }

  private recomputed(statement: number, group: Group): Omit<Worth, 'resolved'> {
    const { part, localOf } = group;
    const all = this.chronology.grades[RANKS - 1]?.all as Active;
    const usable = Uint8Array.from(part.statements, (one) => (one !== statement && all[one] ? 1 : 0));
    const disputed = group.settled
      ? disputedIn(part.compiled, this.setsWithout(statement, localOf))
      : findDisagreements(part.compiled, usable).disputed;
    const bounds: BoundChange[] = [];
    const stretches: StretchChange[] = [];
    let better: Ranges | null = null;
    keptSets(part.compiled, usable, disputed).forEach(({ kept }, rank) => {
      const ranges = rangesOf(part.compiled, kept, better);
      better = ranges;
      if (rank >= (part.compiled.network.statements[localOf.get(statement) as number]?.rank ?? 0))
        this.compare(rank, part, ranges, bounds, stretches);
    });
    return { bounds: bounds.sort(compareChanges), stretches };
  }

  /** Contradictions of dates inside a group that do not need the statement, in its own numbers. */
  private setsWithout(statement: number, localOf: ReadonlyMap<number, number>): readonly (readonly number[])[] {
    return this.chronology.disagreements.contradictions
      .filter(({ kind, statements }) => kind === 'dates' && !statements.includes(statement))
      .filter(({ statements }) => localOf.has(statements[0] as number))
      .map(({ statements }) => statements.map((one) => localOf.get(one) as number));
  }

  private compare(rank: number, part: Part, after: Ranges, bounds: BoundChange[], stretches: StretchChange[]): void {
    const before = (this.chronology.grades[rank] as Chronology['grades'][number]).ranges;
    part.moments.forEach((moment, local) => {
      for (const side of ['earliest', 'latest'] as const) {
        const [was, is] = [before[side][moment] as number, after[side][local] as number];
        if (was !== is) bounds.push({ rank, moment, side, before: was, after: is });
      }
      const pieces = [before.stretches.get(moment) ?? [], after.stretches.get(local) ?? []] as const;
      if (!sameStretches(...pieces)) stretches.push({ rank, moment, before: pieces[0], after: pieces[1] });
    });
  }
}

function sameStretches(a: readonly Stretch[], b: readonly Stretch[]): boolean {
  return a.length === b.length && a.every((one, i) => one.earliest === b[i]?.earliest && one.latest === b[i]?.latest);
}

function compareChanges(a: BoundChange, b: BoundChange): number {
  return a.rank - b.rank || a.moment - b.moment || (a.side === b.side ? 0 : a.side === 'earliest' ? -1 : 1);
}
