import type { Root } from 'mdast';
import type * as z from 'zod';
import type { Access } from '../base/access.ts';
import type { Place } from '../base/place.ts';
import type { EntryType } from './entry-type-names.ts';
import { claim } from './types/claim.ts';
import { inquiry, referenceDate, requestForReturn, response } from './types/correspondence.ts';
import { holding, title } from './types/custody.ts';
import { event } from './types/event.ts';
import { evidence } from './types/evidence.ts';
import { examination, survey } from './types/examination.ts';
import { figure } from './types/figure.ts';
import { object } from './types/object.ts';
import { party, place } from './types/party-and-place.ts';
import { question, reading, search } from './types/research.ts';
import { source } from './types/source.ts';
import { workspace } from './types/workspace.ts';

/** One schema a type: the only definition of what an entry may hold. */
export const ENTRY_SCHEMAS = {
  workspace,
  object,
  evidence,
  examination,
  survey,
  event,
  claim,
  holding,
  title,
  source,
  party,
  place,
  figure,
  search,
  question,
  reading,
  inquiry,
  'request-for-return': requestForReturn,
  response,
  'reference-date': referenceDate,
} as const satisfies Record<EntryType, z.ZodType>;

/** The keys of an entry of a type, as its schema types them. */
export type Keys<Type extends EntryType> = z.output<(typeof ENTRY_SCHEMAS)[Type]>;

/** Path of keys and list positions into the front matter of an entry. */
export type KeyPath = readonly (string | number)[];

/** One entry: its keys, its argument, and where everything stands in its file. */
export interface Entry<Type extends EntryType = EntryType> {
  readonly id: string;
  readonly type: Type;
  readonly keys: Keys<Type>;
  readonly access: Access;
  /** The argument: the Markdown below the front matter, as a tree. */
  readonly argument: Root;
  readonly file: string;
  /** Place of a key (or, where it is missing, of the nearest key around it). */
  placeOf(path: KeyPath): Place;
  /** True for a name that stands in for a party who may not be named to this audience. */
  readonly standsIn?: boolean;
  /** For a holding that nobody wrote: the events that it is drawn from. */
  readonly drawnFrom?: readonly string[];
  /** Keys that were taken out for this audience. */
  readonly withheld?: readonly string[];
}

/** Narrows an entry to a type. */
export function isOfType<Type extends EntryType>(entry: Entry, type: Type): entry is Entry<Type> {
  return entry.type === type;
}
