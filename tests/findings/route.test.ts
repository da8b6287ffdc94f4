import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { geoDistance, geoInterpolate } from 'd3-geo';
import { describe, expect, it } from 'vitest';
import { findRoute } from '../../src/findings/route.ts';
import { searchCoverage } from '../../src/findings/search-coverage.ts';
import { seededRandom } from '../../src/geometry/seeded-random.ts';
import { type Land, layOutPlaces } from '../../src/publish/places-drawing.ts';
import { computeFiles, entries, filesOf, ROOT } from '../workspace.ts';

const place = (latitude: number, longitude: number, more = '') =>
  `type: place\ntitle: A place\ncoordinates: { latitude: ${latitude}, longitude: ${longitude} }\n${more}`;

const land = JSON.parse(
  readFileSync(createRequire(import.meta.url).resolve('world-atlas/land-50m.json'), 'utf8'),
) as Land;

describe('the way of the pieces', () => {
  it('an event tells a leg; who had it next infers one; a leg told is not inferred again', () => {
    const { file } = computeFiles(
      entries({
        'PL-a': place(37, 25),
        'PL-b': place(43, 5),
        'PL-c': place(41, -73),
        'PL-room': 'type: place\ntitle: A room\nwithin: PL-b',
        'OB-x': 'type: object\ntitle: A piece',
        'EV-t':
          'type: event\nkind: transport\ntitle: Carried\nobjects: [OB-x]\nplace: PL-a\nto: PL-b\nstated: [{ date: "1930", grade: probable }]',
        'HO-1': 'type: holding\ntitle: One\ncapacity: possessor\nobjects: [OB-x]\nplace: PL-a',
        'HO-2': 'type: holding\ntitle: Two\ncapacity: possessor\nobjects: [OB-x]\nplace: PL-room\nfrom: HO-1',
        'HO-3': 'type: holding\ntitle: Three\ncapacity: possessor\nobjects: [OB-x]\nfrom: HO-2',
        'HO-4': 'type: holding\ntitle: Four\ncapacity: possessor\nobjects: [OB-x]\nplace: PL-c\nfrom: HO-3',
      }),
    );
    const route = findRoute(file);
    expect(route.legs.map(({ from, to, is, rests }) => [from.place.id, to.place.id, is, rests])).toEqual([
      ['PL-a', 'PL-b', 'told', ['EV-t']],
      ['PL-b', 'PL-c', 'inferred', ['HO-2', 'HO-4']],
    ]);
    expect(route.points.map((one) => one.place.id)).toEqual(['PL-a', 'PL-b', 'PL-c']);
  });

  it('a leg told only on weak statements is dashed', () => {
    const { file } = computeFiles(
      entries({
        'PL-a': place(37, 25),
        'PL-b': place(43, 5),
        'EV-t':
          'type: event\nkind: transport\ntitle: Carried\nplace: PL-a\nto: PL-b\nstated: [{ date: "1930", grade: possible }]',
      }),
    );
    expect(findRoute(file).legs.map((one) => one.is)).toEqual(['inferred']);
  });

  it('public files show sites no finer than their entries allow, and the present store never', () => {
    const list = entries({
      'PL-a': place(36.9312, 25.8124),
      'PL-b': place(41.1234, -73.5678, 'present-store: true'),
      'PL-c': place(10.1234, 20.5678, 'show: none'),
      'EV-t':
        'type: event\nkind: transport\ntitle: Carried\nplace: PL-a\nto: PL-b\nstated: [{ date: "1930", grade: probable }]',
      'EV-u': 'type: event\nkind: listing\ntitle: Listed\nplace: PL-c',
    });
    const route = findRoute(computeFiles(list, 'public').file);
    expect(route.points.map(({ latitude, longitude }) => [latitude, longitude])).toEqual([[36.9, 25.8]]);
    expect(route.legs).toEqual([]);
    expect(findRoute(computeFiles(list).file).points).toHaveLength(3);
  });

  it('places lie in true proportion to the middle of the map (equal-area, checked with great-circle distances of d3-geo)', () => {
    const random = seededRandom(5);
    for (let trial = 0; trial < 40; trial += 1) {
      const points = Array.from({ length: 4 }, (_, i) => ({
        place: { id: `PL-${i}` } as never,
        longitude: random() * 60 - 30,
        latitude: random() * 50,
      }));
      const drawing = layOutPlaces({ points, legs: [], unplaced: [] }, land, () => 'A name');
      if (!drawing) throw new Error('no drawing');
      for (const { x, y } of drawing.places) {
        expect(x).toBeGreaterThanOrEqual(0);
        expect(x).toBeLessThanOrEqual(drawing.width);
        expect(y).toBeGreaterThanOrEqual(0);
        expect(y).toBeLessThanOrEqual(drawing.height);
      }
      // Scale differs by less than a factor of 1.25 from pair to pair over this stretch of the earth.
      const scales = points.slice(1).map((point, i) => {
        const [a, b] = [drawing.places[0], drawing.places[i + 1]];
        const drawn = Math.hypot((a?.x ?? 0) - (b?.x ?? 0), (a?.y ?? 0) - (b?.y ?? 0));
        return (
          drawn / geoDistance([points[0]?.longitude ?? 0, points[0]?.latitude ?? 0], [point.longitude, point.latitude])
        );
      });
      expect(Math.max(...scales) / Math.min(...scales)).toBeLessThan(1.25);
    }
  });

  it('one place alone, places a step apart, and none at all are drawn or refused, never broken', () => {
    const at = (latitude: number, longitude: number) => ({ place: { id: 'PL-a' } as never, latitude, longitude });
    expect(layOutPlaces({ points: [], legs: [], unplaced: [] }, land, () => '')).toBe(null);
    for (const points of [[at(36.9, 25.8)], [at(36.9, 25.8), at(36.9001, 25.8001)], [at(89.9, 0), at(-89, 170)]]) {
      const drawing = layOutPlaces({ points, legs: [], unplaced: [] }, land, () => 'A name');
      expect(drawing?.places.every(({ x, y }) => Number.isFinite(x) && Number.isFinite(y))).toBe(true);
      expect(drawing?.land).not.toContain('NaN');
    }
    expect(geoInterpolate([0, 0], [90, 0])(0.5)).toEqual([45, 0]);
  });
});

describe('holders and years against archives', () => {
  it('years that nobody has looked through: by brute force over single years', () => {
    const random = seededRandom(8);
    for (let trial = 0; trial < 60; trial += 1) {
      const [a, b] = [1900 + Math.floor(random() * 20), 1925 + Math.floor(random() * 20)];
      const scopes = Array.from({ length: Math.floor(random() * 4) }, () => {
        const from = 1895 + Math.floor(random() * 50);
        return [from, from + Math.floor(random() * 12)] as const;
      });
      const searches = Object.fromEntries(
        scopes.map(([from, to], i) => [
          `SE-${i}`,
          `type: search\ntitle: Look ${i}\nrepository: Archive ${i}\nfor: papers\nscope: { from: "${from}", to: "${to}" }\noutcome: not found in what was searched\nabout: [HO-a]`,
        ]),
      );
      const { file } = computeFiles(
        entries({
          'OB-a': 'type: object\ntitle: A piece',
          'HO-a': `type: holding\ntitle: Somebody\ncapacity: possessor\nobjects: [OB-a]\nbegins: [{ date: "${a}", grade: probable }]\nends: [{ date: "${b}", grade: probable }]`,
          ...searches,
        }),
      );
      const [row] = searchCoverage(file);
      const wanted = Array.from({ length: b - a + 1 }, (_, i) => a + i).filter(
        (year) => !scopes.some(([from, to]) => year >= from && year <= to),
      );
      const told = (row?.uncovered ?? []).flatMap(({ first, last }) =>
        Array.from({ length: last - first + 1 }, (_, i) => first + i),
      );
      expect(told).toEqual(wanted);
    }
  });

  it('the demonstration file: a nil search for each gap', () => {
    const rows = searchCoverage(computeFiles(filesOf(ROOT)).file);
    const nil = (id: string) =>
      rows
        .find((one) => one.holding.id === id)
        ?.looks.some(({ search }) => search.keys.outcome === 'not found in what was searched');
    expect(
      ['HO-unknown', 'HO-castagnou', 'HO-dray', 'HO-thornquist', 'HO-castagnou-C', 'HO-thornquist-C'].map(nil),
    ).toEqual(Array.from({ length: 6 }, () => true));
  });
});
