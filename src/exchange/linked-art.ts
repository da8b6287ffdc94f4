import { partiesIn, type Role } from '../custody/acts.ts';
import type { CaseFile } from '../findings/case-file.ts';
import { findChains } from '../findings/custody-chains.ts';
import { comesFrom } from '../findings/passed-on.ts';
import { titleOf } from '../model/catalogue.ts';
import { type Entry, isOfType } from '../model/entry.ts';
import { assertionsAbout, claimsAbout } from './linked-art-claims.ts';
import {
  CONTEXT,
  type Json,
  type LinkedArtRecord,
  named,
  PROVENANCE,
  ref,
  statement,
  timeSpan,
} from './linked-art-parts.ts';

/** Kinds of event in which title is said to pass; what is asserted of it stands in assignments of its own. */
const ACQUISITIONS: readonly string[] = [
  'sale',
  'gift',
  'bequest',
  'inheritance',
  'exchange',
  'forced sale',
  'deaccession',
];

/** Kinds of event in which a thing goes from one place to another. */
const MOVES: readonly string[] = ['transport', 'export', 'import', 'return', 'loan'];

/**
 * One record of Linked Art 1.0 for every object, event, holding, party and place that the audience may see. Dates are those
 * of the printed grade; what sources say is an attribute assignment with its confidence; a removal is a part removal. Ids
 * are addresses below the workspace's `base-url`, else `urn:kerfmark:`.
 */
export function linkedArt(file: CaseFile): readonly LinkedArtRecord[] {
  return file.catalogue.entries.flatMap((entry): readonly LinkedArtRecord[] => {
    if (isOfType(entry, 'object')) return [objectRecord(file, entry)];
    if (isOfType(entry, 'event')) return [eventRecord(file, entry)];
    if (isOfType(entry, 'holding')) return [holdingRecord(file, entry)];
    if (isOfType(entry, 'party')) return [partyRecord(file, entry)];
    if (isOfType(entry, 'place')) return [isBuilt(entry) ? wallRecord(file, entry) : placeRecord(file, entry)];
    return isOfType(entry, 'source') ? [sourceRecord(file, entry)] : [];
  });
}

function head(file: CaseFile, entry: Entry, type: string): LinkedArtRecord {
  const { id } = ref(file, entry.id, type);
  return { '@context': CONTEXT, id, type, _label: titleOf(entry, file.settings.languages) };
}

/** Walls and buildings are human-made: a part can be removed from them, not from a place. */
function isBuilt({ keys }: Entry<'place'>): boolean {
  return keys.kind === 'wall' || keys.kind === 'building';
}

function objectRecord(file: CaseFile, object: Entry<'object'>): LinkedArtRecord {
  const { keys } = object;
  const numbers = (keys['accession-numbers'] ?? []).map((content) => ({ type: 'Identifier', content }));
  const words: readonly (readonly [string, string | undefined])[] = [
    ['Materials and techniques', keys.materials],
    ['Inscriptions and markings', keys.inscriptions],
    ['Subject', keys.subject],
    ['Date or period', keys.period],
    ['Credit line', keys['credit-line']],
    ...(keys.measurements ?? []).map((one) => [one.what ?? 'Measurements', one['as-written']] as const),
  ];
  const removals = file.catalogue
    .ofType('event')
    .filter(
      (event) =>
        event.keys.kind === 'removal' && (event.keys.objects ?? []).some((id) => id.split('/')[0] === object.id),
    )
    .map((event) => partRemoval(file, event, keys.of));
  // A piece cut again: it was removed from another object, not from the wall.
  const cuts = (keys['made-from'] ?? [])
    .flatMap((id) => thingRef(file, id))
    .map((from): Json => ({ type: 'PartRemoval', _label: `Cut from ${from._label}`, diminished: from }));
  const holders = findChains(file)
    .filter((chain) => chain.object.id === object.id)
    .flatMap((chain) => chain.holdings.at(-1)?.holding.keys.holder ?? []);
  return {
    ...head(file, object, 'HumanMadeObject'),
    identified_by: [...named(file, object), ...numbers],
    ...list(
      'referred_to_by',
      words.flatMap(([label, content]) => (content ? [statement(label, content)] : [])),
    ),
    ...list('removed_by', [...removals, ...cuts]),
    ...list(
      'current_custodian',
      [...new Set(holders)].flatMap((id) => partyRef(file, id)),
    ),
    ...list('attributed_by', assertionsAbout(file, object)),
  };
}

function partRemoval(file: CaseFile, event: Entry<'event'>, wall: string | undefined): Json {
  const from = wall === undefined ? [] : thingRef(file, wall);
  return {
    type: 'PartRemoval',
    _label: titleOf(event, file.settings.languages),
    ...timeSpan(file, event.id, ['start', 'end']),
    ...(from[0] ? { diminished: from[0] } : {}),
  };
}

/** Acts that hand on a thing are provenance activities; everything else is an event or an activity. */
function eventRecord(file: CaseFile, event: Entry<'event'>): LinkedArtRecord {
  const { keys } = event;
  const things = thingRefs(file, keys.objects ?? []);
  const parties = (keys.parties ?? []).map((one) => (typeof one === 'string' ? one : one.party));
  const by = (role: Role): readonly Json[] =>
    [...new Set(partiesIn(event).flatMap((one) => (one.role === role ? one.party : [])))].flatMap((id) =>
      partyRef(file, id),
    );
  const isAcquisition = ACQUISITIONS.includes(keys.kind);
  const isMove = MOVES.includes(keys.kind) && keys.to !== undefined;
  const common = {
    identified_by: named(file, event),
    referred_to_by: [statement('Kind', keys.kind)],
    ...timeSpan(file, event.id, ['start', 'end']),
    ...list('attributed_by', claimsAbout(file, event)),
  };
  if ((!isAcquisition && !isMove) || things.length === 0) {
    return {
      ...head(file, event, parties.length > 0 ? 'Activity' : 'Event'),
      ...common,
      ...list(
        parties.length > 0 ? 'carried_out_by' : 'participant',
        parties.flatMap((one) => partyRef(file, one)),
      ),
      ...list('took_place_at', keys.place ? placeRef(file, keys.place) : []),
    };
  }
  const part = isMove
    ? {
        type: 'Move',
        moved: things,
        ...single('moved_from', keys.place ? placeRef(file, keys.place) : []),
        ...single('moved_to', keys.to ? placeRef(file, keys.to) : []),
      }
    : {
        type: 'Acquisition',
        transferred_title_of: things,
        ...list('transferred_title_from', by('gives')),
        ...list('transferred_title_to', by('gets')),
        referred_to_by: [
          statement(
            'Note',
            `Recorded as ${keys.kind}; whether title passed is asserted by parties, not found by this file.`,
          ),
        ],
      };
  return { ...head(file, event, 'Activity'), classified_as: [PROVENANCE], ...common, part: [part] };
}

function holdingRecord(file: CaseFile, holding: Entry<'holding'>): LinkedArtRecord {
  const { keys } = holding;
  const giver = comesFrom(file.catalogue, holding);
  const before = giver === undefined ? undefined : file.catalogue.get(giver);
  const from = before && isOfType(before, 'holding') && before.keys.holder ? partyRef(file, before.keys.holder) : [];
  return {
    ...head(file, holding, 'Activity'),
    classified_as: [PROVENANCE],
    identified_by: named(file, holding),
    referred_to_by: [
      statement('Capacity', keys.capacity),
      ...(keys['not-disclosed'] ? [statement('Holder', 'known, not disclosed')] : []),
    ],
    ...timeSpan(file, holding.id, ['begins', 'ends']),
    part: [
      {
        type: 'TransferOfCustody',
        transferred_custody_of: thingRefs(file, keys.objects),
        ...list('transferred_custody_from', from),
        ...list('transferred_custody_to', keys.holder ? partyRef(file, keys.holder) : []),
        ...timeSpan(file, holding.id, ['begins', 'begins']),
      },
    ],
  };
}

function partyRecord(file: CaseFile, party: Entry<'party'>): LinkedArtRecord {
  return {
    ...head(file, party, party.keys.is === 'person' ? 'Person' : 'Group'),
    identified_by: named(file, party),
    ...list('referred_to_by', party.keys.role ? [statement('Role', party.keys.role)] : []),
  };
}

function placeRecord(file: CaseFile, place: Entry<'place'>): LinkedArtRecord {
  const { coordinates, within } = place.keys;
  return {
    ...head(file, place, 'Place'),
    identified_by: named(file, place),
    ...(coordinates ? { defined_by: `POINT (${coordinates.longitude} ${coordinates.latitude})` } : {}),
    ...list('part_of', within ? placeRef(file, within) : []),
  };
}

function wallRecord(file: CaseFile, place: Entry<'place'>): LinkedArtRecord {
  const within = place.keys.within ? file.catalogue.get(place.keys.within) : undefined;
  const isPart = within && isOfType(within, 'place') && isBuilt(within);
  return {
    ...head(file, place, 'HumanMadeObject'),
    identified_by: named(file, place),
    ...single('part_of', isPart ? thingRef(file, within.id) : []),
  };
}

function sourceRecord(file: CaseFile, source: Entry<'source'>): LinkedArtRecord {
  const { keys } = source;
  const facts: readonly (readonly [string, string | undefined])[] = [
    ['Kind', keys.kind],
    ['Repository', keys.repository],
    ['Reference code', keys['reference-code']],
    ['Date on it', keys['date-on-it']],
    ['Form seen', keys['form-seen']],
    [
      'Authenticity',
      typeof keys.authenticity === 'string'
        ? keys.authenticity
        : keys.authenticity && `${keys.authenticity.is}: ${keys.authenticity.why}`,
    ],
  ];
  return {
    ...head(file, source, 'LinguisticObject'),
    identified_by: named(file, source),
    referred_to_by: facts.flatMap(([label, content]) => (content ? [statement(label, content)] : [])),
  };
}

/** Objects that an entry names, each once; of a panel its object. */
function thingRefs(file: CaseFile, ids: readonly string[]): readonly Json[] {
  return [...new Set(ids.map((id) => id.split('/')[0] as string))].flatMap((id) => thingRef(file, id));
}

function thingRef(file: CaseFile, id: string): readonly Json[] {
  const entry = file.catalogue.get(id);
  if (!entry || !(isOfType(entry, 'object') || (isOfType(entry, 'place') && isBuilt(entry)))) return [];
  return [ref(file, id, 'HumanMadeObject')];
}

/** A place; of a wall or building the place that it lies in. */
function placeRef(file: CaseFile, id: string): readonly Json[] {
  const seen = new Set<string>();
  let at = file.catalogue.get(id);
  while (at && isOfType(at, 'place') && isBuilt(at) && !seen.has(at.id)) {
    seen.add(at.id);
    at = at.keys.within === undefined ? undefined : file.catalogue.get(at.keys.within);
  }
  return at && isOfType(at, 'place') ? [ref(file, at.id, 'Place')] : [];
}

function partyRef(file: CaseFile, id: string): readonly Json[] {
  const party = file.catalogue.get(id);
  return party && isOfType(party, 'party') ? [ref(file, id, party.keys.is === 'person' ? 'Person' : 'Group')] : [];
}

function list(key: string, values: readonly Json[]): Json {
  return values.length === 0 ? {} : { [key]: values };
}

function single(key: string, values: readonly Json[]): Json {
  return values[0] === undefined ? {} : { [key]: values[0] };
}
