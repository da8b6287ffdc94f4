import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { nearest } from '../base/nearest.ts';
import { fromWords } from '../dates/from-words.ts';
import { isDateProblem, readDate } from '../dates/read-date.ts';
import type { Sense } from '../dates/sense.ts';
import { ENTRY_TYPES, type EntryType } from '../model/entry-type-names.ts';
import { jsonSchemaOf } from '../model/json-schema.ts';
import { readWorkspace } from '../reading/reading.ts';
import { type Command, folderOf, type Options } from './commands.ts';
import type { Effects } from './effects.ts';
import { Fault, loadWorkspace } from './load-workspace.ts';

/** Letters in front of the ids of each type, and the folder where new entries are put. */
const HOMES: Readonly<Record<EntryType, readonly [prefix: string, folder: string]>> = {
  workspace: ['workspace', ''],
  object: ['OB', 'objects'],
  evidence: ['PE', 'evidence'],
  examination: ['EX', 'evidence'],
  survey: ['SV', 'evidence'],
  event: ['EV', 'events'],
  claim: ['CL', 'claims'],
  holding: ['HO', 'holdings'],
  title: ['TI', 'titles'],
  source: ['SO', 'sources'],
  party: ['PA', 'parties'],
  place: ['PL', 'places'],
  figure: ['FI', 'figures'],
  search: ['SE', 'research'],
  question: ['QU', 'research'],
  reading: ['RD', 'research'],
  inquiry: ['IN', 'letters'],
  'request-for-return': ['RQ', 'letters'],
  response: ['RE', 'letters'],
  'reference-date': ['RF', 'laws'],
};

/** Keys that may be given as flags; a date may be typed as people write it. */
const ASKED = [
  'kind',
  'object',
  'objects',
  'panel',
  'about',
  'source',
  'holder',
  'capacity',
  'institution',
  'is',
  'grade',
  'repository',
  'for',
  'outcome',
  'state',
  'asserted-by',
  'interest',
  'ground',
  'file',
  'alternative',
  'technique',
  'table',
  'received',
  'from',
  'jurisdiction',
  'standing',
  'how-sure',
  'proposition',
];

export const newEntry: Command = {
  name: 'new',
  summary: 'writes a commented file for a new entry; nothing is ever overwritten',
  usage: 'kerfmark new TYPE [--title TEXT] [--id ID] [--date WORDS] [--KEY VALUE ...] [--yes] [--in FOLDER]',
  examples: [
    'kerfmark new event --title "Taken off the wall" --kind removal --date "spring 1926"',
    'kerfmark new source',
  ],
  words: 1,
  flags: {
    title: 'value',
    id: 'value',
    date: 'value',
    yes: 'switch',
    ...Object.fromEntries(ASKED.map((key) => [key, 'value' as const])),
  },
  async run(options, effects) {
    const [type] = options.words;
    if (!ENTRY_TYPES.includes(type as EntryType)) {
      const [near] = type === undefined ? [] : nearest(type, ENTRY_TYPES, 1);
      throw new Fault(
        `${type === undefined ? 'Which type?' : `There is no type "${type}".${near ? ` Did you mean "${near}"?` : ''}`} The types are: ${ENTRY_TYPES.join(', ')}.`,
      );
    }
    const folder = folderOf(options, effects);
    const taken = await takenIds(folder);
    const values = await askFor(type as EntryType, options, effects);
    const id = String(options.flags.id ?? freeId(type as EntryType, values.title ?? '', taken));
    if (taken.has(id.toLowerCase())) throw new Fault(`The id "${id}" is taken already. Choose another with --id.`);
    const date = await askDate(options, effects);
    const file = await writeNew(folder, type as EntryType, id, entryText(type as EntryType, id, values, date));
    effects.out(
      `Written: ${path.relative(effects.cwd, file)}\nOpen it in an editor, fill it in, then type: kerfmark check\n`,
    );
    return 0;
  },
};

async function takenIds(folder: string): Promise<ReadonlySet<string>> {
  const { catalogue, leftOut } = readWorkspace(await loadWorkspace(folder));
  return new Set([...catalogue.entries.map((entry) => entry.id), ...leftOut].map((id) => id.toLowerCase()));
}

interface KeySchema {
  readonly enum?: readonly string[];
  readonly type?: string | readonly string[];
  readonly description?: string;
}

function schemaOf(type: EntryType): {
  readonly required: readonly string[];
  readonly properties: Readonly<Record<string, KeySchema>>;
} {
  const schema = jsonSchemaOf(type) as { required?: string[]; properties?: Record<string, KeySchema> };
  return { required: schema.required ?? [], properties: schema.properties ?? {} };
}

async function askFor(type: EntryType, options: Options, effects: Effects): Promise<Record<string, string>> {
  const { required, properties } = schemaOf(type);
  const values: Record<string, string> = {};
  for (const key of ['title', ...required.filter((one) => !['id', 'type', 'title', 'says'].includes(one)), ...ASKED]) {
    if (!(key in properties) || key in values) continue;
    const given = options.flags[key];
    const words = properties[key]?.enum;
    const question = `${key}${words ? ` (${words.join(', ')})` : ''}: `;
    const answer =
      typeof given === 'string'
        ? given
        : required.includes(key) && !options.flags.yes
          ? await effects.ask(question)
          : null;
    if (answer === null || answer.trim() === '') continue;
    if (words && !words.includes(answer.trim())) {
      const [near] = nearest(answer.trim(), words, 1);
      throw new Fault(
        `"${answer}" is not one of the words for ${key}.${near ? ` Did you mean "${near}"?` : ''} The words are: ${words.join(', ')}.`,
      );
    }
    values[key] = answer.trim().replace(/\s+/g, ' ');
  }
  return values;
}

interface NewDate {
  readonly edtf: string;
  readonly sense: Sense | null;
  readonly asWritten: string | null;
}

/** A date as typed: EDTF is taken as it is; words are turned into EDTF, offered, and written after a yes. */
async function askDate(options: Options, effects: Effects): Promise<NewDate | null> {
  const typed = options.flags.date;
  if (typeof typed !== 'string') return null;
  const settings = { circa: { year: 0, decade: 0, century: 0, month: 0, day: 0 }, sunsetDays: 0 };
  const direct = readDate(typed, 'gregorian', settings);
  if (!isDateProblem(direct) && direct.warnings.length === 0) return { edtf: typed, sense: null, asWritten: null };
  const read = fromWords(typed);
  if (!read)
    throw new Fault(
      `"${typed}" is not understood as a date. Write for example: 1926, April 1926, 12 April 1926, spring 1926, about 1926, before 1924, between 1925 and 1931.`,
    );
  const edtf = readDate(read.edtf, 'gregorian', settings);
  if (isDateProblem(edtf))
    throw new Fault(`${edtf.message[0]?.toUpperCase()}${edtf.message.slice(1)}. Mend: ${edtf.mend}`);
  const words = `"${typed}" will be written as ${read.edtf}${read.sense ? `, sense: ${read.sense}` : ''}`;
  if (!options.flags.yes) {
    const answer = await effects.ask(`${words}. Is that right? (yes/no) `);
    if (answer === null) throw new Fault(`${words}. Type the command again with --yes to accept that.`);
    if (!/^y/i.test(answer)) throw new Fault('Nothing was written.');
  }
  return { ...read, asWritten: typed };
}

/** An id made from the title: EV-taken-off-the-wall; a number is added where it is taken. */
export function freeId(type: EntryType, title: string, taken: ReadonlySet<string>): string {
  const [prefix] = HOMES[type];
  if (type === 'workspace') return 'workspace';
  const plain = title.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
  const words = (plain.match(/[a-z0-9]+/g) ?? []).filter((word) => !['the', 'a', 'of', 'an'].includes(word));
  const stem = words.length > 0 ? `${prefix}-${words.slice(0, 5).join('-')}` : `${prefix}-1`;
  if (!taken.has(stem.toLowerCase())) return stem;
  for (let number = 2; ; number += 1) {
    const candidate = words.length > 0 ? `${stem}-${number}` : `${prefix}-${number}`;
    if (!taken.has(candidate.toLowerCase())) return candidate;
  }
}

/** Writes the file of a new entry into the folder of its type; never over another file. Returns its path. */
export async function writeNew(folder: string, type: EntryType, id: string, text: string): Promise<string> {
  const home = path.join(folder, 'entries', HOMES[type][1]);
  await mkdir(home, { recursive: true });
  const file = path.join(home, `${id}.md`);
  try {
    await writeFile(file, text, { flag: 'wx' });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
    throw new Fault(`${file} exists already and is left as it is. Choose another id with --id.`);
  }
  return file;
}

/** The text of a new entry: keys that were given, required keys to fill in, the others as comments. */
export function entryText(
  type: EntryType,
  id: string,
  values: Readonly<Record<string, string>>,
  date: NewDate | null,
): string {
  const { required, properties } = schemaOf(type);
  const lines = ['---', `id: ${id}`, `type: ${type}`];
  const dated = date === null ? [] : dateLines(type, date);
  for (const [key, property] of Object.entries(properties)) {
    if (['id', 'type', 'access', 'withhold', 'by', 'recorded', 'see', 'may-be-named'].includes(key)) continue;
    const comment = property.enum ? property.enum.join(' | ') : (property.description ?? '');
    const hint = comment === '' ? '' : `   # ${comment}`;
    if (dated.some((line) => line.startsWith(`${key}:`))) continue;
    if (values[key] !== undefined) lines.push(`${key}: ${quoted(values[key])}`);
    else if (required.includes(key)) lines.push(`${key}:${hint}`);
    else lines.push(`# ${key}:${hint}`);
  }
  return `${[...lines, ...dated, '---', '', 'Write here what speaks for this entry and what against it.'].join('\n')}\n`;
}

function dateLines(type: EntryType, date: NewDate): readonly string[] {
  const words = `date: "${date.edtf}"${date.sense ? `, sense: ${date.sense}` : ''}${date.asWritten ? `, as-written: ${quoted(date.asWritten)}` : ''}`;
  if (type === 'event')
    return [
      'stated:',
      `  - { ${words}, grade: possible }   # set the grade, and say why: established | probable | possible | conjectural`,
    ];
  if (type === 'holding') return ['held:', `  - { ${words}, grade: possible }   # or under begins / ends`];
  return type === 'claim' ? [`says: { ${words} }`] : [`# date: "${date.edtf}"`];
}

function quoted(text: string): string {
  return `"${text.replace(/\s+/g, ' ').replaceAll('\\', '\\\\').replaceAll('"', '\\"')}"`;
}
