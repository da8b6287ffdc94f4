import { type Entry, isOfType } from '../model/entry.ts';
import type { Collector } from './collector.ts';
import { doubtLasted } from './event-statements.ts';

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
      `the claim gives a date, but ${about} is of type ${subject.type} and has no time of its own`,
      'let it speak of an event, of a trace, or of an edge of a holding (HO-3.begins)',
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
      `a claim that is ${standing} needs a reason`,
      'add a line "why: ..." that says what speaks against it',
    );
  }
  const words = { ...says, date: says.date, source, grade, why };
  const edge = about.endsWith('.begins') ? 'beginning of ' : about.endsWith('.ends') ? 'end of ' : '';
  collector.addDated(
    claim,
    { id: claim.id, kind: 'claim', path: ['says'] },
    words,
    span,
    `${edge}“${collector.title(subject)}”`,
    out ? { notUsed: `the claim is ${standing}` } : {},
  );
  if (isOfType(subject, 'event')) doubtLasted(collector, subject, words, ['says'], claim);
}
