import type { Entry, Keys } from '../model/entry.ts';

/**
 * What an act does to who has a piece: it hands it on; it hands it on at a death, which may lie long before; it gives it
 * for a time, while the giver goes on possessing it; or it brings it back.
 */
export type ActKind = 'handed on' | 'at death' | 'for a time' | 'brought back';

/** Roles of the parties of an act; an act binds the holdings of those who give and get, and ends one that was for a sale. */
export const ROLES = ['gives', 'gets', 'through', 'house'] as const;
export type Role = (typeof ROLES)[number];

type EventKind = Keys<'event'>['kind'];

const ACTS: Readonly<Partial<Record<EventKind, ActKind>>> = {
  sale: 'handed on',
  gift: 'handed on',
  exchange: 'handed on',
  'division of finds': 'handed on',
  confiscation: 'handed on',
  nationalisation: 'handed on',
  'forced sale': 'handed on',
  'theft or looting': 'handed on',
  bequest: 'at death',
  inheritance: 'at death',
  loan: 'for a time',
  deposit: 'for a time',
  consignment: 'for a time',
  pledge: 'for a time',
  return: 'brought back',
};

/** Words of the trade for a role, in whole; any other word tells what a party did, and binds nothing. */
export const ROLE_WORDS: Readonly<Record<Role, readonly string[]>> = {
  gives: ['gives', 'seller', 'vendor', 'donor', 'giver', 'testator', 'lender', 'consignor', 'depositor', 'pledgor'],
  gets: [
    'gets',
    'buyer',
    'purchaser',
    'recipient',
    'donee',
    'heir',
    'legatee',
    'borrower',
    'consignee',
    'depositary',
    'pledgee',
  ],
  through: ['through', 'agent', 'intermediary', 'broker'],
  house: ['house', 'auction house', 'auctioneer'],
};

const ROLE_OF: ReadonlyMap<string, Role> = new Map(
  ROLES.flatMap((role) => ROLE_WORDS[role].map((word) => [word, role] as const)),
);

/** The role that a word names; null for every other word. */
export function roleOf(word: string | undefined): Role | null {
  return ROLE_OF.get((word ?? '').trim().toLowerCase()) ?? null;
}

/** A party in a role, and for which pieces. */
export interface ActLine {
  readonly role: Role;
  /** Who gives or gets: the principal, where the party acted for one. */
  readonly party: string;
  /** The party that acted for the principal; null where it acted for itself. */
  readonly agent: string | null;
  readonly objects: readonly string[];
  /** The holding that is meant, where the line names one. */
  readonly holding: string | null;
  /** Place of the line among the parties of the event. */
  readonly index: number;
}

/** An event that hands a piece on, with its parties. */
export interface Act {
  readonly event: Entry<'event'>;
  readonly kind: ActKind;
  readonly lines: readonly ActLine[];
}

/** What an event does to who has a piece; null for events that do nothing to it. */
export function actKindOf(event: Entry<'event'>): ActKind | null {
  return ACTS[event.keys.kind] ?? null;
}

/** The act of an event; null where it hands nothing on, or names nobody who gives or gets. */
export function actOf(event: Entry<'event'>): Act | null {
  const kind = actKindOf(event);
  if (kind === null) return null;
  const lines = partiesIn(event);
  return lines.some(({ role }) => role === 'gives' || role === 'gets') ? { event, kind, lines } : null;
}

/** Parties of an event in one of the roles, whatever the event is. */
export function partiesIn(event: Entry<'event'>): readonly ActLine[] {
  return (event.keys.parties ?? []).flatMap((one, index): readonly ActLine[] => {
    if (typeof one === 'string') return [];
    const role = roleOf(one.role);
    if (role === null) return [];
    const principal = one['on-behalf-of'];
    return [
      {
        role,
        party: principal ?? one.party,
        agent: principal === undefined ? null : one.party,
        objects: one.objects ?? piecesOf(event),
        holding: one.holding ?? null,
        index,
      },
    ];
  });
}

/** The pieces that every party of an event has to do with; an exchange says it of each. */
function piecesOf({ keys }: Entry<'event'>): readonly string[] {
  return keys.kind === 'exchange' ? [] : (keys.objects ?? []);
}
