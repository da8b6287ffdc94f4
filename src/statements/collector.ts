import type { Diagnostic } from '../base/diagnostic.ts';
import type { Grade } from '../base/grade.ts';
import type { Said } from '../base/said.ts';
import type { CalendarName } from '../dates/calendars/calendar.ts';
import type { DateExpression } from '../dates/expression.ts';
import { isDateProblem, readDate } from '../dates/read-date.ts';
import type { Sense } from '../dates/sense.ts';
import { type Catalogue, titleOf } from '../model/catalogue.ts';
import type { Entry, KeyPath } from '../model/entry.ts';
import { type Settings, settingsOf } from '../model/settings.ts';
import { datedLinks } from './dated-links.ts';
import { effectiveGrade } from './effective-grade.ts';
import type { FileStatement, Span, StatementKind } from './file-statement.ts';
import { findMoments, type Moments } from './moments.ts';
import type { Saying, Subject } from './saying.ts';

/** A dated statement as an entry writes it. */
export interface DatedWords {
  readonly date: string;
  readonly sense?: Sense | undefined;
  readonly calendar?: CalendarName | undefined;
  readonly 'as-written'?: string | undefined;
  readonly source?: string | undefined;
  readonly grade: Grade;
  readonly why?: string | undefined;
}

/** What a statement needs beyond its links. */
export interface StatementHead {
  readonly id: string;
  readonly kind: StatementKind;
  readonly path: KeyPath;
  readonly grade: Grade;
  readonly source?: string | undefined;
  readonly why?: string | undefined;
  readonly says: Saying;
  readonly uncertain?: boolean;
}

/** Gathers the statements and doubts of a catalogue, in one fixed order. */
export class Collector {
  readonly catalogue: Catalogue;
  readonly settings: Settings;
  readonly moments: Moments;
  readonly statements: FileStatement[] = [];
  readonly problems: Diagnostic[] = [];

  /** Titles are told as this audience reads them. */
  private readonly shown: Catalogue;

  constructor(catalogue: Catalogue, shown: Catalogue) {
    this.catalogue = catalogue;
    this.shown = shown;
    this.settings = settingsOf(catalogue.workspace);
    this.moments = findMoments(catalogue);
  }

  /** True for an entry of the whole file that the audience does not see, under any name. */
  isHidden(id: string): boolean {
    return this.catalogue.get(id) !== undefined && this.shown.shownAs(id) === null;
  }

  /** What a statement about an entry speaks of, under the title that the audience reads. */
  subject(entry: Entry, edge: Subject['edge'] = null): Subject {
    return { entry: entry.id, edge, title: this.title(entry) };
  }

  private title(entry: Entry): string {
    const shownAs = this.shown.shownAs(entry.id);
    return titleOf((shownAs === null ? undefined : this.shown.get(shownAs)) ?? entry, this.settings.languages);
  }

  /** Reads a date of an entry; null where it cannot be read (reported when the entries were read). */
  read(words: Pick<DatedWords, 'date' | 'calendar'>): DateExpression | null {
    const result = readDate(words.date, words.calendar ?? 'gregorian', this.settings.dates);
    return isDateProblem(result) ? null : result;
  }

  /** Adds a statement with links of its own. */
  add(entry: Entry, head: StatementHead, rest: Partial<FileStatement>): void {
    const effective = effectiveGrade(this.catalogue, head.grade, head.uncertain ?? false, head.source, (one) =>
      this.title(one),
    );
    this.statements.push({
      id: head.id,
      entry: entry.id,
      path: head.path,
      kind: head.kind,
      grade: effective.grade,
      statedGrade: head.grade,
      gradeNote: effective.note,
      source: head.source ?? null,
      why: head.why ?? null,
      says: head.says,
      date: null,
      precision: 'day',
      about: false,
      links: [],
      notUsed: effective.notUsed,
      ...rest,
    });
  }

  /** Adds a dated statement about a span; doubts and refusals are put into words here. */
  addDated(
    entry: Entry,
    head: Omit<StatementHead, 'grade' | 'says' | 'source' | 'why'>,
    words: DatedWords,
    span: Span,
    subject: Subject,
    rest: Partial<FileStatement> = {},
  ): void {
    const date = this.read(words);
    if (!date) return;
    const sense = words.sense ?? 'within';
    const { trouble, links, choice } = datedLinks(span, sense, date.shape);
    if (trouble) this.problems.push(this.trouble(trouble, entry, head.path, words, sense));
    this.add(
      entry,
      {
        ...head,
        grade: words.grade,
        source: words.source,
        why: words.why,
        uncertain: date.uncertain,
        says: { is: 'dated', subject, sense, date, written: words['as-written'] ?? null },
      },
      { date, precision: date.precision, about: date.approximate, links, ...(choice ? { choice } : {}), ...rest },
    );
  }

  /** A problem at a path of an entry. */
  problem(
    entry: Entry,
    path: KeyPath,
    code: string,
    severity: Diagnostic['severity'],
    message: Said,
    mend: Said,
  ): void {
    this.problems.push({ code, severity, place: entry.placeOf(path), message, mend, entry: entry.id });
  }

  private trouble(
    trouble: NonNullable<ReturnType<typeof datedLinks>['trouble']>,
    entry: Entry,
    path: KeyPath,
    words: DatedWords,
    sense: Sense,
  ): Diagnostic {
    const between = betweenOf(words.date);
    const wording = {
      'interval-on-moment': {
        severity: 'doubt' as const,
        message: `"${words.date}" means something that lasted, but "${sense}" speaks of one moment; it is read as one unknown day in that stretch`,
        mend: `if one unknown day is meant, write "${between}"`,
      },
      'interval-refused': {
        severity: 'error' as const,
        message: `"${words.date}" means something that lasted, which a single moment cannot be under way throughout`,
        mend: `write one day, or "${between}" for one unknown day`,
      },
      'all-of-refused': {
        severity: 'error' as const,
        message: `"${words.date}" means each of these dates, which "${sense}" cannot mean`,
        mend: 'write two statements, one for each date; or "[..., ...]" for one of them',
      },
      'bounds-nothing': {
        severity: 'doubt' as const,
        message: `"${words.date}" in the sense "${sense}" bounds nothing`,
        mend: 'check the open end of the date, or the sense',
      },
    }[trouble];
    return { code: `date-${trouble}`, place: entry.placeOf([...path, 'date']), entry: entry.id, ...wording };
  }
}

/** The reading "one unknown day between" of an interval: `1921/1926` becomes `[1921..1926]`. */
export function betweenOf(interval: string): string {
  const [from = '', to = ''] = interval.split('/').map((end) => (end === '..' ? '' : end));
  return `[${from}..${to}]`;
}
