import { oncePer } from '../base/once.ts';
import { acquiredBy } from '../custody/draw-holdings.ts';
import { findPassages, type Passage } from '../custody/passages.ts';
import type { Catalogue } from '../model/catalogue.ts';
import type { Entry } from '../model/entry.ts';

type Holding = Entry<'holding'>;

/** How a piece came from one holding to the next, as an entry or an act says. */
export interface PassedOn {
  /** The act that handed it on; null where a holding says so alone. */
  readonly act: Entry<'event'> | null;
  readonly is: 'direct' | 'not direct' | 'unknown';
  /** True where a death lies between, perhaps long before: what lies between is the estate. */
  readonly atDeath: boolean;
  readonly grade: 'established' | 'probable' | 'possible' | 'conjectural';
  /** Who says that it was direct; null where it is inferred. */
  readonly source: string | null;
  readonly why: string | null;
}

/** Acts after which the giver has it no longer. */
const FOR_GOOD: readonly Passage['how'][] = ['handed on', 'at death', 'taken back'];

const actsByHolding = oncePer((catalogue: Catalogue) => {
  const forGood = findPassages(catalogue).passages.filter((one) => FOR_GOOD.includes(one.how));
  return {
    between: new Map(forGood.map((one) => [`${one.from} ${one.to}`, one])),
    to: new Map(forGood.flatMap((one) => (one.to === null ? [] : [[one.to, one] as const]))),
  };
});

/** From which holding one came: as it says itself, else as the act says by which it was got. */
export function comesFrom(catalogue: Catalogue, holding: Holding): string | undefined {
  return holding.keys.from ?? actsByHolding(catalogue).to.get(holding.id)?.from ?? undefined;
}

/** How a holding was acquired: as it says itself, else as the act says. */
export function howAcquired(catalogue: Catalogue, holding: Holding): string | undefined {
  const passage = actsByHolding(catalogue).to.get(holding.id) ?? lentBy(catalogue, holding);
  return holding.keys['acquired-by'] ?? (passage ? acquiredBy(passage.act) : undefined);
}

function lentBy(catalogue: Catalogue, holding: Holding): Passage | undefined {
  return findPassages(catalogue).passages.find((one) => one.how === 'for a time' && one.to === holding.id);
}

/** How a piece came from one holding to another; null where nothing says that it did. */
export function passedOn(catalogue: Catalogue, before: Holding, after: Holding): PassedOn | null {
  const act = actsByHolding(catalogue).between.get(`${before.id} ${after.id}`);
  const { from, passage } = after.keys;
  if (from === before.id && passage !== undefined) {
    const { is, grade, why, source } = typeof passage === 'string' ? { is: passage } : { ...passage };
    return {
      act: act?.act.event ?? null,
      is,
      atDeath: act?.how === 'at death',
      grade: grade ?? 'probable',
      source: source ?? null,
      why: why ?? null,
    };
  }
  if (!act) return null;
  const { event } = act.act;
  return {
    act: event,
    is: act.how === 'at death' ? 'unknown' : 'direct',
    atDeath: act.how === 'at death',
    grade: event.keys.passage?.grade ?? 'probable',
    source: null,
    why: event.keys.passage?.why ?? null,
  };
}
