import { oncePerName } from '../base/once.ts';
import { capital, inRow, named, phrase, type Said } from '../base/said.ts';
import { type Catalogue, titleOf } from '../model/catalogue.ts';
import { type Entry, isOfType } from '../model/entry.ts';
import type { FileStatement } from '../statements/statements.ts';

/** The sources to which a source goes back. */
export interface Roots {
  /** Sources that copy nothing known of. */
  readonly known: ReadonlySet<string>;
  /** Sources whose own parentage is not known. */
  readonly unknown: ReadonlySet<string>;
}

/** Sources that a source was copied from, all the way up; the source itself where it goes in a circle. */
export function ancestorsOf(catalogue: Catalogue, source: string): ReadonlySet<string> {
  const found = new Set<string>();
  const queue = [...parentsOf(catalogue, source)];
  for (let id = queue.shift(); id !== undefined; id = queue.shift()) {
    if (found.has(id)) continue;
    found.add(id);
    queue.push(...parentsOf(catalogue, id));
  }
  return found;
}

/** Sources that were copied from a source, straight or through others, in natural order of their ids. */
export function copiesOf(catalogue: Catalogue, source: string): readonly Entry<'source'>[] {
  const found = new Set<string>();
  const queue = [source];
  for (let id = queue.shift(); id !== undefined; id = queue.shift()) {
    for (const { from, via } of catalogue.linksTo(id)) {
      if (via !== 'derives-from' || found.has(from)) continue;
      found.add(from);
      queue.push(from);
    }
  }
  return catalogue.ofType('source').filter((one) => found.has(one.id));
}

function parentsOf(catalogue: Catalogue, source: string): readonly string[] {
  const entry = catalogue.get(source);
  const from = entry && isOfType(entry, 'source') ? entry.keys['derives-from'] : undefined;
  return from === undefined || from === 'unknown' ? [] : from.filter((id) => catalogue.get(id) !== undefined);
}

/** The sources at the top of all lines of copying that lead to a source; itself where it copies none. */
export function rootsOf(catalogue: Catalogue, source: string): Roots {
  const known = new Set<string>();
  const unknown = new Set<string>();
  for (const id of new Set([source, ...ancestorsOf(catalogue, source)])) {
    const entry = catalogue.get(id);
    // Where some parent is not shown to this audience, the source may be a root of another line too.
    if (entry?.withheld?.includes('derives-from')) unknown.add(id);
    if (parentsOf(catalogue, id).length > 0 || unknown.has(id)) continue;
    const from = entry && isOfType(entry, 'source') ? entry.keys['derives-from'] : undefined;
    (from === undefined ? known : unknown).add(id);
  }
  return { known, unknown };
}

/** On how many independent roots some statements stand. */
export interface RootCount {
  /** Statements that name a source, and how many roots these have: a range where parentage is unknown. */
  readonly sourced: number;
  readonly least: number;
  readonly most: number;
  readonly roots: readonly string[];
  /** Statements of traces: seen on the object. */
  readonly seen: number;
  /** Statements that name no source. */
  readonly unsourced: number;
}

/**
 * Counts root sources, not statements: five catalogues that repeat one invoice are one root. A
 * source of unknown parentage may go back to one of the others, or be a root of its own.
 */
export function countRoots(catalogue: Catalogue, statements: readonly FileStatement[]): RootCount {
  const sources = new Set(statements.flatMap((one) => (one.source === null ? [] : [one.source])));
  const all = [...sources].map((source) => rootsOf(catalogue, source));
  const known = new Set(all.flatMap((one) => [...one.known]));
  const unknown = new Set(all.flatMap((one) => [...one.unknown]));
  const plain = statements.filter((one) => one.source === null);
  const seen = plain.filter((one) => catalogue.get(one.entry)?.type === 'evidence').length;
  return {
    sourced: statements.length - plain.length,
    least: sources.size === 0 ? 0 : Math.max(1, known.size),
    most: known.size + unknown.size,
    roots: [...known, ...unknown],
    seen,
    unsourced: plain.length - seen,
  };
}

/** A small number as a word, `one` to `ten`; figures above. */
function sayNumber(count: number): Said {
  return count >= 1 && count <= NUMBERS.length ? named(NUMBERS[count - 1] as string) : String(count);
}

const NUMBERS = ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

/** `Five sourced statements, one independent origin; two seen on the object; one that names no source`. */
export function sayRootCount(count: RootCount): Said {
  return capital(tellRootCount(count));
}

/** The same within a sentence. */
export function tellRootCount({ sourced, least, most, seen, unsourced }: RootCount): Said {
  const statements = (count: number): Said =>
    phrase('{0, plural, one {{1} statement} other {{1} statements}}', count, sayNumber(count));
  const range = least === most ? sayNumber(most) : phrase('{0} to {1}', sayNumber(least), sayNumber(most));
  const roots = phrase('{0, plural, one {{1} independent origin} other {{1} independent origins}}', most, range);
  const plain = sourced + seen > 0 ? sayNumber(unsourced) : statements(unsourced);
  const parts = [
    ...(sourced > 0
      ? [
          phrase(
            '{0, plural, one {{1} sourced statement, {2}} other {{1} sourced statements, {2}}}',
            sourced,
            sayNumber(sourced),
            roots,
          ),
        ]
      : []),
    ...(seen > 0 ? [phrase('{0} seen on the object', sayNumber(seen))] : []),
    ...(unsourced > 0
      ? [phrase('{0, plural, one {{1} that names no source} other {{1} that name no source}}', unsourced, plain)]
      : []),
  ];
  return inRow(parts, '; ');
}

/**
 * Statements that fall if a source falls: those that name it, and those whose sources were copied from it
 * and from nothing else, straight or through others.
 */
export function restingOnAlone(
  catalogue: Catalogue,
  statements: readonly FileStatement[],
  source: string,
): readonly FileStatement[] {
  const falls = (id: string, seen: ReadonlySet<string>): boolean => {
    if (id === source) return true;
    const parents = parentsOf(catalogue, id).filter((parent) => !seen.has(parent));
    return parents.length > 0 && parents.every((parent) => falls(parent, new Set([...seen, id])));
  };
  const fallsWithIt = oncePerName((id: string) => falls(id, new Set()));
  return statements.filter((one) => one.source !== null && fallsWithIt(one.source));
}

/** Roots shared by two groups of statements; `unsure` where parentage that is not known leaves it open. */
export function sharedRoots(
  catalogue: Catalogue,
  one: readonly FileStatement[],
  other: readonly FileStatement[],
): { readonly shared: readonly string[]; readonly unsure: boolean } {
  const rootsOfAll = (statements: readonly FileStatement[]): { all: Set<string>; unknown: boolean } => {
    const roots = statements.flatMap((s) => (s.source === null ? [] : [rootsOf(catalogue, s.source)]));
    return {
      all: new Set(roots.flatMap((r) => [...r.known, ...r.unknown])),
      unknown: roots.some((r) => r.unknown.size > 0),
    };
  };
  const [a, b] = [rootsOfAll(one), rootsOfAll(other)];
  const shared = [...a.all].filter((root) => b.all.has(root));
  const both = a.all.size > 0 && b.all.size > 0;
  return { shared, unsure: shared.length === 0 && both && (a.unknown || b.unknown) };
}

/** Titles of sources, for a sentence. */
export function sayTitles(catalogue: Catalogue, ids: readonly string[], languages: readonly string[]): Said {
  return inRow(
    ids.map((id) => {
      const entry = catalogue.get(id);
      return entry ? phrase('“{0}”', titleOf(entry, languages)) : id;
    }),
    ', ',
  );
}
