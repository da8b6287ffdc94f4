import { type Active, type Bounds, type Domains, isCrossed, propagate } from './bounds.ts';
import type { Compiled } from './compiled.ts';

/** A stretch of days, both ends included. */
export interface Stretch {
  readonly earliest: number;
  readonly latest: number;
}

/** What a search through the members of dates with gaps found. */
export interface Search {
  /** One solution at least exists; null where the search was cut off before it knew. */
  readonly consistent: boolean | null;
  /** False where the cap cut the search off. */
  readonly complete: boolean;
  /** Bounds of every consistent choice, with the members chosen. */
  readonly solutions: readonly { readonly bounds: Bounds; readonly domains: Domains }[];
  /** Bounds after members that the hull excludes were dropped; null where nothing is left. */
  readonly root: Bounds | null;
}

/** Most nodes of a search in one tied group of moments. */
export const MOST_SEARCH_NODES = 4096;

interface Progress {
  nodes: number;
  complete: boolean;
  readonly firstOnly: boolean;
  readonly solutions: { readonly bounds: Bounds; readonly domains: Domains }[];
}

/**
 * Searches the choices of members of the active dates with gaps. Members that the bounds exclude
 * are dropped first, until nothing changes; then the date with the fewest members left is split.
 * `firstOnly`: stop at the first consistent choice.
 */
export function searchChoices(
  compiled: Compiled,
  active: Active,
  firstOnly: boolean,
  mostNodes = MOST_SEARCH_NODES,
): Search {
  const domains = new Map(
    compiled.splitting
      .filter((statement) => active[statement])
      .map((statement) => [statement, membersOf(compiled, statement)] as const),
  );
  const progress: Progress = { nodes: 0, complete: true, firstOnly, solutions: [] };
  branch(compiled, active, domains, progress, mostNodes);
  const root = narrow(compiled, active, domains)?.bounds ?? null;
  const { solutions, complete } = progress;
  const consistent = solutions.length > 0 ? true : complete ? false : null;
  return { consistent, complete, solutions, root };
}

function membersOf(compiled: Compiled, statement: number): readonly number[] {
  return (compiled.network.statements[statement]?.choice ?? []).map((_, member) => member);
}

function branch(compiled: Compiled, active: Active, domains: Domains, progress: Progress, mostNodes: number): void {
  progress.nodes += 1;
  if (progress.nodes > mostNodes) {
    progress.complete = false;
    return;
  }
  const narrowed = narrow(compiled, active, domains);
  if (!narrowed) return;
  const open = [...narrowed.domains].filter(([, left]) => left.length > 1);
  open.sort((a, b) => a[1].length - b[1].length || a[0] - b[0]);
  const [next] = open;
  if (!next) {
    progress.solutions.push(narrowed);
    return;
  }
  const [statement, left] = next;
  for (const member of left) {
    branch(compiled, active, new Map([...narrowed.domains, [statement, [member]]]), progress, mostNodes);
    if (!progress.complete || (progress.firstOnly && progress.solutions.length > 0)) return;
  }
}

/** Drops members that the bounds exclude until nothing changes; null where nothing is left. */
function narrow(
  compiled: Compiled,
  active: Active,
  domains: Domains,
): { readonly bounds: Bounds; readonly domains: Domains } | null {
  let current = domains;
  for (;;) {
    const bounds = propagate(compiled, active, current);
    if (isCrossed(bounds)) return null;
    let changed = false;
    const next = new Map<number, readonly number[]>();
    for (const [statement, left] of current) {
      const fitting = left.filter((member) => fits(compiled, statement, member, bounds));
      if (fitting.length === 0) return null;
      if (fitting.length < left.length) changed = true;
      next.set(statement, fitting);
    }
    if (!changed) return { bounds, domains: next };
    current = next;
  }
}

function fits(compiled: Compiled, statement: number, member: number, bounds: Bounds): boolean {
  const links = compiled.network.statements[statement]?.choice?.[member] ?? [];
  return links.every((link) =>
    link.from < 0
      ? link.days <= (bounds.latest[link.to] as number)
      : -link.days >= (bounds.earliest[link.from] as number),
  );
}

/** Stretches in order, those that overlap or touch (next day) made one. */
export function mergeStretches(stretches: readonly Stretch[]): readonly Stretch[] {
  const sorted = [...stretches].sort((a, b) => (a.earliest === b.earliest ? 0 : a.earliest < b.earliest ? -1 : 1));
  const merged: Stretch[] = [];
  for (const next of sorted) {
    const last = merged.at(-1);
    if (last && next.earliest <= last.latest + 1) {
      merged[merged.length - 1] = { earliest: last.earliest, latest: Math.max(last.latest, next.latest) };
    } else merged.push(next);
  }
  return merged;
}
