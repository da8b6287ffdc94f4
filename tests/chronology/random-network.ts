import { type Link, type Network, type NetworkStatement, ORIGIN } from '../../src/chronology/network.ts';
import { seededRandom } from '../../src/geometry/seeded-random.ts';

export interface Shape {
  readonly events: number;
  readonly statements: number;
  readonly gaps: boolean;
  readonly span: number;
}

/** A random small file: events with start and end, dated statements, relations, lengths, dates with gaps. */
export function randomNetwork(seed: number, { events, statements, gaps, span }: Shape): Network {
  const random = seededRandom(seed);
  const pick = (n: number): number => Math.floor(random() * n);
  const axioms: Link[] = Array.from({ length: events }, (_, i) => ({
    from: 2 * i,
    to: 2 * i + 1,
    days: 0,
    role: 'axiom',
  }));
  const list: NetworkStatement[] = [];
  const lower = (to: number, days: number): Link => ({ from: ORIGIN, to, days, role: 'dated-from' });
  const upper = (from: number, day: number): Link => ({ from, to: ORIGIN, days: -day, role: 'dated-to' });
  for (let i = 0; i < statements; i += 1) {
    const event = pick(events);
    const other = (event + 1 + pick(events - 1)) % events;
    const [s, e] = [2 * event, 2 * event + 1];
    const [s2, e2] = [2 * other, 2 * other + 1];
    const day = pick(span);
    const base = { id: `S-${i}`, rank: pick(4) };
    const kind = pick(gaps ? 8 : 7);
    if (kind === 0) list.push({ ...base, links: [lower(s, day), upper(e, day + pick(4))] });
    else if (kind === 1) list.push({ ...base, links: [upper(e, day)] });
    else if (kind === 2) list.push({ ...base, links: [lower(s, day)] });
    else if (kind === 3) list.push({ ...base, links: [upper(s, day), lower(e, Math.max(0, day - 1))] });
    else if (kind === 4)
      list.push({ ...base, order: 'order', links: [{ from: e2, to: s, days: pick(2), role: 'order' }] });
    else if (kind === 5) {
      list.push({
        ...base,
        links: [
          { from: e2, to: s, days: pick(3), role: 'gap-min' },
          { from: s, to: e2, days: -(2 + pick(5)), role: 'gap-max' },
        ],
      });
    } else if (kind === 6) {
      list.push({
        ...base,
        order: 'same',
        links: [
          { from: s, to: s2, days: 0, role: 'same' },
          { from: s2, to: s, days: 0, role: 'same' },
          { from: e, to: e2, days: 0, role: 'same' },
          { from: e2, to: e, days: 0, role: 'same' },
        ],
      });
    } else {
      const a = pick(span);
      const members = [
        [a, a + pick(2)],
        [a + 4, a + 4 + pick(2)],
      ] as const;
      list.push({
        ...base,
        links: [lower(s, members[0][0]), upper(e, members[1][1])],
        choice: members.map(([first, last]) => [lower(s, first), upper(e, last)]),
      });
    }
  }
  return { moments: 2 * events, axioms, statements: list };
}

/** All combinations of one member for every statement with gaps among `chosen`. */
export function choicesOf(network: Network, chosen: readonly number[]): readonly (readonly Link[])[] {
  let combinations: Link[][] = [[...network.axioms]];
  for (const index of chosen) {
    const statement = network.statements[index] as NetworkStatement;
    const options = statement.choice ?? [statement.links];
    combinations = combinations.flatMap((links) => options.map((option) => [...links, ...option]));
  }
  return combinations;
}

/** All-pairs longest distances by brute force (Floyd and Warshall); the origin is the last node. Null: inconsistent. */
export function distances(moments: number, links: readonly Link[]): readonly (readonly number[])[] | null {
  const n = moments + 1;
  const d = Array.from({ length: n }, (_, i) =>
    Array.from({ length: n }, (_, j) => (i === j ? 0 : Number.NEGATIVE_INFINITY)),
  );
  const node = (moment: number): number => (moment === ORIGIN ? moments : moment);
  for (const { from, to, days } of links) {
    const row = d[node(from)] as number[];
    row[node(to)] = Math.max(row[node(to)] as number, days);
  }
  for (let k = 0; k < n; k += 1) {
    for (let i = 0; i < n; i += 1) {
      for (let j = 0; j < n; j += 1) {
        const through = ((d[i] as number[])[k] as number) + ((d[k] as number[])[j] as number);
        if (through > ((d[i] as number[])[j] as number)) (d[i] as number[])[j] = through;
      }
    }
  }
  return d.some((row, i) => (row[i] as number) > 0) ? null : d;
}

/** Brute-force consistency of some statements. */
export function bruteConsistent(network: Network, chosen: readonly number[]): boolean {
  return choicesOf(network, chosen).some((links) => distances(network.moments, links) !== null);
}

/** Brute-force irreducible inconsistent sets, by trying every subset. */
export function bruteIrreducible(network: Network, among: readonly number[]): readonly (readonly number[])[] {
  const found: number[][] = [];
  const subsets = Array.from({ length: 2 ** among.length }, (_, mask) => among.filter((_, i) => (mask >> i) & 1));
  subsets.sort((a, b) => a.length - b.length);
  for (const subset of subsets) {
    if (found.some((set) => set.every((one) => subset.includes(one)))) continue;
    if (!bruteConsistent(network, subset)) found.push([...subset]);
  }
  return found;
}
