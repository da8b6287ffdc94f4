import { compareDiagnostics, type Diagnostic } from '../base/diagnostic.ts';
import { phrase } from '../base/said.ts';
import { buildCatalogue, type Catalogue } from '../model/catalogue.ts';
import { type Entry, isOfType } from '../model/entry.ts';
import type { SentFile } from '../model/sent-file.ts';
import { TEMPLATE_TEXTS } from '../model/template-texts.ts';
import { NO_ARGUMENT, readArgument, type TextLink } from './argument.ts';
import { type Defaults, readDefaults, withDefaults } from './defaults.ts';
import { addDrawnShapes } from './drawings.ts';
import { checkFigurePictures, type FoundPictures } from './figure-pictures.ts';
import { readFrontMatter } from './front-matter.ts';
import { checkLinks } from './links.ts';
import { type ParsedText, parseText } from './parsed-text.ts';
import { type CheckedEntry, checkEntry, type RawEntry } from './raw-entry.ts';
import { readSurveyTable } from './survey-table.ts';
import type { TextFile } from './text-file.ts';
import { checkPanels, checkWhole, checkWithheld } from './whole-workspace.ts';
import { checkDates } from './written-dates.ts';
import { curlyQuotes } from './yaml-problems.ts';

/** The files of a workspace as they were loaded. */
export interface WorkspaceFiles {
  readonly entries: readonly TextFile[];
  /** What was parsed of their texts already, by file name. */
  readonly parsed?: ReadonlyMap<string, ParsedText>;
  /** `_defaults.yaml` files. */
  readonly defaults: readonly TextFile[];
  /** CSV tables beside survey entries. */
  readonly tables: readonly TextFile[];
  /** SVG drawings over photographs. */
  readonly drawings: readonly TextFile[];
  readonly pictures: FoundPictures;
  /** Documents that were sent and are kept as sent, by their names (`sent/IN-1.md`). */
  readonly sent: ReadonlyMap<string, SentFile>;
  /** Files that could not be loaded or decoded. */
  readonly problems: readonly Diagnostic[];
}

/** Everything read: the linked catalogue for the innermost audience, and all problems. */
export interface Reading {
  readonly catalogue: Catalogue;
  readonly problems: readonly Diagnostic[];
  /** Ids of entries left out because their keys do not fit their type. */
  readonly leftOut: readonly string[];
}

/**
 * Reads a workspace: texts -> front matter -> schema -> links -> catalogue.
 * Faulty entries are left out and named; every problem of every file is reported in one run.
 * @param readings the last reading of each file so far, by its name; what is read is put there
 */
export function readWorkspace(files: WorkspaceFiles, readings = new Map<string, ReadBefore>()): Reading {
  const problems: Diagnostic[] = [...files.problems];
  const defaults = files.defaults.map((file) => readDefaults(file, problems));
  const textLinks = new Map<string, readonly TextLink[]>();
  const checked: CheckedEntry[] = [];
  const given = files.defaults.map((one) => `${one.file}\n${one.text}`).join('\n');
  for (const file of sortedByName(files.entries)) {
    const one = readOnce(file, files.parsed?.get(file.file), defaults, given, readings);
    textLinks.set(file.file, one.links);
    checked.push(one.checked);
  }
  for (const { entry } of [...checked]) {
    if (entry && isOfType(entry as Entry, 'survey')) {
      checked.push(...readRows(entry as Entry<'survey'>, files.tables, defaults, problems));
    }
  }
  problems.push(...checked.flatMap((one) => one.problems));
  const { entries, twice } = uniqueEntries(checked);
  problems.push(...twice);
  const settled = withAccess(entries);
  const leftOut = checked.filter((one) => !one.entry && one.id !== null).map((one) => one.id as string);
  problems.push(
    ...checkLinks(settled, textLinks, leftOut),
    ...checkWhole(settled, leftOut),
    ...checkPanels(settled),
    ...checkWithheld(settled),
    ...checkDates(settled),
    ...checkFigurePictures(settled, files.pictures),
  );
  const drawn = addDrawnShapes(settled, files.drawings, files.pictures);
  problems.push(...drawn.problems);
  return {
    catalogue: buildCatalogue(drawn.entries, 'restricted', false),
    problems: problems.sort(compareDiagnostics),
    leftOut,
  };
}

function sortedByName(files: readonly TextFile[]): readonly TextFile[] {
  return [...files].sort((a, b) => (a.file < b.file ? -1 : 1));
}

/** An entry with the links of its text. */
interface ReadEntry {
  readonly checked: CheckedEntry;
  readonly links: readonly TextLink[];
}

/** An entry as it was read, with what it was read from beside its own text: a preview reads an unchanged file no second time. */
export interface ReadBefore {
  readonly file: TextFile;
  readonly given: string;
  readonly parsed: ParsedText;
  readonly read: ReadEntry;
}

function readOnce(
  file: TextFile,
  parsed: ParsedText | undefined,
  defaults: readonly Defaults[],
  given: string,
  readings: Map<string, ReadBefore>,
): ReadEntry {
  if (!parsed) return readEntryFile(file, parseText(file.text), defaults);
  const before = readings.get(file.file);
  if (before?.given === given && before.parsed === parsed) return before.read;
  const fresh = readEntryFile(file, parsed, defaults);
  const read = before?.given === given ? withKeysOf(before, file, parsed, fresh) : fresh;
  readings.set(file.file, { file, given, parsed, read });
  return read;
}

/** Where only the text below the keys changed, the keys stay the same object: what was found in them is kept by it. */
function withKeysOf(before: ReadBefore, file: TextFile, parsed: ParsedText, fresh: ReadEntry): ReadEntry {
  const above = ({ text }: TextFile, { front }: ParsedText): string | null =>
    front.stretch && text.slice(0, front.stretch.to);
  const [entry, old] = [fresh.checked.entry, before.read.checked.entry];
  const head = above(file, parsed);
  if (!entry || !old || head === null || head !== above(before.file, before.parsed)) return fresh;
  const kept = { ...entry, keys: old.keys, placeOf: old.placeOf };
  return { ...fresh, checked: { ...fresh.checked, entry: kept } };
}

function readEntryFile(file: TextFile, parsed: ParsedText, defaults: readonly Defaults[]): ReadEntry {
  const front = readFrontMatter(file, parsed.front);
  const data = front.yaml?.data;
  if (!front.yaml || data === null || data === undefined || typeof data !== 'object' || Array.isArray(data)) {
    const none = front.problems.some((problem) => problem.severity === 'error') ? [] : [noKeys(file)];
    return {
      checked: { id: idInBrokenText(file.text), entry: null, problems: [...front.problems, ...none] },
      links: [],
    };
  }
  const argument = front.isTemplate
    ? { tree: NO_ARGUMENT, links: [], problems: [templateLeft(file)] }
    : readArgument(file, parsed.argument);
  const raw: RawEntry = {
    file: file.file,
    keys: data as Record<string, unknown>,
    argument: argument.tree,
    places: front.yaml,
  };
  const result = checkEntry(withDefaults(raw, defaults));
  const problems = [...front.problems, ...argument.problems, ...withCurlyQuotes(file, result.problems)];
  return { checked: { ...result, problems }, links: argument.links };
}

/** Errors on lines where curly quotation marks stand around a value are told as that, once a line. */
function withCurlyQuotes({ text }: TextFile, problems: readonly Diagnostic[]): readonly Diagnostic[] {
  const lines = text.split('\n');
  const told = new Set<number>();
  return problems.flatMap((one): readonly Diagnostic[] => {
    const line = lines[one.place.line - 1] ?? '';
    const curly = one.severity === 'error' ? curlyQuotes(line) : null;
    if (!curly) return [one];
    if (told.has(one.place.line)) return [];
    told.add(one.place.line);
    return [{ ...one, ...curly, place: { ...one.place, column: line.search(/[“”„‟‘]/) + 1 } }];
  });
}

/** The id of an entry whose keys cannot be read, so that links to it are not reported as well. */
function idInBrokenText(text: string): string | null {
  return /^id:[ \t]*["']?([A-Za-z0-9][A-Za-z0-9.-]*)/m.exec(text)?.[1] ?? null;
}

/** The text of the template still stands below the keys; it is read as no text. */
function templateLeft({ file, text }: TextFile): Diagnostic {
  const line = text.split('\n').findIndex((one) => Object.values<string>(TEMPLATE_TEXTS).includes(one.trim())) + 1;
  return {
    code: 'template-text-left',
    severity: 'note',
    place: { file, line: Math.max(1, line), column: 1 },
    message: phrase('below the keys still stands the text of the template; it is not shown'),
    mend: phrase('write there what speaks for this entry and what against it, or delete the line'),
  };
}

function noKeys({ file }: TextFile): Diagnostic {
  return {
    code: 'front-matter-no-keys',
    severity: 'error',
    place: { file, line: 2, column: 1 },
    message: phrase('between the two lines of hyphens stand no keys'),
    mend: phrase('write one key a line, each with a colon and a space: "id: EV-removal", "type: event"'),
  };
}

function readRows(
  survey: Entry<'survey'>,
  tables: readonly TextFile[],
  defaults: readonly Defaults[],
  problems: Diagnostic[],
): readonly CheckedEntry[] {
  const folder = survey.file.slice(0, survey.file.lastIndexOf('/') + 1);
  const table = tables.find((one) => one.file === folder + survey.keys.table);
  if (!table) {
    problems.push({
      code: 'table-missing',
      severity: 'error',
      place: survey.placeOf(['table']),
      message: phrase('the table "{0}" does not stand beside this entry', survey.keys.table),
      mend: phrase('put the CSV file into the folder {0}, or correct its name', folder || 'entries/'),
      entry: survey.id,
    });
    return [];
  }
  const { rows, problems: found } = readSurveyTable(table, survey);
  problems.push(...found);
  return rows.map((row) => checkEntry(withDefaults(row, defaults)));
}

function uniqueEntries(checked: readonly CheckedEntry[]): {
  readonly entries: readonly Omit<Entry, 'access'>[];
  readonly twice: readonly Diagnostic[];
} {
  const byId = new Map<string, Omit<Entry, 'access'>>();
  const twice: Diagnostic[] = [];
  for (const { entry } of checked) {
    if (!entry) continue;
    const known = byId.get(entry.id.toLowerCase());
    if (!known) {
      byId.set(entry.id.toLowerCase(), entry);
      continue;
    }
    twice.push({
      code: 'id-twice',
      severity: 'error',
      place: entry.placeOf(['id']),
      message: phrase('the id "{0}" is taken already (capital and small letters count as the same)', entry.id),
      mend: phrase('give this entry another id; ids are kept for ever, so change the newer one'),
      entry: entry.id,
      related: [{ place: known.placeOf(['id']), text: phrase('the first entry with this id') }],
    });
  }
  return { entries: [...byId.values()], twice };
}

/** Settles access: own key, else restricted for demands, else the workspace's default, else internal. */
function withAccess(entries: readonly Omit<Entry, 'access'>[]): readonly Entry[] {
  const workspace = entries.find((entry): entry is Entry<'workspace'> => entry.type === 'workspace');
  const usual = workspace?.keys['access-default'] ?? 'internal';
  return entries.map((entry) => {
    const byType = entry.type === 'request-for-return' ? 'restricted' : usual;
    return { ...entry, access: entry.keys.access ?? byType };
  });
}
