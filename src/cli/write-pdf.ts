import { readdir, readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import path from 'node:path';
import { phrase } from '../base/said.ts';
import type { SetDocument } from '../typeset/annotate.ts';
import { type Picture, picturePath, printData } from '../typeset/print-data.ts';
import { type FurtherScript, scriptsBeyond } from '../typeset/scripts.ts';
import { Fault } from './fault.ts';
import { packageRoot } from './package-root.ts';

/** What a PDF is made from. */
export interface PdfJob {
  readonly document: SetDocument;
  readonly pictures: readonly Picture[];
  readonly built: string;
  readonly author: string;
  /** The case file that is attached for machines; null for none. */
  readonly attachment: { readonly bytes: Buffer; readonly description: string } | null;
  /** Folder of the workspace, where further font packages may be installed. */
  readonly folder: string;
}

/** Weights of the shipped faces. */
const WEIGHTS = ['400Regular', '400Regular_Italic', '600SemiBold', '600SemiBold_Italic'];

/**
 * Sets a document as PDF/A-3a with the case file attached. The same pages are also exported as PDF/UA-1, which refuses
 * bad structure; that export is thrown away. Same input, same bytes: faces come from packages only, the date is given.
 */
export async function makePdf(job: PdfJob): Promise<Buffer> {
  const probe = printData(job.document, job.pictures, {
    built: job.built,
    author: job.author,
    faces: [],
    attachment: null,
  });
  const { scripts, unknown } = scriptsBeyond(probe);
  if (unknown.length > 0)
    throw new Fault(
      phrase(
        'No face is known for these letters: {0}. Leave them out of the PDF, or set them in DOCX.',
        unknown.slice(0, 12).join(' '),
      ),
    );
  const further = await furtherFonts(scripts, job.folder);
  const data = printData(job.document, job.pictures, {
    built: job.built,
    author: job.author,
    faces: [...new Set(further.map((one) => one.family))],
    attachment: job.attachment?.description ?? null,
  });
  const keys = job.pictures.map((one) => one.key);
  const files = {
    '/document.json': Buffer.from(data),
    ...(job.attachment ? { '/case-file.json': job.attachment.bytes } : {}),
    ...Object.fromEntries(job.pictures.map(({ key, svg }) => [picturePath(key, keys), Buffer.from(svg)])),
  };
  return setInPrint(
    'document.typ',
    files,
    job.built,
    further.map((one) => one.bytes),
  );
}

/**
 * Sets a template of site/styles with its files as PDF/A-3a, having seen that the same pages pass as PDF/UA-1. Faces
 * come from packages only, and a warning is a fault.
 * @param files what the template reads, by absolute path
 * @param built ISO date, the time of the PDF
 */
export async function setInPrint(
  template: string,
  files: Readonly<Record<string, Buffer>>,
  built: string,
  furtherFaces: readonly Buffer[] = [],
): Promise<Buffer> {
  const { NodeCompiler } = await import('@myriaddreamin/typst-ts-node-compiler');
  const fonts = [...(await shippedFonts()), ...furtherFaces];
  const compiler = NodeCompiler.create({ workspace: '/', fontArgs: [{ fontBlobs: fonts }] });
  for (const [name, bytes] of Object.entries(files)) compiler.mapShadow(name, bytes);
  compiler.addSource('/main.typ', await readFile(path.join(packageRoot(), 'site', 'styles', template), 'utf8'));
  const compiled = compiler.compile({ mainFilePath: '/main.typ' });
  const warnings = compiled.takeWarnings();
  if (!compiled.result || warnings)
    throw new Fault(phrase('The document could not be set: {0}', describe(compiled.takeError() ?? warnings)));
  try {
    compiler.pdf(compiled.result, { pdfStandard: 'ua-1', creationTimestamp: timestamp(built) });
    return compiler.pdf(compiled.result, { pdfStandard: 'a-3a', creationTimestamp: timestamp(built) });
  } catch (error) {
    throw new Fault(
      phrase(
        'The document could not be made an archival PDF: {0}',
        String((error as Error).message ?? error).slice(0, 600),
      ),
    );
  }
}

function describe(error: { readonly shortDiagnostics: unknown[]; readonly compilationStatus: string } | null): string {
  if (!error) return 'no reason was given.';
  return `${error.compilationStatus}: ${JSON.stringify(error.shortDiagnostics).slice(0, 600)}`;
}

/** Seconds of the first moment of a day, UTC. */
function timestamp(built: string): number {
  return Math.floor(Date.parse(`${built}T00:00:00Z`) / 1000);
}

/** Source Serif 4 and Source Sans 3, out of their packages. */
async function shippedFonts(): Promise<readonly Buffer[]> {
  const require = createRequire(import.meta.url);
  const families = [
    ['@expo-google-fonts/source-serif-4', 'SourceSerif4'],
    ['@expo-google-fonts/source-sans-3', 'SourceSans3'],
  ] as const;
  return Promise.all(
    families.flatMap(([name, file]) => {
      const root = path.dirname(require.resolve(`${name}/package.json`));
      return WEIGHTS.map((weight) => readFile(path.join(root, weight, `${file}_${weight}.ttf`)));
    }),
  );
}

/** Faces for further scripts, from the workspace or from beside the program; says which package brings one. */
async function furtherFonts(scripts: readonly FurtherScript[], folder: string): Promise<readonly Face[]> {
  const found: Face[] = [];
  for (const { name, faces } of scripts) {
    const face = faces
      .map((one) => ({ ...one, root: rootOf(one.fontPackage, folder) }))
      .find((one): one is typeof one & { root: string } => one.root !== null);
    if (!face)
      throw new Fault(
        phrase(
          'The document holds {0} text, for which no face is shipped. Install one beside your workspace, then try again:\n  cd {1} && npm install {2}',
          name,
          folder,
          faces[0]?.fontPackage,
        ),
      );
    const regular = path.join(face.root, '400Regular');
    const files = (await readdir(regular)).filter((one) => one.endsWith('.ttf'));
    for (const one of files) found.push({ family: face.family, bytes: await readFile(path.join(regular, one)) });
  }
  return found;
}

interface Face {
  readonly family: string;
  readonly bytes: Buffer;
}

/** Folder of a package, seen from the program or from the workspace; null where it is not installed. */
function rootOf(name: string, folder: string): string | null {
  for (const from of [import.meta.url, path.join(folder, 'package.json')]) {
    try {
      return path.dirname(createRequire(from).resolve(`${name}/package.json`));
    } catch {
      // Not there; the other place may have it.
    }
  }
  return null;
}
