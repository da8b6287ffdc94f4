import type { Diagnostic } from '../base/diagnostic.ts';
import { named, phrase } from '../base/said.ts';
import { hullOfExpression } from '../dates/expression.ts';
import { isDateProblem, readDate } from '../dates/read-date.ts';
import type { Catalogue } from '../model/catalogue.ts';
import type { Entry } from '../model/entry.ts';
import { isOpenRequest } from '../model/open-request.ts';
import { samePiece } from '../model/pieces.ts';
import type { Settings } from '../model/settings.ts';

/** Somebody who disputes a title: an assertion with those who contest it, or a request for return that is open. */
export type TitleDispute =
  | { readonly title: Entry<'title'>; readonly contestedBy: readonly string[] }
  | { readonly request: Entry<'request-for-return'> };

/**
 * The disputes over pieces. That two assertions stand side by side is none: it is told to the writer (`titleDoubts`), and
 * nobody is said to dispute who does not.
 *
 * @param titles assertions about the pieces
 * @param isPiece true for an object, panel or section whose custody is told
 */
export function titleDisputes(
  catalogue: Catalogue,
  titles: readonly Entry<'title'>[],
  isPiece: (id: string) => boolean,
): readonly TitleDispute[] {
  return [
    ...titles.flatMap((title) => {
      const contestedBy = title.keys['contested-by'] ?? [];
      return contestedBy.length === 0 ? [] : [{ title, contestedBy }];
    }),
    ...catalogue
      .ofType('request-for-return')
      .filter((request) => isOpenRequest(request.keys) && request.keys.objects.some(isPiece))
      .map((request) => ({ request })),
  ];
}

/**
 * Two assertions that cannot stand together (ownership beside ownership, or beside state property), by two parties, on one
 * piece, that surely overlap: both had begun before either had ended. A time that nobody wrote is unknown, not open.
 */
export function titleDoubts(catalogue: Catalogue, settings: Settings): readonly Diagnostic[] {
  const titles = catalogue.ofType('title');
  return titles.flatMap((one, i) =>
    titles.slice(i + 1).flatMap((other): readonly Diagnostic[] => {
      const isSamePiece = one.keys.objects.some((id) => other.keys.objects.some((also) => samePiece(id, also)));
      const cannotStand = one.keys['asserted-by'] !== other.keys['asserted-by'] && clash(one, other);
      if (!isSamePiece || !cannotStand || !surelyOverlap(one, other, settings)) return [];
      return [
        {
          code: 'titles-for-one-time',
          severity: 'doubt',
          place: other.placeOf(['interest']),
          message: phrase(
            '{0} and {1} assert {2} and {3} of the same piece for the same time',
            one.id,
            other.id,
            named(one.keys.interest),
            named(other.keys.interest),
          ),
          mend: phrase(
            'see when one ended and the other began; where somebody disputes one of them, write it under contested-by',
          ),
          entry: other.id,
        },
      ];
    }),
  );
}

const WHOLE_OWNERS: readonly string[] = ['ownership', 'state property by law'];

function clash(one: Entry<'title'>, other: Entry<'title'>): boolean {
  const interests = [one.keys.interest, other.keys.interest];
  return interests.includes('ownership') && interests.every((interest) => WHOLE_OWNERS.includes(interest));
}

function surelyOverlap(one: Entry<'title'>, other: Entry<'title'>, settings: Settings): boolean {
  const latestBegin = Math.max(...[one, other].map(({ keys }) => dayOf(keys.begins, 'last', settings) ?? Infinity));
  const earliestEnd = Math.min(...[one, other].map(({ keys }) => dayOf(keys.ends, 'first', settings) ?? -Infinity));
  return latestBegin < earliestEnd;
}

function dayOf(text: string | undefined, side: 'first' | 'last', settings: Settings): number | null {
  if (text === undefined) return null;
  const read = readDate(text, 'gregorian', settings.dates);
  return isDateProblem(read) ? null : hullOfExpression(read)[side];
}
