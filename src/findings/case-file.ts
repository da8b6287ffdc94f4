import type { Access } from '../base/access.ts';
import { compareDiagnostics, type Diagnostic } from '../base/diagnostic.ts';
import { lazily } from '../base/once.ts';
import { allOf, named, oneOf, phrase } from '../base/said.ts';
import { withDrawnHoldings } from '../custody/draw-holdings.ts';
import { whereKeptBack } from '../language/language.ts';
import { type Sayer, sayerIn } from '../language/sayer.ts';
import { forAudience } from '../model/audience.ts';
import type { Catalogue } from '../model/catalogue.ts';
import { type Settings, settingsOf } from '../model/settings.ts';
import { findPhysical, type PhysicalFindings } from '../physical/panels.ts';
import { findCircles } from './circles.ts';
import { type DatedBefore, type DatedPart, datedPart, type FileContradiction, MOST_IN_DETAIL } from './dated-part.ts';
import { findDoubts } from './doubts.ts';
import { inquiryDoubts } from './inquiry-doubts.ts';
import { referenceProblems } from './reference-problems.ts';
import { type SaidContradiction, sayContradiction } from './say-contradiction.ts';

export type { FileContradiction } from './dated-part.ts';

/** Every analysis over one catalogue, for one audience; each is made when it is first asked for. */
export interface CaseFile extends DatedPart {
  readonly catalogue: Catalogue;
  readonly settings: Settings;
  /** Who says what was found, in the language of the file, and so that nothing is denied that is only kept back. */
  readonly sayer: Sayer;
  /** Statements left out of the computation as a reader's trial; empty for the file as it stands. */
  readonly withdrawn: readonly string[];
  /** What is wrong with what the audience sees, so that something is left out or told otherwise than it was meant. */
  readonly faults: readonly Diagnostic[];
  /** Doubts found in what the audience sees. */
  readonly doubts: readonly Diagnostic[];
  /** Faults and doubts found in the whole file: their words may tell what the audience does not see. */
  readonly doubtsOfWhole: readonly Diagnostic[];
  /** What is measured on the panels. */
  readonly physical: PhysicalFindings;
  /** False for a large file, or one with a tangle past the caps: its pages leave out what would need a trial for every statement. */
  readonly inDetail: boolean;
}

/** Builds the case file: cut for the audience first, then computed, as far as somebody asks. */
export function buildCaseFile(
  whole: Catalogue,
  audience: Access,
  sayer: Sayer,
  withdrawn: readonly string[] = [],
  last = new Map<string, DatedBefore>(),
  sibling: DatedPart | null = null,
): CaseFile {
  const cut = forAudience(whole, audience, sayer.term);
  const catalogue = withDrawnHoldings(cut);
  const dated = datedPart(cut === whole ? catalogue : whole, catalogue, withdrawn, last, sibling);
  const physical = lazily(() => findPhysical(catalogue));
  const faults = lazily(() => [...physical().faults, ...findCircles(catalogue)].sort(compareDiagnostics));
  const doubts = lazily(() =>
    [
      ...physical().doubts,
      ...findDoubts(file),
      ...contradictionDoubts(catalogue, file.contradictions, (one) => sayContradiction(file, one)),
    ].sort(compareDiagnostics),
  );
  const doubtsOfWhole = lazily(() =>
    [...dated.statements.problems, ...referenceProblems(whole), ...inquiryDoubts(whole, catalogue)].sort(
      compareDiagnostics,
    ),
  );
  const file: CaseFile = {
    catalogue,
    settings: settingsOf(catalogue.workspace),
    sayer: catalogue.holdsMore ? sayerIn(whereKeptBack(sayer.language)) : sayer,
    withdrawn,
    statements: dated.statements,
    get chronology() {
      return dated.chronology;
    },
    get contradictions() {
      return dated.contradictions;
    },
    get worth() {
      return dated.worth;
    },
    rangesOf: dated.rangesOf,
    trial: dated.trial,
    isSmall: dated.isSmall,
    statementsAbout: dated.statementsAbout,
    statement: dated.statement,
    placeOf: dated.placeOf,
    get physical() {
      return physical();
    },
    get faults() {
      return faults();
    },
    get doubts() {
      return doubts();
    },
    get doubtsOfWhole() {
      return doubtsOfWhole();
    },
    get inDetail() {
      const { unfinished } = dated.chronology.disagreements;
      return dated.statements.used.length <= MOST_IN_DETAIL && unfinished.length === 0;
    },
  };
  return file;
}

/** Each contradiction as a doubt at its first statement, the others beside it. */
function contradictionDoubts(
  catalogue: Catalogue,
  contradictions: readonly FileContradiction[],
  say: (one: FileContradiction) => SaidContradiction | null,
): readonly Diagnostic[] {
  return contradictions.flatMap((one) => {
    const said = say(one);
    const sides = said
      ? phrase('; {0} would lie {1} and {2}', said.moment, said.earliest.words, said.latest.words)
      : '';
    const [first, ...others] = one.statements.flatMap((statement) => {
      const place = catalogue.get(statement.entry)?.placeOf(statement.path);
      return place ? [{ place, statement }] : [];
    });
    if (!first) return [];
    const ids = one.statements.map((s) => s.id).join(', ');
    const ways = one.waysOut.slice(0, 3).map((way) => phrase('without {0}', allOf(way.map((s) => s.id))));
    return [
      {
        code: 'contradiction',
        severity: 'doubt' as const,
        place: first.place,
        entry: first.statement.entry,
        message:
          one.kind === 'order'
            ? phrase('statements that make a loop of order ({0}): {1}{2}', named(one.grade), ids, sides)
            : phrase('statements that cannot all be right ({0}): {1}{2}', named(one.grade), ids, sides),
        mend: phrase('nothing has to be withdrawn; ways out: {0}. "kerfmark dates" tells more', oneOf(ways)),
        related: others.map(({ place, statement }) => ({ place, text: statement.id })),
      },
    ];
  });
}
