import type { Access } from '../base/access.ts';
import { compareDiagnostics, type Diagnostic } from '../base/diagnostic.ts';
import { type Chronology, computeChronology, type Trial } from '../chronology/chronology.ts';
import { type WorthFinder, weighStatements } from '../chronology/worth.ts';
import { forAudience } from '../model/audience.ts';
import type { Catalogue } from '../model/catalogue.ts';
import { type Settings, settingsOf } from '../model/settings.ts';
import { findPhysical, type PhysicalFindings } from '../physical/panels.ts';
import { type FileStatement, type FileStatements, findStatements, type Moment } from '../statements/statements.ts';
import { findDoubts } from './doubts.ts';
import { inquiryDoubts } from './inquiry-doubts.ts';
import { type MomentRange, rangesOfMoment } from './printed-range.ts';
import { referenceProblems } from './reference-problems.ts';
import { type SaidContradiction, sayContradiction } from './say-contradiction.ts';

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

/** Every analysis over one catalogue, for one audience. */
export interface CaseFile {
  readonly catalogue: Catalogue;
  readonly settings: Settings;
  readonly statements: FileStatements;
  readonly chronology: Chronology;
  readonly contradictions: readonly FileContradiction[];
  /** Statements left out of the computation as a reader's trial; empty for the file as it stands. */
  readonly withdrawn: readonly string[];
  /** Doubts found in what the audience sees. */
  readonly doubts: readonly Diagnostic[];
  /** Doubts found in the whole file: their words may tell what the audience does not see. */
  readonly doubtsOfWhole: readonly Diagnostic[];
  /** What is measured on the panels. */
  readonly physical: PhysicalFindings;
  rangesOf(moment: Moment): readonly MomentRange[];
  /** False for a large file, or one with a tangle past the caps: its pages leave out what would need a trial for every statement. */
  readonly inDetail: boolean;
  /** What each statement is worth, by its place among those used. */
  readonly worth: WorthFinder;
  /** The chronology of the file with statements withdrawn or taken at another grade. */
  trial(trial: Trial): Chronology;
  /** Statements about an entry: written in it, or claims about it. */
  statementsAbout(entry: string): readonly FileStatement[];
  statement(id: string): FileStatement | null;
  /** The place of a statement among those used; -1 where it takes no part. */
  placeOf(statement: FileStatement): number;
}

/** Trials that are remembered, so that pages that ask for the same one do not compute it again. */
const MOST_TRIALS = 400;

/** Statements up to which every page tells what each date would be without each statement. */
const MOST_IN_DETAIL = 400;

/** Builds the case file: cut for the audience first, then computed. */
export function buildCaseFile(whole: Catalogue, audience: Access, withdrawn: readonly string[] = []): CaseFile {
  const catalogue = forAudience(whole, audience);
  const statements = findStatements(whole, catalogue);
  const out = new Set(statements.used.flatMap((one, i) => (withdrawn.includes(one.id) ? [i] : [])));
  const chronology = computeChronology(statements.network, { withdrawn: out });
  const ranges = new Map<number, readonly MomentRange[]>();
  const rangesOf = (moment: Moment): readonly MomentRange[] => {
    const known = ranges.get(moment.index);
    if (known) return known;
    const fresh = rangesOfMoment(chronology, statements.used, moment.index);
    ranges.set(moment.index, fresh);
    return fresh;
  };
  const places = new Map(statements.used.map((one, i) => [one, i]));
  const byId = new Map(statements.all.map((one) => [one.id, one]));
  const about = statementsByEntry(catalogue, statements.all);
  const trials = new Map<string, Chronology>();
  const trial = ({ withdrawn: less = new Set<number>(), ranks = new Map<number, number>() }: Trial): Chronology => {
    const key = `${[...less].join(',')} ${[...ranks].join(';')}`;
    const known = trials.get(key);
    if (known) return known;
    const fresh = computeChronology(statements.network, { withdrawn: new Set([...out, ...less]), ranks }, chronology);
    if (trials.size < MOST_TRIALS) trials.set(key, fresh);
    return fresh;
  };
  const base = {
    catalogue,
    settings: settingsOf(catalogue.workspace),
    statements,
    chronology,
    contradictions: contradictionsOf(chronology, statements),
    withdrawn,
    physical: findPhysical(catalogue),
    inDetail: statements.used.length <= MOST_IN_DETAIL && chronology.disagreements.unfinished.length === 0,
    worth: weighStatements(chronology),
    trial,
    rangesOf,
    statementsAbout: (entry: string) => about.get(entry) ?? [],
    statement: (id: string) => byId.get(id) ?? null,
    placeOf: (statement: FileStatement) => places.get(statement) ?? -1,
  };
  return {
    ...base,
    doubtsOfWhole: [...statements.problems, ...referenceProblems(whole), ...inquiryDoubts(whole, catalogue)].sort(
      compareDiagnostics,
    ),
    doubts: [
      ...base.physical.problems,
      ...findDoubts(base),
      ...contradictionDoubts(catalogue, base.contradictions, (one) =>
        sayContradiction(base as unknown as CaseFile, one),
      ),
    ].sort(compareDiagnostics),
  };
}

/** Each contradiction as a doubt at its first statement, the others beside it. */
function contradictionDoubts(
  catalogue: Catalogue,
  contradictions: readonly FileContradiction[],
  say: (one: FileContradiction) => SaidContradiction | null,
): readonly Diagnostic[] {
  return contradictions.flatMap((one) => {
    const said = say(one);
    const sides = said ? `; ${said.moment} would lie ${said.earliest.words} and ${said.latest.words}` : '';
    const [first, ...others] = one.statements.flatMap((statement) => {
      const place = catalogue.get(statement.entry)?.placeOf(statement.path);
      return place ? [{ place, statement }] : [];
    });
    if (!first) return [];
    const what = one.kind === 'order' ? 'make a loop of order' : 'cannot all be right';
    return [
      {
        code: 'contradiction',
        severity: 'doubt' as const,
        place: first.place,
        entry: first.statement.entry,
        message: `statements that ${what} (${one.grade}): ${one.statements.map((s) => s.id).join(', ')}${sides}`,
        mend: `nothing has to be withdrawn; ways out: ${one.waysOut
          .slice(0, 3)
          .map((way) => `without ${way.map((s) => s.id).join(' and ')}`)
          .join('; or ')}. "kerfmark dates" tells more`,
        related: others.map(({ place, statement }) => ({ place, text: statement.id })),
      },
    ];
  });
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

function statementsByEntry(
  catalogue: Catalogue,
  all: readonly FileStatement[],
): ReadonlyMap<string, readonly FileStatement[]> {
  const about = new Map<string, FileStatement[]>();
  const add = (entry: string, statement: FileStatement): void => {
    const list = about.get(entry);
    if (list) list.push(statement);
    else about.set(entry, [statement]);
  };
  for (const statement of all) {
    add(statement.entry, statement);
    const claim = catalogue.get(statement.entry);
    if (claim?.type !== 'claim') continue;
    const subject = catalogue.resolve((claim.keys as { about: string }).about)?.entry.id;
    if (subject !== undefined) add(subject, statement);
  }
  return about;
}
