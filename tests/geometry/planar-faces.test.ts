import { describe, expect, it } from 'vitest';
import { divideOutline } from '../../src/geometry/planar-faces.ts';
import type { Path, Point } from '../../src/geometry/point.ts';
import { findRingFault, isInside, signedArea } from '../../src/geometry/ring.ts';
import { seededRandom } from '../../src/geometry/seeded-random.ts';

const rectangle = (w: number, h: number): Path => [
  [0, 0],
  [w, 0],
  [w, h],
  [0, h],
];
const turned = (path: Path, angle: number): Path =>
  path.map(([x, y]): Point => [x * Math.cos(angle) - y * Math.sin(angle), x * Math.sin(angle) + y * Math.cos(angle)]);

function gridLines(w: number, h: number, columns: number, rows: number): readonly Path[] {
  return [
    ...Array.from(
      { length: columns - 1 },
      (_, i): Path => [
        [((i + 1) * w) / columns, 0],
        [((i + 1) * w) / columns, h],
      ],
    ),
    ...Array.from(
      { length: rows - 1 },
      (_, i): Path => [
        [0, ((i + 1) * h) / rows],
        [w, ((i + 1) * h) / rows],
      ],
    ),
  ];
}

const areaOf = (faces: readonly { readonly area: number }[]): number => faces.reduce((sum, one) => sum + one.area, 0);

describe('sections from an outline and its joints (checks/values.md 4.2; own cases)', () => {
  it.each([
    [3, 2, 0],
    [3, 2, 0.137],
    [10, 8, 0.137],
    [25, 20, 0.137],
    [25, 20, 1.1],
  ])('a grid of %i by %i turned by %d radians', (columns, rows, angle) => {
    const [w, h] = [3000, 2000];
    const { faces, dangling } = divideOutline(
      turned(rectangle(w, h), angle),
      gridLines(w, h, columns, rows).map((line) => turned(line, angle)),
      3,
    );
    expect(faces.length).toBe(columns * rows);
    expect(dangling).toEqual([]);
    expect(Math.abs(areaOf(faces) - w * h)).toBeLessThan(20);
    for (const face of faces) {
      expect(Math.abs(face.area - (w * h) / (columns * rows))).toBeLessThan(20);
      expect(findRingFault(face.ring)).toBe(null);
    }
  });

  it('a joint 0.4 mm short divides; one 5 mm too long divides and is cut off', () => {
    expect(
      divideOutline(
        rectangle(1000, 500),
        [
          [
            [500, 0],
            [500, 499.6],
          ],
        ],
        3,
      ).faces.length,
    ).toBe(2);
    expect(
      divideOutline(
        rectangle(1000, 500),
        [
          [
            [500, -5],
            [500, 505],
          ],
        ],
        3,
      ).faces.length,
    ).toBe(2);
    expect(
      divideOutline(
        rectangle(1000, 500),
        [
          [
            [500, -40],
            [500, 540],
          ],
        ],
        3,
      ).faces.map((one) => one.area),
    ).toEqual([250_000, 250_000]);
  });

  it('joints that meet in a T', () => {
    const { faces } = divideOutline(
      rectangle(3000, 2000),
      [
        [
          [0, 1000],
          [3000, 1000],
        ],
        [
          [1080, 0],
          [1080, 1000],
        ],
      ],
      3,
    );
    expect(faces.map((one) => Math.round(one.area)).toSorted((a, b) => a - b)).toEqual([
      1_080_000, 1_920_000, 3_000_000,
    ]);
  });

  it('a joint that ends inside a section is told, and divides nothing', () => {
    const { faces, dangling } = divideOutline(
      rectangle(1000, 500),
      [
        [
          [500, 0],
          [500, 300],
        ],
      ],
      3,
    );
    expect(faces.length).toBe(1);
    expect(dangling).toEqual([{ line: 0, at: [500, 300] }]);
  });

  it('no joints at all leave the outline', () => {
    const { faces } = divideOutline(rectangle(10, 20), [], 3);
    expect(faces.map((one) => one.area)).toEqual([200]);
  });

  it.each([10, 40, 100])('%i random chords give 1 + chords + crossings faces (Euler)', (count) => {
    const random = seededRandom(count);
    const side = 4000;
    const onEdge = (edge: number): Point => {
      const t = 40 + random() * (side - 80);
      return (
        [
          [t, 0],
          [side, t],
          [t, side],
          [0, t],
        ] as const
      )[edge as 0 | 1 | 2 | 3];
    };
    const chords = Array.from({ length: count }, (): Path => {
      const edge = Math.floor(random() * 4);
      return [onEdge(edge), onEdge((edge + 1 + Math.floor(random() * 3)) % 4)];
    });
    let crossings = 0;
    const side1 = (a: Point, b: Point, c: Point): number =>
      (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
    chords.forEach(([a, b], i) => {
      for (const [c, d] of chords.slice(i + 1) as [Point, Point][]) {
        const [p, q] = [a as Point, b as Point];
        if (side1(p, q, c) * side1(p, q, d) < 0 && side1(c, d, p) * side1(c, d, q) < 0) crossings += 1;
      }
    });
    const { faces } = divideOutline(rectangle(side, side), chords, 0);
    expect(faces.length).toBe(1 + count + crossings);
    expect(Math.abs(areaOf(faces) - side * side) / (side * side)).toBeLessThan(1e-6);
  });

  it('scale, turn and shift change nothing but units', () => {
    const lines: readonly Path[] = [
      [
        [300, 0],
        [420, 600],
      ],
      [
        [0, 200],
        [1000, 260],
      ],
      [
        [700, 0],
        [650, 600],
      ],
    ];
    const areas = (scale: number, angle: number, dx: number, dy: number): readonly number[] => {
      const move = (path: Path): Path => turned(path, angle).map(([x, y]): Point => [x * scale + dx, y * scale + dy]);
      return divideOutline(move(rectangle(1000, 600)), lines.map(move), 3)
        .faces.map((one) => one.area / scale ** 2)
        .toSorted((a, b) => a - b);
    };
    const plain = areas(1, 0, 0, 0);
    expect(plain.length).toBe(6);
    for (const [scale, angle, dx, dy] of [
      [1, 0.3, 0, 0],
      [10, 0, 5000, -300],
      [3, 2.2, -99, 1234],
    ] as const) {
      areas(scale, angle, dx, dy).forEach((area, i) => {
        expect(Math.abs(area / (plain[i] as number) - 1)).toBeLessThan(1e-4);
      });
    }
  });
});

describe('rings', () => {
  it('area, orientation, inside', () => {
    expect(signedArea(rectangle(4, 3))).toBe(12);
    expect(signedArea([...rectangle(4, 3)].reverse())).toBe(-12);
    expect(isInside(rectangle(4, 3), [1, 1])).toBe(true);
    expect(isInside(rectangle(4, 3), [4, 1])).toBe(true);
    expect(isInside(rectangle(4, 3), [4.1, 1])).toBe(false);
  });

  it('a bow tie is refused with the point where it crosses', () => {
    expect(
      findRingFault([
        [0, 0],
        [4, 4],
        [4, 0],
        [0, 4],
      ]),
    ).toEqual({ kind: 'crossing', at: [2, 2], sides: [1, 3] });
    expect(
      findRingFault([
        [0, 0],
        [4, 0],
      ]),
    ).toEqual({ kind: 'too-few', points: 2 });
    expect(
      findRingFault([
        [0, 0],
        [4, 0],
        [4, 0],
        [0, 0],
      ]),
    ).toEqual({ kind: 'too-few', points: 2 });
    expect(
      findRingFault([
        [0, 0],
        [4, 0],
        [2, 0],
      ])?.kind,
    ).toBe('crossing');
    expect(
      findRingFault([
        [0, 0],
        [4, 0],
        [4, 3],
        [0, 3],
        [0, 0],
      ]),
    ).toBe(null);
    // A side that touches another at a corner is no simple ring.
    expect(
      findRingFault([
        [0, 0],
        [4, 0],
        [4, 4],
        [2, 0],
        [0, 4],
      ])?.kind,
    ).toBe('crossing');
  });
});
