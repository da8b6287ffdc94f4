import { groupBy } from '../base/group-by.ts';
import { naturalOrder } from '../base/natural-order.ts';
import { allOf, capital, phrase, type Said, sameSaid } from '../base/said.ts';
import type { FileStatement } from '../statements/statements.ts';
import type { CaseFile, FileContradiction } from './case-file.ts';
import { countRoots, rootsOf, sharedRoots, tellRootCount } from './independence.ts';
import { sayContradiction } from './say-contradiction.ts';

/** Statements that go back to the same independent origins, and so count once. */
export interface OriginGroup {
  /** Ids of the sources they go back to; empty for a statement without a source, which is an origin of its own. */
  readonly origins: readonly string[];
  readonly statements: readonly FileStatement[];
}

/** One side of a dispute, and the dates that it would give. */
export interface DisputeSide {
  readonly groups: readonly OriginGroup[];
  readonly dates: readonly Said[];
}

/** A dispute: what contradicts each other, merged by independent origins; as two sides where it has two. */
export interface Dispute {
  readonly groups: readonly OriginGroup[];
  /** What would lie at two dates; null where no two dates cross. */
  readonly moment: Said | null;
  readonly sides: readonly [DisputeSide, DisputeSide] | null;
}

/**
 * A cluster of contradictions as one dispute. Statements of equal origins are one voice. It is told as two sides only where
 * the merged contradictions are pairs that two colours part, and the sides share no origin.
 */
export function disputeOf(file: CaseFile, contradictions: readonly FileContradiction[]): Dispute {
  const statements = [...new Set(contradictions.flatMap((one) => one.statements))];
  const keyOf = (one: FileStatement): string => originsOf(file, one).join(' ') || `#${one.id}`;
  const groups = [...groupBy(statements, keyOf)].map(
    ([, list]): OriginGroup => ({ origins: originsOf(file, list[0] as FileStatement), statements: list }),
  );
  const groupOf = new Map(groups.flatMap((group) => group.statements.map((one) => [one, group] as const)));
  const merged = contradictions.map((one) => [
    ...new Set(one.statements.flatMap((statement) => groupOf.get(statement) ?? [])),
  ]);
  const colours = partedByTwo(groups, merged);
  const said = contradictions.map((one) => sayContradiction(file, one));
  const moment = said.find((one) => one !== null)?.moment ?? null;
  if (!colours) return { groups, moment, sides: null };
  const side = (colour: number): DisputeSide => {
    const own = groups.filter((group) => colours.get(group) === colour);
    const mine = new Set(own.flatMap((group) => group.statements));
    const dates = said.flatMap((one) =>
      one === null
        ? []
        : [one.earliest, one.latest].filter((end) => end.statements.every((statement) => mine.has(statement))),
    );
    return {
      groups: own,
      dates: dates.map((one) => one.words).filter((one, i, all) => all.findIndex((it) => sameSaid(it, one)) === i),
    };
  };
  const sides = [side(0), side(1)] as const;
  const [first, second] = sides.map(({ groups: list }) => new Set(list.flatMap((group) => group.origins)));
  const shares = [...(first ?? [])].some((origin) => second?.has(origin));
  const isTold = !shares && sides.every(({ dates }) => dates.length > 0);
  return { groups, moment, sides: isTold ? [sides[0], sides[1]] : null };
}

/** The independent origins of a statement, in natural order; none where it names no source. */
function originsOf(file: CaseFile, { source }: FileStatement): readonly string[] {
  if (source === null) return [];
  const { known, unknown } = rootsOf(file.catalogue, source);
  return [...known, ...unknown].sort(naturalOrder);
}

/** Colours by which every contradiction is a pair of two colours; null where there are none, or a set is no pair. */
function partedByTwo(
  groups: readonly OriginGroup[],
  sets: readonly (readonly OriginGroup[])[],
): ReadonlyMap<OriginGroup, number> | null {
  if (sets.some((set) => set.length !== 2)) return null;
  const colours = new Map<OriginGroup, number>();
  const first = groups[0];
  if (!first) return null;
  colours.set(first, 0);
  for (const queue = [first]; queue.length > 0; ) {
    const at = queue.shift() as OriginGroup;
    for (const set of sets.filter((one) => one.includes(at))) {
      const other = set.find((one) => one !== at) as OriginGroup;
      const wanted = 1 - (colours.get(at) as number);
      const has = colours.get(other);
      if (has === undefined) {
        colours.set(other, wanted);
        queue.push(other);
      } else if (has !== wanted) return null;
    }
  }
  return colours.size === groups.length ? colours : null;
}

/** `Three sourced statements, one independent origin (not after May 1931), against one sourced statement ... (not before ...)`. */
export function sayDispute(file: CaseFile, { groups, moment, sides }: Dispute): Said {
  if (!sides) {
    const count = tellRootCount(
      countRoots(
        file.catalogue,
        groups.flatMap((one) => one.statements),
      ),
    );
    return phrase('These cannot all be right; {0}', count);
  }
  const [one, other] = sides.map(({ groups: own, dates }) =>
    phrase(
      '{0} ({1})',
      tellRootCount(
        countRoots(
          file.catalogue,
          own.flatMap((group) => group.statements),
        ),
      ),
      allOf(dates),
    ),
  ) as [Said, Said];
  const [first, second] = sides.map(({ groups: own }) => own.flatMap((group) => group.statements));
  const { unsure } = sharedRoots(file.catalogue, first ?? [], second ?? []);
  // Where some parentage is not known, two sides may yet be one voice.
  const against = unsure
    ? phrase('{0} – against – {1}; they may go back to one origin', one, other)
    : phrase('{0} – against – {1}', one, other);
  return moment === null ? capital(against) : phrase('On {0}: {1}', moment, against);
}
