import type { Diagnostic } from '../base/diagnostic.ts';
import { nearest } from '../base/nearest.ts';
import type { Place } from '../base/place.ts';
import { oneOf, phrase } from '../base/said.ts';
import { buildCatalogue, type Catalogue, titleOf } from '../model/catalogue.ts';
import { ENTRY_SCHEMAS, type Entry } from '../model/entry.ts';
import type { EntryType } from '../model/entry-type-names.ts';
import type { FieldNote } from '../model/fields.ts';
import { findNotedFields } from '../model/walk-fields.ts';
import type { TextLink } from './argument.ts';

/** Finds the references in keys and texts that lead nowhere. Ids of entries left out are not reported again. */
export function checkLinks(
  entries: readonly Entry[],
  textLinks: ReadonlyMap<string, readonly TextLink[]>,
  leftOut: readonly string[],
): readonly Diagnostic[] {
  const catalogue = buildCatalogue(entries, 'restricted', false);
  const problems: Diagnostic[] = [];
  for (const entry of entries) {
    const check = (reference: string, note: FieldNote, place: () => Place): void => {
      const found = referenceProblem(catalogue, entry, reference, note, place, leftOut);
      if (found) problems.push(found);
    };
    for (const { note, value, path } of findNotedFields(ENTRY_SCHEMAS[entry.type], entry.keys)) {
      if (note.refersTo) check(value, note, () => entry.placeOf(path));
    }
    for (const { target, place } of textLinks.get(entry.file) ?? []) {
      check(target.split('#')[0] as string, { refersTo: 'any', edge: true }, () => place);
    }
  }
  return problems;
}

function referenceProblem(
  catalogue: Catalogue,
  entry: Entry,
  reference: string,
  note: FieldNote,
  place: () => Place,
  leftOut: readonly string[],
): Diagnostic | null {
  const target = catalogue.resolve(reference);
  if (!target) {
    const id = reference.split('/')[0]?.replace(/\.(begins|ends|start|end)$/, '') ?? reference;
    if (leftOut.includes(id) || isWords(note, reference)) return null;
    return unknownId(catalogue, entry, reference, note, place());
  }
  const allowed = note.refersTo;
  if (allowed !== 'any' && allowed && !allowed.includes(target.entry.type)) {
    return wrongType(entry, reference, target.entry, allowed, place());
  }
  return target.edge && !note.edge ? edgeNotHere(entry, reference, place()) : null;
}

/** In keys that take an id or free words, only what looks like an id is one: PA-mk. */
function isWords(note: FieldNote, reference: string): boolean {
  return note.orWords === true && !/^[A-Z]{2,}-[A-Za-z0-9.-]+$/.test(reference);
}

function unknownId(catalogue: Catalogue, entry: Entry, reference: string, note: FieldNote, place: Place): Diagnostic {
  const fitting = catalogue.entries.filter((one) => note.refersTo === 'any' || note.refersTo?.includes(one.type));
  const byTitle = new Map(fitting.map((one) => [titleOf(one), one.id]));
  const near = [
    ...nearest(
      reference,
      fitting.map((one) => one.id),
    ),
    ...nearest(reference, byTitle.keys(), 1).map((title) => byTitle.get(title) as string),
  ];
  const offers = [...new Set(near)].slice(0, 3).map((id) => `${id} (${titleOf(catalogue.get(id) as Entry)})`);
  return {
    code: 'unknown-id',
    severity: 'error',
    place,
    message: phrase('there is no entry "{0}"', reference),
    mend:
      offers.length > 0
        ? phrase('did you mean {0}?', offers.join(', or '))
        : phrase('check the id, or write the entry ("kerfmark new")'),
    entry: entry.id,
  };
}

function wrongType(
  entry: Entry,
  reference: string,
  target: Entry,
  allowed: readonly EntryType[],
  place: Place,
): Diagnostic {
  return {
    code: 'wrong-target',
    severity: 'error',
    place,
    message: phrase(
      '"{0}" is of type {1}, but here stands an entry of type {2}',
      reference,
      target.type,
      oneOf(allowed),
    ),
    mend: phrase('write the id of an entry of type {0}', oneOf(allowed)),
    entry: entry.id,
    related: [{ place: target.placeOf(['id']), text: phrase('the entry referred to') }],
  };
}

function edgeNotHere(entry: Entry, reference: string, place: Place): Diagnostic {
  return {
    code: 'wrong-target',
    severity: 'error',
    place,
    message: phrase('"{0}" names one end of an entry, which has no meaning here', reference),
    mend: phrase('write the id alone'),
    entry: entry.id,
  };
}
