import * as z from 'zod';
import { ACCESS } from '../base/access.ts';
import { GRADES } from '../base/grade.ts';
import { CALENDARS } from '../dates/calendars/calendar.ts';
import { SENSES } from '../dates/sense.ts';
import type { EntryType } from './entry-type-names.ts';

/** What a field holds beyond its shape; read by the checks, never printed into JSON Schema. */
export interface FieldNote {
  /** Ids of entries; the types that may stand here, or `any`. */
  readonly refersTo?: readonly EntryType[] | 'any';
  /** May carry an edge: `HO-3.begins`. */
  readonly edge?: boolean;
  /** Free words may stand here too; only what looks like an id is followed. */
  readonly orWords?: boolean;
  readonly holds?: 'date' | 'duration' | 'number' | 'text';
}

/** Notes on fields, kept beside the schemas. */
export const fieldNotes = z.registry<FieldNote>();

/** An id: letters, digits, `-` and `.`; panels and sections as `OB-east/A.7`. */
export const ID_SHAPE = /^[A-Za-z0-9](?:[A-Za-z0-9.-]*[A-Za-z0-9])?$/;

const REF_SHAPE = /^[A-Za-z0-9][A-Za-z0-9.-]*(?:\/[A-Za-z0-9][A-Za-z0-9.-]*)?$/;

/** Text that is not empty. */
export const text = (): z.ZodString => z.string().min(1).register(fieldNotes, { holds: 'text' });

/** Text, or one text a language: `{ en: ..., el: ... }`. */
export const localText = () => z.union([text(), z.record(z.string().regex(/^[a-z]{2,3}(-[A-Za-z0-9]+)*$/), text())]);

/** A number written as YAML writes numbers, in a range. */
export const number = (least = Number.NEGATIVE_INFINITY, most = Number.POSITIVE_INFINITY) =>
  z.preprocess(
    (value) => (typeof value === 'string' && /^[+-]?(\d+\.?\d*|\.\d+)$/.test(value) ? Number(value) : value),
    bounded(least, most),
  );

function bounded(least: number, most: number): z.ZodNumber {
  const above = Number.isFinite(least) ? z.number().min(least) : z.number();
  return Number.isFinite(most) ? above.max(most) : above;
}

/** An EDTF date, as text; which day range it covers is computed later. */
export const date = () => z.string().min(1).register(fieldNotes, { holds: 'date' });

/** An ISO 8601 length: P6M. */
export const duration = () => z.string().min(1).register(fieldNotes, { holds: 'duration' });

/** The id of an entry of one of the types. */
export const ref = (...types: readonly EntryType[]) =>
  z
    .string()
    .regex(REF_SHAPE)
    .register(fieldNotes, { refersTo: types.length === 0 ? 'any' : types });

/** The id of an entry, or free words (a name that has no entry of its own). */
export const refOrWords = (...types: readonly EntryType[]) =>
  z.string().min(1).register(fieldNotes, { refersTo: types, orWords: true });

/** The id of an entry whose moment is meant, or of a holding's edge (`HO-3.begins`). */
export const momentRef = (...types: readonly EntryType[]) =>
  z
    .string()
    .regex(REF_SHAPE)
    .register(fieldNotes, {
      refersTo: types.length === 0 ? 'any' : types,
      edge: true,
    });

/** A list; a single value counts as a list of one. */
export const list = <Item extends z.ZodType>(item: Item) =>
  z.preprocess((value) => (Array.isArray(value) || value === undefined ? value : [value]), z.array(item));

export const grade = () => z.enum(GRADES);
export const access = () => z.enum(ACCESS);
export const calendar = () => z.enum(CALENDARS);

export const BASES = ['first-hand', 'reported', 'inferred', 'comparison', 'handed down', 'unknown'] as const;

/** The name of an inline statement: letters, digits, hyphens and dots. */
export const statementName = () => z.string().regex(ID_SHAPE);

/** A dated statement written inside an event or a holding. */
export const statedDate = () =>
  z.strictObject({
    ref: statementName().optional().describe('a name of its own; the statement is then ENTRY#ref'),
    date: date().describe('EDTF, in quotation marks'),
    sense: z.enum(SENSES).optional().describe('what the date means; within where nothing is said'),
    calendar: calendar().optional().describe('the calendar of the date; gregorian where nothing is said'),
    'as-written': text().optional().describe('the words of the document'),
    source: ref('source', 'evidence', 'figure').optional(),
    locator: text().optional().describe('page, folio, number'),
    quote: localText().optional(),
    grade: grade().describe('how sure, set by a person'),
    why: text().optional().describe('the reason for the grade'),
    by: ref('party').optional().describe('who judged so'),
  });

/** A length with bounds: how long something lasted, or how far two events lay apart. */
export const span = () =>
  z.strictObject({
    min: duration().optional(),
    max: duration().optional(),
    grade: grade().optional(),
    why: text().optional(),
  });

/** Least and greatest distance between two events. */
export const gap = () => z.strictObject({ min: duration().optional(), max: duration().optional() });

/** A name with its language, its users and its years. */
export const name = () =>
  z.strictObject({
    text: text(),
    language: text().optional(),
    script: text().optional(),
    romanised: text().optional(),
    'used-by': text().optional(),
    from: date().optional(),
    to: date().optional(),
    standing: z.enum(['in local use', 'official', 'colonial', 'trade name', 'disputed']).optional(),
  });

/** A measurement as written, with its unit: `91.5 cm`, `36 in`. */
export const measure = () =>
  z.string().regex(/^(about |c\. ?)?\d+([.,]\d+)?( ?(?:[x×]|-|–|to) ?\d+([.,]\d+)?)* ?(mm|cm|m|in|ft|kg|lb|g)\b.*$/);

/** The keys that every entry has. */
export const commonKeys = {
  id: z.string().regex(ID_SHAPE).describe('unique, kept for ever: letters, digits, - and .'),
  title: localText().describe('what it is, in a few words'),
  access: access().optional().describe('who may see it; the workspace says what holds where nothing is written'),
  withhold: list(text()).optional().describe('keys of this entry kept from every audience below restricted'),
  by: refOrWords('party').optional().describe('who recorded it'),
  recorded: date().optional().describe('when it was recorded'),
  see: list(ref()).optional().describe('other entries worth reading'),
  'may-be-named': z
    .strictObject({ ground: text() })
    .optional()
    .describe('why a living person or a restricted figure may be shown all the same'),
};
