import { describe, expect, it } from 'vitest';
import { compileNetwork } from '../../src/chronology/compiled.ts';
import { isConsistent } from '../../src/chronology/consistency.ts';
import type { Link } from '../../src/chronology/network.ts';
import type { RelationName } from '../../src/model/types/event.ts';
import { relationLinks } from '../../src/statements/relation-links.ts';

/*
 * Allen, Maintaining knowledge about temporal intervals, CACM 26 (1983): thirteen relations and their
 * composition. The counts: 409 entries (OEIS A055203, third term), of 8,191 disjunctions 82 convex and
 * 187 pointisable (van Beek; Nökel; Ligozat: from memory). Cells checked one by one: from the same table.
 */
const NAMES = [
  'before',
  'after',
  'meets',
  'met-by',
  'overlaps',
  'overlapped-by',
  'starts',
  'started-by',
  'during',
  'contains',
  'finishes',
  'finished-by',
  'same-as',
] as const satisfies readonly RelationName[];

const NO_GAP = { min: null, max: null };
const span = (i: number) => ({ start: 2 * i, end: 2 * i + 1, single: false });
/** Allen's intervals last: the end at least one day after the start. */
const lasting = (i: number): Link => ({ from: 2 * i, to: 2 * i + 1, days: 1, role: 'lasts-min' });

function holds(events: number, links: readonly Link[]): boolean {
  const lengths = Array.from({ length: events }, (_, i) => lasting(i));
  const compiled = compileNetwork({
    moments: 2 * events,
    axioms: [],
    statements: [{ id: 'S', rank: 0, links: [...lengths, ...links] }],
  });
  return isConsistent(compiled, new Uint8Array([1]));
}

function compose(first: RelationName, second: RelationName): readonly RelationName[] {
  const given = [
    ...relationLinks(first, span(0), span(1), true, NO_GAP),
    ...relationLinks(second, span(1), span(2), true, NO_GAP),
  ];
  return NAMES.filter((name) => holds(3, [...given, ...relationLinks(name, span(0), span(2), true, NO_GAP)]));
}

describe('Allen 1983, composed by the network out of the links of our relations', () => {
  const table = NAMES.map((first) => NAMES.map((second) => compose(first, second)));

  it('has 409 entries in 169 cells: 97 of one, 42 of three, 24 of five, 3 of nine, 3 of thirteen', () => {
    const sizes = new Map<number, number>();
    for (const cell of table.flat()) sizes.set(cell.length, (sizes.get(cell.length) ?? 0) + 1);
    expect(Object.fromEntries(sizes)).toEqual({ 1: 97, 3: 42, 5: 24, 9: 3, 13: 3 });
    expect(table.flat().reduce((sum, cell) => sum + cell.length, 0)).toBe(409);
  });

  it('agrees in the cells named', () => {
    expect(compose('before', 'during').toSorted()).toEqual(['before', 'during', 'meets', 'overlaps', 'starts']);
    expect(compose('meets', 'during').toSorted()).toEqual(['during', 'overlaps', 'starts']);
    expect(compose('overlaps', 'overlaps').toSorted()).toEqual(['before', 'meets', 'overlaps']);
    expect(compose('starts', 'started-by').toSorted()).toEqual(['same-as', 'started-by', 'starts']);
    expect(compose('overlaps', 'contains').toSorted()).toEqual([
      'before',
      'contains',
      'finished-by',
      'meets',
      'overlaps',
    ]);
    expect(compose('before', 'after').length).toBe(13);
  });

  it('exactly one of the thirteen holds between any two intervals', () => {
    for (const one of NAMES)
      for (const other of NAMES)
        expect(
          holds(2, [
            ...relationLinks(one, span(0), span(1), true, NO_GAP),
            ...relationLinks(other, span(0), span(1), true, NO_GAP),
          ]),
        ).toBe(one === other);
  });
});

describe('which disjunctions can be said with links', () => {
  const PAIRS = [
    [0, 2],
    [0, 3],
    [1, 2],
    [1, 3],
  ] as const;
  const relation = (name: RelationName) => relationLinks(name, span(0), span(1), true, NO_GAP);
  const at = (from: number, to: number, days: number): Link => ({ from, to, days, role: 'order' });

  /** Sets of relations allowed by each combination of one comparison a pair of ends. */
  function sayable(comparisons: readonly ((a: number, b: number) => readonly Link[])[]): ReadonlySet<string> {
    const allows = PAIRS.map(([a, b]) =>
      comparisons.map((compare) => NAMES.map((name) => holds(2, [...relation(name), ...compare(a, b)]))),
    );
    const found = new Set<string>();
    const walk = (pair: number, left: readonly boolean[]): void => {
      const options = allows[pair];
      if (!options) {
        if (left.some(Boolean)) found.add(left.map(Number).join(''));
        return;
      }
      for (const option of options)
        walk(
          pair + 1,
          left.map((on, i) => on && (option[i] as boolean)),
        );
    };
    walk(
      0,
      NAMES.map(() => true),
    );
    return found;
  }

  const anything = () => [];
  const notAfter = (a: number, b: number) => [at(a, b, 0)];
  const notBefore = (a: number, b: number) => [at(b, a, 0)];
  const equal = (a: number, b: number) => [at(a, b, 0), at(b, a, 0)];
  const earlier = (a: number, b: number) => [at(a, b, 1)];
  const later = (a: number, b: number) => [at(b, a, 1)];

  it('82 are convex; 29 with "same day possible" alone', () => {
    expect(sayable([anything, notAfter, notBefore, equal, earlier, later]).size).toBe(82);
    expect(sayable([anything, notAfter, notBefore, equal]).size).toBe(29);
  });

  it('187 are pointisable, which needs "not the same day": no link says that, so 105 of them cannot be written', () => {
    // What a pair of ends can be, worked out by the network: earlier, same, later; then any subset of the three.
    const sign = (name: RelationName, a: number, b: number): number =>
      [earlier, equal, later].findIndex((compare) => holds(2, [...relation(name), ...compare(a, b)]));
    const signs = NAMES.map((name) => PAIRS.map(([a, b]) => sign(name, a, b)));
    const found = new Set<string>();
    for (let choice = 0; choice < 8 ** 4; choice += 1) {
      const set = signs.map((four) => four.every((s, pair) => (Math.floor(choice / 8 ** pair) >> s) & 1));
      if (set.some(Boolean)) found.add(set.map(Number).join(''));
    }
    expect(found.size).toBe(187);
    const convex = sayable([anything, notAfter, notBefore, equal, earlier, later]);
    expect([...convex].every((set) => found.has(set))).toBe(true);
    // "Before or after" is one that cannot be said.
    const beforeOrAfter = NAMES.map((name) => Number(name === 'before' || name === 'after')).join('');
    expect(convex.has(beforeOrAfter)).toBe(false);
  });
});
