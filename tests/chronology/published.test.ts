import highsPackage from 'highs';
import { describe, expect, it } from 'vitest';
import { mergeStretches } from '../../src/chronology/choices.ts';
import { computeChronology, type Link, type Network, ORIGIN } from '../../src/chronology/chronology.ts';
import { leastDistance } from '../../src/chronology/distances.ts';
import { hittingSets } from '../../src/chronology/hitting-sets.ts';
import { findIrreducible } from '../../src/chronology/irreducible.ts';
import { bruteConsistent, choicesOf, randomNetwork } from './random-network.ts';

const between = (from: number, to: number, least: number, most: number): readonly Link[] => [
  { from, to, days: least, role: 'gap-min' },
  { from: to, to: from, days: -most, role: 'gap-max' },
];

const one = (id: string, links: readonly Link[]) => ({ id, rank: 0, links });

/** The package's types describe a module, but it exports a loader. */
const highsLoader = highsPackage as unknown as () => Promise<{ solve(problem: string): { Columns: unknown } }>;

describe('Dechter, Meiri and Pearl, Artificial Intelligence 49 (1991): the worked example (text from memory, numbers recomputed)', () => {
  // x0 is the origin, 7:00; moments 0 to 3 are x1 (John leaves), x2 (John arrives), x3 (Fred leaves), x4 (Fred arrives).
  const network: Network = {
    moments: 4,
    axioms: [],
    statements: [
      one('x1', [
        { from: ORIGIN, to: 0, days: 10, role: 'dated-from' },
        { from: 0, to: ORIGIN, days: -20, role: 'dated-to' },
      ]),
      one('x2-x1', between(0, 1, 30, 40)),
      one('x2-x3', between(2, 1, 10, 20)),
      one('x4-x3', between(2, 3, 40, 50)),
      one('x4', [
        { from: ORIGIN, to: 3, days: 60, role: 'dated-from' },
        { from: 3, to: ORIGIN, days: -70, role: 'dated-to' },
      ]),
    ],
  };
  const result = computeChronology(network);
  const kept = result.grades[0]?.kept as Uint8Array;

  it('gives the published minimal network', () => {
    const { earliest, latest } = result.grades[0]?.ranges ?? { earliest: [], latest: [] };
    expect([0, 1, 2, 3].map((moment) => [earliest[moment], latest[moment]])).toEqual([
      [10, 20],
      [40, 50],
      [20, 30],
      [60, 70],
    ]);
    const distance = (from: number, to: number) => [
      leastDistance(result.compiled, kept, from, to),
      0 - leastDistance(result.compiled, kept, to, from),
    ];
    expect(distance(0, 1)).toEqual([30, 40]);
    expect(distance(0, 2)).toEqual([10, 20]);
    expect(distance(0, 3)).toEqual([50, 60]);
    expect(distance(1, 2)).toEqual([-20, -10]);
    expect(distance(1, 3)).toEqual([20, 30]);
    expect(distance(2, 3)).toEqual([40, 50]);
  });
});

describe('Dechter, Meiri and Pearl: the disjunctive example, with members on one moment each', () => {
  it('unions over consistent choices leave the published unary ranges', () => {
    // John's arrival x2 by car 40-60 or, by bus, 70 exactly: the published union {[40,60], 70}.
    const lower = (to: number, days: number): Link => ({ from: ORIGIN, to, days, role: 'dated-from' });
    const upper = (from: number, day: number): Link => ({ from, to: ORIGIN, days: -day, role: 'dated-to' });
    const statement = {
      id: 'x2',
      rank: 0,
      links: [lower(0, 40), upper(0, 70)],
      choice: [
        [lower(0, 40), upper(0, 60)],
        [lower(0, 70), upper(0, 70)],
      ],
    };
    const result = computeChronology({ moments: 1, axioms: [], statements: [statement] });
    expect(result.stretches(0, 0)).toEqual([
      { earliest: 40, latest: 60 },
      { earliest: 70, latest: 70 },
    ]);
  });
});

describe('Dechter, Meiri and Pearl: the four labellings of the disjunctive example (numbers recomputed)', () => {
  // As above; John drives (30-40) or takes the bus (60 or more), Fred drives (20-30) or shares a car (40-50).
  const labelling = (john: readonly [number, number], fred: readonly [number, number]) =>
    computeChronology({
      moments: 4,
      axioms: [],
      statements: [
        one('x1', [
          { from: ORIGIN, to: 0, days: 10, role: 'dated-from' },
          { from: 0, to: ORIGIN, days: -20, role: 'dated-to' },
        ]),
        one('john', between(0, 1, ...john)),
        one('x2-x3', between(2, 1, 10, 20)),
        one('fred', between(2, 3, ...fred)),
        one('x4', [
          { from: ORIGIN, to: 3, days: 60, role: 'dated-from' },
          { from: 3, to: ORIGIN, days: -70, role: 'dated-to' },
        ]),
      ],
    });
  const [car, bus, drive, share] = [[30, 40] as const, [60, 10_000] as const, [20, 30] as const, [40, 50] as const];
  const unary = (result: ReturnType<typeof computeChronology>) =>
    [0, 1, 2, 3].map((moment) => [result.grades[0]?.ranges.earliest[moment], result.grades[0]?.ranges.latest[moment]]);

  it('three are consistent, bus with shared car is not', () => {
    expect(
      [labelling(car, drive), labelling(car, share), labelling(bus, drive), labelling(bus, share)].map(
        (result) => result.disagreements.contradictions.length,
      ),
    ).toEqual([0, 0, 0, 1]);
  });

  it('both driving leaves x2 in [40, 60] and x3 in [30, 50]; the bus forces every time', () => {
    expect(unary(labelling(car, drive))).toEqual([
      [10, 20],
      [40, 60],
      [30, 50],
      [60, 70],
    ]);
    expect(unary(labelling(bus, drive))).toEqual([
      [10, 10],
      [70, 70],
      [50, 50],
      [70, 70],
    ]);
  });

  it('together: x2 in [40, 60] or 70; the trip of John 30 to 40, or 60', () => {
    const consistent = [labelling(car, drive), labelling(car, share), labelling(bus, drive)];
    const x2 = mergeStretches(
      consistent.map((result) => ({
        earliest: result.grades[0]?.ranges.earliest[1] as number,
        latest: result.grades[0]?.ranges.latest[1] as number,
      })),
    );
    expect(x2).toEqual([
      { earliest: 40, latest: 60 },
      { earliest: 70, latest: 70 },
    ]);
    const trip = consistent.map((result) => {
      const kept = result.grades[0]?.kept as Uint8Array;
      return [leastDistance(result.compiled, kept, 0, 1), 0 - leastDistance(result.compiled, kept, 1, 0)];
    });
    expect(trip).toEqual([
      [30, 40],
      [30, 40],
      [60, 60],
    ]);
  });
});

describe('irreducible sets of other systems by the same search', () => {
  it('Liffiton and Sakallah (CAMUS, 2008; from memory): (a)(not a)(not a or b)(not b) has the sets 1 2 and 1 3 4, and the corrections 1, 2 3, 2 4', () => {
    const clauses: readonly ((a: boolean, b: boolean) => boolean)[] = [
      (a) => a,
      (a) => !a,
      (a, b) => !a || b,
      (_, b) => !b,
    ];
    const satisfiable = (active: Uint8Array): boolean =>
      [0, 1, 2, 3].some((bits) => clauses.every((clause, i) => !active[i] || clause((bits & 1) === 1, bits > 1)));
    const found = findIrreducible([0, 0, 0, 0], satisfiable);
    const names = (sets: readonly (readonly number[])[]) =>
      sets.map((set) => set.map((i) => i + 1).join(' ')).toSorted();
    expect(found.complete).toBe(true);
    expect(names(found.sets)).toEqual(['1 2', '1 3 4']);
    expect(names(found.corrections)).toEqual(['1', '2 3', '2 4']);
  });

  it('Junker (QuickXplain, 2004, Tables 1 and 2): options of 500, 500, 800, 500 and 2600 against a budget of 3000', () => {
    const costs = [500, 500, 800, 500, 2600];
    const runningSums = costs.map((_, i) => costs.slice(0, i + 1).reduce((sum, cost) => sum + cost, 0));
    expect(runningSums).toEqual([500, 1000, 1800, 2300, 4900]);
    const affordable = (active: Uint8Array): boolean =>
      costs.reduce((sum, cost, i) => sum + (active[i] ? cost : 0), 0) <= 3000;
    const { sets, complete } = findIrreducible([0, 0, 0, 0, 0], affordable);
    expect(complete).toBe(true);
    // Each conflict is one option and the luxury version; the paper finds options 4 and 5.
    expect(sets.map((set) => set.map((i) => i + 1).join(' ')).toSorted()).toEqual(['1 5', '2 5', '3 5', '4 5']);
  });
});

describe('hitting sets', () => {
  it('Reiter 1987: {245,123,135,246,24,235,16} (collection from memory) has the minimal hitting sets 12, 134, 145, 236, 256, 346', () => {
    const collection = [
      [2, 4, 5],
      [1, 2, 3],
      [1, 3, 5],
      [2, 4, 6],
      [2, 4],
      [2, 3, 5],
      [1, 6],
    ];
    expect(
      hittingSets(collection)
        .sets.map((set) => set.join(''))
        .sort(),
    ).toEqual(['12', '134', '145', '236', '256', '346']);
  });

  it('the full adder: conflicts {X1,X2} and {X1,A2,O1} have the diagnoses {X1}, {X2,A2}, {X2,O1}', () => {
    const [x1, x2, a2, o1] = [1, 2, 3, 4];
    expect(
      hittingSets([
        [x1, x2],
        [x1, a2, o1],
      ]).sets,
    ).toEqual([[1], [2, 3], [2, 4]]);
  });
});

describe('50 random networks against the linear-programming solver HiGHS', () => {
  it('the largest and the smallest solutions are our latest and earliest days', async () => {
    const highs = await highsLoader();
    let compared = 0;
    for (let seed = 5000; compared < 50; seed += 1) {
      const random = randomNetwork(seed, { events: 5, statements: 8, gaps: false, span: 80 });
      const all = random.statements.map((_, i) => i);
      if (!bruteConsistent(random, all)) continue;
      const fence: Link[] = Array.from({ length: random.moments }, (_, i) => [
        { from: ORIGIN, to: i, days: -100, role: 'dated-from' },
        { from: i, to: ORIGIN, days: -300, role: 'dated-to' },
      ]).flat();
      const network = {
        ...random,
        statements: [...random.statements.map((s) => ({ ...s, rank: 0 })), one('fence', fence)],
      };
      const links =
        choicesOf(
          network,
          network.statements.map((_, i) => i),
        )[0] ?? [];
      const name = (moment: number): string => `m${moment}`;
      const rows = links.map(({ from, to, days }, i) => {
        if (from === ORIGIN) return ` c${i}: ${name(to)} >= ${days}`;
        return to === ORIGIN ? ` c${i}: ${name(from)} <= ${-days}` : ` c${i}: ${name(to)} - ${name(from)} >= ${days}`;
      });
      const sum = Array.from({ length: network.moments }, (_, i) => name(i)).join(' + ');
      const free = Array.from({ length: network.moments }, (_, i) => ` ${name(i)} free`).join('\n');
      const solve = (direction: string) =>
        highs.solve(`${direction}\n obj: ${sum}\nSubject To\n${rows.join('\n')}\nBounds\n${free}\nEnd`);
      const smallest = solve('Minimize').Columns as Record<string, { Primal: number }>;
      const largest = solve('Maximize').Columns as Record<string, { Primal: number }>;
      const result = computeChronology(network);
      for (let moment = 0; moment < network.moments; moment += 1) {
        expect(result.grades[0]?.ranges.earliest[moment]).toBe(
          0 + Math.round(smallest[name(moment)]?.Primal ?? Number.NaN),
        );
        expect(result.grades[0]?.ranges.latest[moment]).toBe(
          0 + Math.round(largest[name(moment)]?.Primal ?? Number.NaN),
        );
      }
      compared += 1;
    }
    expect(compared).toBe(50);
  });
});
