import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import type { Grade } from '../base/grade.ts';
import { phrase } from '../base/said.ts';
import type { Sense } from '../dates/sense.ts';
import type { EntryType } from '../model/entry-type-names.ts';
import { jsonSchemaOf } from '../model/json-schema.ts';
import { TEMPLATE_TEXTS } from '../model/template-texts.ts';
import { Fault } from './fault.ts';

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

/** What JSON Schema says of a key. */
export interface KeySchema {
  readonly enum?: readonly string[];
  readonly type?: string | readonly string[];
  readonly description?: string;
}

/** The keys of a type, and those that must be there. */
export function schemaOf(type: EntryType): {
  readonly required: readonly string[];
  readonly properties: Readonly<Record<string, KeySchema>>;
} {
  const schema = jsonSchemaOf(type) as { required?: string[]; properties?: Record<string, KeySchema> };
  return { required: schema.required ?? [], properties: schema.properties ?? {} };
}

/** A date to be written into a new entry. */
export interface NewDate {
  readonly edtf: string;
  readonly sense: Sense | null;
  readonly asWritten: string | null;
  readonly grade?: Grade;
  readonly why?: string;
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
    throw new Fault(phrase('{0} exists already and is left as it is. Choose another id with --id.', file));
  }
  return file;
}

/**
 * The text of a new entry: keys that were given, required keys to fill in, the others as comments.
 * `when`: the key that holds the date, of types that have one.
 */
export function entryText(
  type: EntryType,
  id: string,
  values: Readonly<Record<string, string>>,
  date: NewDate | null,
  when: string | undefined = undefined,
): string {
  const { required, properties } = schemaOf(type);
  const lines = ['---', `id: ${id}`, `type: ${type}`];
  const dated = date === null ? [] : dateLines(type, date, when);
  for (const [key, property] of Object.entries(properties)) {
    if (['id', 'type', 'access', 'withhold', 'by', 'recorded', 'see', 'may-be-named'].includes(key)) continue;
    const comment = property.enum ? property.enum.join(' | ') : (property.description ?? '');
    const hint = comment === '' ? '' : `   # ${comment}`;
    if (dated.some((line) => line.startsWith(`${key}:`))) continue;
    if (values[key] !== undefined) lines.push(`${key}: ${quoted(values[key])}`);
    else if (key === 'grade' && date?.grade !== undefined) lines.push(`grade: ${date.grade}`);
    else if (required.includes(key)) lines.push(`${key}:${hint}`);
    else lines.push(`# ${key}:${hint}`);
  }
  return `${[...lines, ...dated, '---', '', TEMPLATE_TEXTS.entry].join('\n')}\n`;
}

function dateLines(type: EntryType, date: NewDate, when: string | undefined): readonly string[] {
  const { edtf, sense, asWritten } = date;
  // What was typed here is not what a document says, so it is no "as-written".
  const words = `date: "${edtf}"${sense ? `, sense: ${sense}` : ''}`;
  const grade = `grade: ${date.grade ?? 'possible'}${date.why ? `, why: ${quoted(date.why)}` : ''}`;
  const hint = date.grade ? '' : '   # set the grade, and say why: established | probable | possible | conjectural';
  if (type === 'event') return ['stated:', `  - { ${words}, ${grade} }${hint}`];
  if (type === 'holding') return ['held:', `  - { ${words}, ${grade} }   # or under begins / ends`];
  if (type === 'claim') return [`says: { ${words} }`, ...(date.why ? [`why: ${quoted(date.why)}`] : [])];
  // A key of its own holds no sense: "by 1923" is the time up to then.
  const open = sense === 'by' ? `../${edtf}` : sense === 'not-before' ? `${edtf}/..` : edtf;
  return [`${when ?? '# date'}: "${open}"${asWritten ? `   # typed: ${asWritten}` : ''}`];
}

function quoted(text: string): string {
  return `"${text.replace(/\s+/g, ' ').replaceAll('\\', '\\\\').replaceAll('"', '\\"')}"`;
}
