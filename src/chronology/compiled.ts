import { strongComponents } from '../base/strong-components.ts';
import { type Link, type Network, ORIGIN } from './network.ts';

/** Index that stands for an axiom where a statement's index is wanted. */
export const AXIOM = -1;

/** A network laid out in typed arrays, with its strongly connected components in order. */
export interface Compiled {
  readonly network: Network;
  readonly moments: number;
  /** Links between two moments, axioms first. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly days: Float64Array;
  readonly owner: Int32Array;
  readonly links: readonly Link[];
  /** Links into (out of) a moment: `inList` from `inStart[m]` to `inStart[m + 1]`. */
  readonly inStart: Int32Array;
  readonly inList: Int32Array;
  readonly outStart: Int32Array;
  readonly outList: Int32Array;
  /** Bounds on one moment alone. */
  readonly lowers: readonly Seed[];
  readonly uppers: readonly Seed[];
  /** Moments by component, sources first; component c is `order` from `start[c]` to `start[c + 1]`. */
  readonly order: Int32Array;
  readonly start: Int32Array;
  readonly component: Int32Array;
  /** Statements whose date has gaps. */
  readonly splitting: readonly number[];
}

/** A bound on one moment: not before (lower) or not after (upper) `day`. */
export interface Seed {
  readonly moment: number;
  readonly day: number;
  readonly owner: number;
  readonly link: Link;
}

/** Lays a network out. */
export function compileNetwork(network: Network): Compiled {
  const pairs: { readonly link: Link; readonly owner: number }[] = [];
  const lowers: Seed[] = [];
  const uppers: Seed[] = [];
  const add = (link: Link, owner: number): void => {
    if (link.from === ORIGIN) lowers.push({ moment: link.to, day: link.days, owner, link });
    else if (link.to === ORIGIN) uppers.push({ moment: link.from, day: -link.days, owner, link });
    else pairs.push({ link, owner });
  };
  for (const link of network.axioms) add(link, AXIOM);
  network.statements.forEach((statement, owner) => {
    for (const link of statement.links) add(link, owner);
  });
  const from = Int32Array.from(pairs, (pair) => pair.link.from);
  const to = Int32Array.from(pairs, (pair) => pair.link.to);
  const incoming = adjacency(network.moments, to);
  const outgoing = adjacency(network.moments, from);
  return {
    network,
    moments: network.moments,
    from,
    to,
    days: Float64Array.from(pairs, (pair) => pair.link.days),
    owner: Int32Array.from(pairs, (pair) => pair.owner),
    links: pairs.map((pair) => pair.link),
    inStart: incoming.start,
    inList: incoming.list,
    outStart: outgoing.start,
    outList: outgoing.list,
    lowers,
    uppers,
    ...components(network.moments, outgoing.start, outgoing.list, to),
    splitting: network.statements.flatMap((statement, i) => (statement.choice ? [i] : [])),
  };
}

function adjacency(moments: number, ends: Int32Array): { readonly start: Int32Array; readonly list: Int32Array } {
  const start = new Int32Array(moments + 1);
  for (const end of ends) start[end + 1] = (start[end + 1] as number) + 1;
  for (let i = 0; i < moments; i += 1) start[i + 1] = (start[i + 1] as number) + (start[i] as number);
  const next = start.slice();
  const list = new Int32Array(ends.length);
  ends.forEach((end, link) => {
    const slot = next[end] as number;
    list[slot] = link;
    next[end] = slot + 1;
  });
  return { start, list };
}

/** The strongly connected components, turned round so that sources come first. */
function components(
  moments: number,
  outStart: Int32Array,
  outList: Int32Array,
  to: Int32Array,
): { readonly order: Int32Array; readonly start: Int32Array; readonly component: Int32Array } {
  const found = strongComponents(moments, (moment, k) => {
    const position = (outStart[moment] as number) + k;
    return position < (outStart[moment + 1] as number) ? to[outList[position] as number] : undefined;
  });
  return layOut(moments, found.toReversed());
}

function layOut(
  moments: number,
  found: readonly (readonly number[])[],
): { readonly order: Int32Array; readonly start: Int32Array; readonly component: Int32Array } {
  const order = new Int32Array(moments);
  const start = new Int32Array(found.length + 1);
  const component = new Int32Array(moments);
  let position = 0;
  found.forEach((members, number) => {
    for (const node of members) {
      order[position] = node;
      component[node] = number;
      position += 1;
    }
    start[number + 1] = position;
  });
  return { order, start, component };
}
