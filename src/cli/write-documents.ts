import { mkdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { standaloneDocument } from '../../site/standalone-document.tsx';
import { inRow, phrase } from '../base/said.ts';
import type { CaseFile } from '../findings/case-file.ts';
import { caseFileReport } from '../findings/case-file-report.ts';
import type { ReportDocument } from '../reports/document.ts';
import { behindOf } from '../reports/source-book.ts';
import { annotate } from '../typeset/annotate.ts';
import { documentMarkdown } from '../typeset/markdown.ts';
import type { Picture } from '../typeset/print-data.ts';
import type { Options } from './commands.ts';
import type { Effects } from './effects.ts';
import { Fault } from './fault.ts';
import { packageRoot } from './package-root.ts';
import { writeDocx } from './write-docx.ts';
import { makePdf } from './write-pdf.ts';

/** Forms in which a document can leave the file. */
const FORMATS = ['pdf', 'docx', 'md', 'html'] as const;

/** What is written, under which name, from which file. */
export interface DocumentJob {
  readonly document: ReportDocument;
  readonly pictures: readonly Picture[];
  readonly file: CaseFile;
  /** File name without its ending. */
  readonly name: string;
  readonly folder: string;
}

/** Writes a document in the forms asked for (`--format pdf,docx`; PDF where nothing is said), and tells where. */
export async function writeDocuments(job: DocumentJob, options: Options, effects: Effects): Promise<void> {
  const wanted = String(options.flags.format ?? 'pdf')
    .split(',')
    .map((one) => one.trim().toLowerCase());
  const strange = wanted.filter((one) => !(FORMATS as readonly string[]).includes(one));
  if (strange.length > 0)
    throw new Fault(
      phrase('"{0}" is no form of a document. The forms are: {1}.', strange.join(', '), FORMATS.join(', ')),
    );
  const out = path.resolve(effects.cwd, String(options.flags.out ?? path.join(job.folder, 'documents')));
  await mkdir(out, { recursive: true });
  const built = effects.today();
  const author = job.file.catalogue.workspace?.keys.institution ?? '';
  const set = annotate(job.document, behindOf(job.file).book);
  const written: string[] = [];
  const keep = async (ending: string, bytes: Uint8Array | string): Promise<void> => {
    const name = path.join(out, `${job.name}.${ending}`);
    await writeFile(name, bytes);
    written.push(name);
  };
  for (const format of FORMATS.filter((one) => wanted.includes(one))) {
    effects.progress?.({ what: phrase('Setting {0} as {1}', job.name, format.toUpperCase()) });
    if (format === 'pdf') {
      const bytes = Buffer.from(JSON.stringify(caseFileReport(job.file), null, 1));
      const attachment = { bytes, description: 'The case file, for machines (kerfmark-case-file/1)' };
      await keep(
        'pdf',
        await makePdf({ document: set, pictures: job.pictures, built, author, attachment, folder: job.folder }),
      );
    }
    if (format === 'docx') await keep('docx', await writeDocx(set, job.pictures, built, author));
    if (format === 'md') {
      const pictureName = (key: string): string | null =>
        job.pictures.some((one) => one.key === key) ? `${job.name}-${key}.svg` : null;
      for (const { key, svg } of job.pictures) await writeFile(path.join(out, `${job.name}-${key}.svg`), svg);
      await keep('md', documentMarkdown(job.document, { ...behindOf(job.file), picture: pictureName }));
    }
    if (format === 'html') {
      const style = await readFile(path.join(packageRoot(), 'site', 'styles', 'document.css'), 'utf8');
      await keep('html', standaloneDocument(set, job.pictures, { style, built }));
    }
  }
  if (options.flags.json)
    effects.out(inRow([JSON.stringify({ format: 'kerfmark-written/1', files: written }, null, 2), '\n'], ''));
  else for (const name of written) effects.out(phrase('Written: {0}\n', path.relative(effects.cwd, name) || name));
}
