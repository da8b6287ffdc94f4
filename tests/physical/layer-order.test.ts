import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/geometry/seeded-random.ts';
import { type LayerRelation, orderLayers } from '../../src/physical/layer-order.ts';

const relation = (text: string): LayerRelation => {
  const [upper = '', lower = ''] = text.split('>');
  return { upper, lower, kind: 'over' };
};
const reduced = (order: ReturnType<typeof orderLayers>): readonly string[] =>
  order.lines.map(({ upper, lower }) => `${order.boxes[upper]?.join('=')}>${order.boxes[lower]?.join('=')}`).toSorted();

describe('layer order', () => {
  it('the own hand-checked case of checks/values.md 7 (after Harris 1979)', () => {
    const relations = '1>2 1>3 2>4 3>4 1>4 4>5 2>5 5>6 1>6 6>7 6>8 7>9 8>9 5>9'.split(' ').map(relation);
    const order = orderLayers(['1', '2', '3', '4', '5', '6', '7', '8', '9'], relations, []);
    expect(reduced(order)).toEqual('1>2 1>3 2>4 3>4 4>5 5>6 6>7 6>8 7>9 8>9'.split(' '));
    expect(order.redundant.map((one) => `${one.upper}>${one.lower}`).toSorted()).toEqual(['1>4', '1>6', '2>5', '5>9']);
    expect(order.loops).toEqual([]);
  });

  it('units that are the same share a box; a loop through them is told', () => {
    const order = orderLayers(['a', 'b', 'c'], [relation('a>b'), relation('b>c')], [['a', 'c']]);
    expect(order.boxes).toEqual([['a', 'c'], ['b']]);
    expect(order.loops).toEqual([[0, 1]]);
    expect(order.lines).toEqual([]);
  });

  it('units without an order stay so', () => {
    const order = orderLayers(['a', 'b', 'c'], [relation('a>c')], []);
    expect(reduced(order)).toEqual(['a>c']);
    expect(order.boxes.length).toBe(3);
  });

  it('equals brute force on 200 random orders', () => {
    const random = seededRandom(4);
    for (let trial = 0; trial < 200; trial += 1) {
      const n = 4 + Math.floor(random() * 10);
      const units = Array.from({ length: n }, (_, i) => String(i));
      const relations = units.flatMap((upper, i) =>
        units.slice(i + 1).flatMap((lower) => (random() < 0.35 ? [{ upper, lower, kind: 'cuts' as const }] : [])),
      );
      const has = new Set(relations.map((one) => `${one.upper}>${one.lower}`));
      const reaches = (from: number, to: number, direct: boolean): boolean => {
        for (let k = from + 1; k <= to; k += 1) {
          if (!has.has(`${from}>${k}`) || (k === to && !direct)) continue;
          if (k === to || reaches(k, to, true)) return true;
        }
        return false;
      };
      const expected = relations
        .filter((one) => !reaches(Number(one.upper), Number(one.lower), false))
        .map((one) => `${one.upper}>${one.lower}`)
        .toSorted();
      expect(reduced(orderLayers(units, relations, []))).toEqual(expected);
    }
  });

  it('20,000 units and 100,000 relations in about a second', () => {
    const random = seededRandom(1);
    const units = Array.from({ length: 20_000 }, (_, i) => String(i));
    const relations = Array.from({ length: 100_000 }, (): LayerRelation => {
      const upper = Math.floor(random() * 19_999);
      const lower = Math.min(19_999, upper + 1 + Math.floor(random() * 200));
      return { upper: String(upper), lower: String(lower), kind: 'over' };
    });
    const order = orderLayers(units, relations, []);
    expect(order.lines.length).toBeGreaterThan(19_000);
    expect(order.loops).toEqual([]);
  });
});
