import type { Entry } from '../../src/model/entry.ts';
import type { PageContext } from '../context.ts';

/** True where an event's range at a grade says nothing that the better grade did not say. */
export function isRepeated(page: PageContext, event: Entry<'event'>, rank: number): boolean {
  if (rank === 0) return false;
  return (['start', 'end'] as const).every((edge) => {
    const moment = page.file.statements.moments.momentOf(event.id, edge);
    const ranges = moment ? page.file.rangesOf(moment) : [];
    const [here, better] = [ranges[rank], ranges[rank - 1]];
    return (
      here?.earliest?.day === better?.earliest?.day &&
      here?.latest?.day === better?.latest?.day &&
      here?.consistent === better?.consistent
    );
  });
}
