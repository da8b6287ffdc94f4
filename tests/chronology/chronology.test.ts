import { describe, expect, it } from 'vitest';
import { mergeStretches } from '../../src/chronology/choices.ts';
import { computeChronology, type Network, ORIGIN } from '../../src/chronology/chronology.ts';
import { bruteConsistent, bruteIrreducible, choicesOf, distances, randomNetwork } from './random-network.ts';

const sorted = (sets: readonly (readonly number[])[]) =>
  sets.map((set) => [...set].sort((a, b) => a - b).join(',')).sort();

describe('against brute force', () => {
  const files = Array.from({ length: 300 }, (_, seed) =>
    randomNetwork(seed, { events: 3 + (seed % 3), statements: 5 + (seed % 6), gaps: seed % 2 === 1, span: 12 }),
  );

  it('the samples are not empty of contradictions, of gaps, nor of statements with several links', () => {
    const withContradictions = files.filter(
      (file) =>
        !bruteConsistent(
          file,
          file.statements.map((_, i) => i),
        ),
    );
    expect(withContradictions.length).toBeGreaterThan(60);
    expect(withContradictions.length).toBeLessThan(280);
    expect(files.some((file) => file.statements.some((one) => one.choice))).toBe(true);
  });

  it('irreducible sets, disputed and kept statements, and ranges are the brute-force ones', () => {
    let sets = 0;
    let split = 0;
    for (const [seed, network] of files.entries()) {
      const all = network.statements.map((_, i) => i);
      const brute = bruteIrreducible(network, all);
      const result = computeChronology(network);
      const dates = result.disagreements.contradictions.filter((one) => one.kind === 'dates');
      expect(sorted(dates.map((one) => one.statements)), `sets of file ${seed}`).toEqual(sorted(brute));
      sets += brute.length;
      let kept: number[] = [];
      for (let rank = 0; rank < 4; rank += 1) {
        const here = all.filter((i) => (network.statements[i]?.rank ?? 0) <= rank);
        const disputed = new Set(brute.filter((set) => set.every((i) => here.includes(i))).flat());
        kept = [...new Set([...kept, ...here.filter((i) => !disputed.has(i))])].sort((a, b) => a - b);
        const grade = result.grades[rank];
        expect(
          all.filter((i) => grade?.kept[i]),
          `kept set of file ${seed} at ${rank}`,
        ).toEqual(kept);
        for (let moment = 0; moment < network.moments; moment += 1) {
          const stretches = mergeStretches(
            choicesOf(network, kept).flatMap((links) => {
              const d = distances(network.moments, links);
              if (!d) return [];
              return [
                {
                  earliest: d[network.moments]?.[moment] as number,
                  latest: 0 - (d[moment]?.[network.moments] as number),
                },
              ];
            }),
          );
          expect(grade?.ranges.earliest[moment], `earliest ${moment} of file ${seed} at ${rank}`).toBe(
            stretches[0]?.earliest,
          );
          expect(grade?.ranges.latest[moment]).toBe(stretches.at(-1)?.latest);
          if (stretches.length > 1) split += 1;
          expect(result.stretches(rank, moment)).toEqual(stretches.length > 1 ? stretches : []);
        }
      }
    }
    expect(sets).toBeGreaterThan(200);
    expect(split).toBeGreaterThan(10);
  });

  it('every way out is minimal and sufficient', () => {
    let ways = 0;
    for (const network of files) {
      const { clusters, contradictions } = computeChronology(network).disagreements;
      for (const cluster of clusters.filter(
        (one) => !contradictions.some((c) => c.cluster === one.number && c.kind === 'order'),
      )) {
        const union = [
          ...new Set(contradictions.filter((one) => one.cluster === cluster.number).flatMap((one) => one.statements)),
        ];
        expect(cluster.waysOut.length).toBeGreaterThan(0);
        for (const way of cluster.waysOut) {
          ways += 1;
          expect(
            bruteConsistent(
              network,
              union.filter((one) => !way.includes(one)),
            ),
          ).toBe(true);
          for (const back of way) {
            expect(
              bruteConsistent(
                network,
                union.filter((one) => one === back || !way.includes(one)),
              ),
            ).toBe(false);
          }
        }
      }
    }
    expect(ways).toBeGreaterThan(200);
  });

  it('reasons force the bounds that they explain, and none of their statements is idle', () => {
    let reasons = 0;
    for (const network of files) {
      const result = computeChronology(network);
      for (let rank = 0; rank < 4; rank += 1) {
        for (let moment = 0; moment < network.moments; moment += 1) {
          const day = result.grades[rank]?.ranges.earliest[moment] as number;
          if (!Number.isFinite(day)) continue;
          const { statements } = result.reason(rank, moment, 'earliest');
          const earliestFrom = (chosen: readonly number[]): number =>
            Math.min(
              ...choicesOf(network, chosen).map(
                (links) => distances(network.moments, links)?.[network.moments]?.[moment] ?? Number.POSITIVE_INFINITY,
              ),
            );
          expect(earliestFrom(statements)).toBe(day);
          for (const one of statements) expect(earliestFrom(statements.filter((i) => i !== one))).toBeLessThan(day);
          reasons += 1;
        }
      }
    }
    expect(reasons).toBeGreaterThan(1000);
  });

  it('the order in which statements are given changes nothing', () => {
    for (const network of files.slice(0, 60)) {
      const turned: Network = { ...network, statements: [...network.statements].reverse() };
      const ids = (n: Network, list: readonly number[]) => list.map((i) => n.statements[i]?.id);
      const [a, b] = [computeChronology(network), computeChronology(turned)];
      expect(b.disagreements.contradictions.map((one) => ids(turned, one.statements))).toEqual(
        a.disagreements.contradictions.map((one) => ids(network, one.statements)),
      );
      for (let moment = 0; moment < network.moments; moment += 1) {
        for (const side of ['earliest', 'latest'] as const) {
          expect(ids(turned, b.reason(3, moment, side).statements)).toEqual(
            ids(network, a.reason(3, moment, side).statements),
          );
        }
      }
    }
  });
});

describe('500 random networks', () => {
  it('agree with brute-force shortest paths', () => {
    let crossed = 0;
    for (let seed = 1000; seed < 1500; seed += 1) {
      const network = randomNetwork(seed, { events: 6, statements: 9, gaps: false, span: 60 });
      const all = network.statements.map((_, i) => i);
      const d = distances(network.moments, choicesOf(network, all)[0] ?? []);
      const one = { ...network, statements: network.statements.map((statement) => ({ ...statement, rank: 0 })) };
      const result = computeChronology(one);
      expect(result.disagreements.contradictions.some((c) => c.kind === 'dates')).toBe(d === null);
      if (!d) {
        crossed += 1;
        continue;
      }
      for (let moment = 0; moment < network.moments; moment += 1) {
        expect(result.grades[0]?.ranges.earliest[moment]).toBe(d[network.moments]?.[moment]);
        expect(result.grades[0]?.ranges.latest[moment]).toBe(0 - (d[moment]?.[network.moments] as number));
      }
    }
    expect(crossed).toBeGreaterThan(20);
    expect(crossed).toBeLessThan(450);
  });
});

/** Single moments with ids, for hand-made cases. */
function network(moments: number, statements: Network['statements']): Network {
  return { moments, axioms: [], statements };
}
const from = (moment: number, day: number) => ({ from: ORIGIN, to: moment, days: day, role: 'dated-from' });
const until = (moment: number, day: number) => ({ from: moment, to: ORIGIN, days: -day, role: 'dated-to' });

describe('small traps (chronology, section 12)', () => {
  it('C in {1925, 1931}, not before 1926, by 1930 is a contradiction though the hull is not', () => {
    const result = computeChronology(
      network(1, [
        {
          id: 'C',
          rank: 0,
          links: [from(0, 1925), until(0, 1931)],
          choice: [
            [from(0, 1925), until(0, 1925)],
            [from(0, 1931), until(0, 1931)],
          ],
        },
        { id: 'A', rank: 0, links: [from(0, 1926)] },
        { id: 'B', rank: 0, links: [until(0, 1930)] },
      ]),
    );
    expect(result.disagreements.contradictions.map((one) => one.statements.length)).toEqual([3]);
  });

  it('thirteen unrelated two-member sets are not 8,192 choices', () => {
    const statements = Array.from({ length: 13 }, (_, i) => ({
      id: `S-${i}`,
      rank: 0,
      links: [from(i, 0), until(i, 10)],
      choice: [
        [from(i, 0), until(i, 1)],
        [from(i, 9), until(i, 10)],
      ],
    }));
    const result = computeChronology(network(13, statements));
    expect(result.stretches(0, 5)).toEqual([
      { earliest: 0, latest: 1 },
      { earliest: 9, latest: 10 },
    ]);
    expect(result.grades[0]?.ranges.inexact.size).toBe(0);
  });

  it('four links each stated twice are 16 sets but 6 ways out', () => {
    const link = (i: number, copy: string) => ({
      id: `L-${i}${copy}`,
      rank: 0,
      order: 'order' as const,
      links: [{ from: i, to: i + 1, days: 1, role: 'order' }],
    });
    const statements = [0, 1, 2, 3].flatMap((i) => [link(i, 'a'), link(i, 'b')]);
    const ends = [
      { id: 'from', rank: 0, links: [from(0, 10)] },
      { id: 'to', rank: 0, links: [until(4, 12)] },
    ];
    const { contradictions, clusters } = computeChronology(network(5, [...statements, ...ends])).disagreements;
    expect(contradictions.length).toBe(16);
    expect(clusters.map((one) => one.waysOut.length)).toEqual([6]);
    expect(clusters[0]?.complete).toBe(true);
  });

  it('two events each said twice to come after the other are four loops of order, with two ways out', () => {
    const order = (id: string, a: number, b: number) => ({
      id,
      rank: 1,
      order: 'order' as const,
      links: [{ from: a, to: b, days: 0, role: 'order' }],
    });
    const { contradictions, clusters } = computeChronology(
      network(2, [order('A1', 0, 1), order('A2', 0, 1), order('B1', 1, 0), order('B2', 1, 0)]),
    ).disagreements;
    expect(contradictions.length).toBe(4);
    expect(clusters[0]?.waysOut).toEqual([
      [0, 1],
      [2, 3],
    ]);
  });

  it('past the cap there is still a way out that solves, and ranges are never narrower than they may be', () => {
    const many = Array.from({ length: 250 }, (_, i) => ({ id: `P-${i}`, rank: 2, links: [until(0, 1600 + i)] }));
    const result = computeChronology(network(1, [{ id: 'A', rank: 0, links: [from(0, 1930)] }, ...many]));
    expect(result.disagreements.clusters.map((one) => one.complete)).toEqual([false]);
    expect(result.disagreements.contradictions.length).toBe(200);
    const ways = result.disagreements.clusters[0]?.waysOut ?? [];
    expect(ways.map((way) => way.length).sort((a, b) => a - b)).toEqual([1, 250]);
    for (const way of ways)
      expect(
        computeChronology(result.compiled.network, { withdrawn: new Set(way) }).disagreements.contradictions,
      ).toEqual([]);
    expect(result.grades[2]?.ranges.earliest[0]).toBe(1930);
    expect(result.grades[2]?.ranges.latest[0]).toBe(Number.POSITIVE_INFINITY);
  });

  it('a set that is open on both sides still splits', () => {
    const [low, high] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
    const choice = [
      [from(0, low), until(0, 1920)],
      [from(0, 1930), until(0, high)],
    ];
    const result = computeChronology(
      network(1, [
        { id: 'A', rank: 0, links: [], choice },
        { id: 'B', rank: 1, links: [from(0, 1925)] },
      ]),
    );
    expect(result.grades[1]?.ranges.earliest[0]).toBe(1930);
  });

  it('a loop of order that adds nothing is listed and makes no range inconsistent', () => {
    const order = (id: string, a: number, b: number) => ({
      id,
      rank: 1,
      order: 'order' as const,
      links: [{ from: a, to: b, days: 0, role: 'order' }],
    });
    const result = computeChronology(
      network(3, [order('A', 0, 1), order('B', 1, 2), order('C', 2, 0), { id: 'D', rank: 0, links: [from(0, 5)] }]),
    );
    expect(result.disagreements.contradictions.map((one) => [one.kind, one.rank, one.statements])).toEqual([
      ['order', 1, [0, 1, 2]],
    ]);
    expect(result.grades[1]?.contradicted.size).toBe(0);
    expect(result.grades[1]?.ranges.earliest[2]).toBe(5);
  });
});

describe('the graded case of checks/values.md 3.5 (own worked case)', () => {
  // cut 0 <= transport 1 <= acquisition 2; A acquisition 1924-1926; D cut >= 1927; E cut <= 1922; F transport >= 1919; G cut >= 1905
  const statements = [
    { id: 'A', rank: 1, links: [from(2, 1924), until(2, 1926)] },
    { id: 'B', rank: 0, links: [{ from: 0, to: 1, days: 0, role: 'order' }] },
    { id: 'C', rank: 0, links: [{ from: 1, to: 2, days: 0, role: 'order' }] },
    { id: 'D', rank: 2, links: [from(0, 1927)] },
    { id: 'E', rank: 3, links: [until(0, 1922)] },
    { id: 'F', rank: 2, links: [from(1, 1919)] },
    { id: 'G', rank: 3, links: [from(0, 1905)] },
  ];

  it('finds {D,E} and {A,B,C,D}, the four ways out, and keeps F and G', () => {
    const result = computeChronology(network(3, statements));
    const ids = (list: readonly number[]) => list.map((i) => statements[i]?.id).join('');
    expect(result.disagreements.contradictions.map((one) => ids(one.statements)).sort()).toEqual(['ABCD', 'DE']);
    expect(result.disagreements.clusters[0]?.waysOut.map(ids).sort()).toEqual(['AE', 'BE', 'CE', 'D']);
    expect(result.grades[1]?.ranges.latest[0]).toBe(1926);
    expect(result.grades[2]?.ranges.earliest[1]).toBe(1919);
    expect(result.grades[3]?.ranges.earliest[0]).toBe(1905);
    expect(ids(result.setAside(2, 0))).toBe('D');
  });
});
