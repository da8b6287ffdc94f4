import { words } from '../language/spoken.ts';
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
  const dates = { ...says, date: says.date, source, grade, why };
  collector.addDated(
    claim,
    { id: claim.id, kind: 'claim', path: ['says'] },
    dates,
    span,
    sayEdge(about, collector.title(subject)),
    out ? { notUsed: standing === 'rejected' ? words('the claim is rejected') : words('the claim is withdrawn') } : {},
  );
  if (isOfType(subject, 'event')) doubtLasted(collector, subject, dates, ['says'], claim);
}

/** What a claim dates: an entry, or an edge of a holding. */
function sayEdge(about: string, title: string): string {
  if (about.endsWith('.begins')) return words('beginning of “{0}”', title);
  return about.endsWith('.ends') ? words('end of “{0}”', title) : words('“{0}”', title);
}
