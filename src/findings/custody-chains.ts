import { oncePerBoth } from '../base/once.ts';
import { leastDistance } from '../chronology/distances.ts';
import { coarsest, hullOfExpression, type Precision } from '../dates/expression.ts';
import { isDateProblem, readDate } from '../dates/read-date.ts';
import { partsOfObject } from '../model/catalogue.ts';
import type { Entry } from '../model/entry.ts';
import { samePiece } from '../model/pieces.ts';
import type { Moment } from '../statements/statements.ts';
import type { CaseFile } from './case-file.ts';
import { type Chain, type ChainHolding, type Gap, PRINTED_RANK, type Stretch } from './chain.ts';
import { inOrder, partAside } from './chain-order.ts';
import { searchesFor } from './gap-searches.ts';
import { passedOn } from './passed-on.ts';
import { chosenReferences } from './reference-dates.ts';
import { titleDisputes } from './title-disputes.ts';

/**
 * The custody chains of all objects, on the statements of a grade (rank 0 established to 3 conjectural). Panels with the same holdings share a
 * chain; panels that parted company have chains of their own. An object without any holding has none.
 */
export function findChains(file: CaseFile, rank = PRINTED_RANK): readonly Chain[] {
  return chainsOf(file, rank);
}

const chainsOf = oncePerBoth(chainsAt);

function chainsAt(file: CaseFile, rank: number): readonly Chain[] {
  return file.catalogue.ofType('object').flatMap((object) => {
    const panels = (object.keys.panels ?? []).map((one) => one.id);
    const pieces = panels.length === 0 ? [null] : panels;
    const groups = new Map<string, Group>();
    for (const piece of pieces) {
      const { main, aside } = partAside(file.catalogue, holdingsOf(file, object, piece));
      if (main.length + aside.length === 0) continue;
      const key = main.map((one) => one.id).join(' ');
      const group = groups.get(key) ?? { panels: [], main, aside: new Set() };
      if (piece !== null) group.panels.push(piece);
      for (const one of aside) group.aside.add(one);
      groups.set(key, group);
    }
    return [...groups.values()].map((group) => chainOf(file, rank, object, group));
  });
}

/** Panels that went from hand to hand together; a loan of one of them does not part them. */
interface Group {
  readonly panels: string[];
  readonly main: readonly Entry<'holding'>[];
  readonly aside: Set<Entry<'holding'>>;
}

/** Holdings of the whole object, or of this panel or a section of it. */
function holdingsOf(file: CaseFile, object: Entry<'object'>, panel: string | null): readonly Entry<'holding'>[] {
  const names = new Set([
    object.id,
    ...(panel === null ? partsOfObject(object).map((part) => `${object.id}/${part}`) : [`${object.id}/${panel}`]),
  ]);
  return file.catalogue.onObject('holding', object.id).filter((one) => one.keys.objects.some((id) => names.has(id)));
}

function chainOf(file: CaseFile, rank: number, object: Entry<'object'>, { panels, main, aside }: Group): Chain {
  const [holdings, meanwhile] = [main, [...aside]].map((some) =>
    inOrder(
      file.catalogue,
      some.map((holding) => stretchesOf(file, rank, holding)),
    ),
  ) as [readonly ChainHolding[], readonly ChainHolding[]];
  const gaps = holdings.slice(1).flatMap((after, i) => {
    const gap = gapBetween(file, rank, holdings[i] as ChainHolding, after);
    return gap ? [gap] : [];
  });
  const pieces = panels.length === 0 ? [object.id] : panels.map((panel) => `${object.id}/${panel}`);
  const isPiece = (id: string): boolean => pieces.some((piece) => samePiece(id, piece));
  const titles = file.catalogue.onObject('title', object.id).filter((one) => one.keys.objects.some(isPiece));
  return {
    object,
    panels,
    holdings,
    meanwhile,
    gaps,
    titles,
    disputes: titleDisputes(file.catalogue, titles, isPiece),
  };
}

function stretchesOf(file: CaseFile, rank: number, holding: Entry<'holding'>): ChainHolding {
  const at = (edge: 'begins' | 'ends', side: 'earliest' | 'latest'): number => {
    const moment = file.statements.moments.momentOf(holding.id, edge);
    const open = side === 'earliest' ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY;
    return moment ? (file.chronology.grades[rank]?.ranges[side][moment.index] ?? open) : open;
  };
  const [first, last] = [at('begins', 'latest'), at('ends', 'earliest')];
  return {
    holding,
    throughout: Number.isFinite(first) && Number.isFinite(last) && first <= last ? { first, last } : null,
    recorded: Number.isFinite(first) && Number.isFinite(last) && first > last ? { first: last, last: first } : null,
    precision: coarsest(
      [
        precisionOf(file, rank, holding.id, 'begins', 'latest'),
        precisionOf(file, rank, holding.id, 'ends', 'earliest'),
      ].flatMap((one) => one ?? []),
    ),
    possibly: { first: at('begins', 'earliest'), last: at('ends', 'latest') },
    begunBy: first,
    notEndedBefore: last,
  };
}

/** Least and greatest length from the end of one to the beginning of the next; null where an act connects them, or where they certainly overlap. */
function gapBetween(file: CaseFile, rank: number, before: ChainHolding, after: ChainHolding): Gap | null {
  const passed = passedOn(file.catalogue, before.holding, after.holding);
  // Whom an act connects, nothing lies between; a death may lie long before it.
  if (passed?.act && !passed.atDeath) return null;
  const end = file.statements.moments.momentOf(before.holding.id, 'ends');
  const begin = file.statements.moments.momentOf(after.holding.id, 'begins');
  const active = file.chronology.grades[rank]?.kept;
  if (!end || !begin || !active) return null;
  const least = leastDistance(file.chronology.compiled, active, end.index, begin.index);
  const most = -leastDistance(file.chronology.compiled, active, begin.index, end.index);
  if (most <= 1) return null;
  const ranges = file.chronology.grades[rank]?.ranges;
  const within = {
    first: ranges?.earliest[end.index] ?? Number.NEGATIVE_INFINITY,
    last: ranges?.latest[begin.index] ?? Number.POSITIVE_INFINITY,
  };
  return {
    before: before.holding,
    after: after.holding,
    least: Math.max(0, least),
    most: Number.isFinite(most) ? most : null,
    precision: coarsest([end, begin].flatMap((one) => precisionsOf(file, rank, one))),
    within,
    passage: passed?.is ?? 'unknown',
    passedOn: passed,
    searches: searchesFor(file, [before.holding, after.holding], within),
    periods: chosenReferences(file.catalogue).filter(
      ({ row, from, to }) =>
        row.kind === 'period' && from && from.first <= within.last && (to ?? from).last >= within.first,
    ),
  };
}

function precisionOf(
  file: CaseFile,
  rank: number,
  holding: string,
  edge: 'begins' | 'ends',
  side: 'earliest' | 'latest',
): Precision | null {
  const moment = file.statements.moments.momentOf(holding, edge);
  return (moment && file.rangesOf(moment)[rank]?.[side]?.precision) ?? null;
}

/** How fine the bounds of a moment are. */
function precisionsOf(file: CaseFile, rank: number, moment: Moment): readonly Precision[] {
  const range = file.rangesOf(moment)[rank];
  return [range?.earliest, range?.latest].flatMap((bound) => bound?.precision ?? []);
}

/** From when to when a title is asserted; open where nothing is said. */
export function titleTime(file: CaseFile, { keys }: Entry<'title'>): Stretch {
  const days = (text: string | undefined, open: number, side: 'first' | 'last'): number => {
    if (text === undefined) return open;
    const read = readDate(text, 'gregorian', file.settings.dates);
    return isDateProblem(read) ? open : hullOfExpression(read)[side];
  };
  return {
    first: days(keys.begins, Number.NEGATIVE_INFINITY, 'first'),
    last: days(keys.ends, Number.POSITIVE_INFINITY, 'last'),
  };
}
