import type { Diagnostic } from '../base/diagnostic.ts';
import { rankOf } from '../base/grade.ts';
import type { Network, NetworkStatement } from '../chronology/chronology.ts';
import type { Catalogue } from '../model/catalogue.ts';
import { isOfType } from '../model/entry.ts';
import { collectClaim } from './claim-statements.ts';
import { Collector } from './collector.ts';
import { collectEvent } from './event-statements.ts';
import type { FileStatement } from './file-statement.ts';
import { collectHolding } from './holding-statements.ts';
import type { Moments } from './moments.ts';
import { collectTrace } from './trace-statements.ts';

export type { FileStatement, Moment } from './file-statement.ts';
export type { Moments } from './moments.ts';

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

/** Turns a catalogue into statements about moments. */
export function findStatements(catalogue: Catalogue): FileStatements {
  const collector = new Collector(catalogue);
  for (const entry of catalogue.entries) {
    if (isOfType(entry, 'event')) collectEvent(collector, entry);
    else if (isOfType(entry, 'claim')) collectClaim(collector, entry);
    else if (isOfType(entry, 'holding')) collectHolding(collector, entry);
    else if (isOfType(entry, 'evidence')) collectTrace(collector, entry);
  }
  const used = collector.statements.filter((one) => one.notUsed === null && one.links.length > 0);
  return {
    moments: collector.moments,
    all: collector.statements,
    used,
    network: {
      moments: collector.moments.all.length,
      axioms: collector.moments.axioms,
      statements: used.map(networkStatement),
    },
    problems: collector.problems,
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
