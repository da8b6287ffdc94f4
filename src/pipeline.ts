import type { Access } from './base/access.ts';
import { compareDiagnostics, type Diagnostic } from './base/diagnostic.ts';
import { buildCaseFile, type CaseFile } from './findings/case-file.ts';
import type { DatedBefore } from './findings/dated-part.ts';
import { publicDifferences, publicDoubts } from './findings/public-differences.ts';
import { checkSentAnswers } from './findings/sent-answers.ts';
import { shownProblems } from './findings/shown-problems.ts';
import { interfaceFor } from './language/languages.ts';
import { ENGLISH, speaking } from './language/spoken.ts';
import type { Catalogue } from './model/catalogue.ts';
import type { SentFile } from './model/sent-file.ts';
import { settingsOf } from './model/settings.ts';
import { withLanguage } from './model/with-language.ts';
import { type ReadBefore, readWorkspace, type WorkspaceFiles } from './reading/reading.ts';

/** A workspace read and computed for one audience. */
export interface Computed {
  readonly file: CaseFile;
  /** All that was read, whoever may see it. */
  readonly whole: Catalogue;
  /** Problems of reading and doubts of the findings, in fixed order. */
  readonly problems: readonly Diagnostic[];
  /** Those of them that may stand on a page for the audience. */
  readonly shownProblems: readonly Diagnostic[];
  /** Entries left out, since their keys do not fit their type. */
  readonly leftOut: readonly string[];
  /** The same workspace computed for another audience, or with another language first; computed when first asked for. */
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
  /** For pages: what is composed is said in the language of the file; in English else, as the terminal speaks. */
  readonly inItsLanguage?: boolean;
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
  const {
    withdrawn = [],
    language = null,
    inItsLanguage = false,
    session = { readings: new Map(), dated: new Map() },
  } = options;
  const read = readWorkspace(files, session.readings);
  const reading = language === null ? read : { ...read, catalogue: withLanguage(read.catalogue, language) };
  const settings = settingsOf(reading.catalogue.workspace);
  const spoken = inItsLanguage ? interfaceFor(settings.languages) : ENGLISH;
  const made = new Map<string, CaseFile>();
  const fileFor = (one: Access, other: string | null = null): CaseFile => {
    const isSame = other === null || (other === spoken.tag && other === settings.languages[0]);
    const key = isSame ? one : `${one} ${other}`;
    const known = made.get(key);
    if (known) return known;
    const catalogue = isSame ? reading.catalogue : withLanguage(reading.catalogue, other);
    const fresh = speaking(isSame ? spoken : interfaceFor([other]), () =>
      buildCaseFile(catalogue, one, withdrawn, session.dated),
    );
    made.set(key, fresh);
    return fresh;
  };
  const file = fileFor(audience);
  const ofWhole = [
    ...reading.problems,
    ...file.doubtsOfWhole,
    ...checkSentAnswers(reading.catalogue, files.sent, (one) => fileFor('restricted', one).statements),
  ];
  const ofShown = [
    ...file.doubts,
    ...(audience === 'public' ? [] : publicDoubts(file, publicDifferences(file, fileFor('public')))),
  ];
  return {
    file,
    whole: reading.catalogue,
    fileFor,
    sent: files.sent,
    problems: [...ofWhole, ...ofShown].sort(compareDiagnostics),
    shownProblems: [...shownProblems(ofWhole, reading.catalogue, file.catalogue), ...ofShown].sort(compareDiagnostics),
    leftOut: reading.leftOut,
    entries: reading.catalogue.entries.length,
  };
}

/** True where a problem of the severity `error` is among them. */
export function hasErrors(problems: readonly Diagnostic[]): boolean {
  return problems.some((problem) => problem.severity === 'error');
}
