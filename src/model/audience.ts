import type { Nodes, Root } from 'mdast';
import { visit } from 'unist-util-visit';
import { type Access, maySee } from '../base/access.ts';
import { buildCatalogue, type Catalogue } from './catalogue.ts';
import { ENTRY_SCHEMAS, type Entry, isOfType, type KeyPath, type Keys } from './entry.ts';
import type { EntryType } from './entry-type-names.ts';
import { isOpenRequest } from './open-request.ts';
import { decodeTarget, isEntryLink } from './text-links.ts';
import { findNotedFields } from './walk-fields.ts';

/**
 * The catalogue as one audience may see it, cut before anything is computed, so that nothing can
 * leak through a number. Entries above the audience go; so do single keys under `withhold`, and
 * every inline statement that rests on an entry that goes. A party with a public name stays
 * in the public file as a stand-in without name and id. Living persons and figures that may not
 * be shown stay out of public files unless `may-be-named` gives a ground.
 *
 * @param named how the program's own words are told that stand for what is taken out
 */
export function forAudience(
  whole: Catalogue,
  audience: Access,
  named: (words: string) => string = (words) => words,
): Catalogue {
  if (audience === 'restricted') return whole;
  const standIns = standInsOf(whole, audience, named);
  let entries = whole.entries
    .map((entry) => withoutOwnText(entry, audience))
    .filter((entry) => isShown(entry, audience) && !standIns.has(entry.id))
    .map((entry) => withCoarsePlace(withoutWithheld(entry, audience), audience));
  let before = whole.entries.length;
  const removed = (): ReadonlySet<string> => {
    const kept = new Set(entries.map((entry) => entry.id));
    return new Set(whole.entries.map((entry) => entry.id).filter((id) => !kept.has(id)));
  };
  while (entries.length < before) {
    before = entries.length;
    const gone = removed();
    entries = entries.flatMap((entry) => withoutReferences(whole, entry, gone, standIns, named) ?? []);
  }
  const gone = removed();
  const shown =
    gone.size === 0
      ? entries
      : entries.map((entry) => ({ ...entry, argument: withoutLinks(whole, entry.argument, gone) }));
  const stands = [...standIns.values()].flatMap(
    (entry) => withoutReferences(whole, entry, gone, standIns, named) ?? [],
  );
  const holdsMore =
    shown.length + stands.length < whole.entries.length ||
    shown.some((entry) => (entry.withheld ?? []).length > 0) ||
    stands.length > 0;
  const cut = { standIns, panels: cutPanelsOf(whole, shown), entries: cutEntriesOf(whole, [...shown, ...stands]) };
  return buildCatalogue([...shown, ...stands], audience, holdsMore, cut);
}

/** Entries that are shown, but not with every word. */
function cutEntriesOf(whole: Catalogue, shown: readonly Entry[]): ReadonlySet<string> {
  const words = (entry: Entry | undefined): string => JSON.stringify([entry?.keys, entry?.argument]);
  const isSame = (entry: Entry, before: Entry | undefined): boolean =>
    (entry.keys === before?.keys && entry.argument === before.argument) || words(entry) === words(before);
  return new Set(shown.filter((entry) => !isSame(entry, whole.get(entry.id))).map((entry) => entry.id));
}

/** Panels of which a trace is gone, or has lost its shape or other keys. */
function cutPanelsOf(whole: Catalogue, shown: readonly Entry[]): ReadonlySet<string> {
  const kept = new Map(shown.map((entry) => [entry.id, entry]));
  return new Set(
    whole.ofType('evidence').flatMap((trace) => {
      const left = kept.get(trace.id);
      const isWhole =
        left &&
        (left.withheld ?? []).length === 0 &&
        (trace.keys.shape === undefined || (left.keys as Keys<'evidence'>).shape !== undefined);
      return isWhole ? [] : [`${trace.keys.object}/${trace.keys.panel ?? ''}`];
    }),
  );
}

function isShown(entry: Entry, audience: Access): boolean {
  if (!maySee(audience, entry.access)) return false;
  if (audience !== 'public' || entry.keys['may-be-named']) return true;
  if (isOfType(entry, 'place') && entry.keys['present-store']) return false;
  if (isOfType(entry, 'party')) {
    return entry.keys.is !== 'person' || entry.keys.living === undefined || entry.keys.living === 'no';
  }
  return !(isOfType(entry, 'figure') && entry.keys['may-be-shown'] === 'no');
}

/** Stand-ins without name and id: parties with a public name, holdings that are known, not disclosed, and requests with a public text. */
function standInsOf(whole: Catalogue, audience: Access, named: (words: string) => string): ReadonlyMap<string, Entry> {
  const standIns = new Map<string, Entry>();
  for (const party of whole.ofType('party')) {
    const name = party.keys['public-name'];
    if (name === undefined || audience !== 'public') continue;
    const id = `PA-unnamed-${standIns.size + 1}`;
    const keys: Keys<'party'> = { id, type: 'party', title: name, is: party.keys.is };
    standIns.set(party.id, { ...party, id, keys, argument: { type: 'root', children: [] }, standsIn: true } as Entry);
  }
  let holdings = 0;
  for (const holding of whole.ofType('holding')) {
    if (!holding.keys['not-disclosed'] || maySee(audience, holding.access)) continue;
    holdings += 1;
    const { capacity, objects, 'not-disclosed': notDisclosed } = holding.keys;
    const id = `HO-not-disclosed-${holdings}`;
    const keys = {
      id,
      type: 'holding',
      title: named('Known, not disclosed'),
      capacity,
      objects,
      'not-disclosed': notDisclosed,
    } as Keys<'holding'>;
    standIns.set(holding.id, {
      ...holding,
      id,
      keys,
      argument: { type: 'root', children: [] },
      standsIn: true,
    } as Entry);
  }
  let requests = 0;
  for (const request of whole.ofType('request-for-return')) {
    const { objects, 'public-text': text } = request.keys;
    if (text === undefined || maySee(audience, request.access)) continue;
    requests += 1;
    const id = `RQ-in-public-${requests}`;
    // Whether it is open is as public as that it was made: a request that was closed disputes nothing.
    const state = isOpenRequest(request.keys) ? 'open' : 'closed';
    const title = named('A request for return');
    const keys = { id, type: 'request-for-return', title, objects, state, 'public-text': text };
    standIns.set(request.id, {
      ...request,
      id,
      keys: keys as unknown as Keys<'request-for-return'>,
      argument: { type: 'root', children: [] },
      standsIn: true,
    } as Entry);
  }
  return standIns;
}

/** The settings are needed for every audience; their text is shown only to those who may see the entry. */
function withoutOwnText(entry: Entry, audience: Access): Entry {
  if (entry.type !== 'workspace' || maySee(audience, entry.access)) return entry;
  return { ...entry, access: 'public', argument: { type: 'root', children: [] } };
}

/** Coordinates of sites as far as the place's own `show` allows: exact, a tenth of a degree, or none. */
function withCoarsePlace(entry: Entry, audience: Access): Entry {
  if (!isOfType(entry, 'place') || audience !== 'public' || entry.keys.show === 'exact') return entry;
  const { coordinates, ...rest } = entry.keys;
  if (!coordinates) return entry;
  const tenth = (degrees: number): number => Math.round(degrees * 10) / 10;
  const coarse = { latitude: tenth(coordinates.latitude), longitude: tenth(coordinates.longitude) };
  const district = (entry.keys.show ?? 'district') === 'district';
  return {
    ...entry,
    keys: district ? { ...rest, coordinates: coarse } : rest,
    withheld: [...(entry.withheld ?? []), 'coordinates'],
  };
}

/**
 * Who asked, and under what authority, is for restricted readers, unless `may-be-named` gives a ground; what was signed
 * off before publishing would tell the public where it is told less.
 */
function keptByType(entry: Entry, audience: Access): readonly string[] {
  const isSet = (key: string): boolean => (entry.keys as Readonly<Record<string, unknown>>)[key] !== undefined;
  if (entry.type === 'workspace') return audience === 'public' ? ['signed-off'].filter(isSet) : [];
  if (entry.type !== 'inquiry' || entry.keys['may-be-named']) return [];
  return ['from', 'authority'].filter(isSet);
}

function withoutWithheld(entry: Entry, audience: Access): Entry {
  const names = [...(entry.keys.withhold ?? []), ...keptByType(entry, audience)];
  if (names.length === 0) return entry;
  const strip = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(strip);
    if (value === null || typeof value !== 'object') return value;
    return Object.fromEntries(
      Object.entries(value)
        .filter(([key]) => !names.includes(key))
        .map(([key, part]) => [key, strip(part)]),
    );
  };
  const keys = strip(entry.keys) as Keys<EntryType>;
  return {
    ...entry,
    keys: { ...keys, id: entry.id, type: entry.type, title: keys.title ?? entry.type } as Keys<EntryType>,
    withheld: names,
  };
}

/** The entry without what refers to entries that are gone; null where it cannot stand without. */
function withoutReferences(
  whole: Catalogue,
  entry: Entry,
  gone: ReadonlySet<string>,
  standIns: ReadonlyMap<string, Entry>,
  named: (words: string) => string,
): Entry | null {
  const schema = ENTRY_SCHEMAS[entry.type];
  const references = findNotedFields(schema, entry.keys).flatMap(({ note, value, path }) => {
    const id = note.refersTo ? whole.resolve(value)?.entry.id : undefined;
    return id !== undefined && (gone.has(id) || standIns.has(id)) ? [{ id, path }] : [];
  });
  if (references.length === 0 && (entry.withheld ?? []).length === 0) return entry;
  const keys = structuredClone(entry.keys) as Record<string, unknown>;
  const dropped: KeyPath[] = [];
  for (const { id, path } of references) {
    const standIn = standIns.get(id);
    if (standIn) setAt(keys, path, standIn.id);
    else if (gone.has(id)) dropped.push(path);
  }
  const restingPaths = new Map(dropped.map((path) => [JSON.stringify(restingPath(path)), restingPath(path)]));
  // The deepest first, then from the end of each list, so that no index moves before its turn.
  for (const path of [...restingPaths.values()].reverse().sort((a, b) => b.length - a.length)) {
    if (entry.type === 'inquiry' && path[0] === 'questions') hideAnswer(keys, path[1] as number, named);
    else dropAt(keys, path);
  }
  // A map that cannot stand without the name goes whole.
  if (!schema.safeParse(keys).success) for (const path of dropped.filter(isInMap)) dropAt(keys, path.slice(0, -1));
  const missesHolder = (entry.withheld ?? []).length > 0;
  const fits = schema.safeParse(keys).success;
  if (!fits && (dropped.length > 0 || missesHolder)) return null;
  const lostParent = dropped.some((path) => path[0] === 'derives-from');
  const withheld = lostParent ? [...new Set([...(entry.withheld ?? []), 'derives-from'])] : entry.withheld;
  return { ...entry, keys: keys as Keys<EntryType>, ...(withheld ? { withheld } : {}) };
}

/** A question stays as it was asked, with its number; an answer that rests on what is gone goes. */
function hideAnswer(keys: Record<string, unknown>, index: number, named: (words: string) => string): void {
  const questions = keys.questions as (Record<string, unknown> | string)[];
  const question = questions[index];
  if (typeof question === 'object')
    questions[index] = { text: question.text, answer: named('The answer rests on entries that are not shown here') };
}

function setAt(keys: Record<string, unknown>, path: KeyPath, value: string): void {
  const last = path.at(-1) as string | number;
  const parent = path.slice(0, -1).reduce<unknown>((at, key) => (at as Record<string | number, unknown>)[key], keys);
  (parent as Record<string | number, unknown>)[last] = value;
}

/** Keys that tell who judged; that such a person is not shown takes nothing else out. */
export const JUDGES: readonly string[] = ['by', 'analyst'];

/** Keys that hold somebody's opinion, which is none without the one who holds it. */
const OPINIONS: readonly string[] = ['inferred', 'applies'];

/**
 * What goes with a reference: the list item around it, or the map whose `source` it is, since they rest on it; only
 * the reference itself where it tells who judged so, or stands alone.
 */
function restingPath(path: KeyPath): KeyPath {
  // A shape in pixels means nothing without its figure.
  if (path[0] === 'shape') return ['shape'];
  // An opinion goes with the one who holds it.
  if (path.length > 1 && !OPINIONS.includes(String(path[0])) && JUDGES.includes(String(path.at(-1)))) return path;
  const item = path.findIndex((part) => typeof part === 'number');
  if (item !== -1) return path.slice(0, item + 1);
  return isInMap(path) && path.at(-1) === 'source' ? path.slice(0, -1) : path;
}

function isInMap(path: KeyPath): boolean {
  return path.length > 1 && typeof path.at(-2) === 'string' && typeof path.at(-1) === 'string';
}

function dropAt(keys: Record<string, unknown>, path: KeyPath): void {
  const parent = path
    .slice(0, -1)
    .reduce<unknown>((at, key) => (at as Record<string | number, unknown> | undefined)?.[key], keys);
  const last = path.at(-1);
  if (Array.isArray(parent)) parent.splice(Number(last), 1);
  else if (parent !== null && typeof parent === 'object') delete (parent as Record<string, unknown>)[String(last)];
}

/** Links to entries that are gone become their own words, also those whose target is defined elsewhere in the text. */
function withoutLinks(whole: Catalogue, argument: Root, gone: ReadonlySet<string>): Root {
  const leadsAway = (url: string): boolean => {
    if (!isEntryLink(url)) return false;
    const id = whole.resolve(decodeTarget(url).split('#')[0] as string)?.entry.id;
    return id !== undefined && gone.has(id);
  };
  const isGone = (node: Nodes): boolean =>
    (node.type === 'definition' || node.type === 'link' || node.type === 'image') && leadsAway(node.url);
  const undefinedNow = new Set<string>();
  visit(argument, 'definition', (node) => {
    if (isGone(node)) undefinedNow.add(node.identifier);
  });
  const clean = (node: Nodes): readonly Nodes[] => {
    const children = 'children' in node ? node.children.flatMap(clean) : undefined;
    const isReference = node.type === 'linkReference' || node.type === 'imageReference';
    if (isReference ? undefinedNow.has(node.identifier) : isGone(node)) {
      if (node.type === 'image' || node.type === 'imageReference') return [{ type: 'text', value: node.alt ?? '' }];
      return children ?? [];
    }
    return [children ? ({ ...node, children } as Nodes) : node];
  };
  return clean(argument)[0] as Root;
}
