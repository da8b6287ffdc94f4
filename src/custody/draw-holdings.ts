import type { Catalogue } from '../model/catalogue.ts';
import type { Entry, Keys } from '../model/entry.ts';
import type { Act } from './acts.ts';
import { type DrawnHolding, findPassages } from './passages.ts';

/** Capacities of those who got a piece by an act; a possessor where nothing else is said. */
const CAPACITY_BY_ACT: Readonly<Record<string, Keys<'holding'>['capacity']>> = {
  loan: 'borrower',
  deposit: 'depositary',
  consignment: 'consignee',
  pledge: 'pledgee',
  confiscation: 'occupying or confiscating authority',
  'theft or looting': 'unknown',
};

/** How a holding was acquired, by the act that began it. */
const ACQUIRED_BY: Readonly<Record<string, string>> = { sale: 'purchase', return: 'restitution' };

/** How an act says that a holding was acquired. */
export function acquiredBy(act: Act): string {
  const { kind } = act.event.keys;
  return ACQUIRED_BY[kind] ?? kind;
}

/** A catalogue with the holdings that its acts tell of and nobody wrote; the same one where there are none. */
export function withDrawnHoldings(catalogue: Catalogue): Catalogue {
  const { drawn } = findPassages(catalogue);
  const entries = drawn.flatMap((one) => entryOf(catalogue, one) ?? []);
  return entries.length === 0 ? catalogue : catalogue.withMore(entries);
}

function entryOf(
  catalogue: Catalogue,
  { id, holders, objects, got, gave, during, forAnother }: DrawnHolding,
): Entry | null {
  const acts = [got, gave, during].filter((one) => one !== null);
  const [holder, ...shared] = holders;
  const [act] = acts;
  const party = holder === undefined ? undefined : catalogue.get(holder);
  if (!act || !party || holder === undefined) return null;
  const { event } = act;
  const capacity = (got && CAPACITY_BY_ACT[got.event.keys.kind]) ?? (forAnother ? 'custodian' : 'possessor');
  const keys: Keys<'holding'> = {
    id,
    type: 'holding',
    title: party.keys.title,
    holder,
    capacity,
    objects: [...objects],
    ...(got ? { 'acquired-by': acquiredBy(got) } : {}),
    ...(shared.length > 0 ? { 'shared-with': [...shared] } : {}),
  };
  return {
    id,
    type: 'holding',
    keys,
    access: event.access,
    argument: { type: 'root', children: [] },
    file: event.file,
    placeOf: () => event.placeOf(['parties']),
    drawnFrom: acts.map((one) => one.event.id),
  };
}
