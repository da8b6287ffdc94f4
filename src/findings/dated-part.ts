import { lazily, oncePerName } from '../base/once.ts';
import { type Chronology, computeChronology, type Network, type Trial } from '../chronology/chronology.ts';
import { type LocalTrial, openTrials } from '../chronology/trials.ts';
import { type WorthFinder, weighStatements } from '../chronology/worth.ts';
import type { Catalogue } from '../model/catalogue.ts';
import type { Entry } from '../model/entry.ts';
import { settingsOf } from '../model/settings.ts';
import { type FileStatement, type FileStatements, findStatements, type Moment } from '../statements/statements.ts';
import { type MomentRange, rangesOfMoment } from './printed-range.ts';

/** A contradiction in terms of the file. */
export interface FileContradiction {
  readonly number: number;
  readonly grade: FileStatement['grade'];
  readonly kind: 'dates' | 'order';
  readonly cluster: number;
  readonly complete: boolean;
  readonly statements: readonly FileStatement[];
  readonly waysOut: readonly (readonly FileStatement[])[];
  readonly moments: readonly Moment[];
}

/** What is computed of times: of the keys of the entries alone, whatever their texts say. */
export interface DatedPart {
  readonly statements: FileStatements;
  readonly chronology: Chronology;
  readonly contradictions: readonly FileContradiction[];
  rangesOf(moment: Moment): readonly MomentRange[];
  /** What each statement is worth, by its place among those used. */
  readonly worth: WorthFinder;
  /** The chronology of the file with statements withdrawn or taken at another grade. */
  trial(trial: Trial): LocalTrial;
  /** True where what is tied to a statement is small and settled enough to try everything in it. */
  isSmall(statement: number): boolean;
  /** Statements about an entry: written in it, claims about it, acts and life dates that bind it. */
  statementsAbout(entry: string): readonly FileStatement[];
  statement(id: string): FileStatement | null;
  /** The place of a statement among those used; -1 where it takes no part. */
  placeOf(statement: FileStatement): number;
}

/** Statements tied together up to which pages tell what each date would be without each of them. */
export const MOST_IN_DETAIL = 400;

/** A computation, and the catalogues that it was made from. */
export interface DatedBefore {
  readonly whole: Catalogue;
  readonly shown: Catalogue;
  readonly dated: DatedPart;
}

/**
 * Computes statements, ranges and contradictions of what an audience sees. In a preview most edits are of texts: where no
 * key of any entry changed since the last computation, nor the place of one, that is the result.
 * @param last the last computation for each audience and language so far; this one is put there
 * @param sibling the same file for the same audience with another language first: what is solved of it holds here too
 */
export function datedPart(
  whole: Catalogue,
  shown: Catalogue,
  withdrawn: readonly string[],
  last: Map<string, DatedBefore>,
  sibling: DatedPart | null = null,
): DatedPart {
  if (withdrawn.length > 0) return computeDated(whole, shown, withdrawn, sibling);
  const name = `${shown.audience} ${settingsOf(whole.workspace).languages.join(' ')}`;
  const before = last.get(name);
  if (before && sameKeys(before.whole, whole, sameRow) && sameKeys(before.shown, shown, sameCut)) return before.dated;
  const dated = computeDated(whole, shown, withdrawn, sibling);
  last.set(name, { whole, shown, dated });
  return dated;
}

/** True where two catalogues hold the same entries with the same keys, told of in the same places. */
function sameKeys(a: Catalogue, b: Catalogue, isSame: (one: Entry, other: Entry) => boolean): boolean {
  return (
    a.entries.length === b.entries.length &&
    a.entries.every((one, i) => {
      const other = b.entries[i] as Entry;
      return one.keys === other.keys || (one.id === other.id && isSame(one, other));
    })
  );
}

/** Keys of a file stay one object until something above its text changes; rows of a table are read, and holdings of acts drawn, anew. */
function sameRow(a: Entry, b: Entry): boolean {
  const told = ({ file, keys, placeOf }: Entry): string =>
    JSON.stringify([file, keys, Object.keys(keys).map((key) => placeOf([key]))]);
  return (a.file.endsWith('.csv') || a.drawnFrom !== undefined) && told(a) === told(b);
}

/** What an audience sees of entries that are the same in the whole file. */
function sameCut(a: Entry, b: Entry): boolean {
  return JSON.stringify(a.keys) === JSON.stringify(b.keys);
}

/** Statements at once; all that is solved from them when somebody asks. */
function computeDated(
  whole: Catalogue,
  shown: Catalogue,
  withdrawn: readonly string[],
  sibling: DatedPart | null,
): DatedPart {
  const statements = findStatements(whole, shown);
  const { used } = statements;
  const out = new Set(used.flatMap((one, i) => (withdrawn.includes(one.id) ? [i] : [])));
  const chronology = lazily(() =>
    sibling && isSameNetwork(sibling.statements.network, statements.network)
      ? sibling.chronology
      : computeChronology(statements.network, { withdrawn: out }),
  );
  const contradictions = lazily(() => contradictionsOf(chronology(), statements));
  const worth = lazily(() => weighStatements(chronology()));
  const trials = lazily(() => openTrials(chronology(), out));
  const rangesAt = oncePerName((moment: number) => rangesOfMoment(chronology(), used, moment));
  const places = lazily(() => new Map(used.map((one, i) => [one, i])));
  const byId = lazily(() => new Map(statements.all.map((one) => [one.id, one])));
  const about = lazily(() => statementsByEntry(shown, statements.all, statements.moments.all));
  const unfinished = lazily(() => new Set(chronology().disagreements.unfinished.flat()));
  return {
    statements,
    get chronology() {
      return chronology();
    },
    get contradictions() {
      return contradictions();
    },
    get worth() {
      return worth();
    },
    trial: (one) => trials().of(one),
    isSmall(statement) {
      const group = trials().tiedTo(statement);
      return group.length <= MOST_IN_DETAIL && !group.some((one) => unfinished().has(one));
    },
    rangesOf: (moment) => rangesAt(moment.index),
    statementsAbout: (entry) => about().get(entry) ?? [],
    statement: (id) => byId().get(id) ?? null,
    placeOf: (statement) => places().get(statement) ?? -1,
  };
}

/** Networks are numbers and ids: of one file they are the same in every language. */
function isSameNetwork(one: Network, other: Network): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}

function contradictionsOf(chronology: Chronology, statements: FileStatements): readonly FileContradiction[] {
  const { contradictions, clusters } = chronology.disagreements;
  const used = (i: number): FileStatement => statements.used[i] as FileStatement;
  return contradictions.map((one, i) => {
    const cluster = clusters[one.cluster - 1];
    return {
      number: i + 1,
      grade: (['established', 'probable', 'possible', 'conjectural'] as const)[one.rank] ?? 'conjectural',
      kind: one.kind,
      cluster: one.cluster,
      complete: cluster?.complete ?? true,
      statements: one.statements.map(used),
      waysOut: (cluster?.waysOut ?? []).map((way) => way.map(used)),
      moments: one.moments.map((moment) => statements.moments.all[moment] as Moment),
    };
  });
}

/** Holdings that an act or the dates of a party speak of, though they are written elsewhere. */
function holdingsTiedBy({ kind, says, links }: FileStatement, moments: readonly Moment[]): readonly string[] {
  if (says.is !== 'handed on' && kind !== 'life') return [];
  const tied = links.flatMap(({ from, to }) => [from, to].flatMap((one) => moments[one] ?? []));
  return [...new Set(tied.flatMap(({ entry, edge }) => (edge === 'begins' || edge === 'ends' ? [entry] : [])))];
}

function statementsByEntry(
  catalogue: Catalogue,
  all: readonly FileStatement[],
  moments: readonly Moment[],
): ReadonlyMap<string, readonly FileStatement[]> {
  const about = new Map<string, FileStatement[]>();
  const add = (entry: string, statement: FileStatement): void => {
    const list = about.get(entry);
    if (list) list.push(statement);
    else about.set(entry, [statement]);
  };
  for (const statement of all) {
    add(statement.entry, statement);
    for (const holding of holdingsTiedBy(statement, moments)) add(holding, statement);
    const claim = catalogue.get(statement.entry);
    if (claim?.type !== 'claim') continue;
    const subject = catalogue.resolve((claim.keys as { about: string }).about)?.entry.id;
    if (subject !== undefined) add(subject, statement);
  }
  return about;
}
