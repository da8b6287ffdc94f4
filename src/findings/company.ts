import type { Side } from '../chronology/chronology.ts';
import { findHeldBy } from '../chronology/held-by.ts';
import type { FileStatement, Moment } from '../statements/statements.ts';
import type { CaseFile } from './case-file.ts';
import { countRoots, type RootCount, sharedRoots } from './independence.ts';

/** A reason that holds the same bound without some statements of the reason that is told. */
export interface Company {
  /** Statements of the told reason that could each be spared. */
  readonly spared: readonly FileStatement[];
  /** Statements of the other reason that the told one does not use. */
  readonly instead: readonly FileStatement[];
  /** True where the other reason rests on statements that are set aside as long as these stand. */
  readonly freed: boolean;
  /** Root sources that both go back to: held twice, by one root. */
  readonly oneRoot: readonly string[];
  /** True where both may go back to one root, since the parentage of a source is not known. */
  readonly perhapsOneRoot: boolean;
}

/** What holds a bound: alone, or in company; and on how many roots its reason stands. */
export interface BoundSupport {
  readonly sole: readonly FileStatement[];
  readonly company: readonly Company[];
  readonly roots: RootCount;
}

/** Tells which statements hold a bound alone and which are held up by others. */
export function supportOf(file: CaseFile, moment: Moment, rank: number, side: Side): BoundSupport {
  const { chronology, catalogue } = file;
  const used = (i: number): FileStatement => file.statements.used[i] as FileStatement;
  const reason = chronology.reason(rank, moment.index, side).statements;
  const { sole, also } = findHeldBy(chronology, file.worth, file.trial, { rank, moment: moment.index, side });
  const groups = new Map<string, { spared: number[]; instead: readonly number[]; freed: boolean }>();
  for (const { statement, instead, freed } of also) {
    const others = instead.statements.filter((one) => !reason.includes(one));
    const group = groups.get(others.join(','));
    if (group) group.spared.push(statement);
    else groups.set(others.join(','), { spared: [statement], instead: others, freed });
  }
  const company = [...groups.values()].map(({ spared, instead, freed }): Company => {
    const [a, b] = [spared.map(used), instead.map(used)];
    const { shared, unsure } = sharedRoots(catalogue, a, b);
    return { spared: a, instead: b, freed, oneRoot: shared, perhapsOneRoot: unsure };
  });
  return { sole: sole.map(used), company, roots: countRoots(catalogue, reason.map(used)) };
}
