import { oncePer } from '../base/once.ts';
import type { Link } from '../chronology/chronology.ts';
import type { Catalogue } from '../model/catalogue.ts';
import { type Entry, isOfType } from '../model/entry.ts';
import type { Edge, Moment, Span } from './file-statement.ts';

/** All moments of a catalogue, and how ids lead to them. */
export interface Moments {
  readonly all: readonly Moment[];
  /** Moments of an entry: none, one or two, the earlier first; a delivery beside its act is none of them. */
  ofEntry(entry: string): readonly Moment[];
  /** Starts before ends: always holds and cannot be withdrawn. */
  readonly axioms: readonly Link[];
  /** The time that an id speaks of; null where the entry has none. */
  spanOf(reference: string): Span | null;
  momentOf(entry: string, edge: Edge): Moment | null;
}

/** Two moments for events, holdings and traces formed over time; one for every other trace, and for the delivery of an act. */
export const findMoments = oncePer((catalogue: Catalogue): Moments => {
  const all: Moment[] = [];
  const axioms: Link[] = [];
  const byEntry = new Map<string, readonly Moment[]>();
  const deliveries = new Map<string, Moment>();
  for (const entry of catalogue.entries) {
    const edges = edgesOf(entry);
    const moments = edges.map((edge, i) => ({ index: all.length + i, entry: entry.id, edge }));
    all.push(...moments);
    if (moments.length > 0) byEntry.set(entry.id, moments);
    if (edges.length === 2) {
      axioms.push({ from: all.length - 2, to: all.length - 1, days: 0, role: 'axiom' });
    }
    if (isOfType(entry, 'event') && entry.keys.delivery !== undefined) {
      deliveries.set(entry.id, { index: all.length, entry: entry.id, edge: 'delivery' });
      all.push(deliveries.get(entry.id) as Moment);
    }
  }
  const ofEntry = (entry: string) => byEntry.get(entry) ?? [];
  const momentOf = (entry: string, edge: Edge) =>
    (edge === 'delivery' ? deliveries.get(entry) : ofEntry(entry).find((one) => one.edge === edge)) ?? null;
  return { all, axioms, ofEntry, momentOf, spanOf: (reference) => spanOf(catalogue, momentOf, reference) };
});

/** The edges that an entry has in time. */
export function edgesOf(entry: Entry): readonly Edge[] {
  if (isOfType(entry, 'event')) return ['start', 'end'];
  if (isOfType(entry, 'holding')) return ['begins', 'ends'];
  if (isOfType(entry, 'evidence')) return entry.keys.formed === 'over time' ? ['start', 'end'] : ['moment'];
  return [];
}

function spanOf(
  catalogue: Catalogue,
  momentOf: (entry: string, edge: Edge) => Moment | null,
  reference: string,
): Span | null {
  const target = catalogue.resolve(reference);
  if (!target) return null;
  if (target.edge) {
    const moment = momentOf(target.entry.id, target.edge);
    return moment ? { start: moment.index, end: moment.index, single: true } : null;
  }
  const [first, last] = edgesOf(target.entry);
  if (first === undefined) return null;
  const start = momentOf(target.entry.id, first);
  const end = momentOf(target.entry.id, last ?? first);
  return start && end ? { start: start.index, end: end.index, single: last === undefined } : null;
}
