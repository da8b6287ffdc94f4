import { groupBy } from '../base/group-by.ts';
import { type Active, type Bounds, propagate } from './bounds.ts';
import { searchChoices } from './choices.ts';
import { AXIOM, type Compiled } from './compiled.ts';
import type { Link } from './network.ts';
import { partOf, tiedGroups } from './part-of-network.ts';

/** A group of statements among which every contradiction of that corner must lie. */
export interface SuspectGroup {
  readonly statements: readonly number[];
  /** The links to look at: those that can lie on a crossing; all where dates have gaps. */
  readonly links: ReadonlySet<Link> | null;
}

/**
 * Finds the statements that can have part in a contradiction. A link is suspect where its carried
 * earliest day lies after the latest day at its end; every link of a simple crossing is. Where
 * dates have gaps, a whole tied group is suspect if no choice of members works in it.
 */
export function findSuspects(compiled: Compiled, active: Active): readonly SuspectGroup[] {
  const bounds = propagate(compiled, active);
  const links = suspectLinks(compiled, active, bounds);
  const byLinks = groupsOf(links);
  const tied = tiedGroups(compiled, active);
  if (!compiled.splitting.some((statement) => active[statement])) return byLinks;
  const suspect = new Set(byLinks.flatMap((group) => group.statements));
  const wide: SuspectGroup[] = [];
  for (const statements of tied) {
    if (!statements.some((index) => compiled.network.statements[index]?.choice)) continue;
    if (statements.some((index) => suspect.has(index)) || !chosenConsistently(compiled, statements))
      wide.push({ statements, links: null });
  }
  const covered = new Set(wide.flatMap((group) => group.statements));
  return [...wide, ...byLinks.filter((group) => !group.statements.some((index) => covered.has(index)))];
}

function chosenConsistently(compiled: Compiled, statements: readonly number[]): boolean {
  const part = partOf(compiled, statements);
  const all = new Uint8Array(statements.length).fill(1);
  return searchChoices(part.compiled, all, true).consistent !== false;
}

interface SuspectLink {
  readonly link: Link;
  readonly owner: number;
}

function suspectLinks(compiled: Compiled, active: Active, bounds: Bounds): readonly SuspectLink[] {
  const { earliest, latest } = bounds;
  const found: SuspectLink[] = [];
  const looping = new Set(bounds.loops);
  compiled.links.forEach((link, i) => {
    const owner = compiled.owner[i] as number;
    if (owner !== AXIOM && !active[owner]) return;
    const crossing = (earliest[link.from] as number) + link.days > (latest[link.to] as number);
    const component = compiled.component[link.from] as number;
    const inLoop = component === compiled.component[link.to] && looping.has(component);
    if (crossing || inLoop) found.push({ link, owner });
  });
  for (const { owner, moment, day, link } of compiled.lowers) {
    if (active[owner] && day > (latest[moment] as number)) found.push({ link, owner });
  }
  for (const { owner, moment, day, link } of compiled.uppers) {
    if (active[owner] && day < (earliest[moment] as number)) found.push({ link, owner });
  }
  return found;
}

/** Suspect links grouped by shared moments and shared statements. */
function groupsOf(links: readonly SuspectLink[]): readonly SuspectGroup[] {
  const parent = new Map<string, string>();
  const root = (name: string): string => {
    let at = name;
    for (let up = parent.get(at); up !== undefined && up !== at; up = parent.get(at)) at = up;
    return at;
  };
  const tie = (a: string, b: string): void => {
    parent.set(root(a), root(b));
  };
  const nameOf = ({ link, owner }: SuspectLink): string =>
    owner === AXIOM ? `m${Math.max(link.from, link.to)}` : `s${owner}`;
  for (const one of links) {
    for (const moment of [one.link.from, one.link.to]) if (moment >= 0) tie(`m${moment}`, nameOf(one));
  }
  return [...groupBy(links, (one) => root(nameOf(one))).values()].map((members) => ({
    statements: [...new Set(members.map((one) => one.owner).filter((owner) => owner !== AXIOM))].sort((a, b) => a - b),
    links: new Set(members.map((one) => one.link)),
  }));
}
