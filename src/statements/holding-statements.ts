import type { Grade } from '../base/grade.ts';
import { phrase } from '../base/said.ts';
import type { Entry } from '../model/entry.ts';
import { isOfType } from '../model/entry.ts';
import type { Collector, DatedWords } from './collector.ts';
import { inlineId } from './event-statements.ts';
import type { Span } from './file-statement.ts';
import { passageLinks } from './relation-links.ts';
import type { Subject } from './saying.ts';

/** Statements of a holding: begins, ends, held in this order, and the passage from another. */
export function collectHolding(collector: Collector, holding: Entry<'holding'>): void {
  const whole = collector.moments.spanOf(holding.id);
  if (!whole) return;
  const at = (moment: number): Span => ({ start: moment, end: moment, single: true });
  let number = 0;
  const addList = (key: 'begins' | 'ends' | 'held', span: Span, edge: Subject['edge']): void => {
    (holding.keys[key] ?? []).forEach((one, i) => {
      number += 1;
      const dates = key === 'held' ? heldWords(collector, holding, one, i) : one;
      const head = { id: inlineId(holding.id, one.ref, number), kind: key, path: [key, i] };
      if (dates) collector.addDated(holding, head, dates, span, collector.subject(holding, edge));
    });
  };
  addList('begins', at(whole.start), 'begins');
  addList('ends', at(whole.end), 'ends');
  addList('held', whole, null);
  collectPassage(collector, holding, whole);
}

/** What stands under `held` is under way; another sense there is refused. */
function heldWords(collector: Collector, holding: Entry<'holding'>, one: DatedWords, index: number): DatedWords | null {
  if (one.sense === undefined || one.sense === 'under-way') return { ...one, sense: 'under-way' };
  collector.problem(
    holding,
    ['held', index, 'sense'],
    'held-sense',
    'error',
    phrase('"held" means that it had the object at that time; "{0}" has no meaning there', one.sense),
    phrase('put the date under begins or ends, or leave the sense out'),
  );
  return null;
}

function collectPassage(collector: Collector, holding: Entry<'holding'>, to: Span): void {
  const { from, passage } = holding.keys;
  if (passage === undefined) return;
  if (from === undefined) {
    collector.problem(
      holding,
      ['passage'],
      'passage-without-from',
      'doubt',
      phrase('a passage is given, but not from which holding'),
      phrase('add "from: HO-..." with the id of the holding before'),
    );
    return;
  }
  const before = collector.catalogue.get(from);
  const span = collector.moments.spanOf(from);
  if (!before || !span || !isOfType(before, 'holding')) return;
  if (from === holding.id) {
    collector.problem(
      holding,
      ['from'],
      'relation-to-itself',
      'error',
      phrase('a holding cannot come from itself'),
      phrase('name the holding before'),
    );
    return;
  }
  const { is, grade, why, source } = passageWords(passage);
  const links = passageLinks(span, to, {
    direct: is === 'direct',
    sameCapacity: before.keys.capacity === holding.keys.capacity,
    lagDays: collector.settings.paperworkLagDays,
  });
  collector.add(
    holding,
    {
      id: `${holding.id}#passage`,
      kind: 'passage',
      path: ['passage'],
      grade,
      why,
      source,
      says: { is: 'passed', one: collector.subject(before), other: collector.subject(holding), how: is },
    },
    { links },
  );
}

function passageWords(passage: NonNullable<Entry<'holding'>['keys']['passage']>): {
  readonly is: 'direct' | 'not direct' | 'unknown';
  readonly grade: Grade;
  readonly why: string | undefined;
  readonly source: string | undefined;
} {
  if (typeof passage === 'string') return { is: passage, grade: 'probable', why: undefined, source: undefined };
  return { is: passage.is, grade: passage.grade ?? 'probable', why: passage.why, source: passage.source };
}
