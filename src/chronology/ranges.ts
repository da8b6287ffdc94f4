import { oncePer } from '../base/once.ts';
import { type Active, type Bounds, type Domains, propagate } from './bounds.ts';
import { mergeStretches, type Search, type Stretch, searchChoices } from './choices.ts';
import type { Compiled } from './compiled.ts';
import type { Link } from './network.ts';
import { type Part, partOf, tiedGroups } from './part-of-network.ts';

/** Ranges of all moments from one consistent set of statements. */
export interface Ranges {
  /** Bounds that need no choice: every date with gaps by its hull. */
  readonly hull: Bounds;
  readonly earliest: Float64Array;
  readonly latest: Float64Array;
  /** Stretches of a moment, where there are two or more. */
  readonly stretches: ReadonlyMap<number, readonly Stretch[]>;
  /** Moments whose search was cut off. */
  readonly inexact: ReadonlySet<number>;
  /** The tied groups in which members had to be chosen. */
  readonly chosen: readonly ChosenGroup[];
}

/** A tied group with dates with gaps, and its consistent choices. */
export interface ChosenGroup {
  readonly part: Part;
  readonly solutions: readonly { readonly bounds: Bounds; readonly domains: Domains }[];
}

/**
 * Ranges of every moment: for each, the union over all consistent choices of members.
 * Every day in a stretch is possible for that moment alone, not for all moments together.
 * Where a search is cut off, the hull stands, cut by the range at the next better grade.
 */
export function rangesOf(compiled: Compiled, active: Active, better: Ranges | null): Ranges {
  const hull = propagate(compiled, active);
  const earliest = hull.earliest.slice();
  const latest = hull.latest.slice();
  const stretches = new Map<number, readonly Stretch[]>();
  const inexact = new Set<number>();
  const chosen: ChosenGroup[] = [];
  for (const { part, search } of splittingParts(compiled, active)) {
    if (!search.complete || search.solutions.length === 0) {
      part.moments.forEach((moment, local) => {
        inexact.add(moment);
        const pieces = clip(better, moment, {
          earliest: search.root?.earliest[local] ?? (hull.earliest[moment] as number),
          latest: search.root?.latest[local] ?? (hull.latest[moment] as number),
        });
        earliest[moment] = pieces[0]?.earliest ?? (earliest[moment] as number);
        latest[moment] = pieces.at(-1)?.latest ?? (latest[moment] as number);
        if (pieces.length > 1) stretches.set(moment, pieces);
      });
      continue;
    }
    chosen.push({ part, solutions: search.solutions });
    part.moments.forEach((moment, local) => {
      const merged = mergeStretches(
        search.solutions.map(({ bounds }) => ({
          earliest: bounds.earliest[local] as number,
          latest: bounds.latest[local] as number,
        })),
      );
      earliest[moment] = merged[0]?.earliest ?? Number.NEGATIVE_INFINITY;
      latest[moment] = merged.at(-1)?.latest ?? Number.POSITIVE_INFINITY;
      if (merged.length > 1) stretches.set(moment, merged);
    });
  }
  return { hull, earliest, latest, stretches, inexact, chosen };
}

/** A stretch cut by the range, or the separate stretches, that a better grade leaves. */
function clip(better: Ranges | null, moment: number, whole: Stretch): readonly Stretch[] {
  if (!better) return [whole];
  const bounds = { earliest: better.earliest[moment] as number, latest: better.latest[moment] as number };
  return (better.stretches.get(moment) ?? [bounds])
    .map((one) => ({ earliest: Math.max(one.earliest, whole.earliest), latest: Math.min(one.latest, whole.latest) }))
    .filter((one) => one.earliest <= one.latest);
}

/** A tied group with dates with gaps, and what the search through their members found. */
interface SearchedPart {
  readonly part: Part;
  readonly search: Search;
}

/** Groups already searched, by the links of a network: grades play no part, so the trials of a network share them. */
const searchesOf = oncePer((_: readonly Link[]) => new Map<string, SearchedPart>());

const MOST_REMEMBERED = 2000;

function splittingParts(compiled: Compiled, active: Active): readonly SearchedPart[] {
  if (!compiled.splitting.some((statement) => active[statement])) return [];
  const known = searchesOf(compiled.links);
  return tiedGroups(compiled, active)
    .filter((statements) => statements.some((index) => compiled.network.statements[index]?.choice))
    .map((statements) => {
      const key = statements.join(',');
      const before = known.get(key);
      if (before) return before;
      const part = partOf(compiled, statements);
      const all = new Uint8Array(part.statements.length).fill(1);
      const fresh = { part, search: searchChoices(part.compiled, all, false) };
      if (known.size >= MOST_REMEMBERED) known.clear();
      known.set(key, fresh);
      return fresh;
    });
}
