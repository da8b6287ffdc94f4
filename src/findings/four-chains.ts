import { groupBy } from '../base/group-by.ts';
import { inRow, phrase, type Said } from '../base/said.ts';
import { titleOf } from '../model/catalogue.ts';
import type { Entry } from '../model/entry.ts';
import { samePiece } from '../model/pieces.ts';
import type { CaseFile } from './case-file.ts';
import { type Chain, type ChainHolding, PRINTED_RANK, type Stretch } from './chain.ts';
import { findChains, titleTime } from './custody-chains.ts';
import { eventsOn } from './event-order.ts';

/** The four chains that are never mixed: sold is not removed, removed is not exported. */
export const BANDS = ['state', 'place', 'custody', 'title'] as const;

/** Name of a chain. */
export type Band = (typeof BANDS)[number];

/** One step of a chain: when it certainly lasted, and when it may have been. */
export interface Step {
  readonly band: Band;
  readonly entry: string;
  readonly name: Said;
  /** Panels that it concerns, where not all of the object; empty else. */
  readonly panels: readonly string[];
  /** An act that took place some time in the stretch, or something that lasted. */
  readonly is: 'act' | 'lasting';
  readonly throughout: Stretch | null;
  /** Where nothing was so throughout: a stretch in which it was so at some time. */
  readonly recorded: Stretch | null;
  readonly possibly: Stretch;
}

/** Kinds of event that change the physical state. */
const STATE_KINDS: readonly string[] = [
  'making',
  'uncovering',
  'whitewashing',
  'alteration',
  'damage',
  'facing',
  'removal',
  'facing taken off',
  'sectioning',
  'reassembly',
  'backing',
  'treatment',
  'mounting',
  'sampling',
];

/** Kinds of event that tell where it was, or that it went from one place to another. */
const PLACE_KINDS: readonly string[] = [
  'recorded in place',
  'listing',
  'excavation',
  'transport',
  'export',
  'import',
  'exhibition',
  'return',
];

/**
 * State, place, custody and title of an object, or of one panel of it, on probable statements: each chain by itself, in
 * the order of time. What concerns only some of its panels names them.
 */
export function fourChains(file: CaseFile, object: Entry<'object'>, panel: string | null = null): readonly Step[] {
  const piece = panel === null ? object.id : `${object.id}/${panel}`;
  const chains = findChains(file).filter(
    (chain) => chain.object.id === object.id && (panel === null || chain.panels.includes(panel)),
  );
  const events = eventsOn(file, object.id).filter((event) =>
    (event.keys.objects ?? []).some((id) => samePiece(id, piece)),
  );
  const acts = (band: Band, kinds: readonly string[]): readonly Step[] =>
    events.filter((event) => kinds.includes(event.keys.kind)).map((event) => act(file, band, event, object, panel));
  return [
    ...acts('state', STATE_KINDS),
    ...inTime([...acts('place', PLACE_KINDS), ...heldAt(file, object, panel, chains)]),
    ...custody(file, object, panel, chains),
    ...titles(file, object, panel),
  ];
}

function act(file: CaseFile, band: Band, event: Entry<'event'>, object: Entry<'object'>, panel: string | null): Step {
  const at = (edge: 'start' | 'end', side: 'earliest' | 'latest'): number => {
    const moment = file.statements.moments.momentOf(event.id, edge);
    const open = side === 'earliest' ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY;
    return moment ? (file.chronology.grades[PRINTED_RANK]?.ranges[side][moment.index] ?? open) : open;
  };
  const [first, last] = [at('start', 'latest'), at('end', 'earliest')];
  return {
    band,
    entry: event.id,
    name: titleOf(event, file.settings.languages),
    panels: panel === null ? panelsNamed(event.keys.objects ?? [], object) : [],
    is: 'act',
    throughout: Number.isFinite(first) && Number.isFinite(last) && first <= last ? { first, last } : null,
    recorded: null,
    possibly: { first: at('start', 'earliest'), last: at('end', 'latest') },
  };
}

/** Panels that an entry names, where it does not speak of the whole object. */
function panelsNamed(ids: readonly string[], object: Entry<'object'>): readonly string[] {
  if (ids.includes(object.id)) return [];
  const panels = ids.filter((id) => id.startsWith(`${object.id}/`)).map((id) => id.slice(object.id.length + 1));
  return panels.length === (object.keys.panels ?? []).length ? [] : panels;
}

/** Where it was while somebody had it, as far as the holding names a place; panels that were there in the same time together. */
function heldAt(
  file: CaseFile,
  object: Entry<'object'>,
  panel: string | null,
  chains: readonly Chain[],
): readonly Step[] {
  const all = (object.keys.panels ?? []).length;
  const steps = custody(file, object, panel, chains).flatMap((step): readonly Step[] => {
    const { place: id } = (file.catalogue.get(step.entry) as Entry<'holding'>).keys;
    const place = id === undefined ? undefined : file.catalogue.get(id);
    return place ? [{ ...step, band: 'place', entry: place.id, name: titleOf(place, file.settings.languages) }] : [];
  });
  const alike = groupBy(steps, ({ entry, possibly, throughout }) => JSON.stringify([entry, possibly, throughout]));
  return [...alike.values()].map((list) => {
    const panels = list.some((one) => one.panels.length === 0) ? [] : list.flatMap((one) => one.panels).sort();
    return { ...(list[0] as Step), panels: panels.length === all ? [] : panels };
  });
}

/** Each holding once, with the panels of the chains that it stands in where they have parted company. */
function custody(
  file: CaseFile,
  object: Entry<'object'>,
  panel: string | null,
  chains: readonly Chain[],
): readonly Step[] {
  const found = new Map<string, { readonly one: ChainHolding; readonly panels: string[]; readonly aside: boolean }>();
  for (const chain of chains) {
    for (const one of [...chain.holdings, ...chain.meanwhile]) {
      const known = found.get(one.holding.id);
      if (known) known.panels.push(...chain.panels);
      else found.set(one.holding.id, { one, panels: [...chain.panels], aside: chain.meanwhile.includes(one) });
    }
  }
  return [...found.values()].map(({ one: { holding, throughout, recorded, possibly }, panels, aside }) => {
    const holder = holding.keys['not-disclosed']
      ? phrase('Known, not disclosed')
      : titleOf(holding, file.settings.languages);
    const isAgent = holding.keys.capacity === 'agent or dealer' || holding.keys.capacity === 'consignee';
    const shown = isAgent ? inRow(['(', holder, ')'], '') : holder;
    return {
      band: 'custody',
      entry: holding.id,
      name: aside ? phrase('Meanwhile: {0}', shown) : shown,
      panels: panel !== null || chains.length < 2 || panels.length === (object.keys.panels ?? []).length ? [] : panels,
      is: 'lasting',
      throughout,
      recorded,
      possibly,
    };
  });
}

/** Titles asserted for the object, or for the panel; also where nobody's custody is recorded. */
function titles(file: CaseFile, object: Entry<'object'>, panel: string | null): readonly Step[] {
  const piece = panel === null ? object.id : `${object.id}/${panel}`;
  return file.catalogue
    .onObject('title', object.id)
    .filter((one) => one.keys.objects.some((id) => samePiece(id, piece)))
    .map((one) => ({
      band: 'title',
      entry: one.id,
      name: titleOf(one, file.settings.languages),
      panels: panel === null ? panelsNamed(one.keys.objects, object) : [],
      is: 'lasting',
      throughout: null,
      recorded: null,
      possibly: titleTime(file, one),
    }));
}

/** By the day by which a thing had begun; what nothing bounds comes last. */
function inTime(steps: readonly Step[]): readonly Step[] {
  const key = ({ throughout, recorded, possibly }: Step): number =>
    [throughout?.first, recorded?.first, possibly.first, possibly.last].find(
      (day) => day !== undefined && Number.isFinite(day),
    ) ?? Number.MAX_SAFE_INTEGER;
  return [...steps].sort((a, b) => key(a) - key(b));
}
