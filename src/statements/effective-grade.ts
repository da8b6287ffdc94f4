import { type Grade, gradeOfRank, rankOf } from '../base/grade.ts';
import { inRow, phrase, type Said } from '../base/said.ts';
import type { Catalogue } from '../model/catalogue.ts';
import { type Entry, isOfType } from '../model/entry.ts';

/** The grade by which a statement is computed, with what lowered it. */
export interface EffectiveGrade {
  readonly grade: Grade;
  readonly note: Said;
  /** Set where the statement takes no part at all. */
  readonly notUsed: Said | null;
}

/**
 * Own grade, one step lower for `?` or `%`, then the cap of the source: a questioned source caps
 * at `possible`, one shown false takes its statements out. Caps are not inherited through copies.
 */
export function effectiveGrade(
  catalogue: Catalogue,
  own: Grade,
  uncertain: boolean,
  source: string | undefined,
  titled: (entry: Entry) => string,
): EffectiveGrade {
  const notes: Said[] = [];
  let rank = rankOf(own);
  if (uncertain && rank < 3) {
    rank += 1;
    notes.push(phrase('one grade lower for the question mark in the date'));
  }
  const entry = source === undefined ? undefined : catalogue.get(source);
  const judged = entry && isOfType(entry, 'source') ? entry.keys.authenticity : undefined;
  const authenticity = typeof judged === 'string' ? judged : judged?.is;
  if (authenticity === 'shown false') {
    return {
      grade: gradeOfRank(rank),
      note: '',
      notUsed: phrase('its source “{0}” was shown to be false', entry ? titled(entry) : (source ?? '')),
    };
  }
  if (authenticity === 'questioned' && rank < rankOf('possible')) {
    rank = rankOf('possible');
    notes.push(phrase('"possible" at best, since “{0}” is questioned', entry ? titled(entry) : (source ?? '')));
  }
  return { grade: gradeOfRank(rank), note: inRow(notes, '; '), notUsed: null };
}
