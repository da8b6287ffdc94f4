import { phrase } from '../base/said.ts';
import { longestDays, parseDuration } from '../dates/duration.ts';
import type { Entry } from '../model/entry.ts';
import { DAY_KINDS, RELATIONS, type RelationName } from '../model/types/event.ts';
import { doubtRoles } from './act-statements.ts';
import { betweenOf, type Collector, type DatedWords } from './collector.ts';
import type { FileStatement, Span } from './file-statement.ts';
import { type Gap, lengthLinks, relationLinks } from './relation-links.ts';

type Relation = NonNullable<Entry<'event'>['keys']['relations']>[number];

/** Statements of an event: stated dates, relations (numbered on), and how long it lasted. */
export function collectEvent(collector: Collector, event: Entry<'event'>): void {
  const span = collector.moments.spanOf(event.id);
  if (!span) return;
  const stated = event.keys.stated ?? [];
  stated.forEach((one, i) => {
    const path = ['stated', i];
    const head = { id: inlineId(event.id, one.ref, i + 1), kind: 'stated' as const, path };
    collector.addDated(event, head, one, span, collector.subject(event));
    doubtLasted(collector, event, one, path);
  });
  (event.keys.relations ?? []).forEach((relation, i) => {
    const id = inlineId(event.id, relation.ref, stated.length + i + 1);
    collectRelation(collector, event, relation, id, ['relations', i], span);
  });
  collectLength(collector, event, span);
  collectDelivery(collector, event);
  doubtRoles(collector, event);
}

/** When a piece was handed over, where that was not the day of the act: a moment of its own. */
function collectDelivery(collector: Collector, event: Entry<'event'>): void {
  const { delivery } = event.keys;
  const moment = collector.moments.momentOf(event.id, 'delivery');
  if (delivery === undefined || !moment) return;
  const words = typeof delivery === 'string' ? { date: delivery, grade: 'probable' as const } : delivery;
  const span = { start: moment.index, end: moment.index, single: true };
  const head = { id: `${event.id}#delivery`, kind: 'delivery' as const, path: ['delivery'] };
  collector.addDated(event, head, words, span, collector.subject(event, 'delivery'));
}

/** Id of an inline statement: its own ref, else the number of its place. */
export function inlineId(entry: string, ref: string | undefined, number: number): string {
  return `${entry}#${ref ?? number}`;
}

function collectRelation(
  collector: Collector,
  event: Entry<'event'>,
  relation: Relation,
  id: string,
  path: readonly (string | number)[],
  span: Span,
): void {
  const named = RELATIONS.filter((name) => relation[name] !== undefined);
  const [name] = named;
  if (!name || named.length > 1) {
    collector.problem(
      event,
      path,
      'relation-one-word',
      'error',
      name
        ? phrase('one relation holds {0} words ({1})', named.length, named.join(', '))
        : phrase('the relation does not say to what: no "after", "before", ...'),
      phrase("write one relation a line: '{' after: EV-sighting, grade: probable, why: ... '}'"),
    );
    return;
  }
  const reference = relation[name] as string;
  const target = collector.moments.spanOf(reference);
  if (collector.catalogue.resolve(reference)?.entry.id === event.id) {
    collector.problem(
      event,
      [...path, name],
      'relation-to-itself',
      'error',
      phrase('an entry cannot stand in a relation to itself'),
      phrase('name the other event'),
    );
    return;
  }
  const gap = readGap(relation.gap);
  if (relation.gap && name !== 'after' && name !== 'before') {
    collector.problem(
      event,
      [...path, 'gap'],
      'relation-gap',
      'error',
      phrase('a gap has no meaning with "{0}"', name),
      phrase('use gap with after or before only'),
    );
    return;
  }
  if (!target) return;
  const other = collector.catalogue.resolve(reference)?.entry;
  const links = relationLinks(name, span, target, relation.strict === true, gap);
  const order = orderOf(
    name,
    links.every((one) => one.days === 0 || one.role === 'gap-max'),
  );
  collector.add(
    event,
    {
      id,
      kind: 'relation',
      path,
      grade: relation.grade,
      source: relation.source,
      why: relation.why,
      says: {
        is: 'relation',
        relation: name,
        one: collector.subject(event),
        other: other ? collector.subject(other) : { entry: reference, edge: null, title: reference },
        gap,
        strict: relation.strict === true,
      },
    },
    { links, precision: gapPrecision(gap), ...(order ? { order } : {}) },
  );
}

function orderOf(name: RelationName, adds: boolean): FileStatement['order'] {
  if (name === 'same-as') return 'same';
  return (name === 'after' || name === 'before') && adds ? 'order' : undefined;
}

function readGap(gap: { min?: string | undefined; max?: string | undefined } | undefined): Gap {
  return {
    min: gap?.min === undefined ? null : parseDuration(gap.min),
    max: gap?.max === undefined ? null : parseDuration(gap.max),
  };
}

function gapPrecision(gap: Gap): 'day' | 'month' {
  return (gap.min?.months ?? 0) > 0 || (gap.max?.months ?? 0) > 0 ? 'month' : 'day';
}

function collectLength(collector: Collector, event: Entry<'event'>, span: Span): void {
  const lasts = event.keys.lasts;
  if (!lasts) return;
  const gap = readGap(lasts);
  collector.add(
    event,
    {
      id: `${event.id}#lasts`,
      kind: 'lasts',
      path: ['lasts'],
      grade: lasts.grade ?? 'established',
      why: lasts.why,
      says: { is: 'lasted', subject: collector.subject(event), gap },
    },
    { links: lengthLinks(span, gap), precision: gapPrecision(gap) },
  );
}

/** "a/b" for something that takes a day, or that is longer than the event can have lasted. */
export function doubtLasted(
  collector: Collector,
  event: Entry<'event'>,
  words: DatedWords,
  path: readonly (string | number)[],
  writtenIn: Entry = event,
): void {
  const date = collector.read(words);
  if (date?.shape.kind !== 'lasted' || (words.sense ?? 'within') !== 'within') return;
  const most = event.keys.lasts?.max === undefined ? null : parseDuration(event.keys.lasts.max);
  const tooLong = most !== null && date.shape.b.first - date.shape.a.last > longestDays(most);
  if (!DAY_KINDS.includes(event.keys.kind) && !tooLong) return;
  collector.problem(
    writtenIn,
    [...path, 'date'],
    'lasted-or-unknown',
    'doubt',
    phrase(
      '"{0}" says that the event lasted from the one to the other{1}',
      words.date,
      tooLong ? phrase(', longer than its "lasts" allows') : phrase(', but a {0} takes a day', event.keys.kind),
    ),
    phrase('if one unknown day in between is meant, write "{0}"', betweenOf(words.date)),
  );
}
