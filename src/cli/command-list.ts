import { phrase } from '../base/said.ts';
import { type Command, DOCUMENT_FLAGS, LINE_FLAGS } from './commands.ts';
import { NEW_ENTRY_KEYS } from './new-entry-keys.ts';

/** All commands, in the order in which the help tells them. What a command needs is loaded when it is called. */
export const COMMANDS: readonly Command[] = [
  {
    name: 'begin',
    summary: phrase('asks a handful of questions and lays out a new workspace'),
    usage: 'kerfmark begin [--in FOLDER] [--institution TEXT] [--title TEXT] [--object TEXT] [--panels A,B,C]',
    examples: [
      'kerfmark begin',
      'kerfmark begin --in lerakos --institution "Our museum" --title "The panels" --object "Three panels" --panels A,B,C',
    ],
    flags: { institution: 'value', title: 'value', object: 'value', panels: 'value' },
    load: async () => (await import('./begin.ts')).begin,
  },
  {
    name: 'new',
    summary: phrase('asks what an entry should say and writes its file; nothing is ever overwritten'),
    usage: 'kerfmark new [TYPE] [--title TEXT] [--id ID] [--date WORDS] [--KEY VALUE ...] [--yes] [--in FOLDER]',
    examples: [
      'kerfmark new',
      'kerfmark new source',
      'kerfmark new event --title "Taken off the wall" --kind removal --date "spring 1926" --yes',
    ],
    words: 1,
    flags: {
      title: 'value',
      id: 'value',
      date: 'value',
      yes: 'switch',
      ...Object.fromEntries(NEW_ENTRY_KEYS.map((key) => [key, 'value' as const])),
    },
    load: async () => (await import('./new-entry.ts')).newEntry,
  },
  {
    name: 'import',
    summary: phrase(
      'reads a provenance line, a table (CSV, XLSX) or a list of sources (CSL-JSON, BibTeX) into draft entries; nothing is overwritten',
    ),
    usage:
      'kerfmark import line|table|sources FILE [--json] [--object OB] [--source SO] [--grade G] [--type T] [--map MAP.yaml] [--save-map MAP.yaml] [--write] [--dry-run] [--in FOLDER]',
    examples: [
      'kerfmark import line old-line.txt --json',
      'kerfmark import line old-line.txt --object OB-panels --source SO-catalogue --dry-run',
      'kerfmark import line old-line.txt --latest-first --periods-direct --json',
      'kerfmark import table survey.xlsx --type evidence --object OB-panels --save-map survey-map.yaml',
      'kerfmark import table survey.xlsx --type evidence --object OB-panels --map survey-map.yaml --write',
      'kerfmark import sources library.bib --write',
    ],
    words: 2,
    flags: {
      json: 'switch',
      object: 'value',
      source: 'value',
      grade: 'value',
      'dry-run': 'switch',
      type: 'value',
      map: 'value',
      'save-map': 'value',
      write: 'switch',
      ...LINE_FLAGS,
    },
    load: async () => (await import('./import.ts')).importCommand,
  },
  {
    name: 'check',
    summary: phrase('reads all entries and says what is wrong, where, and how to mend it'),
    usage: 'kerfmark check [--in FOLDER] [--format text|json|sarif | --json] [--audience A]',
    examples: ['kerfmark check', 'kerfmark check --in ../lerakos --format sarif'],
    flags: { format: 'value', json: 'switch' },
    load: async () => (await import('./check.ts')).check,
  },
  {
    name: 'explain',
    summary: phrase('tells more of a message: why it is given, an example with the fault and one without'),
    usage: 'kerfmark explain CODE',
    examples: ['kerfmark explain date-winter', 'kerfmark explain yaml-tab'],
    words: 1,
    flags: {},
    load: async () => (await import('./explain.ts')).explain,
  },
  {
    name: 'dates',
    summary: phrase('prints the range of every moment at each grade, and what contradicts what'),
    usage:
      'kerfmark dates [--in FOLDER] [--json] [--audience A] [--without ID,ID]   (a source stands for all that goes back to it alone)',
    examples: [
      'kerfmark dates',
      'kerfmark dates --json --audience public',
      'kerfmark dates --without CL-4,EV-removal#2',
      'kerfmark dates --without SO-ledger',
    ],
    flags: { json: 'switch', without: 'value' },
    load: async () => (await import('./dates.ts')).dates,
  },
  {
    name: 'why',
    summary: phrase('tells why the dates of an entry are what they are, statement by statement'),
    usage:
      'kerfmark why ID [--grade established|probable|possible|conjectural] [--without ID,ID] [--json] [--in FOLDER]',
    examples: ['kerfmark why EV-removal', 'kerfmark why HO-3 --grade possible'],
    words: 1,
    flags: { grade: 'value', without: 'value', json: 'switch' },
    load: async () => (await import('./why.ts')).why,
  },
  {
    name: 'worth',
    summary: phrase(
      'tells what each statement is worth: what widens, narrows or is resolved without it; and what to check first',
    ),
    usage: 'kerfmark worth [STATEMENT] [--json] [--in FOLDER] [--audience A]',
    examples: ['kerfmark worth', 'kerfmark worth CL-4', 'kerfmark worth "EV-removal#2"', 'kerfmark worth --json'],
    words: 1,
    flags: { json: 'switch' },
    load: async () => (await import('./worth.ts')).worth,
  },
  {
    name: 'references',
    summary: phrase(
      'tells how events and holdings lie to the reference dates chosen, at each grade: the order of dates only',
    ),
    usage: 'kerfmark references [--json] [--list] [--offered] [--in FOLDER] [--audience A]',
    examples: [
      'kerfmark references',
      'kerfmark references --list',
      'kerfmark references --offered',
      'kerfmark references --json',
    ],
    flags: { json: 'switch', list: 'switch', offered: 'switch' },
    load: async () => (await import('./references.ts')).references,
  },
  {
    name: 'custody',
    summary: phrase(
      'tells who had each piece, the gaps with their least and greatest length, titles as asserted, and the provenance line',
    ),
    usage: 'kerfmark custody [--json] [--latest-first] [--periods-direct] [--in FOLDER] [--audience A]',
    examples: ['kerfmark custody', 'kerfmark custody --json', 'kerfmark custody --latest-first'],
    flags: { json: 'switch', ...LINE_FLAGS },
    load: async () => (await import('./custody.ts')).custody,
  },
  {
    name: 'panels',
    summary: phrase(
      'measures the panels: areas, sections, joints, cut motifs, weights, layer order, edges that may join',
    ),
    usage: 'kerfmark panels [--json] [--in FOLDER] [--audience A]',
    examples: ['kerfmark panels', 'kerfmark panels --json'],
    flags: { json: 'switch' },
    load: async () => (await import('./panels.ts')).panels,
  },
  {
    name: 'answer',
    summary: phrase(
      'composes the answer to an inquiry out of the file; keeps it as sent; tells what has changed since',
    ),
    usage:
      'kerfmark answer INQUIRY [--language TAG] [--json | --keep | --changes | --format pdf,docx,md,html] [--in FOLDER] [--audience A]',
    examples: ['kerfmark answer IN-2024-1', 'kerfmark answer IN-2024-1 --keep', 'kerfmark answer IN-2024-1 --changes'],
    words: 1,
    flags: { ...DOCUMENT_FLAGS, keep: 'switch', changes: 'switch' },
    load: async () => (await import('./answer.ts')).answer,
  },
  {
    name: 'file',
    summary: phrase('writes the provenance file of an object: PDF for the archive, DOCX, Markdown, HTML'),
    usage:
      'kerfmark file OBJECT [--format pdf,docx,md,html] [--out FOLDER] [--language TAG] [--json] [--in FOLDER] [--audience A]',
    examples: ['kerfmark file OB-panels', 'kerfmark file OB-panels --format pdf,docx --audience public'],
    words: 1,
    flags: DOCUMENT_FLAGS,
    load: async () => (await import('./file.ts')).fileCommand,
  },
  {
    name: 'appendix',
    summary: phrase(
      'writes the appendix to a publication of an object: evidence, technique, plates, documents, nil results',
    ),
    usage:
      'kerfmark appendix OBJECT [--format pdf,docx,md,html] [--out FOLDER] [--language TAG] [--json] [--in FOLDER] [--audience A]',
    examples: ['kerfmark appendix OB-panels --format docx', 'kerfmark appendix OB-panels --audience public'],
    words: 1,
    flags: DOCUMENT_FLAGS,
    load: async () => (await import('./file.ts')).appendix,
  },
  {
    name: 'export',
    summary: phrase(
      'writes the file for other programs: Linked Art, CSV registers, one JSON, or all of it as an RO-Crate with checksums',
    ),
    usage:
      'kerfmark export [--format linked-art,csv,json,sources,crate] [--out FOLDER] [--json] [--in FOLDER] [--audience A]',
    examples: ['kerfmark export --audience public', 'kerfmark export --format csv --out ../tables'],
    flags: { format: 'value', out: 'value', json: 'switch' },
    load: async () => (await import('./export.ts')).exportCommand,
  },
  {
    name: 'sheet',
    summary: phrase('prints a survey sheet for the store-room (A4), and lays a table with the same columns beside it'),
    usage: 'kerfmark sheet [OBJECT/PANEL] [--rows N] [--out FOLDER] [--in FOLDER]',
    examples: ['kerfmark sheet OB-panels/A', 'kerfmark sheet'],
    words: 1,
    flags: { rows: 'value', out: 'value' },
    load: async () => (await import('./sheet.ts')).sheet,
  },
  {
    name: 'card',
    summary: phrase('prints the quick card: dates, grades, types, commands on one page'),
    usage: 'kerfmark card [--out FOLDER]',
    examples: ['kerfmark card'],
    flags: { out: 'value' },
    load: async () => (await import('./sheet.ts')).card,
  },
  {
    name: 'serve',
    summary: phrase('shows the site on this computer only, and shows every change of an entry at once'),
    usage: 'kerfmark serve [--in FOLDER] [--audience A] [--language L] [--port N]',
    examples: ['kerfmark serve', 'kerfmark serve --port 9000 --audience public'],
    flags: { port: 'value', language: 'value' },
    load: async () => (await import('./serve.ts')).serve,
  },
  {
    name: 'build',
    summary: phrase('builds the research site into a folder; the last good site stays until the new one is whole'),
    usage:
      'kerfmark build [--in FOLDER] [--audience public|internal|restricted] [--language L] [--only OBJECT,... | --only whole] [--out FOLDER] [--json]',
    examples: [
      'kerfmark build',
      'kerfmark build --language fr --out ../site-fr',
      'kerfmark build --audience public --out ../public-site',
      'kerfmark build --only OB-panels --out ../part-1',
    ],
    flags: { out: 'value', language: 'value', only: 'value', json: 'switch' },
    load: async () => (await import('./build.ts')).build,
  },
  {
    name: 'number',
    summary: phrase('writes the missing refs of inline statements, so that later insertions rename none'),
    usage: 'kerfmark number [--in FOLDER] [--dry-run] [--json]',
    examples: ['kerfmark number --dry-run', 'kerfmark number'],
    flags: { 'dry-run': 'switch', json: 'switch' },
    load: async () => (await import('./number.ts')).number,
  },
  {
    name: 'upgrade',
    summary: phrase('brings the entries of an older workspace to the present format; shows first what would change'),
    usage: 'kerfmark upgrade [--in FOLDER] [--dry-run] [--json]',
    examples: ['kerfmark upgrade --dry-run', 'kerfmark upgrade'],
    flags: { 'dry-run': 'switch', json: 'switch' },
    load: async () => (await import('./upgrade.ts')).upgrade,
  },
  {
    name: 'schema',
    summary: phrase('prints the JSON Schema of a type of entry, for editors'),
    usage: 'kerfmark schema [TYPE] [--out FOLDER | --editor [--in FOLDER] | --markdown]',
    examples: ['kerfmark schema event', 'kerfmark schema --editor --in ../my-panels', 'kerfmark schema --out schemas'],
    words: 1,
    flags: { out: 'value', markdown: 'switch', editor: 'switch' },
    load: async () => (await import('./schema.ts')).schema,
  },
];
