import { naturalOrder } from '../base/natural-order.ts';
import { foundWith } from '../base/once.ts';
import type { Active, Bounds, Domains } from './bounds.ts';
import { AXIOM, type Compiled } from './compiled.ts';
import type { Link } from './network.ts';

/** Which bound of a moment is meant. */
export type Side = 'earliest' | 'latest';

/** One step of a chain: a link that carried a day on, from the dated statement outward. */
export interface Step {
  /** Index of the statement; AXIOM (-1) where only starts-before-ends was used. */
  readonly owner: number;
  readonly link: Link;
  /** The moment reached, and the day that it was given. */
  readonly moment: number;
  readonly day: number;
}

/** Best chains to all moments for one side; walked back on demand. */
export interface Chains {
  /** Steps from the dated statement to the moment; empty where the moment is unbounded. */
  chainOf(moment: number): readonly Step[];
}

interface Settled {
  readonly step: Step;
  readonly before: number | null;
}

interface Candidate {
  readonly prefixRank: number;
  readonly idRank: number;
  readonly step: Step;
  readonly before: number | null;
}

/**
 * The best chain to every moment among the chains of the active statements that give its bound:
 * fewest statements, then least ids in natural order, compared from the dated statement outward.
 * Tight links are followed level by level; a link of the statement just used, or an axiom, adds none.
 */
export function findChains(compiled: Compiled, active: Active, bounds: Bounds, side: Side, domains?: Domains): Chains {
  const idRank = naturalRanks(compiled);
  const settled = new Array<Settled | undefined>(compiled.moments);
  let candidates = seedSteps(compiled, active, bounds, side, domains).map(
    (step): Candidate => ({ prefixRank: 0, idRank: idRank[step.owner] ?? 0, step, before: null }),
  );
  while (candidates.length > 0) {
    candidates.sort((a, b) => a.prefixRank - b.prefixRank || a.idRank - b.idRank || a.step.moment - b.step.moment);
    const next: Candidate[] = [];
    let rank = -1;
    let last: Candidate | null = null;
    for (const candidate of candidates) {
      const prefixRank: number = isSameLabel(candidate, last) ? rank : rank + 1;
      rank = prefixRank;
      last = candidate;
      flood(compiled, active, bounds, side, settled, candidate, (step, before) =>
        next.push({ prefixRank, idRank: idRank[step.owner] ?? 0, step, before }),
      );
    }
    candidates = next.filter(({ step }) => settled[step.moment] === undefined);
  }
  return { chainOf: (moment) => walkBack(settled, moment) };
}

function isSameLabel(a: Candidate, b: Candidate | null): boolean {
  return b !== null && a.prefixRank === b.prefixRank && a.idRank === b.idRank;
}

function walkBack(settled: readonly (Settled | undefined)[], moment: number): readonly Step[] {
  const steps: Step[] = [];
  for (let at: number | null = moment; at !== null; ) {
    const here: Settled | undefined = settled[at];
    if (!here) return [];
    steps.push(here.step);
    at = here.before;
  }
  return steps.reverse();
}

/** Rank of every statement's id in natural order; the links stay the same object in every trial of a network, and the ids with them. */
function naturalRanks({ links, network: { statements } }: Compiled): Int32Array {
  return foundWith(links, naturalRanks, () => {
    const sorted = statements
      .map((_, i) => i)
      .sort((a, b) => naturalOrder(statements[a]?.id ?? '', statements[b]?.id ?? ''));
    const ranks = new Int32Array(statements.length);
    sorted.forEach((statement, rank) => {
      ranks[statement] = rank;
    });
    return ranks;
  });
}

function seedSteps(compiled: Compiled, active: Active, bounds: Bounds, side: Side, domains?: Domains): readonly Step[] {
  const seeds = side === 'earliest' ? compiled.lowers : compiled.uppers;
  const value = bounds[side];
  const plain = seeds
    .filter(({ owner, moment, day }) => active[owner] && !domains?.has(owner) && value[moment] === day)
    .map(({ owner, moment, day, link }): Step => ({ owner, moment, day, link }));
  return [...plain, ...memberSteps(compiled, active, bounds, side, domains)];
}

/** Seeds from the members that a choice has settled on. */
function memberSteps(
  compiled: Compiled,
  active: Active,
  bounds: Bounds,
  side: Side,
  domains?: Domains,
): readonly Step[] {
  const steps: Step[] = [];
  for (const [owner, [member]] of domains ?? []) {
    const links =
      active[owner] && member !== undefined ? compiled.network.statements[owner]?.choice?.[member] : undefined;
    for (const link of links ?? []) {
      const lower = link.from < 0;
      const moment = lower ? link.to : link.from;
      const day = lower ? link.days : -link.days;
      if (lower === (side === 'earliest') && bounds[side][moment] === day) steps.push({ owner, link, moment, day });
    }
  }
  return steps;
}

/** Settles a moment and all that its chain reaches without a further statement; offers the rest. */
function flood(
  compiled: Compiled,
  active: Active,
  bounds: Bounds,
  side: Side,
  settled: (Settled | undefined)[],
  candidate: Candidate,
  offer: (step: Step, before: number) => void,
): void {
  const queue: Settled[] = [{ step: candidate.step, before: candidate.before }];
  for (let here = queue.shift(); here; here = queue.shift()) {
    const { moment } = here.step;
    if (settled[moment]) continue;
    settled[moment] = here;
    for (const step of tightSteps(compiled, active, bounds, side, moment)) {
      if (settled[step.moment]) continue;
      if (step.owner === AXIOM || step.owner === candidate.step.owner) queue.push({ step, before: moment });
      else offer(step, moment);
    }
  }
}

function tightSteps(compiled: Compiled, active: Active, bounds: Bounds, side: Side, moment: number): readonly Step[] {
  const forward = side === 'earliest';
  const start = forward ? compiled.outStart : compiled.inStart;
  const list = forward ? compiled.outList : compiled.inList;
  const value = bounds[side];
  const steps: Step[] = [];
  for (let k = start[moment] as number; k < (start[moment + 1] as number); k += 1) {
    const index = list[k] as number;
    const owner = compiled.owner[index] as number;
    if (owner !== AXIOM && !active[owner]) continue;
    const target = (forward ? compiled.to[index] : compiled.from[index]) as number;
    const days = compiled.days[index] as number;
    const day = (value[moment] as number) + (forward ? days : -days);
    if (day === value[target]) steps.push({ owner, link: compiled.links[index] as Link, moment: target, day });
  }
  return steps;
}
