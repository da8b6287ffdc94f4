import type * as z from 'zod';
import type { Diagnostic } from '../base/diagnostic.ts';
import { nearest } from '../base/nearest.ts';
import type { Place } from '../base/place.ts';
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
const EXAMPLES: Readonly<Record<string, string>> = {
  alternative: '"alternative: ...", one sentence on what the picture shows, for readers who cannot see it',
  says: '"says: { date: "1926" }", or "says: { text: ... }" where it is no date',
  about: '"about: EV-removal", the id of the entry that it speaks of',
  file: '"file: picture.jpg", the name of the picture beside this entry',
  table: '"table: survey.csv", the name of the table beside this entry',
};

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
    message: `"${key}" is not a key that may stand here`,
    mend: near ? `did you mean "${near}"?` : `the keys here are: ${known.join(', ')}`,
  };
}

function oneProblem(issue: Issue, path: KeyPath, places: Places): Diagnostic {
  const key = lastName(path);
  const place = places.placeOfValue(path);
  const error = (code: string, message: string, mend: string): Diagnostic => ({
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
    const choice = issue.code === 'invalid_value' ? `: one of ${issue.values.join(', ')}` : '';
    return error('missing-key', `"${key}" is missing`, `add ${EXAMPLES[key] ?? `"${key}: ..."`}${choice}`);
  }
  if (issue.code === 'invalid_value') {
    const values = issue.values.map(String);
    // "indirect" is near to "direct" by its letters and means the opposite.
    const near =
      values.find((value) => value === SYNONYMS[String(input)]) ??
      nearest(String(input), values, 1).find((value) => !String(input).endsWith(value));
    const all = `the words here are: ${values.join(', ')}`;
    return error(
      'unknown-word',
      `"${String(input)}" is not one of the words for "${key}"`,
      near ? `did you mean "${near}"? ${all}` : all,
    );
  }
  if (issue.code === 'invalid_type') return wrongType(issue, input, key, path, places, error);
  if (issue.code === 'too_small')
    return error('empty-value', `"${key}" is empty or too short`, 'write a value, or delete the line');
  if (issue.code === 'invalid_format') {
    return error('bad-shape', `"${String(input)}" does not have the shape of "${key}"`, shapeMend(key, String(input)));
  }
  return error('bad-value', `"${key}" cannot be read: ${issue.message}`, 'compare with docs/format.md');
}

function wrongType(
  issue: Issue & { code: 'invalid_type' },
  input: unknown,
  key: string,
  path: KeyPath,
  places: Places,
  error: (code: string, message: string, mend: string) => Diagnostic,
): Diagnostic {
  const source = places.sourceOf(path)?.trim();
  const wantsText = issue.expected === 'string' || issue.expected === 'record';
  if (wantsText && Array.isArray(input)) {
    return error(
      'quote-it',
      `${source ?? 'the value'} is read as a list, but "${key}" is text`,
      `put it in quotation marks: ${key}: "${source ?? '...'}"`,
    );
  }
  if (wantsText && typeof input === 'object') {
    return error(
      'quote-it',
      `${source ?? 'the value'} is read as a map of keys, but "${key}" is text`,
      `put it in quotation marks: ${key}: "${source ?? '...'}"`,
    );
  }
  if (wantsText && typeof input === 'boolean') {
    return error(
      'quote-it',
      `${source ?? String(input)} is read as yes-or-no, but "${key}" is text`,
      `put it in quotation marks: ${key}: "${source ?? String(input)}"`,
    );
  }
  if (issue.expected === 'number') {
    return error('not-a-number', `"${String(input)}" is not a number`, `write "${key}" in digits only, without a unit`);
  }
  if (issue.expected === 'array') {
    return error(
      'wants-list',
      `"${key}" wants a list, but holds a single value`,
      `write each item on a line of its own below "${key}:", set in by two spaces and beginning with a hyphen: - { ... }`,
    );
  }
  if (issue.expected === 'object') {
    return error(
      'wants-keys',
      `"${key}" wants keys of its own, not a single value`,
      `write for example ${key}: { ... }; docs/format.md shows its keys`,
    );
  }
  return error(
    'wrong-type',
    `"${key}" wants ${issue.expected}, but holds ${source ?? typeof input}`,
    'compare with docs/format.md',
  );
}

function lastName(path: KeyPath): string {
  const names = path.filter((part) => typeof part === 'string');
  return names.at(-1) ?? 'the entry';
}

function shapeMend(key: string, input: string): string {
  if (key === 'table')
    return 'the name of a CSV file beside this entry: panel-A.csv; a spreadsheet can save its table as CSV';
  if (/[,;]/.test(input) && key !== 'id')
    return `several ids stand in square brackets, with commas: ${key}: [${input.split(/[,;]\s*/).join(', ')}]`;
  if (key === 'id') return 'letters (a-z), digits, - and . only, no spaces: EV-removal, PE-joint-2';
  if (key === 'base-url' || key === 'url') return 'write the whole address, beginning with https://';
  if (/size|thickness|weight|value/.test(key))
    return 'a number with its unit, as written: "91.5 cm", "36 x 24 in", "18 mm"';
  return /[\s&]/.test(input)
    ? `an id of an entry, not a name: write an entry for it first (kerfmark new), then its id here`
    : 'an id: letters, digits, - and . only';
}
