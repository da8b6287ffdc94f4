import { phrase, type Said } from '../base/said.ts';
import type { Catalogue } from '../model/catalogue.ts';
import type { Entry } from '../model/entry.ts';
import { isOpenRequest } from '../model/open-request.ts';
import { samePiece } from '../model/pieces.ts';

/**
 * What keeps an answer from being the museum's, whoever has approved it: a question that rests on nothing which the one who
 * asks may see, an object asked about that is hidden from them, or every event of it, or an open request for its return.
 * Empty where nothing is missing.
 *
 * @param forAsker the entries that the answer may be made from
 * @param whole all entries, for who writes; an output is told by what it shows alone
 */
export function missingForAnswer(
  inquiry: Entry<'inquiry'>,
  forAsker: Catalogue,
  whole: Catalogue = forAsker,
): readonly Said[] {
  const { questions = [], objects } = inquiry.keys;
  const isSeen = (id: string): boolean => forAsker.resolve(id) !== null;
  const resting = questions.flatMap((question, i) => {
    const rests = typeof question === 'string' ? [] : (question['rests-on'] ?? []);
    return rests.some(isSeen) ? [] : [phrase('question {0} rests on nothing that the one who asks may see', i + 1)];
  });
  const hidden = objects
    .filter((id) => !isSeen(id))
    .map((id) => phrase('{0} is asked about, and is hidden from the one who asks', id));
  const isAsked = (ids: readonly string[] = []): boolean =>
    ids.some((id) => objects.some((asked) => samePiece(id, asked)));
  const hasEvent = ({ ofType }: Catalogue): boolean => ofType('event').some((event) => isAsked(event.keys.objects));
  const events =
    hidden.length === 0 && hasEvent(whole) && !hasEvent(forAsker)
      ? [phrase('every event of what is asked about is hidden from the one who asks')]
      : [];
  const requests = whole
    .ofType('request-for-return')
    .filter((one) => isOpenRequest(one.keys) && isAsked(one.keys.objects) && forAsker.shownAs(one.id) === null)
    .map(() => phrase('a request for return of it is open, and hidden from the one who asks'));
  return [...resting, ...hidden, ...events, ...requests];
}
