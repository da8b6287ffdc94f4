import type { Diagnostic } from '../base/diagnostic.ts';
import { rankOf } from '../base/grade.ts';
import { naturalOrder } from '../base/natural-order.ts';
import { allOf, phrase, type Said } from '../base/said.ts';
import type { Entry } from '../model/entry.ts';
import { samePiece } from '../model/pieces.ts';
import type { DoubtInput } from './doubts.ts';

/**
 * Orders that the dates give, though no relation says them, and that the course of a removal does
 * not allow: a piece was seen in place after every removal of it, or left the country before any.
 * Facing before removal, joining after shipping, sold but not removed and the like are no such order.
 */
export function doubtsOfOrder(input: DoubtInput): readonly Diagnostic[] {
  const events = input.catalogue.ofType('event');
  return [
    ...events.filter((event) => event.keys.kind === 'recorded in place').flatMap((seen) => goneBefore(input, seen)),
    ...events
      .filter((event) => event.keys.kind === 'export' || event.keys.kind === 'import')
      .flatMap((crossing) => leftBefore(input, crossing)),
  ];
}

function goneBefore(input: DoubtInput, seen: Entry<'event'>): readonly Diagnostic[] {
  const ofPiece = removalsOf(input, seen);
  const first = dayOf(input, seen, 'start', 'earliest');
  const isGone = (removal: Entry<'event'>): boolean => dayOf(input, removal, 'end', 'latest') < first;
  if (ofPiece.length === 0 || !ofPiece.every(isGone)) return [];
  return [
    doubt(
      seen,
      'removal-before-sighting',
      phrase('{0} sees the piece in place, but {1} had ended before that', seen.id, ids(ofPiece)),
      phrase('check the dates; if another piece was seen, or only part was taken, name it under objects'),
    ),
  ];
}

function leftBefore(input: DoubtInput, crossing: Entry<'event'>): readonly Diagnostic[] {
  const ofPiece = removalsOf(input, crossing);
  const last = dayOf(input, crossing, 'end', 'latest');
  const isLater = (removal: Entry<'event'>): boolean => dayOf(input, removal, 'start', 'earliest') > last;
  if (ofPiece.length === 0 || !ofPiece.every(isLater)) return [];
  return [
    doubt(
      crossing,
      'customs-before-removal',
      phrase('{0} had ended before {1} began', crossing.id, ids(ofPiece)),
      phrase('check the dates; if another piece crossed the border then, name it under objects'),
    ),
  ];
}

function doubt(entry: Entry, code: string, message: Said, mend: Said): Diagnostic {
  return { code, severity: 'doubt', place: entry.placeOf(['kind']), message, mend, entry: entry.id };
}

function ids(events: readonly Entry[]): Said {
  return allOf(events.map((one) => one.id));
}

/** A bound at the printed grade; where it is open, the infinity that makes no order certain. */
function dayOf(
  { statements, rangesOf, settings }: DoubtInput,
  event: Entry<'event'>,
  edge: 'start' | 'end',
  side: 'earliest' | 'latest',
): number {
  const moment = statements.moments.momentOf(event.id, edge);
  const bound = moment ? rangesOf(moment)[rankOf(settings.printedGrade)]?.[side] : undefined;
  return bound?.day ?? (side === 'earliest' ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY);
}

/** Removals of a piece that an event speaks of, in natural order of their ids. */
function removalsOf({ catalogue }: DoubtInput, event: Entry<'event'>): readonly Entry<'event'>[] {
  const objects = new Set((event.keys.objects ?? []).map((one) => one.split('/')[0] as string));
  const near = new Set([...objects].flatMap((object) => catalogue.onObject('event', object)));
  return [...near]
    .filter((other) => other.keys.kind === 'removal' && sharesPiece(other, event))
    .sort((a, b) => naturalOrder(a.id, b.id));
}

function sharesPiece(a: Entry<'event'>, b: Entry<'event'>): boolean {
  const [some, others] = [a.keys.objects ?? [], b.keys.objects ?? []];
  return some.some((one) => others.some((other) => samePiece(one, other)));
}
