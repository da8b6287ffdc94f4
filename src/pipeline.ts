import type { Access } from './base/access.ts';
import { compareDiagnostics, type Diagnostic } from './base/diagnostic.ts';
import { lazily, oncePerName } from './base/once.ts';
import { buildCaseFile, type CaseFile } from './findings/case-file.ts';
import type { DatedBefore } from './findings/dated-part.ts';
import { overdueInquiries } from './findings/inquiry-doubts.ts';
import { publicDifferences, publicDoubts } from './findings/public-differences.ts';
import { shownProblems } from './findings/shown-problems.ts';
import { ENGLISH, type Language, languageFor } from './language/language.ts';
import { sayerIn } from './language/sayer.ts';
import { checkLetters } from './letters/check-letters.ts';
import type { Catalogue } from './model/catalogue.ts';
import type { SentFile } from './model/sent-file.ts';
import { settingsOf } from './model/settings.ts';
import { withLanguage } from './model/with-language.ts';
import { type ReadBefore, type Reading, readWorkspace, type WorkspaceFiles } from './reading/reading.ts';

/** A workspace read and computed for one audience, as far as somebody asks. */
export interface Computed {
  readonly file: CaseFile;
  /** All that was read, whoever may see it. */
  readonly whole: Catalogue;
  /** Faults of the entries: problems of the severity `error`, in fixed order. Found without looking for doubts. */
  readonly errors: readonly Diagnostic[];
  /** Problems of reading and doubts of the findings, in fixed order. */
  readonly problems: readonly Diagnostic[];
  /** Those of them that may stand on a page for the audience. */
  readonly shownProblems: readonly Diagnostic[];
  /** Entries left out, since their keys do not fit their type. */
  readonly leftOut: readonly string[];
  /** The same workspace computed for another audience, or with another language first. */
  fileFor(audience: Access, language?: string | null): CaseFile;
  /** Documents that were sent, by their names. */
  readonly sent: ReadonlyMap<string, SentFile>;
  /** Number of entries read, whoever may see them. */
  readonly entries: number;
}

/** What one computation leaves to the next one of the same workspace; each puts there what it made. */
export interface Remembered {
  readonly readings: Map<string, ReadBefore>;
  readonly dated: Map<string, DatedBefore>;
}

/** What may be asked of a computation beyond the audience. */
export interface ComputeOptions {
  /** Statements taken out as a trial. */
  readonly withdrawn?: readonly string[];
  /** The language shown first; that of the workspace where nothing is said. */
  readonly language?: string | null;
  /** The languages in which the file can be said; its own first one is taken, where it is among them. English alone where nothing is given. */
  readonly languages?: readonly Language[];
  /** The language that is taken whatever those of the file are: that of the terminal. */
  readonly spoken?: Language;
  /** The day on which deadlines are looked at, as ISO 8601; none is, where nothing is said. */
  readonly today?: string;
  /** What is kept from one computation to the next; nothing where none is given. */
  readonly session?: Remembered;
}

/**
 * The whole path on one screen:
 *
 *   texts -> entries -> catalogue          src/reading, src/model
 *         -> catalogue for one audience    src/model/audience
 *         -> statements about moments      src/statements
 *         -> bounds, reasons, disputes     src/chronology
 *         -> findings                      src/findings
 *         -> page models -> pages          src/publish, site
 */
export function compute(files: WorkspaceFiles, audience: Access, options: ComputeOptions = {}): Computed {
  const { language = null, session = { readings: new Map(), dated: new Map() } } = options;
  const reading = readWorkspace(files, session.readings);
  const whole = language === null ? reading.catalogue : withLanguage(reading.catalogue, language);
  const fileFor = caseFiles(whole, options, session.dated);
  const found = problemsOf({ ...reading, catalogue: whole }, files.sent, audience, fileFor, options.today);
  return {
    file: fileFor(audience),
    whole,
    fileFor,
    sent: files.sent,
    get errors() {
      return found.errors();
    },
    get problems() {
      return found.all();
    },
    get shownProblems() {
      return found.shown();
    },
    leftOut: reading.leftOut,
    entries: whole.entries.length,
  };
}

/** Case files of one workspace, each made once: for an audience, with the language of the file or another one first. */
function caseFiles(
  whole: Catalogue,
  { withdrawn = [], languages = [ENGLISH], spoken }: ComputeOptions,
  last: Map<string, DatedBefore>,
): Computed['fileFor'] {
  const tags = settingsOf(whole.workspace).languages;
  const usual = spoken ?? languageFor(languages, tags);
  const own = oncePerName((one: Access) => buildCaseFile(whole, one, sayerIn(usual), withdrawn, last));
  const other = oncePerName((audienceAndLanguage: `${Access} ${string}`) => {
    const [one, tag] = audienceAndLanguage.split(' ') as [Access, string];
    const sayer = sayerIn(languageFor(languages, [tag]));
    return buildCaseFile(withLanguage(whole, tag), one, sayer, withdrawn, last, own(one));
  });
  return (one, tag = null) =>
    tag === null || (tag === usual.tag && tag === tags[0]) ? own(one) : other(`${one} ${tag}`);
}

/** What is wrong and what is doubtful, each looked for when it is asked for. */
function problemsOf(
  reading: Reading,
  sent: ReadonlyMap<string, SentFile>,
  audience: Access,
  fileFor: Computed['fileFor'],
  today: string | undefined,
): Readonly<Record<'errors' | 'all' | 'shown', () => readonly Diagnostic[]>> {
  const file = fileFor(audience);
  const ofWhole = lazily(() => [
    ...reading.problems,
    ...file.doubtsOfWhole,
    ...checkLetters(reading.catalogue, sent, fileFor),
    ...(today === undefined ? [] : overdueInquiries(reading.catalogue, today)),
  ]);
  const ofShown = lazily(() => [
    ...file.faults,
    ...file.doubts,
    ...(audience === 'public' ? [] : publicDoubts(file, publicDifferences(file, fileFor('public')))),
  ]);
  const sorted = (list: readonly Diagnostic[]): readonly Diagnostic[] => [...list].sort(compareDiagnostics);
  return {
    errors: lazily(() => sorted([...ofWhole(), ...file.faults].filter((one) => one.severity === 'error'))),
    all: lazily(() => sorted([...ofWhole(), ...ofShown()])),
    shown: lazily(() => sorted([...shownProblems(ofWhole(), reading.catalogue, file.catalogue), ...ofShown()])),
  };
}
