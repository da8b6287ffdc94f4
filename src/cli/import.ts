import { type Command, LINE_FLAGS } from './commands.ts';
import { importLine } from './import-line.ts';
import { importSources } from './import-sources.ts';
import { importTable } from './import-table.ts';
import { Fault } from './load-workspace.ts';

export const importCommand: Command = {
  name: 'import',
  summary:
    'reads a provenance line, a table (CSV, XLSX) or a list of sources (CSL-JSON, BibTeX) into draft entries; nothing is overwritten',
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
  async run(options, effects) {
    const [what, name] = options.words;
    if (name === undefined || (what !== 'line' && what !== 'table' && what !== 'sources'))
      throw new Fault(
        'Type: kerfmark import line FILE (a text file with one provenance line), import table FILE (CSV or XLSX), or import sources FILE (CSL-JSON or BibTeX).',
      );
    if (what === 'line') return importLine(name, options, effects);
    return what === 'table' ? importTable(name, options, effects) : importSources(name, options, effects);
  },
};
