import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { phrase } from '../base/said.ts';
import { titleOf } from '../model/catalogue.ts';
import { isOfType } from '../model/entry.ts';
import { readWorkspace } from '../reading/reading.ts';
import { CARD_ENTRY, QUICK_CARD } from '../reports/quick-card.ts';
import { sheetData, sheetTable } from '../reports/survey-sheet.ts';
import { folderOf, type RunCommand } from './commands.ts';
import { Fault } from './fault.ts';
import { loadWorkspace } from './load-workspace.ts';
import { setInPrint } from './write-pdf.ts';

/** Most rows of traces on a sheet: more would not be written by hand on A4. */
const MOST_ROWS = 14;

export const sheet: RunCommand = async (options, effects) => {
  const [target] = options.words;
  const folder = folderOf(options, effects);
  const { catalogue } = readWorkspace(await loadWorkspace(folder));
  const found = target === undefined ? null : catalogue.resolve(target);
  const object = found && isOfType(found.entry, 'object') ? found.entry : null;
  const panel = object?.keys.panels?.find((one) => one.id === found?.part?.split('.')[0]) ?? null;
  if (target !== undefined && (object === null || panel === null))
    throw new Fault(
      phrase(
        'There is no panel "{0}". Write an object and its panel, such as {1}/A.',
        target,
        catalogue.ofType('object')[0]?.id ?? 'OB-1',
      ),
    );
  const rows = Number(options.flags.rows ?? MOST_ROWS);
  if (!Number.isInteger(rows) || rows < 1 || rows > 200)
    throw new Fault(phrase('"{0}" is no number of rows from 1 to 200.', String(options.flags.rows)));
  const institution = catalogue.workspace?.keys.institution ?? '';
  const data = sheetData(object, panel, object ? titleOf(object) : '', institution, rows);
  const pdf = await setInPrint('sheet.typ', { '/sheet.json': Buffer.from(data) }, effects.today());
  const out = path.resolve(effects.cwd, String(options.flags.out ?? path.join(folder, 'documents')));
  await mkdir(out, { recursive: true });
  const name = target === undefined ? 'survey' : `survey-${target.replace('/', '-')}`;
  await writeFile(path.join(out, `${name}.pdf`), pdf);
  const table = path.join(out, `${name}.csv`);
  const isNew = await writeFile(table, sheetTable(), { flag: 'wx' }).then(
    () => true,
    () => false,
  );
  const from = (file: string): string => path.relative(effects.cwd, file) || file;
  effects.out(
    phrase(
      'Written: {0}\n{1}: {2}\nWrite on the sheet; type it into the table; lay the table beside a survey entry ("kerfmark new survey").\n',
      from(path.join(out, `${name}.pdf`)),
      isNew ? phrase('Written') : phrase('There already, left as it is'),
      from(table),
    ),
  );
  return 0;
};

export const card: RunCommand = async (options, effects) => {
  const out = path.resolve(effects.cwd, String(options.flags.out ?? '.'));
  await mkdir(out, { recursive: true });
  const data = JSON.stringify({ entry: CARD_ENTRY, parts: QUICK_CARD });
  const file = path.join(out, 'quick-card.pdf');
  await writeFile(file, await setInPrint('card.typ', { '/card.json': Buffer.from(data) }, effects.today()));
  effects.out(phrase('Written: {0}\n', path.relative(effects.cwd, file) || file));
  return 0;
};
