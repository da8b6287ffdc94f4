import { rankOf } from '../base/grade.ts';
import { naturalOrder } from '../base/natural-order.ts';
import type { Entry } from '../model/entry.ts';
import type { CaseFile } from './case-file.ts';

/** Events in their computed order: by the earliest beginning at the printed grade, then the latest end. */
export function eventsInOrder(file: CaseFile): readonly Entry<'event'>[] {
  const rank = rankOf(file.settings.printedGrade);
  const key = (event: Entry<'event'>): readonly [number, number] => {
    const start = file.statements.moments.momentOf(event.id, 'start');
    const end = file.statements.moments.momentOf(event.id, 'end');
    const first = start ? file.rangesOf(start)[rank]?.earliest?.day : undefined;
    const last = end ? file.rangesOf(end)[rank]?.latest?.day : undefined;
    return [first ?? last ?? Number.POSITIVE_INFINITY, last ?? Number.POSITIVE_INFINITY];
  };
  const keyed = file.catalogue.ofType('event').map((event) => ({ event, key: key(event) }));
  keyed.sort(
    (a, b) => compare(a.key[0], b.key[0]) || compare(a.key[1], b.key[1]) || naturalOrder(a.event.id, b.event.id),
  );
  return keyed.map(({ event }) => event);
}

function compare(a: number, b: number): number {
  return a === b ? 0 : a < b ? -1 : 1;
}
