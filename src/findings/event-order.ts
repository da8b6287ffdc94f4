import { rankOf } from '../base/grade.ts';
import { naturalOrder } from '../base/natural-order.ts';
import { oncePer } from '../base/once.ts';
import type { Entry } from '../model/entry.ts';
import type { CaseFile } from './case-file.ts';

/** Events in their computed order: by the earliest beginning at the printed grade (or a weaker one), then the latest end. */
export const eventsInOrder = oncePer((file: CaseFile): readonly Entry<'event'>[] => {
  const rank = rankOf(file.settings.printedGrade);
  const key = (event: Entry<'event'>): readonly [number, number] => {
    const start = file.statements.moments.momentOf(event.id, 'start');
    const end = file.statements.moments.momentOf(event.id, 'end');
    // Where nothing bounds it at the printed grade, the first weaker one that does gives its place.
    const grades = [0, 1, 2, 3].filter((one) => one >= rank);
    const first = grades
      .map((one) => start && file.rangesOf(start)[one]?.earliest?.day)
      .find((day) => day !== undefined);
    const last = grades.map((one) => end && file.rangesOf(end)[one]?.latest?.day).find((day) => day !== undefined);
    return [first ?? last ?? Number.POSITIVE_INFINITY, last ?? Number.POSITIVE_INFINITY];
  };
  const keyed = file.catalogue.ofType('event').map((event) => ({ event, key: key(event) }));
  keyed.sort(
    (a, b) => compare(a.key[0], b.key[0]) || compare(a.key[1], b.key[1]) || naturalOrder(a.event.id, b.event.id),
  );
  return keyed.map(({ event }) => event);
});

const placesInOrder = oncePer(
  (file: CaseFile) => new Map(eventsInOrder(file).map((event, i): readonly [string, number] => [event.id, i])),
);

/** Events that name an object or a part of it, in their computed order. */
export function eventsOn(file: CaseFile, object: string): readonly Entry<'event'>[] {
  const place = placesInOrder(file);
  return [...file.catalogue.onObject('event', object)].sort((a, b) => (place.get(a.id) ?? 0) - (place.get(b.id) ?? 0));
}

function compare(a: number, b: number): number {
  return a === b ? 0 : a < b ? -1 : 1;
}
