import { rankOf } from '../base/grade.ts';
import { groupBy } from '../base/group-by.ts';
import { naturalOrder } from '../base/natural-order.ts';
import { oncePer } from '../base/once.ts';
import type { BoundChange } from '../chronology/worth.ts';
import type { Entry } from '../model/entry.ts';
import type { FileStatement, Moment } from '../statements/statements.ts';
import type { CaseFile } from './case-file.ts';
import { restingOnAlone, rootsOf } from './independence.ts';

/** A bound of a key event that is another one without a statement, or without a root. */
export interface MovedBound extends BoundChange {
  readonly at: Moment;
}

/** A statement that is worth checking, with what hangs on it. */
export interface ToCheck {
  readonly statement: FileStatement;
  readonly moved: readonly MovedBound[];
}

/** A root source, the statements that go back to it alone, and what moves if all of them fall. */
export interface RootToCheck {
  readonly root: string;
  readonly statements: readonly FileStatement[];
  readonly moved: readonly MovedBound[];
}

/** Days by which a change of a bound between two days moves it; a bound that becomes open counts apart. */
function daysMoved({ before, after }: BoundChange): number {
  return Number.isFinite(before) && Number.isFinite(after) ? Math.abs(after - before) : 0;
}

function opens({ before, after }: BoundChange): boolean {
  return Number.isFinite(before) && !Number.isFinite(after);
}

/** Changes that open a bound first, then the more bounds, then the more days. */
function compareMoves(a: readonly BoundChange[], b: readonly BoundChange[]): number {
  const count = (list: readonly BoundChange[]): number => list.filter(opens).length;
  const days = (list: readonly BoundChange[]): number => list.reduce((sum, one) => sum + daysMoved(one), 0);
  return count(b) - count(a) || b.length - a.length || days(b) - days(a);
}

/**
 * What to check first for an object: statements below `established`, by the bounds of its key events
 * that they move at the printed grade. For readers inside the institution: it would rank testimony.
 */
export function whatToCheckFirst(file: CaseFile, object: Entry<'object'>): readonly ToCheck[] {
  const isKey = keyMoments(file, object);
  const moving = movesByMoment(file);
  const found = new Map<FileStatement, readonly BoundChange[]>();
  for (const moment of isKey)
    for (const { statement, bounds } of moving.get(moment) ?? [])
      if (statement.grade !== 'established') found.set(statement, bounds);
  return [...found]
    .map(([statement, bounds]) => ({ statement, moved: keyMoves(file, bounds, isKey) }))
    .sort((a, b) => compareMoves(a.moved, b.moved) || naturalOrder(a.statement.id, b.statement.id));
}

/** What each statement moves at the printed grade, by the moments that it moves. */
const movesByMoment = oncePer((file: CaseFile) => {
  const rank = rankOf(file.settings.printedGrade);
  const moves = file.statements.used.flatMap((statement, i) => {
    // Where very much is tied together, only what can be weighed without computing a tangle of contradictions anew.
    if (!file.isSmall(i) && !file.worth.isQuick(i)) return [];
    const { bounds } = file.worth.of(i);
    const moments = new Set(bounds.filter((one) => one.rank === rank).map((one) => one.moment));
    return [...moments].map((moment) => ({ moment, statement, bounds }));
  });
  return groupBy(moves, (one) => one.moment);
});

/** Leaves out one root source after the other, with every statement that goes back to it alone. */
export function leaveOneRootOut(file: CaseFile, object: Entry<'object'>): readonly RootToCheck[] {
  const { catalogue } = file;
  if (!file.inDetail) return [];
  const isKey = keyMoments(file, object);
  const sources = new Set(file.statements.used.flatMap((one) => (one.source === null ? [] : [one.source])));
  const roots = new Set(
    [...sources].flatMap((source) => {
      const { known, unknown } = rootsOf(catalogue, source);
      return [...known, ...unknown];
    }),
  );
  return [...roots]
    .map((root): RootToCheck => {
      const statements = restingOnAlone(catalogue, file.statements.used, root);
      return { root, statements, moved: keyMoves(file, changesWithout(file, statements), isKey) };
    })
    .filter((one) => one.moved.length > 0)
    .sort((a, b) => compareMoves(a.moved, b.moved) || naturalOrder(a.root, b.root));
}

/** Bounds that are others when some statements are withdrawn together, at the printed grade. */
export function changesWithout(file: CaseFile, statements: readonly FileStatement[]): readonly BoundChange[] {
  const out = new Set(statements.map((one) => file.placeOf(one)));
  const rank = rankOf(file.settings.printedGrade);
  const trial = file.trial({ withdrawn: out });
  return trial.moments.flatMap((moment) =>
    (['earliest', 'latest'] as const).flatMap((side) => {
      const [before, after] = [file.chronology, trial].map((one) => one.day(rank, moment, side)) as [number, number];
      return before === after ? [] : [{ rank, moment, side, before, after }];
    }),
  );
}

function keyMoments(file: CaseFile, object: Entry<'object'>): ReadonlySet<number> {
  const events = object.keys['key-events'] ?? [];
  return new Set(events.flatMap((id) => file.statements.moments.ofEntry(id).map((one) => one.index)));
}

function keyMoves(file: CaseFile, changes: readonly BoundChange[], isKey: ReadonlySet<number>): readonly MovedBound[] {
  const rank = rankOf(file.settings.printedGrade);
  return changes
    .filter((one) => one.rank === rank && isKey.has(one.moment))
    .map((one) => ({ ...one, at: file.statements.moments.all[one.moment] as Moment }));
}
