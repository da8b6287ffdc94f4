import path from 'node:path';
import { GRADES, type Grade } from '../base/grade.ts';
import { nearest } from '../base/nearest.ts';
import { inRow, oneOf, phrase, type Said } from '../base/said.ts';
import { type Catalogue, titleOf } from '../model/catalogue.ts';
import { ENTRY_SCHEMAS } from '../model/entry.ts';
import { ENTRY_TYPES, type EntryType } from '../model/entry-type-names.ts';
import { ID_SHAPE } from '../model/fields.ts';
import { noteOfKey } from '../model/walk-fields.ts';
import { readWorkspace } from '../reading/reading.ts';
import { folderOf, type Options, type RunCommand } from './commands.ts';
import { askChoice, askDate, askText, type Choice, chosen, confirmDate } from './conversation.ts';
import type { Effects } from './effects.ts';
import { entryText, freeId, type NewDate, schemaOf, writeNew } from './entry-files.ts';
import { Fault } from './fault.ts';
import { loadWorkspace } from './load-workspace.ts';
import { NEW_ENTRY_KEYS } from './new-entry-keys.ts';
import { packageRoot } from './package-root.ts';

/** What each type is for, as somebody asks who writes the first entry. */
const MEANINGS: Readonly<Record<Exclude<EntryType, 'workspace'>, Said>> = {
  event: phrase('something that happened: a removal, a sale, a treatment'),
  evidence: phrase('a trace on the object: a cut edge, a fill, a label'),
  source: phrase('a document, photograph, book, interview'),
  claim: phrase('what a source says about an event or a holding'),
  holding: phrase('somebody had the object in hand for a time'),
  party: phrase('a person, firm, institution or community'),
  place: phrase('a wall, building, town, country'),
  figure: phrase('a photograph or drawing to show'),
  object: phrase('a museum object, or a group of panels'),
  examination: phrase('one look at the object: who, when, under which light'),
  survey: phrase('a table of many traces of one panel'),
  search: phrase('one look in an archive, nothing found included'),
  question: phrase('something that is not known'),
  reading: phrase('a candidate origin, with what speaks for and against it'),
  title: phrase('somebody asserts a right to the object'),
  inquiry: phrase('a question put to the museum'),
  'request-for-return': phrase('a demand for the object; restricted'),
  response: phrase('what a reader or a community answered'),
  'reference-date': phrase('a law or treaty that the built-in table does not have'),
};

/** The key that tells when, of types whose date is a key of its own. */
const WHEN: Partial<Record<EntryType, string>> = {
  source: 'date-on-it',
  examination: 'when',
  search: 'when',
  figure: 'taken',
  response: 'on',
  inquiry: 'received',
  'request-for-return': 'received',
  'reference-date': 'in-force-from',
};

/** Types whose date is a statement with a grade. */
const STATED: readonly EntryType[] = ['event', 'holding', 'claim'];

/** Most entries that are listed to choose from. */
const MOST_LISTED = 15;

export const newEntry: RunCommand = async (options, effects) => {
  const folder = folderOf(options, effects);
  const type = await typeOf(options, effects);
  if (folder === packageRoot() && options.flags.in === undefined)
    throw new Fault(
      phrase(
        'This folder holds the example of the program itself. Name your own folder: kerfmark new --in ../my-panels (or --in . to write into the example).',
      ),
    );
  const { catalogue, leftOut } = readWorkspace(await loadWorkspace(folder));
  const taken = new Set([...catalogue.entries.map((entry) => entry.id), ...leftOut].map((id) => id.toLowerCase()));
  const values = await askKeys(type, options, effects, catalogue);
  const date = await dateOf(type, options, effects);
  const id = await idOf(type, values.title ?? '', taken, options, effects);
  const file = await writeNew(folder, type, id, entryText(type, id, values, date, WHEN[type]));
  effects.out(
    phrase(
      'Written: {0}\nOpen it in an editor, fill it in, then type: kerfmark check\n',
      path.relative(effects.cwd, file),
    ),
  );
  return 0;
};

async function typeOf(options: Options, effects: Effects): Promise<EntryType> {
  const [given] = options.words;
  if (ENTRY_TYPES.includes(given as EntryType)) return given as EntryType;
  if (given === undefined && !options.flags.yes) {
    const choices = Object.entries(MEANINGS).map(([word, meaning]) => ({ word, meaning }));
    const question = phrase('What will you write down? Number or word');
    const type = (await askChoice(effects, question, choices)) ?? (await askChoice(effects, question, choices));
    if (type !== null) return type as EntryType;
  }
  const [near] = given === undefined ? [] : nearest(given, ENTRY_TYPES, 1);
  throw new Fault(
    phrase(
      '{0} The types are: {1}.',
      given === undefined
        ? phrase('Which type?')
        : phrase('There is no type "{0}".{1}', given, near ? phrase(' Did you mean "{0}"?', near) : ''),
      ENTRY_TYPES.join(', '),
    ),
  );
}

/** Flags first; then questions for the title and for what must be there. */
async function askKeys(
  type: EntryType,
  options: Options,
  effects: Effects,
  catalogue: Catalogue,
): Promise<Record<string, string>> {
  const { required, properties } = schemaOf(type);
  const values: Record<string, string> = {};
  const left = ['id', 'type', 'says', WHEN[type], ...(STATED.includes(type) ? ['grade'] : [])];
  for (const key of ['title', ...required.filter((one) => !left.includes(one)), ...NEW_ENTRY_KEYS]) {
    if (!(key in properties) || key in values) continue;
    const words = properties[key]?.enum?.map((word): Choice => ({ word }));
    const given = options.flags[key];
    let answer: string | null = null;
    if (typeof given === 'string') answer = words ? wordOf(key, given, words) : given.trim().replace(/\s+/g, ' ');
    else if ((required.includes(key) || key === 'title') && !options.flags.yes)
      answer = await askKey(type, key, words, properties[key]?.description, effects, catalogue);
    if (answer === null && required.includes(key) && typeof given !== 'string' && !options.flags.yes)
      effects.out(phrase('Left open: "{0}" must be filled in later; "kerfmark check" reminds you.\n', key));
    if (answer !== null && answer !== '') values[key] = answer;
  }
  const objects = catalogue.ofType('object');
  // Of one object alone every event is; it is written down, so that it can be seen and changed.
  if (type === 'event' && values.objects === undefined && objects.length === 1) values.objects = objects[0]?.id ?? '';
  return values;
}

function wordOf(key: string, given: string, words: readonly Choice[]): string {
  const word = chosen(given, words);
  if (word !== null && !/^\d+$/.test(given.trim())) return word;
  const list = words.map((one) => one.word);
  const [near] = nearest(given.trim(), list, 1);
  throw new Fault(
    phrase(
      '"{0}" is not one of the words for {1}.{2} The words are: {3}.',
      given,
      key,
      near ? phrase(' Did you mean "{0}"?', near) : '',
      list.join(', '),
    ),
  );
}

async function askKey(
  type: EntryType,
  key: string,
  words: readonly Choice[] | undefined,
  description: string | undefined,
  effects: Effects,
  catalogue: Catalogue,
): Promise<string | null> {
  if (key === 'title') return askText(effects, phrase('Its title, in a few words: '));
  if (words) return askChoice(effects, key, words);
  const note = noteOfKey(ENTRY_SCHEMAS[type], key);
  if (!note?.refersTo || note.orWords)
    return askText(effects, inRow([key, description ? inRow([' (', description, ')'], '') : '', ': '], ''));
  const fitting = catalogue.entries
    .filter((entry) => note.refersTo === 'any' || note.refersTo?.includes(entry.type))
    .map((entry): Choice => ({ word: entry.id, meaning: titleOf(entry) }));
  const only = fitting.length === 1 ? (fitting[0]?.word ?? null) : null;
  if (fitting.length > 0 && fitting.length <= MOST_LISTED)
    return askChoice(effects, phrase('{0}, which entry', key), fitting, only);
  const kinds = note.refersTo === 'any' ? phrase('an entry') : oneOf(note.refersTo ?? []);
  return askText(effects, phrase('{0}, the id of {1}: ', key, kinds));
}

/** The date from the flag, or asked for where the type has one. */
async function dateOf(type: EntryType, options: Options, effects: Effects): Promise<NewDate | null> {
  const typed = options.flags.date;
  const isStated = STATED.includes(type);
  const isAsked = (isStated || WHEN[type] !== undefined) && !options.flags.yes;
  if (typeof typed !== 'string' && !isAsked) return null;
  const date =
    typeof typed === 'string'
      ? await confirmDate(effects, typed, options.flags.yes === true)
      : await askDate(effects, phrase('When?'));
  if (date === null || !isStated || options.flags.yes) return withGrade(date, options.flags.grade);
  const grade =
    options.flags.grade ??
    (await askChoice(
      effects,
      phrase('How sure is that date?'),
      GRADES.map((word) => ({ word })),
      'possible',
    ));
  const why = await askText(effects, phrase('Why so sure? Enter to leave that open: '));
  return { ...withGrade(date, grade), ...(why === null ? {} : { why }) } as NewDate;
}

function withGrade(date: NewDate | null, grade: unknown): NewDate | null {
  if (date === null || !GRADES.includes(grade as Grade)) return date;
  return { ...date, grade: grade as Grade };
}

/** The id from the flag; else one made from the title, which may be changed. */
async function idOf(
  type: EntryType,
  title: string,
  taken: ReadonlySet<string>,
  options: Options,
  effects: Effects,
): Promise<string> {
  const given = options.flags.id;
  const proposed = freeId(type, title, taken);
  const problemOf = (id: string): Said | null => {
    if (!ID_SHAPE.test(id)) return phrase('"{0}" cannot be an id: letters, digits, hyphens and dots only.', id);
    return taken.has(id.toLowerCase()) ? phrase('The id "{0}" is taken already.', id) : null;
  };
  if (typeof given === 'string') {
    const problem = problemOf(given);
    if (problem !== null) throw new Fault(phrase('{0} Choose another with --id.', problem));
    return given;
  }
  if (options.flags.yes) return proposed;
  const first: Said = phrase('Its id, kept for ever (Enter: {0}): ', proposed);
  for (let words: Said = first; ; ) {
    const id = (await askText(effects, words)) ?? proposed;
    const problem = problemOf(id);
    if (problem === null) return id;
    words = phrase('{0} Another (Enter: {1}): ', problem, proposed);
  }
}
