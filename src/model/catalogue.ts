import type { Access } from '../base/access.ts';
import { groupBy } from '../base/group-by.ts';
import { naturalOrder } from '../base/natural-order.ts';
import { lazily } from '../base/once.ts';
import { ENTRY_SCHEMAS, type Entry, isOfType } from './entry.ts';
import type { EntryType } from './entry-type-names.ts';
import { findEntryLinks, idOfTarget } from './text-links.ts';
import { findNotedFields } from './walk-fields.ts';

/** A link between two entries; `via` is the key that holds it, or `text` for a link in the body. */
export interface Link {
  readonly from: string;
  readonly to: string;
  readonly via: string;
}

/** What an id in an entry points to: an entry, and perhaps an edge or a part of it. */
export interface Target {
  readonly entry: Entry;
  /** `begins` or `ends` of a holding, `start` or `end` of an event. */
  readonly edge: 'begins' | 'ends' | 'start' | 'end' | null;
  /** Panel `A` or section `A.7` of an object. */
  readonly part: string | null;
}

/** All entries that one audience may see, linked both ways. */
export interface Catalogue {
  readonly audience: Access;
  readonly workspace: Entry<'workspace'> | null;
  /** In natural order of their ids. */
  readonly entries: readonly Entry[];
  readonly links: readonly Link[];
  /** True where entries or keys were taken out for the audience. */
  readonly holdsMore: boolean;
  /** Panels (`OB-east/A`) of which traces, or keys of them, were taken out for the audience. */
  readonly cutPanels: ReadonlySet<string>;
  /** True where an entry stands here with every word that it has in the whole file. */
  isWhole(id: string): boolean;
  /** The id under which an entry of the whole file stands here; null where it was taken out. */
  shownAs(id: string): string | null;
  get(id: string): Entry | undefined;
  resolve(reference: string): Target | null;
  ofType<Type extends EntryType>(type: Type): readonly Entry<Type>[];
  /** Entries of a type that name an object, or a part of it, under `object` or `objects`. */
  onObject<Type extends EntryType>(type: Type, object: string): readonly Entry<Type>[];
  /** Entries of any type that do. */
  namingObject(object: string): readonly Entry[];
  /** The same catalogue with more entries. */
  withMore(entries: readonly Entry[]): Catalogue;
  linksTo(id: string): readonly Link[];
  linksFrom(id: string): readonly Link[];
}

const EDGES = ['begins', 'ends', 'start', 'end'] as const;

/** What an audience does not see: ids that stand under another name, panels and entries of which something is gone. */
export interface CutForAudience {
  readonly standIns: ReadonlyMap<string, Entry>;
  readonly panels: ReadonlySet<string>;
  readonly entries: ReadonlySet<string>;
}

/** Builds a catalogue, cut for an audience where `cut` says so; the order in which the entries come never matters. */
export function buildCatalogue(
  entries: readonly Entry[],
  audience: Access,
  holdsMore: boolean,
  cut: CutForAudience = { standIns: new Map(), panels: new Set(), entries: new Set() },
): Catalogue {
  const sorted = [...entries].sort((a, b) => naturalOrder(a.id, b.id));
  const byId = new Map(sorted.map((entry) => [entry.id, entry]));
  const linked = lazily(() => {
    const links = sorted.flatMap((entry) => linksOf(byId, entry));
    return { links, to: groupBy(links, (link) => link.to), from: groupBy(links, (link) => link.from) };
  });
  const byType = groupBy(sorted, (entry) => entry.type);
  const ofType = <Type extends EntryType>(type: Type) => (byType.get(type) ?? []) as unknown as readonly Entry<Type>[];
  const byObject = lazily(() => groupByObject(sorted));
  const onObject = <Type extends EntryType>(type: Type, object: string) =>
    (byObject().get(object)?.get(type) ?? []) as unknown as readonly Entry<Type>[];
  return {
    audience,
    workspace: ofType('workspace')[0] ?? null,
    entries: sorted,
    get links() {
      return linked().links;
    },
    holdsMore,
    cutPanels: cut.panels,
    isWhole: (id) => byId.has(id) && !cut.entries.has(id),
    shownAs: (id) => cut.standIns.get(id)?.id ?? (byId.has(id) ? id : null),
    get: (id) => byId.get(id),
    resolve: (reference) => resolveIn(byId, reference),
    ofType,
    onObject,
    namingObject: (object) => [...(byObject().get(object)?.values() ?? [])].flat(),
    withMore: (more) => buildCatalogue([...entries, ...more], audience, holdsMore, cut),
    linksTo: (id) => linked().to.get(id) ?? [],
    linksFrom: (id) => linked().from.get(id) ?? [],
  };
}

/** Entries by each object that they name, then by type. */
function groupByObject(entries: readonly Entry[]): ReadonlyMap<string, ReadonlyMap<string, readonly Entry[]>> {
  const found = new Map<string, Entry[]>();
  for (const entry of entries) {
    const { object, objects } = entry.keys as { readonly object?: unknown; readonly objects?: unknown };
    const named = [object, ...(Array.isArray(objects) ? objects : [])].filter((one) => typeof one === 'string');
    for (const id of new Set(named.map((one) => one.split('/')[0] as string))) {
      const list = found.get(id);
      if (list) list.push(entry);
      else found.set(id, [entry]);
    }
  }
  return new Map([...found].map(([id, list]) => [id, groupBy(list, (entry) => entry.type)]));
}

/** Links that an entry makes, each other entry once a key; links that lead nowhere are left out. */
function linksOf(byId: ReadonlyMap<string, Entry>, entry: Entry): readonly Link[] {
  const found = new Map<string, Link>();
  const add = (reference: string, via: string): void => {
    const to = resolveIn(byId, reference)?.entry.id;
    if (to !== undefined && to !== entry.id) found.set(`${to} ${via}`, { from: entry.id, to, via });
  };
  for (const { note, value, path } of findNotedFields(ENTRY_SCHEMAS[entry.type], entry.keys)) {
    if (note.refersTo) add(value, String(path[0] ?? ''));
  }
  for (const node of findEntryLinks(entry.argument)) add(idOfTarget(node.url), 'text');
  return [...found.values()];
}

function resolveIn(byId: ReadonlyMap<string, Entry>, reference: string): Target | null {
  const whole = byId.get(reference);
  if (whole) return { entry: whole, edge: null, part: null };
  const edge = EDGES.find((name) => reference.endsWith(`.${name}`));
  if (edge) {
    const entry = byId.get(reference.slice(0, -edge.length - 1));
    if (entry && (entry.type === 'holding' || entry.type === 'event')) return { entry, edge, part: null };
  }
  const slash = reference.indexOf('/');
  const object = slash > 0 ? byId.get(reference.slice(0, slash)) : undefined;
  if (!object || !isOfType(object, 'object')) return null;
  const part = reference.slice(slash + 1);
  return partsOfObject(object).includes(part) ? { entry: object, edge: null, part } : null;
}

/** Panels (`A`) and sections (`A.7`) by which an object can be addressed. */
export function partsOfObject(object: Entry<'object'>): readonly string[] {
  return (object.keys.panels ?? []).flatMap((panel) => [
    panel.id,
    ...(panel.sections ?? []).map((section) => `${panel.id}.${section.id}`),
  ]);
}

/** The title of an entry in the first language that it has. */
export function titleOf(entry: Entry, languages: readonly string[] = ['en']): string {
  return inLanguage(entry.keys.title, languages);
}

/** A text in the first of the languages that it has; else in the first language given. */
export function inLanguage(
  text: string | Readonly<Record<string, string>>,
  languages: readonly string[] = ['en'],
): string {
  if (typeof text === 'string') return text;
  const language = languages.find((one) => text[one] !== undefined);
  return (language === undefined ? Object.values(text)[0] : text[language]) ?? '';
}
