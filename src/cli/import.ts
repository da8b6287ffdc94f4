import { phrase } from '../base/said.ts';
import type { RunCommand } from './commands.ts';
import { Fault } from './fault.ts';
import { importLine } from './import-line.ts';
import { importSources } from './import-sources.ts';
import { importTable } from './import-table.ts';

export const importCommand: RunCommand = async (options, effects) => {
  const [what, name] = options.words;
  if (name === undefined || (what !== 'line' && what !== 'table' && what !== 'sources'))
    throw new Fault(
      phrase(
        'Type: kerfmark import line FILE (a text file with one provenance line), import table FILE (CSV or XLSX), or import sources FILE (CSL-JSON or BibTeX).',
      ),
    );
  if (what === 'line') return importLine(name, options, effects);
  return what === 'table' ? importTable(name, options, effects) : importSources(name, options, effects);
};
