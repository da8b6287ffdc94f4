import highsPackage from 'highs';
import { bench, describe } from 'vitest';
import { propagate } from '../../src/chronology/bounds.ts';
import { compileNetwork } from '../../src/chronology/compiled.ts';
import { type Link, ORIGIN } from '../../src/chronology/network.ts';
import { seededRandom } from '../../src/geometry/seeded-random.ts';

/** Moments in order with three links each that look back, a day bound on every tenth, all consistent. */
function chain(moments: number): readonly Link[] {
  const random = seededRandom(moments);
  const links: Link[] = [];
  for (let to = 1; to < moments; to += 1) {
    for (let k = 0; k < 3; k += 1) {
      links.push({
        from: Math.max(0, to - 1 - Math.floor(random() * 20)),
        to,
        days: Math.floor(random() * 3),
        role: 'order',
      });
    }
    if (to % 10 === 0) links.push({ from: ORIGIN, to, days: to, role: 'dated-from' });
  }
  links.push({ from: moments - 1, to: ORIGIN, days: -10 * moments, role: 'dated-to' });
  return links;
}

const highs = await (highsPackage as unknown as () => Promise<{ solve(problem: string): unknown }>)();

// Prints ratios of one run; decides nothing. The peer is the linear-programming solver HiGHS: two problems give all bounds.
for (const moments of [100, 300, 1000]) {
  describe(`all bounds of ${moments} moments`, () => {
    const links = chain(moments);
    const compiled = compileNetwork({
      moments,
      axioms: [],
      statements: links.map((link, i) => ({ id: `S-${i}`, rank: 0, links: [link] })),
    });
    const active = new Uint8Array(links.length).fill(1);
    const name = (moment: number): string => `m${moment}`;
    const rows = links.map(({ from, to, days }, i) => {
      if (from === ORIGIN) return ` c${i}: ${name(to)} >= ${days}`;
      return to === ORIGIN ? ` c${i}: ${name(from)} <= ${-days}` : ` c${i}: ${name(to)} - ${name(from)} >= ${days}`;
    });
    const sum = Array.from({ length: moments }, (_, i) => name(i)).join(' + ');
    const box = Array.from({ length: moments }, (_, i) => ` -1000 <= ${name(i)} <= 1000000`).join('\n');
    const problem = (direction: string): string =>
      `${direction}\n obj: ${sum}\nSubject To\n${rows.join('\n')}\nBounds\n${box}\nEnd`;
    bench('own propagation', () => {
      propagate(compiled, active);
    });
    bench(
      'HiGHS, two linear problems',
      () => {
        highs.solve(problem('Minimize'));
        highs.solve(problem('Maximize'));
      },
      { iterations: 3, warmupIterations: 1, time: 500 },
    );
  });
}
for (const moments of [10_000, 100_000]) {
  describe(`growth: all bounds of ${moments} moments, own propagation alone`, () => {
    const links = chain(moments);
    const compiled = compileNetwork({
      moments,
      axioms: [],
      statements: links.map((link, i) => ({ id: `S-${i}`, rank: 0, links: [link] })),
    });
    const active = new Uint8Array(links.length).fill(1);
    bench('own propagation', () => {
      propagate(compiled, active);
    });
  });
}
