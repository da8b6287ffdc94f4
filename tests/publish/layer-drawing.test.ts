import { describe, expect, it } from 'vitest';
import { orderLayers } from '../../src/physical/layer-order.ts';
import { layOutLayers } from '../../src/publish/layer-drawing.ts';

/** Forty units in five coats, seeded by a formula: each over two of the coat below. */
function manyLayers() {
  const units = Array.from({ length: 40 }, (_, i) => `U${i}`);
  const relations = units.flatMap((upper, i) =>
    i < 8
      ? []
      : [3, 5].map((k) => ({ upper, lower: `U${(Math.floor(i / 8) - 1) * 8 + ((i * k) % 8)}`, kind: 'over' as const })),
  );
  return orderLayers(units, relations, [['U0', 'U1']]);
}

describe('the layer diagram', () => {
  it('stands earliest at the foot; lines are orthogonal, end at their boxes and cross no other box', async () => {
    const order = manyLayers();
    const drawing = await layOutLayers(order, (unit) => `Layer ${unit} of the wall`);
    if (!drawing) throw new Error('nothing drawn');
    const boxAt = new Map(drawing.boxes.map((box) => [box.box, box]));
    expect(drawing.lines).toHaveLength(order.lines.length);
    expect(order.lines.length).toBeGreaterThan(40);
    for (const { upper, lower } of order.lines)
      expect((boxAt.get(upper)?.y ?? 0) + (boxAt.get(upper)?.height ?? 0)).toBeLessThan(boxAt.get(lower)?.y ?? 0);
    drawing.lines.forEach(({ points }, i) => {
      const ends = [order.lines[i]?.upper, order.lines[i]?.lower];
      for (let k = 1; k < points.length; k += 1) {
        const [[x1, y1], [x2, y2]] = [points[k - 1], points[k]] as [
          readonly [number, number],
          readonly [number, number],
        ];
        expect(Math.min(Math.abs(x1 - x2), Math.abs(y1 - y2))).toBeLessThan(0.01);
        for (const box of drawing.boxes) {
          if (ends.includes(box.box)) continue;
          const apart =
            Math.max(x1, x2) <= box.x ||
            Math.min(x1, x2) >= box.x + box.width ||
            Math.max(y1, y2) <= box.y ||
            Math.min(y1, y2) >= box.y + box.height;
          expect(apart, `line ${i} crosses box ${box.units.join()}`).toBe(true);
        }
      }
    });
    expect(drawing.boxes.some((box) => box.units.join() === 'U0,U1')).toBe(true);
  });

  it('is the same twice, and names apart what has no relation', async () => {
    const [one, two] = await Promise.all([layOutLayers(manyLayers(), (u) => u), layOutLayers(manyLayers(), (u) => u)]);
    expect(JSON.stringify(one)).toBe(JSON.stringify(two));
    const order = orderLayers(['A', 'B', 'C'], [{ upper: 'A', lower: 'B', kind: 'cuts' }], []);
    expect((await layOutLayers(order, (u) => u))?.apart).toEqual(['C']);
    expect(await layOutLayers(orderLayers(['A'], [], []), (u) => u)).toBeNull();
  });
});
