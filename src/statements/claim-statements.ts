import { phrase } from '../base/said.ts';
import { type Entry, isOfType } from '../model/entry.ts';
import type { Collector } from './collector.ts';
import { doubtLasted } from './event-statements.ts';
import type { Subject } from './saying.ts';

/** A claim is one statement with the claim's own id; only what says a date enters the network. */
export function collectClaim(collector: Collector, claim: Entry<'claim'>): void {
  const { says, about, standing, source, grade, why } = claim.keys;
  if (says.date === undefined) return;
  const span = collector.moments.spanOf(about);
  const subject = collector.catalogue.resolve(about)?.entry;
  if (!subject) return;
  if (!span) {
    collector.problem(
      claim,
      ['about'],
      'claim-without-moment',
      'doubt',
      phrase('the claim gives a date, but {0} is of type {1} and has no time of its own', about, subject.type),
      phrase('let it speak of an event, of a trace, or of an edge of a holding (HO-3.begins)'),
    );
    return;
  }
  const out = standing === 'rejected' || standing === 'withdrawn';
  if (out && why === undefined) {
    collector.problem(
      claim,
      ['standing'],
      'claim-needs-why',
      'error',
      phrase('a claim that is {0} needs a reason', standing),
      phrase('add a line "why: ..." that says what speaks against it'),
    );
  }
  const dates = { ...says, date: says.date, source, grade, why };
  collector.addDated(
    claim,
    { id: claim.id, kind: 'claim', path: ['says'] },
    dates,
    span,
    collector.subject(subject, edgeOf(about)),
    out
      ? { notUsed: standing === 'rejected' ? phrase('the claim is rejected') : phrase('the claim is withdrawn') }
      : {},
  );
  if (isOfType(subject, 'event')) doubtLasted(collector, subject, dates, ['says'], claim);
}

/** Which edge of a holding a claim dates; null for an entry as a whole. */
function edgeOf(about: string): Subject['edge'] {
  if (about.endsWith('.begins')) return 'begins';
  return about.endsWith('.ends') ? 'ends' : null;
}
