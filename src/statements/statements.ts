import type { Diagnostic } from '../base/diagnostic.ts';
import { rankOf } from '../base/grade.ts';
import { groupBy } from '../base/group-by.ts';
import type { Network, NetworkStatement } from '../chronology/chronology.ts';
import type { Catalogue } from '../model/catalogue.ts';
import { isOfType } from '../model/entry.ts';
import { collectLife, collectPassages } from './act-statements.ts';
import { collectClaim } from './claim-statements.ts';
import { Collector } from './collector.ts';
import { collectEvent } from './event-statements.ts';
import type { FileStatement } from './file-statement.ts';
import { collectHolding } from './holding-statements.ts';
import { findMoments, type Moments } from './moments.ts';
import { shownStatements } from './shown-statements.ts';
import { collectTrace } from './trace-statements.ts';

export type { FileStatement, Moment } from './file-statement.ts';

/** The statements of a file, its moments, and the network that they make. */
export interface FileStatements {
  readonly moments: Moments;
  /** Every statement, those not used included, in natural order of entries and in place within them. */
  readonly all: readonly FileStatement[];
  /** The statements that take part; index here = index in the network. */
  readonly used: readonly FileStatement[];
  readonly network: Network;
  readonly problems: readonly Diagnostic[];
}

/**
 * Turns a catalogue into statements about moments. Numbers, caps and choices are settled on the
 * whole file, so that an id means the same to every audience; then every statement that touches
 * something not shown is taken out, before anything is computed. What acts and life dates say of holdings is asked of what
 * is shown, since it depends on which other holdings there are.
 */
export function findStatements(whole: Catalogue, shown: Catalogue = whole): FileStatements {
  const collector = new Collector(whole, shown);
  for (const entry of whole.entries) {
    if (isOfType(entry, 'event')) collectEvent(collector, entry);
    else if (isOfType(entry, 'claim')) collectClaim(collector, entry);
    else if (isOfType(entry, 'holding')) collectHolding(collector, entry);
    else if (isOfType(entry, 'evidence')) collectTrace(collector, entry);
  }
  const moments = findMoments(shown);
  const own = new Collector(shown, shown);
  collectPassages(own);
  for (const party of shown.ofType('party')) collectLife(own, party);
  const placeOf = new Map(shown.entries.map((entry, i) => [entry.id, i]));
  const place = (one: FileStatement): number => placeOf.get(one.entry) ?? -1;
  const all = [
    ...shownStatements(collector.statements, collector.moments, whole, shown, moments),
    ...own.statements,
  ].sort((a, b) => place(a) - place(b));
  const used = all.filter((one) => one.notUsed === null && (one.links.length > 0 || one.choice !== undefined));
  return {
    moments,
    all,
    used,
    network: { moments: moments.all.length, axioms: moments.axioms, statements: used.map(networkStatement) },
    problems: [...collector.problems, ...own.problems, ...sameName(whole, collector.statements)].filter(
      (one) => one.entry === undefined || shown.shownAs(one.entry) === one.entry,
    ),
  };
}

function networkStatement(statement: FileStatement): NetworkStatement {
  return {
    id: statement.id,
    rank: rankOf(statement.grade),
    links: statement.links,
    ...(statement.choice ? { choice: statement.choice } : {}),
    ...(statement.order ? { order: statement.order } : {}),
  };
}

/** Two statements of one name: a ref written twice, or one that is the number of another's place. */
function sameName(catalogue: Catalogue, statements: readonly FileStatement[]): readonly Diagnostic[] {
  return [...groupBy(statements, (one) => one.id).values()].flatMap(([first, second]) => {
    const entry = second && catalogue.get(second.entry);
    if (!first || !second || !entry) return [];
    return [
      {
        code: 'ref-twice',
        severity: 'error' as const,
        place: entry.placeOf(second.path),
        message: `two statements of this entry are called ${second.id}`,
        mend: 'give one of them another ref (a number counts as the name of the statement in that place)',
        entry: entry.id,
        related: [{ place: entry.placeOf(first.path), text: 'the other one' }],
      },
    ];
  });
}
