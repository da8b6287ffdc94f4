import { allOf, phrase } from '../base/said.ts';
import { type Link, ORIGIN } from '../chronology/chronology.ts';
import { type Act, partiesIn } from '../custody/acts.ts';
import { findPassages, type How, type Passage, type Unclear } from '../custody/passages.ts';
import { hullOfExpression } from '../dates/expression.ts';
import type { Entry } from '../model/entry.ts';
import { lifeDate } from '../model/life-dates.ts';
import type { Collector } from './collector.ts';
import type { Span } from './file-statement.ts';
import type { Subject } from './saying.ts';

/** Statements of acts with parties, on what an audience sees: a passage for each pair of holdings. */
export function collectPassages(collector: Collector): void {
  const { passages, unclear } = findPassages(collector.catalogue);
  for (const one of passages) collectPassage(collector, one);
  for (const one of unclear) doubtUnclear(collector, one);
}

/** What the roles of an event say that no act understands: an exchange must name what each gave. */
export function doubtRoles(collector: Collector, event: Entry<'event'>): void {
  if (event.keys.kind !== 'exchange') return;
  for (const { role, objects, index } of partiesIn(event)) {
    if ((role !== 'gives' && role !== 'gets') || objects.length > 0) continue;
    collector.problem(
      event,
      ['parties', index],
      'exchange-without-objects',
      'doubt',
      phrase('in an exchange each party gives and gets; this line does not say which pieces, so it binds nothing'),
      phrase('add "objects: [...]" to the line, and a line for each direction'),
    );
  }
}

function doubtUnclear(collector: Collector, { act, line, candidates }: Unclear): void {
  collector.problem(
    act.event,
    ['parties', line.index],
    'passage-unclear',
    'doubt',
    candidates.length > 1
      ? phrase(
          '{0} has several holdings that this act may mean ({1}), so it binds none',
          line.party,
          allOf([...candidates]),
        )
      : phrase(
          'several acts of {0} may mean the one holding {1}, so this one binds nothing',
          line.party,
          candidates[0] ?? '',
        ),
    phrase('name the holding that is meant, on the line of the party: holding: HO-...'),
  );
}

function collectPassage(collector: Collector, { act, from, to, how }: Passage): void {
  const [giver, getter] = [from, to].map((id) => (id === null ? null : (collector.catalogue.get(id) ?? null)));
  const when = timeOf(collector, act);
  if (!when) return;
  const spans = [from, to].map((id) => (id === null ? null : collector.moments.spanOf(id))) as [
    Span | null,
    Span | null,
  ];
  const links = actLinks(how, when, spans, collector.settings.paperworkLagDays);
  if (links.length === 0) return;
  const { passage } = act.event.keys;
  const named = (entry: Entry | null | undefined): Subject | null => (entry ? collector.subject(entry) : null);
  collector.add(
    act.event,
    {
      id: `${act.event.id}#passage:${[from, to].filter((one) => one !== null).join(':')}`,
      kind: 'passage',
      path: ['parties'],
      grade: passage?.grade ?? 'probable',
      why: passage?.why,
      says: { is: 'handed on', act: collector.subject(act.event), how, from: named(giver), to: named(getter) },
    },
    { links },
  );
}

/** When it was handed over: at the delivery, where there is one; else some time during the act. */
function timeOf(collector: Collector, { event }: Act): Span | null {
  const delivery = collector.moments.momentOf(event.id, 'delivery');
  return delivery ? { start: delivery.index, end: delivery.index, single: true } : collector.moments.spanOf(event.id);
}

/**
 * Links of a passage by an act that lasts from `start` to `end` (docs/methods.md, acts). Papers may lag behind the act, and
 * one day is always allowed between one day and the next.
 */
function actLinks(
  how: How,
  { start, end }: Span,
  [from, to]: readonly [Span | null, Span | null],
  lag: number,
): readonly Link[] {
  const most = Math.max(lag, 1);
  const notBefore = (moment: number, other: number, days: number, role: string): Link => ({
    from: other,
    to: moment,
    days: 0 - days,
    role,
  });
  const within = (moment: number, role: string): readonly Link[] => [
    notBefore(moment, start, most, role),
    notBefore(end, moment, most, role),
  ];
  const held = (span: Span): readonly Link[] => [
    notBefore(start, span.start, lag, 'act-held'),
    notBefore(span.end, end, most, 'act-held'),
  ];
  const links: Link[] = [];
  if (from) {
    if (how === 'for a time') links.push(...held(from));
    else if (how === 'at death') links.push(notBefore(end, from.end, most, 'act-ends'));
    else links.push(...within(from.end, 'act-ends'));
  }
  if (to) {
    if (how === 'returned') links.push(...held(to));
    else if (how !== 'brought back') links.push(...within(to.start, 'act-begins'));
  }
  if (from && to && (how === 'handed on' || how === 'taken back' || how === 'at death')) {
    links.push(notBefore(to.start, from.end, lag, 'act-passage'));
    if (how !== 'at death') links.push(notBefore(from.end, to.start, most, 'act-passage'));
  }
  return links;
}

/** When a party was there: nobody holds before being born or founded, nor after dying or closing. */
export function collectLife(collector: Collector, party: Entry<'party'>): void {
  for (const edge of ['first', 'last'] as const) {
    const said = lifeDate(party, edge);
    const date = said && collector.read(said);
    if (!said || !date) continue;
    const { first, last } = hullOfExpression(date);
    const links = holdingsOf(collector, party).flatMap((holding): readonly Link[] => {
      const span = collector.moments.spanOf(holding.id);
      if (!span) return [];
      return edge === 'first'
        ? bounded({ from: ORIGIN, to: span.start, days: first, role: 'life-first' })
        : bounded({
            from: span.end,
            to: ORIGIN,
            days: 0 - last - collector.settings.paperworkLagDays,
            role: 'life-last',
          });
    });
    if (links.length === 0) continue;
    collector.add(
      party,
      {
        id: `${party.id}#${edge}`,
        kind: 'life',
        path: [said.key],
        grade: said.grade,
        source: said.source,
        why: said.why,
        uncertain: date.uncertain,
        says: { is: 'life', subject: collector.subject(party), key: said.key, date },
      },
      { date, precision: date.precision, about: date.approximate, links },
    );
  }
}

function bounded(link: Link): readonly Link[] {
  return Number.isFinite(link.days) ? [link] : [];
}

/** Holdings of a party as their holder: who had a share may have got it later. */
function holdingsOf({ catalogue }: Collector, party: Entry<'party'>): readonly Entry<'holding'>[] {
  return catalogue.ofType('holding').filter(({ keys }) => keys.holder === party.id);
}
