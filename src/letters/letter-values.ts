import * as z from 'zod';
import { ACCESS, type Access } from '../base/access.ts';
import { GRADES, rankOf } from '../base/grade.ts';
import { CALENDARS } from '../dates/calendars/calendar.ts';
import type { DayRange } from '../dates/day.ts';
import type { DateExpression } from '../dates/expression.ts';
import type { CaseFile } from '../findings/case-file.ts';
import { fromTo, type PrintedRange } from '../findings/printed-range.ts';
import type { Entry } from '../model/entry.ts';
import type { Gap } from '../statements/relation-links.ts';
import type { Saying, Subject } from '../statements/saying.ts';
import type { FileStatement } from '../statements/statements.ts';

/** Days from a first to a last; null where nothing bounds it. */
const stretch = z.tuple([z.number().nullable(), z.number().nullable()]);

const precision = z.enum(['day', 'month', 'year']);

/** A date as days, and what a printed date says of itself besides. */
const dateValue = z.strictObject({
  is: z.enum(['one', 'lasted', 'each']),
  days: z.array(stretch),
  precision,
  about: z.boolean(),
  calendar: z.enum(CALENDARS),
  /** The date in that calendar; empty in the Gregorian one, where the days say it. */
  original: z.string(),
  sunset: z.boolean(),
});

const subject = z.strictObject({ entry: z.string(), edge: z.enum(['begins', 'ends', 'delivery']).nullable() });

const gap = z.strictObject({ min: z.string().nullable(), max: z.string().nullable() });

/** What a statement says, without any title: entries are named by their ids. */
const statementValue = z.discriminatedUnion('is', [
  z.strictObject({
    is: z.literal('dated'),
    subject,
    sense: z.string(),
    date: dateValue,
    written: z.string().nullable(),
  }),
  z.strictObject({
    is: z.literal('relation'),
    relation: z.string(),
    one: subject,
    other: subject,
    gap,
    strict: z.boolean(),
  }),
  z.strictObject({ is: z.literal('lasted'), subject, gap }),
  z.strictObject({
    is: z.literal('handed on'),
    act: z.string(),
    how: z.enum(['handed on', 'at death', 'for a time', 'taken back', 'brought back', 'returned']),
    from: z.string().nullable(),
    to: z.string().nullable(),
  }),
  z.strictObject({
    is: z.literal('life'),
    party: z.string(),
    key: z.enum(['born', 'died', 'founded', 'closed']),
    date: dateValue,
  }),
  z.strictObject({ is: z.literal('layer'), relation: z.string(), one: subject, other: subject }),
  z.strictObject({ is: z.literal('left by'), one: subject, other: subject }),
  z.strictObject({
    is: z.literal('material'),
    subject,
    material: z.string(),
    year: z.enum(['first known', 'in trade']),
    from: z.number(),
  }),
  z.strictObject({
    is: z.literal('passed'),
    one: subject,
    other: subject,
    how: z.enum(['direct', 'not direct', 'unknown']),
  }),
]);

const bound = z.strictObject({ day: z.number(), precision, about: z.boolean() });

const letterValues = z.strictObject({
  format: z.literal('kerfmark-letter/1'),
  /** The version of the program that wrote the letter, or that read its values out of it. */
  program: z.string(),
  audience: z.enum(ACCESS),
  /** The grade on which the dates of the letter stand. */
  grade: z.enum(GRADES),
  statements: z.array(
    z.strictObject({ id: z.string(), kind: z.string(), grade: z.enum(GRADES), value: statementValue }),
  ),
  /** Entries that the letter rests on: their dates on statements of that grade, and what their keys held. */
  entries: z
    .array(
      z.strictObject({
        id: z.string(),
        dates: z.strictObject({ earliest: bound.nullable(), latest: bound.nullable() }).nullable(),
        keys: z.record(z.string(), z.json()),
      }),
    )
    .nullable(),
});

/** The values of a statement: ids, days and numbers. */
export type StatementValue = z.infer<typeof statementValue>;

/** What a letter rests on, as data: rewording, translating or renaming changes nothing in it. */
export type LetterValues = z.infer<typeof letterValues>;

/** A statement on which a letter rests. */
export type LetterStatement = LetterValues['statements'][number];

/** An entry on which a letter rests. */
export type LetterEntry = NonNullable<LetterValues['entries']>[number];

/** Reads the values of a letter; null where the text does not hold any. */
export function readLetterValues(text: string): LetterValues | null {
  try {
    return letterValues.parse(JSON.parse(text));
  } catch {
    return null;
  }
}

/** Writes the values of a letter; the same values give the same bytes. */
export function formatLetterValues(values: LetterValues): string {
  return `${JSON.stringify(values, null, 1)}\n`;
}

/**
 * The values that a document rests on.
 *
 * @param facts the file for the audience that the document was composed for
 * @param cites ids of the statements that it cites
 * @param rests ids of the entries that it rests on; null where that is not known
 */
export function letterValuesOf(
  facts: CaseFile,
  cites: readonly string[],
  rests: readonly string[] | null,
  program: string,
): LetterValues {
  const ids = rests === null ? null : [...new Set(rests)].sort();
  return {
    format: 'kerfmark-letter/1',
    program,
    audience: facts.catalogue.audience as Access,
    grade: facts.settings.printedGrade,
    statements: [...new Set(cites)].sort().flatMap((id) => {
      const statement = facts.statement(id);
      return statement ? [letterStatementOf(statement)] : [];
    }),
    entries: ids === null ? null : ids.flatMap((id) => letterEntryOf(facts, id) ?? []),
  };
}

/** A statement as a letter keeps it. */
export function letterStatementOf({ id, kind, grade, says }: FileStatement): LetterStatement {
  return { id, kind, grade, value: statementValueOf(says) };
}

/** Keys that say where an entry stands and who may see it, and its title: renaming changes no letter. */
const NOT_KEPT = new Set(['id', 'type', 'title', 'access', 'withhold', 'see', 'recorded']);

/** An entry as a letter keeps it; null where the audience does not see it. */
export function letterEntryOf(facts: CaseFile, id: string): LetterEntry | null {
  const entry = facts.catalogue.get(id);
  if (!entry) return null;
  const keys = Object.fromEntries(
    Object.entries(entry.keys as Readonly<Record<string, unknown>>).filter(
      ([key, value]) => !NOT_KEPT.has(key) && value !== undefined,
    ),
  );
  return { id, dates: datesOf(facts, entry), keys: JSON.parse(JSON.stringify(keys)) as LetterEntry['keys'] };
}

function datesOf(facts: CaseFile, entry: Entry): LetterEntry['dates'] {
  const moments = facts.statements.moments.ofEntry(entry.id);
  const [first, last] = [moments[0], moments.at(-1)];
  if (!first || !last) return null;
  const rank = rankOf(facts.settings.printedGrade);
  const { earliest, latest } = fromTo(facts.rangesOf(first)[rank], facts.rangesOf(last)[rank]);
  return { earliest: boundOf(earliest), latest: boundOf(latest) };
}

function boundOf(one: PrintedRange['earliest']): NonNullable<LetterEntry['dates']>['earliest'] {
  return one && { day: one.day, precision: one.precision, about: one.about };
}

/** What a statement says as plain values. */
function statementValueOf(says: Saying): StatementValue {
  switch (says.is) {
    case 'dated': {
      const { sense, date, written } = says;
      return { is: 'dated', subject: namedBy(says.subject), sense, date: dateValueOf(date), written };
    }
    case 'relation': {
      const { relation, strict } = says;
      return {
        is: 'relation',
        relation,
        one: namedBy(says.one),
        other: namedBy(says.other),
        gap: gapValueOf(says.gap),
        strict,
      };
    }
    case 'lasted':
      return { is: 'lasted', subject: namedBy(says.subject), gap: gapValueOf(says.gap) };
    case 'layer':
      return { is: 'layer', relation: says.relation, one: namedBy(says.one), other: namedBy(says.other) };
    case 'left by':
      return { is: 'left by', one: namedBy(says.one), other: namedBy(says.other) };
    case 'material':
      return {
        is: 'material',
        subject: namedBy(says.subject),
        material: says.material,
        year: says.year,
        from: says.from,
      };
    case 'handed on': {
      const { act, how, from, to } = says;
      return { is: 'handed on', act: act.entry, how, from: from?.entry ?? null, to: to?.entry ?? null };
    }
    case 'life':
      return { is: 'life', party: says.subject.entry, key: says.key, date: dateValueOf(says.date) };
    case 'passed':
      return { is: 'passed', one: namedBy(says.one), other: namedBy(says.other), how: says.how };
  }
}

function namedBy({ entry, edge }: Subject): { readonly entry: string; readonly edge: Subject['edge'] } {
  return { entry, edge };
}

function gapValueOf({ min, max }: Gap): { readonly min: string | null; readonly max: string | null } {
  return { min: min?.text ?? null, max: max?.text ?? null };
}

function dateValueOf(date: DateExpression): Extract<StatementValue, { is: 'dated' }>['date'] {
  const { shape, precision, approximate, calendar, text, sunset } = date;
  const days = shape.kind === 'lasted' ? [shape.a, shape.b] : shape.members;
  return {
    is: shape.kind,
    days: days.map(({ first, last }) => [finite(first), finite(last)]),
    precision,
    about: approximate,
    calendar,
    original: calendar === 'gregorian' ? '' : text,
    sunset,
  };
}

function finite(day: number): number | null {
  return Number.isFinite(day) ? day : null;
}

/** A date expression out of its value, to be said again. */
export function dateOfValue(value: Extract<StatementValue, { is: 'dated' }>['date']): DateExpression {
  const members = value.days.map(
    ([first, last]): DayRange => ({
      first: first ?? Number.NEGATIVE_INFINITY,
      last: last ?? Number.POSITIVE_INFINITY,
    }),
  );
  const [a, b] = members;
  return {
    text: value.original,
    calendar: value.calendar,
    shape:
      value.is === 'lasted' && a && b
        ? { kind: 'lasted', a, b }
        : { kind: value.is === 'each' ? 'each' : 'one', members },
    precision: value.precision,
    approximate: value.about,
    uncertain: false,
    sunset: value.sunset,
    warnings: [],
  };
}
