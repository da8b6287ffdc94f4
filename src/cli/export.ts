import { mkdir, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { inRow, phrase } from '../base/said.ts';
import schema from '../exchange/case-file-schema.json' with { type: 'json' };
import { linkedArt } from '../exchange/linked-art.ts';
import { checkLinkedArt } from '../exchange/linked-art-check.ts';
import { registerTables } from '../exchange/registers-csv.ts';
import { manifestText, type PackedFile, roCrate } from '../exchange/ro-crate.ts';
import { bibtexOf, cslOf } from '../exchange/sources.ts';
import type { CaseFile } from '../findings/case-file.ts';
import { caseFileReport } from '../findings/case-file-report.ts';
import { isOfType } from '../model/entry.ts';
import { compute } from '../pipeline.ts';
import { audienceOf, folderOf, type RunCommand } from './commands.ts';
import { Fault } from './fault.ts';
import { loadWorkspace, sha256Of } from './load-workspace.ts';
import { packageVersion } from './package-root.ts';

/** Forms in which the whole file leaves. */
const FORMATS = ['linked-art', 'csv', 'json', 'sources', 'crate'] as const;

/** File that marks a folder as an export of this program. */
const MARKER = 'kerfmark-export.json';

export const exportCommand: RunCommand = async (options, effects) => {
  const folder = folderOf(options, effects);
  const { file, errors } = compute(await loadWorkspace(folder), audienceOf(options), {
    spoken: effects.sayer.language,
  });
  if (errors.length > 0)
    throw new Fault(phrase('There are errors in the entries; "kerfmark check" lists them. Mend them first.'));
  const wanted = String(options.flags.format ?? 'crate')
    .split(',')
    .map((one) => one.trim());
  const strange = wanted.filter((one) => !(FORMATS as readonly string[]).includes(one));
  if (strange.length > 0)
    throw new Fault(phrase('"{0}" is no form of export. The forms are: {1}.', strange.join(', '), FORMATS.join(', ')));
  const out = path.resolve(effects.cwd, String(options.flags.out ?? path.join(folder, 'export')));
  await emptyOwn(out);
  const isWhole = wanted.includes('crate');
  const files = [
    ...(isWhole || wanted.includes('linked-art') ? linkedArtFiles(file) : []),
    ...(isWhole || wanted.includes('csv') ? csvFiles(file) : []),
    ...(isWhole || wanted.includes('json') ? jsonFiles(file) : []),
    ...(isWhole || wanted.includes('sources') ? sourceFiles(file) : []),
    ...(isWhole ? await entryFiles(file, folder) : []),
  ];
  const packed: PackedFile[] = [];
  for (const one of files) {
    const target = path.join(out, one.path);
    await mkdir(path.dirname(target), { recursive: true });
    await writeFile(target, one.bytes);
    packed.push({
      path: one.path,
      bytes: one.bytes.length,
      sha256: sha256Of(one.bytes),
      mediaType: one.mediaType,
      name: one.name,
    });
  }
  if (isWhole) {
    const facts = { built: effects.today(), version: await packageVersion() };
    await writeFile(path.join(out, 'ro-crate-metadata.json'), json(roCrate(file, packed, facts)));
    await writeFile(path.join(out, 'manifest-sha256.txt'), manifestText(packed));
  }
  await writeFile(
    path.join(out, MARKER),
    json({ format: 'kerfmark-export/1', audience: file.catalogue.audience, forms: wanted }),
  );
  if (options.flags.json) {
    const told = { format: 'kerfmark-written/1', audience: file.catalogue.audience, folder: out, files: packed };
    effects.out(inRow([JSON.stringify(told, null, 2), '\n'], ''));
    return 0;
  }
  effects.out(
    phrase(
      '{0} files written to {1}, for the audience {2}.\n',
      files.length,
      path.relative(effects.cwd, out) || out,
      file.catalogue.audience,
    ),
  );
  return 0;
};

interface OutFile {
  readonly path: string;
  readonly bytes: Buffer;
  readonly mediaType: string;
  readonly name: string;
}

function json(value: unknown): Buffer {
  return Buffer.from(`${JSON.stringify(value, null, 1)}\n`);
}

/** A record a file, and all of them in one; nothing where they break the rules of the standard. */
function linkedArtFiles(file: CaseFile): readonly OutFile[] {
  const records = linkedArt(file);
  const broken = checkLinkedArt(records);
  if (broken.length > 0) throw new Error(`records of Linked Art that break its rules: ${broken.join('; ')}`);
  const one = (name: string, value: unknown, words: string): OutFile => ({
    path: `linked-art/${name}.json`,
    bytes: json(value),
    mediaType: 'application/ld+json;profile="https://linked.art/ns/v1/linked-art.json"',
    name: words,
  });
  const all = {
    '@context': 'https://linked.art/ns/v1/linked-art.json',
    '@graph': records.map(({ '@context': _, ...rest }) => rest),
  };
  return [
    ...records.map((record) => one(record.id.split(/[/:]/).at(-1) as string, record, String(record._label))),
    one('all', all, 'All records of Linked Art'),
  ];
}

function csvFiles(file: CaseFile): readonly OutFile[] {
  return registerTables(file).map(({ name, csv }) => ({
    path: `registers/${name}.csv`,
    bytes: Buffer.from(`\ufeff${csv}`),
    mediaType: 'text/csv',
    name: `Register: ${name}`,
  }));
}

/** The sources for programs of literature: CSL-JSON for all, BibTeX for published works. */
function sourceFiles(file: CaseFile): readonly OutFile[] {
  const items = cslOf(file);
  return [
    {
      path: 'sources/sources.csl.json',
      bytes: json(items),
      mediaType: 'application/vnd.citationstyles.csl+json',
      name: 'Sources as CSL-JSON',
    },
    {
      path: 'sources/published.bib',
      bytes: Buffer.from(bibtexOf(items)),
      mediaType: 'application/x-bibtex',
      name: 'Published works as BibTeX',
    },
  ];
}

/** The case file, and the schema that says what is in it. */
function jsonFiles(file: CaseFile): readonly OutFile[] {
  const mediaType = 'application/json';
  return [
    {
      path: 'case-file.json',
      bytes: json(caseFileReport(file)),
      mediaType,
      name: 'The case file (kerfmark-case-file/1)',
    },
    {
      path: 'case-file.schema.json',
      bytes: json(schema),
      mediaType: 'application/schema+json',
      name: 'JSON Schema of the case file',
    },
  ];
}

/** The entries themselves, for those who may see every one of them whole; else they stay out, since texts cannot be cut. */
async function entryFiles(file: CaseFile, folder: string): Promise<readonly OutFile[]> {
  if (file.catalogue.holdsMore) return [];
  const names = new Set(file.catalogue.entries.map((entry) => entry.file));
  const figures = file.catalogue.entries.flatMap((entry) =>
    isOfType(entry, 'figure') ? [path.posix.join(path.posix.dirname(entry.file), entry.keys.file)] : [],
  );
  const files: OutFile[] = [];
  for (const name of [...names, ...figures].sort()) {
    const bytes = await readFile(path.join(folder, name)).catch(() => null);
    if (bytes === null || !path.resolve(folder, name).startsWith(path.join(folder, 'entries') + path.sep)) continue;
    files.push({
      path: name,
      bytes,
      mediaType: name.endsWith('.md') ? 'text/markdown' : 'application/octet-stream',
      name,
    });
  }
  return files;
}

/** Makes room for an export; a folder that holds anything else is never emptied. */
async function emptyOwn(out: string): Promise<void> {
  const names = await readdir(out).catch(() => null);
  if (names === null || names.length === 0) return;
  const isOwn = await stat(path.join(out, MARKER)).then(
    () => true,
    () => false,
  );
  if (!isOwn)
    throw new Fault(
      phrase(
        '{0} holds files that are no export of this program, so it is left as it is.\nName another folder with --out FOLDER.',
        out,
      ),
    );
  await rm(out, { recursive: true });
}
