import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { unzipSync } from 'fflate';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** Opens a PDF with a general library. */
export const openPdf = (file: string) =>
  getDocument({ data: new Uint8Array(readFileSync(file)), verbosity: 0 }).promise;

/** The words of a PDF, page after page. */
export async function textOfPdf(file: string): Promise<string> {
  const pdf = await openPdf(file);
  const pages: string[] = [];
  for (let n = 1; n <= pdf.numPages; n += 1) {
    const { items } = await (await pdf.getPage(n)).getTextContent();
    pages.push(items.map((one) => ('str' in one ? one.str : '')).join(' '));
  }
  return pages.join('\n').replace(/\s+/g, ' ');
}

/** What every file below a folder says, by its path there: the name, the bytes, and what is packed inside. */
export async function readOutputs(folder: string): Promise<ReadonlyMap<string, string>> {
  const outputs = new Map<string, string>();
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue;
    const full = path.join(entry.parentPath, entry.name);
    outputs.set(path.relative(folder, full), (await saidBy(full)).join('\n'));
  }
  return outputs;
}

async function saidBy(file: string): Promise<readonly string[]> {
  const bytes = readFileSync(file);
  if (file.endsWith('.docx')) {
    return Object.entries(unzipSync(new Uint8Array(bytes))).flatMap(([name, part]) => [
      name,
      new TextDecoder().decode(part),
    ]);
  }
  if (file.endsWith('.pdf')) {
    const pdf = await openPdf(file);
    const attached = (await pdf.getAttachments()) as Record<string, { content: Uint8Array }> | null;
    return [
      bytes.toString('latin1'),
      await textOfPdf(file),
      JSON.stringify(await pdf.getMetadata()),
      ...Object.values(attached ?? {}).map((one) => new TextDecoder().decode(one.content)),
    ];
  }
  // Pictures are read byte by byte, so that words in their metadata are found.
  return [bytes.toString(/\.(jpe?g|png|woff2)$/.test(file) ? 'latin1' : 'utf8')];
}
