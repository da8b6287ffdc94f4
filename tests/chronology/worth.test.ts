import { describe, expect, it } from 'vitest';
import { type Chronology, computeChronology, type Network, ORIGIN } from '../../src/chronology/chronology.ts';
import { weighStatements } from '../../src/chronology/worth.ts';
import { bruteConsistent, randomNetwork } from './random-network.ts';

/** All that differs between two chronologies of one network, told the slow way. */
function differences(before: Chronology, after: Chronology, from: number): readonly string[] {
  const told: string[] = [];
  for (let rank = from; rank < 4; rank += 1) {
    for (let moment = 0; moment < before.compiled.moments; moment += 1) {
      for (const side of ['earliest', 'latest'] as const) {
        const [was, is] = [before, after].map((one) => one.grades[rank]?.ranges[side][moment]);
        if (was !== is) told.push(`${rank} ${moment} ${side} ${was} ${is}`);
      }
      const [was, is] = [before, after].map((one) => JSON.stringify(one.stretches(rank, moment)));
      if (was !== is) told.push(`${rank} ${moment} ${was} ${is}`);
    }
  }
  return told.sort();
}

function weighed(chronology: Chronology, statement: number): readonly string[] {
  const { bounds, stretches } = weighStatements(chronology).of(statement);
  return [
    ...bounds.map((one) => `${one.rank} ${one.moment} ${one.side} ${one.before} ${one.after}`),
    ...stretches.map((one) => `${one.rank} ${one.moment} ${JSON.stringify(one.before)} ${JSON.stringify(one.after)}`),
  ].sort();
}

const files = [
  ...Array.from({ length: 300 }, (_, seed) =>
    randomNetwork(seed, { events: 3 + (seed % 3), statements: 5 + (seed % 6), gaps: seed % 2 === 1, span: 12 }),
  ),
  // Larger and looser ones, mostly consistent, so that the short cut is what is tried.
  ...Array.from({ length: 100 }, (_, seed) =>
    randomNetwork(9000 + seed, { events: 8, statements: 9, gaps: false, span: 400 }),
  ),
];

describe('worth of 400 random small files', () => {
  it('the samples hold contradictions, and files without any', () => {
    const consistent = files.filter((file) =>
      bruteConsistent(
        file,
        file.statements.map((_, i) => i),
      ),
    );
    expect(consistent.length).toBeGreaterThan(60);
    expect(files.length - consistent.length).toBeGreaterThan(60);
  });

  it('equals computing everything anew without the statement', () => {
    let moved = 0;
    let narrowing = 0;
    let gone = 0;
    for (const [seed, network] of files.entries()) {
      const standing = computeChronology(network);
      network.statements.forEach((statement, i) => {
        const without = computeChronology(network, { withdrawn: new Set([i]) });
        const expected = differences(standing, without, 0);
        expect(weighed(standing, i), `statement ${statement.id} of file ${seed}`).toEqual(expected);
        expect(differences(standing, without, statement.rank)).toEqual(expected);
        const worth = weighStatements(standing).of(i);
        expect(worth.resolved.length).toBe(
          standing.disagreements.contradictions.length - without.disagreements.contradictions.length,
        );
        moved += expected.length;
        gone += worth.resolved.length;
        narrowing += worth.bounds.filter((one) => (one.side === 'earliest') === one.after > one.before).length;
      });
    }
    expect(moved).toBeGreaterThan(2000);
    expect(narrowing).toBeGreaterThan(50);
    expect(gone).toBeGreaterThan(300);
  });
});

describe('a trial', () => {
  it('from the standing chronology equals the trial computed anew, with statements withdrawn and regraded', () => {
    let contradictions = 0;
    for (const [seed, network] of files.entries()) {
      const standing = computeChronology(network);
      const trial = {
        withdrawn: new Set([seed % network.statements.length]),
        ranks: new Map([
          [(seed + 1) % network.statements.length, seed % 4],
          [(seed + 3) % network.statements.length, (seed + 2) % 4],
        ]),
      };
      const [quick, anew] = [computeChronology(network, trial, standing), computeChronology(network, trial)];
      expect(differences(anew, quick, 0)).toEqual([]);
      const sets = (one: Chronology) =>
        one.disagreements.contradictions.map(({ kind, rank, statements, cluster }) => [
          kind,
          rank,
          statements,
          cluster,
        ]);
      expect(sets(quick)).toEqual(sets(anew));
      expect(quick.disagreements.clusters.map((one) => one.waysOut)).toEqual(
        anew.disagreements.clusters.map((one) => one.waysOut),
      );
      expect(quick.grades.map((one) => one.kept)).toEqual(anew.grades.map((one) => one.kept));
      contradictions += sets(anew).length;
    }
    expect(contradictions).toBeGreaterThan(100);
  });
});

describe('loops whose days add to nothing', () => {
  it('do not hold each other up once the statement that held them is gone', () => {
    const same = (id: string, a: number, b: number) => ({
      id,
      rank: 0,
      links: [
        { from: a, to: b, days: 0, role: 'same' },
        { from: b, to: a, days: 0, role: 'same' },
      ],
    });
    const network: Network = {
      moments: 3,
      axioms: [],
      statements: [
        { id: 'A', rank: 0, links: [{ from: ORIGIN, to: 0, days: 10, role: 'dated-from' }] },
        same('B', 0, 1),
        same('C', 1, 2),
        same('D', 2, 0),
        { id: 'E', rank: 0, links: [{ from: ORIGIN, to: 2, days: 4, role: 'dated-from' }] },
      ],
    };
    const worth = weighStatements(computeChronology(network));
    expect(
      worth
        .of(0)
        .bounds.filter((one) => one.rank === 0)
        .map((one) => one.after),
    ).toEqual([4, 4, 4]);
    expect(worth.of(1).bounds).toEqual([]);
  });
});
