import { named, phrase, type Said } from '../base/said.ts';
import { parseDuration } from '../dates/duration.ts';
import type { Sense } from '../dates/sense.ts';
import type { CaseFile } from '../findings/case-file.ts';
import { sayRange } from '../findings/printed-range.ts';
import { titleOf } from '../model/catalogue.ts';
import type { LayerRelation } from '../model/layer-relations.ts';
import type { RelationName } from '../model/types/event.ts';
import type { Gap } from '../statements/relation-links.ts';
import { sayStatement } from '../statements/say-statement.ts';
import type { Saying, Subject } from '../statements/saying.ts';
import {
  dateOfValue,
  type LetterEntry,
  type LetterStatement,
  type LetterValues,
  letterEntryOf,
  letterStatementOf,
  type StatementValue,
} from './letter-values.ts';

/** Something on which a letter rests and that is otherwise now; null stands for what is not there. */
export interface LetterChange {
  /** The entry, or the statement, that it is about. */
  readonly id: string;
  readonly of: Said;
  readonly was: Said | null;
  readonly is: Said | null;
}

/**
 * What a letter rests on and that is otherwise in the file as it is now: statements, dates, what keys hold, entries that
 * are gone or new. Values are compared, never words: a reworded sentence or a new title is no change.
 *
 * @param facts the file as it is now, for the audience of the letter
 * @param rests ids of the entries that the letter would rest on now
 */
export function changesOfLetter(
  values: LetterValues,
  facts: CaseFile,
  cites: readonly string[],
  rests: readonly string[],
): readonly LetterChange[] {
  return [
    ...statementChanges(values, facts, cites),
    ...(values.entries === null ? [] : entryChanges(values.entries, facts, rests)),
  ];
}

function statementChanges(values: LetterValues, facts: CaseFile, cites: readonly string[]): readonly LetterChange[] {
  const before = new Map(values.statements.map((one) => [one.id, one]));
  const ids = [...new Set([...before.keys(), ...(values.entries === null ? [] : cites)])].sort();
  return ids.flatMap((id): readonly LetterChange[] => {
    const statement = facts.statement(id);
    const was = before.get(id) ?? null;
    const is = statement ? letterStatementOf(statement) : null;
    if (was && is && sameStatement(was, is)) return [];
    const say = (one: LetterStatement | null): Said | null => one && sayLetterStatement(facts, one);
    return [{ id, of: phrase('Statement {0}', id), was: say(was), is: say(is) }];
  });
}

/** True where a statement says what it said, on the same grade. */
export function sameStatement(was: LetterStatement, is: LetterStatement): boolean {
  return was.grade === is.grade && JSON.stringify(was.value) === JSON.stringify(is.value);
}

function entryChanges(
  before: readonly LetterEntry[],
  facts: CaseFile,
  rests: readonly string[],
): readonly LetterChange[] {
  const known = new Map(before.map((one) => [one.id, one]));
  return [...new Set([...known.keys(), ...rests])].sort().flatMap((id): readonly LetterChange[] => {
    const [was, is] = [known.get(id) ?? null, letterEntryOf(facts, id)];
    const name = (key: Said): Said => phrase('“{0}” [{1}], {2}', titleNow(facts, id), id, key);
    if (!was || !is) {
      const there = phrase('named');
      return [{ id, of: phrase('“{0}” [{1}]', titleNow(facts, id), id), was: was && there, is: is && there }];
    }
    const dates = JSON.stringify(was.dates) === JSON.stringify(is.dates) ? [] : [{ ...was, key: phrase('when') }];
    const keys = [...new Set([...Object.keys(was.keys), ...Object.keys(is.keys)])].filter(
      (key) => JSON.stringify(was.keys[key]) !== JSON.stringify(is.keys[key]),
    );
    return [
      ...dates.map(({ key }) => ({ id, of: name(key), was: sayDates(was), is: sayDates(is) })),
      // What a statement says is told above, once.
      ...keys
        .filter((key) => !TOLD_AS_STATEMENTS.has(key))
        .map((key) => ({ id, of: name(labelOf(key)), was: sayValue(was.keys[key]), is: sayValue(is.keys[key]) })),
    ];
  });
}

/** Keys that hold statements. */
const TOLD_AS_STATEMENTS = new Set([
  'stated',
  'relations',
  'lasts',
  'says',
  'begins',
  'ends',
  'held',
  'passage',
  'over',
  'cuts',
  'fills',
  'same-as',
  'left-by',
]);

function labelOf(key: string): Said {
  const words = key.replaceAll('-', ' ');
  return named(words.charAt(0).toUpperCase() + words.slice(1));
}

function sayDates({ dates }: LetterEntry): Said | null {
  return dates && sayRange(dates);
}

/** What a key held, as it would be written. */
function sayValue(value: unknown): Said | null {
  if (value === undefined) return null;
  return typeof value === 'string' ? value : JSON.stringify(value);
}

/** A statement as it was kept, under the titles of now. */
export function sayLetterStatement(facts: CaseFile, { value, grade }: LetterStatement): Said {
  return phrase('{0} ({1})', sayStatement(sayingOf(facts, value)), named(grade));
}

function titleNow({ catalogue, settings }: CaseFile, id: string): string {
  const entry = catalogue.resolve(id)?.entry;
  return entry ? titleOf(entry, settings.languages) : id;
}

/** What a kept statement says, to be said again. */
function sayingOf(facts: CaseFile, value: StatementValue): Saying {
  const subject = ({ entry, edge }: { readonly entry: string; readonly edge: Subject['edge'] }): Subject => ({
    entry,
    edge,
    title: titleNow(facts, entry),
  });
  switch (value.is) {
    case 'dated':
      return {
        is: 'dated',
        subject: subject(value.subject),
        sense: value.sense as Sense,
        date: dateOfValue(value.date),
        written: value.written,
      };
    case 'relation':
      return {
        is: 'relation',
        relation: value.relation as RelationName,
        one: subject(value.one),
        other: subject(value.other),
        gap: gapOf(value.gap),
        strict: value.strict,
      };
    case 'lasted':
      return { is: 'lasted', subject: subject(value.subject), gap: gapOf(value.gap) };
    case 'layer':
      return {
        is: 'layer',
        relation: value.relation as LayerRelation['key'],
        one: subject(value.one),
        other: subject(value.other),
      };
    case 'left by':
      return { is: 'left by', one: subject(value.one), other: subject(value.other) };
    case 'material':
      return { ...value, subject: subject(value.subject), table: '' };
    case 'handed on': {
      const named = (id: string | null): Subject | null => (id === null ? null : subject({ entry: id, edge: null }));
      const act = subject({ entry: value.act, edge: null });
      return { is: 'handed on', act, how: value.how, from: named(value.from), to: named(value.to) };
    }
    case 'life':
      return {
        is: 'life',
        subject: subject({ entry: value.party, edge: null }),
        key: value.key,
        date: dateOfValue(value.date),
      };
    case 'passed':
      return { is: 'passed', one: subject(value.one), other: subject(value.other), how: value.how };
  }
}

function gapOf({ min, max }: { readonly min: string | null; readonly max: string | null }): Gap {
  return { min: min === null ? null : parseDuration(min), max: max === null ? null : parseDuration(max) };
}
