import { oncePer } from '../base/once.ts';
import { AXIOM, type Compiled, compileNetwork } from './compiled.ts';
import { type Link, ORIGIN } from './network.ts';

/** A piece of a network with moments and statements numbered anew, and the way back. */
export interface Part {
  readonly compiled: Compiled;
  /** Statement of the whole network, by statement of the part. */
  readonly statements: readonly number[];
  /** Moment of the whole network, by moment of the part. */
  readonly moments: readonly number[];
}

/**
 * Cuts out the given statements with every moment that they touch, the axioms at those, and the
 * moments at the other end of the axioms.
 * `links` narrows it further to the links that are wanted.
 */
export function partOf(
  whole: Compiled,
  statements: readonly number[],
  wanted: (link: Link) => boolean = () => true,
): Part {
  const chosen = statements.map(
    (index) => whole.network.statements[index] as (typeof whole.network.statements)[number],
  );
  const number = new Map<number, number>();
  const moments: number[] = [];
  const renumber = (moment: number): number => {
    if (moment === ORIGIN) return ORIGIN;
    const known = number.get(moment);
    if (known !== undefined) return known;
    number.set(moment, moments.length);
    moments.push(moment);
    return moments.length - 1;
  };
  const move = (link: Link): Link => ({ ...link, from: renumber(link.from), to: renumber(link.to) });
  const moved = chosen.map((statement) => ({
    ...statement,
    links: statement.links.filter(wanted).map(move),
    ...(statement.choice ? { choice: statement.choice.map((member) => member.map(move)) } : {}),
  }));
  const at = axiomsAt(whole.network.axioms);
  const touching = new Set([...number.keys()].flatMap((moment) => at.get(moment) ?? []));
  const axioms = [...touching].sort((a, b) => a - b).map((index) => move(whole.network.axioms[index] as Link));
  const network = { moments: moments.length, axioms, statements: moved };
  return { compiled: compileNetwork(network), statements, moments };
}

/** Places of the axioms at each moment; found once, since a large file asks for many small parts. */
const axiomsAt = oncePer((axioms: readonly Link[]): ReadonlyMap<number, readonly number[]> => {
  const found = new Map<number, number[]>();
  axioms.forEach((link, index) => {
    for (const moment of [link.from, link.to]) found.set(moment, [...(found.get(moment) ?? []), index]);
  });
  return found;
});

/** Groups of moments that active links tie together (the origin ties nothing); statements by group. */
export function tiedGroups(compiled: Compiled, active: Uint8Array): readonly (readonly number[])[] {
  const parent = Int32Array.from({ length: compiled.moments }, (_, i) => i);
  const root = (moment: number): number => {
    let at = moment;
    while (parent[at] !== at) {
      parent[at] = parent[parent[at] as number] as number;
      at = parent[at] as number;
    }
    return at;
  };
  compiled.links.forEach((link, i) => {
    const owner = compiled.owner[i] as number;
    if (owner === AXIOM || active[owner]) parent[root(link.from)] = root(link.to);
  });
  const groups = new Map<number, number[]>();
  compiled.network.statements.forEach((statement, index) => {
    const link = statement.links[0] ?? statement.choice?.[0]?.[0];
    if (!active[index] || !link) return;
    const group = root(link.from === ORIGIN ? link.to : link.from);
    const members = groups.get(group);
    if (members) members.push(index);
    else groups.set(group, [index]);
  });
  return [...groups.values()];
}
