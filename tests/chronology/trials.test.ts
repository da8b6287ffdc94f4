import { expect, it } from 'vitest';
import { computeChronology, type Link, type Network, ORIGIN } from '../../src/chronology/chronology.ts';
import { openTrials } from '../../src/chronology/trials.ts';
import { randomNetwork } from './random-network.ts';

/** Networks side by side as one: nothing ties one to the other. */
function beside(networks: readonly Network[]): Network {
  let before = 0;
  const moved = networks.map((network, at) => {
    const shift = (moment: number): number => (moment === ORIGIN ? ORIGIN : moment + offset);
    const move = (link: Link): Link => ({ ...link, from: shift(link.from), to: shift(link.to) });
    const offset = before;
    before += network.moments;
    return {
      axioms: network.axioms.map(move),
      statements: network.statements.map((one) => ({
        ...one,
        id: `${at}.${one.id}`,
        links: one.links.map(move),
        ...(one.choice ? { choice: one.choice.map((member) => member.map(move)) } : {}),
      })),
    };
  });
  return {
    moments: before,
    axioms: moved.flatMap((one) => one.axioms),
    statements: moved.flatMap((one) => one.statements),
  };
}

it('a trial computed only in what is tied to its statements answers what the whole file answers (200 random files of three pieces)', () => {
  const bounded = { moved: 0, reasons: 0, apart: 0 };
  for (let seed = 0; seed < 200; seed += 1) {
    const pieces = [0, 1, 2].map((at) =>
      randomNetwork(seed * 3 + at, {
        events: 3,
        statements: 6,
        gaps: (seed + at) % 2 === 1,
        span: seed % 4 === 0 ? 200 : 12,
      }),
    );
    const network = beside(pieces);
    const count = network.statements.length;
    const out = new Set(seed % 5 === 0 ? [(seed * 7) % count] : []);
    const standing = computeChronology(network, { withdrawn: out });
    const trial = {
      withdrawn: new Set([seed % count, (seed * 5 + 3) % count]),
      ranks: new Map([[(seed * 11 + 1) % count, seed % 4]]),
    };
    const local = openTrials(standing, out).of(trial);
    const whole = computeChronology(network, { withdrawn: new Set([...out, ...trial.withdrawn]), ranks: trial.ranks });
    const told = new Set(local.moments);
    for (let rank = 0; rank < 4; rank += 1)
      for (let moment = 0; moment < network.moments; moment += 1)
        for (const side of ['earliest', 'latest'] as const) {
          const name = `file ${seed}, moment ${moment} ${side} at ${rank}`;
          expect(local.day(rank, moment, side), name).toBe(whole.day(rank, moment, side));
          expect(local.reason(rank, moment, side).statements, name).toEqual(
            whole.reason(rank, moment, side).statements,
          );
          const isMoved = whole.day(rank, moment, side) !== standing.day(rank, moment, side);
          if (isMoved) expect(told.has(moment), name).toBe(true);
          bounded.moved += isMoved ? 1 : 0;
          bounded.reasons += whole.reason(rank, moment, side).statements.length > 1 ? 1 : 0;
          bounded.apart += told.has(moment) ? 0 : 1;
        }
  }
  // The samples are worth something: bounds move, reasons are chains, and much is not touched.
  expect(bounded.moved).toBeGreaterThan(500);
  expect(bounded.reasons).toBeGreaterThan(500);
  expect(bounded.apart).toBeGreaterThan(1000);
});
