import type * as z from 'zod';
import type { Diagnostic } from '../base/diagnostic.ts';
import { nearest } from '../base/nearest.ts';
import type { Place } from '../base/place.ts';
import { named, phrase, type Said } from '../base/said.ts';
import type { KeyPath } from '../model/entry.ts';
import { keysAt } from '../model/walk-fields.ts';
import { HARD_SPACE } from './yaml-problems.ts';

/** Where keys and values stand, as far as the wording of a schema problem needs it. */
export interface Places {
  placeOfValue(path: KeyPath): Place;
  placeOfKey(path: KeyPath): Place;
  sourceOf(path: KeyPath): string | null;
}

/** What to write for a key whose name does not say it. */
const EXAMPLES: Readonly<Record<string, { readonly value: string; readonly note: Said }>> = {
  alternative: {
    value: '...',
    note: phrase(', one sentence on what the picture shows, for readers who cannot see it'),
  },
  says: { value: '{ date: "1926" }', note: phrase(", or \"says: '{' text: ... '}'\" where it is no date") },
  about: { value: 'EV-removal', note: phrase(', the id of the entry that it speaks of') },
  file: { value: 'picture.jpg', note: phrase(', the name of the picture beside this entry') },
  table: { value: 'survey.csv', note: phrase(', the name of the table beside this entry') },
};

/** The mend for a key that is missing, or that is written without a value. */
export function mendOfMissing(key: string, isWritten: boolean, choice: Said): Said {
  const { value, note } = EXAMPLES[key] ?? { value: '...', note: choice };
  return isWritten ? phrase('write a value after "{0}:"{1}', key, note) : phrase('add "{0}: {1}"{2}', key, value, note);
}

/** Words that people write for ours. */
const SYNONYMS: Readonly<Record<string, string>> = {
  before: 'by',
  until: 'by',
  after: 'not-before',
  since: 'not-before',
  on: 'within',
  in: 'within',
  certain: 'established',
  sure: 'established',
  likely: 'probable',
};

type Issue = z.core.$ZodIssue;

/** Puts the issues of a schema into words, one diagnostic a slip. */
export function schemaProblems(
  schema: z.ZodType,
  issues: readonly Issue[],
  places: Places,
  prefix: KeyPath = [],
): readonly Diagnostic[] {
  return issues.flatMap((issue) => {
    const path = [...prefix, ...(issue.path as (string | number)[])];
    if (issue.code === 'invalid_union') {
      const branch = likeliestBranch(issue.errors);
      if (branch.length > 0) return schemaProblems(schema, branch, places, path);
    }
    if (issue.code === 'unrecognized_keys') {
      return issue.keys.map((key) => unknownKey(key, keysAt(schema, path), places.placeOfKey([...path, key])));
    }
    return [oneProblem(issue, path, places)];
  });
}

/** Of the branches of a choice, the one that came furthest into the value. */
function likeliestBranch(branches: readonly (readonly Issue[])[]): readonly Issue[] {
  const depth = (issues: readonly Issue[]) => {
    const typeSlip = issues.some((issue) => issue.path.length === 0 && issue.code === 'invalid_type');
    return (typeSlip ? -10 : 0) + Math.max(0, ...issues.map((issue) => issue.path.length)) - issues.length / 100;
  };
  return [...branches].sort((a, b) => depth(b) - depth(a))[0] ?? [];
}

function unknownKey(key: string, known: readonly string[], place: Place): Diagnostic {
  if (/^\s*\u00a0/.test(key)) return { ...HARD_SPACE, severity: 'error', place };
  const [near] = nearest(key, known, 1);
  return {
    code: 'unknown-key',
    severity: 'error',
    place,
    message: phrase('"{0}" is not a key that may stand here', key),
    mend: near ? phrase('did you mean "{0}"?', near) : phrase('the keys here are: {0}', known.join(', ')),
  };
}

function oneProblem(issue: Issue, path: KeyPath, places: Places): Diagnostic {
  const key = lastName(path);
  const place = places.placeOfValue(path);
  const error = (code: string, message: Said, mend: Said): Diagnostic => ({
    code,
    severity: 'error',
    place,
    message,
    mend,
  });
  const input = (issue as { input?: unknown }).input;
  if (
    input === undefined &&
    (issue.code === 'invalid_type' || issue.code === 'invalid_value' || issue.code === 'invalid_union')
  ) {
    const choice: Said = issue.code === 'invalid_value' ? phrase(': one of {0}', issue.values.join(', ')) : '';
    return error('missing-key', phrase('"{0}" is missing', key), mendOfMissing(key, false, choice));
  }
  if (issue.code === 'invalid_value') {
    const values = issue.values.map(String);
    // "indirect" is near to "direct" by its letters and means the opposite.
    const near =
      values.find((value) => value === SYNONYMS[String(input)]) ??
      nearest(String(input), values, 1).find((value) => !String(input).endsWith(value));
    const all: Said = phrase('the words here are: {0}', values.join(', '));
    return error(
      'unknown-word',
      phrase('"{0}" is not one of the words for "{1}"', String(input), key),
      near ? phrase('did you mean "{0}"? {1}', near, all) : all,
    );
  }
  if (issue.code === 'invalid_type') return wrongType(issue, input, key, path, places, error);
  if (issue.code === 'too_small')
    return error(
      'empty-value',
      phrase('"{0}" is empty or too short', key),
      phrase('write a value, or delete the line'),
    );
  if (issue.code === 'invalid_format') {
    return error(
      'bad-shape',
      phrase('"{0}" does not have the shape of "{1}"', String(input), key),
      shapeMend(key, String(input)),
    );
  }
  return error(
    'bad-value',
    phrase('"{0}" cannot be read: {1}', key, issue.message),
    phrase('compare with docs/format.md'),
  );
}

function wrongType(
  issue: Issue & { code: 'invalid_type' },
  input: unknown,
  key: string,
  path: KeyPath,
  places: Places,
  error: (code: string, message: Said, mend: Said) => Diagnostic,
): Diagnostic {
  const source = places.sourceOf(path)?.trim();
  const wantsText = issue.expected === 'string' || issue.expected === 'record';
  if (wantsText && Array.isArray(input)) {
    return error(
      'quote-it',
      phrase('{0} is read as a list, but "{1}" is text', source ?? phrase('the value'), key),
      phrase('put it in quotation marks: {0}: "{1}"', key, source ?? '...'),
    );
  }
  if (wantsText && typeof input === 'object') {
    return error(
      'quote-it',
      phrase('{0} is read as a map of keys, but "{1}" is text', source ?? phrase('the value'), key),
      phrase('put it in quotation marks: {0}: "{1}"', key, source ?? '...'),
    );
  }
  if (wantsText && typeof input === 'boolean') {
    return error(
      'quote-it',
      phrase('{0} is read as yes-or-no, but "{1}" is text', source ?? String(input), key),
      phrase('put it in quotation marks: {0}: "{1}"', key, source ?? String(input)),
    );
  }
  if (issue.expected === 'number') {
    return error(
      'not-a-number',
      phrase('"{0}" is not a number', String(input)),
      phrase('write "{0}" in digits only, without a unit', key),
    );
  }
  if (issue.expected === 'array') {
    return error(
      'wants-list',
      phrase('"{0}" wants a list, but holds a single value', key),
      phrase(
        "write each item on a line of its own below \"{0}:\", set in by two spaces and beginning with a hyphen: - '{' ... '}'",
        key,
      ),
    );
  }
  if (issue.expected === 'object') {
    return error(
      'wants-keys',
      phrase('"{0}" wants keys of its own, not a single value', key),
      phrase("write for example {0}: '{' ... '}'; docs/format.md shows its keys", key),
    );
  }
  return error(
    'wrong-type',
    phrase('"{0}" wants {1}, but holds {2}', key, named(issue.expected ?? ''), source ?? typeof input),
    phrase('compare with docs/format.md'),
  );
}

function lastName(path: KeyPath): string {
  const names = path.filter((part) => typeof part === 'string');
  return names.at(-1) ?? 'the entry';
}

function shapeMend(key: string, input: string): Said {
  if (key === 'table')
    return phrase('the name of a CSV file beside this entry: panel-A.csv; a spreadsheet can save its table as CSV');
  if (/[,;]/.test(input) && key !== 'id')
    return phrase(
      'several ids stand in square brackets, with commas: {0}: [{1}]',
      key,
      input.split(/[,;]\s*/).join(', '),
    );
  if (key === 'id') return phrase('letters (a-z), digits, - and . only, no spaces: EV-removal, PE-joint-2');
  if (key === 'base-url' || key === 'url') return phrase('write the whole address, beginning with https://');
  if (/size|thickness|weight|value/.test(key))
    return phrase('a number with its unit, as written: "91.5 cm", "36 x 24 in", "18 mm"');
  return /[\s&]/.test(input)
    ? phrase('an id of an entry, not a name: write an entry for it first (kerfmark new), then its id here')
    : phrase('an id: letters, digits, - and . only');
}
