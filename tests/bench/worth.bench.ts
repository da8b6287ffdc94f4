import { bench, describe } from 'vitest';
import { computeChronology, type Link, type Network, ORIGIN } from '../../src/chronology/chronology.ts';
import { weighStatements } from '../../src/chronology/worth.ts';
import { seededRandom } from '../../src/geometry/seeded-random.ts';

// Prints ratios of one run; decides nothing. The peer of the worth is computing everything anew, statement by statement.

/** Events in a loose order with dates here and there; every tenth pair of dates contradicts another where asked for. */
function fileOf(events: number, contradictions: number): Network {
  const random = seededRandom(events);
  const axioms: Link[] = Array.from({ length: events }, (_, i) => ({
    from: 2 * i,
    to: 2 * i + 1,
    days: 0,
    role: 'axiom',
  }));
  const statements: Network['statements'][number][] = [];
  const add = (rank: number, links: readonly Link[]): void => {
    statements.push({ id: `S-${statements.length}`, rank, links });
  };
  for (let event = 1; event < events; event += 1) {
    for (let k = 0; k < 2; k += 1) {
      const other = Math.max(0, event - 1 - Math.floor(random() * 12));
      add(Math.floor(random() * 3), [{ from: 2 * other + 1, to: 2 * event, days: 0, role: 'order' }]);
    }
    if (event % 5 === 0) {
      add(Math.floor(random() * 4), [{ from: ORIGIN, to: 2 * event, days: event * 30, role: 'dated-from' }]);
      add(Math.floor(random() * 4), [
        { from: 2 * event + 1, to: ORIGIN, days: -(event * 30 + 4000), role: 'dated-to' },
      ]);
    }
  }
  for (let i = 0; i < contradictions; i += 1) {
    const event = Math.floor(((i + 1) * events) / (contradictions + 1));
    add(2, [{ from: 2 * event + 1, to: ORIGIN, days: -(event * 30 - 5000), role: 'dated-to' }]);
  }
  return { moments: 2 * events, axioms, statements };
}

describe('worth of every statement of 300 events', () => {
  const network = fileOf(300, 0);
  bench(
    'own: from the forest of tight links',
    () => {
      const worth = weighStatements(computeChronology(network));
      network.statements.forEach((_, i) => {
        worth.of(i);
      });
    },
    { iterations: 5, time: 500 },
  );
  bench(
    'everything anew without each',
    () => {
      network.statements.forEach((_, i) => {
        computeChronology(network, { withdrawn: new Set([i]) });
      });
    },
    { iterations: 1, warmupIterations: 0, time: 1 },
  );
});

for (const events of [1000, 10_000, 100_000]) {
  describe(`growth: ${events} events without contradictions`, () => {
    const network = fileOf(events, 0);
    const options = { iterations: 1, warmupIterations: 0, time: 1 };
    bench('bounds at four grades', () => void computeChronology(network), options);
    const standing = computeChronology(network);
    bench(
      'worth of every statement',
      () => {
        const worth = weighStatements(standing);
        network.statements.forEach((_, i) => {
          worth.of(i);
        });
      },
      options,
    );
  });
}

for (const events of [1000, 10_000]) {
  describe(`growth: ${events} events with 10 planted contradictions`, () => {
    const network = fileOf(events, 10);
    bench('sets, clusters and bounds', () => void computeChronology(network), {
      iterations: 1,
      warmupIterations: 0,
      time: 1,
    });
  });
}
