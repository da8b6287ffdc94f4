import { naturalOrder } from '../base/natural-order.ts';
import type { DayRange } from '../dates/day.ts';
import { hullOfExpression } from '../dates/expression.ts';
import { isDateProblem, readDate } from '../dates/read-date.ts';
import { type Entry, isOfType } from '../model/entry.ts';
import { samePiece } from '../model/pieces.ts';
import type { CaseFile } from './case-file.ts';
import { PRINTED_RANK, type Stretch } from './chain.ts';

/** Searches about one of the two, or about an event of all their pieces that may lie between them, where their time is bounded. */
export function searchesFor(
  file: CaseFile,
  sides: readonly Entry<'holding'>[],
  within: Stretch,
): readonly Entry<'search'>[] {
  const concerns = (id: string): boolean => {
    const entry = file.catalogue.resolve(id)?.entry;
    if (!entry) return false;
    if (sides.some((one) => one.id === entry.id)) return true;
    const pieces = sides.flatMap((one) => one.keys.objects);
    if (
      !isOfType(entry, 'event') ||
      !pieces.every((id) => (entry.keys.objects ?? []).some((other) => samePiece(id, other)))
    )
      return false;
    if (!Number.isFinite(within.first) || !Number.isFinite(within.last)) return false;
    const [start, end] = (['start', 'end'] as const).map((edge) => file.statements.moments.momentOf(entry.id, edge));
    const ranges = file.chronology.grades[PRINTED_RANK]?.ranges;
    const [from, to] = [ranges?.earliest[start?.index ?? -1], ranges?.latest[end?.index ?? -1]];
    return (
      from !== undefined &&
      to !== undefined &&
      Number.isFinite(from) &&
      Number.isFinite(to) &&
      from <= within.last &&
      to >= within.first
    );
  };
  return searchesAbout(file, [
    ...sides.map((one) => one.id),
    ...file.catalogue.onObject('event', sides[0]?.keys.objects[0]?.split('/')[0] ?? '').map((one) => one.id),
  ]).filter((one) => (one.keys.about ?? []).some(concerns) && looksInto(file, one, within));
}

/** Searches that name one of these entries, in natural order of their ids. */
function searchesAbout({ catalogue }: CaseFile, ids: readonly string[]): readonly Entry<'search'>[] {
  const found = new Map(
    ids.flatMap((id) =>
      catalogue.linksTo(id).flatMap(({ from, via }) => {
        const entry = via === 'about' ? catalogue.get(from) : undefined;
        return entry && isOfType(entry, 'search') ? [[entry.id, entry] as const] : [];
      }),
    ),
  );
  return [...found.values()].sort((a, b) => naturalOrder(a.id, b.id));
}

/** False where the years that were looked through certainly lie outside the stretch. */
function looksInto(file: CaseFile, { keys }: Entry<'search'>, { first, last }: Stretch): boolean {
  const days = (text: string | undefined): DayRange | null => {
    if (text === undefined) return null;
    const read = readDate(text, 'gregorian', file.settings.dates);
    return isDateProblem(read) ? null : hullOfExpression(read);
  };
  const from = days(keys.scope?.from);
  const to = days(keys.scope?.to);
  return (from === null || from.first <= last) && (to === null || to.last >= first);
}
