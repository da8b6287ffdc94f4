import { readFileSync } from 'node:fs';
import path from 'node:path';
import { bench, describe } from 'vitest';
import { reportPictures } from '../../site/report-pictures.tsx';
import { standaloneDocument } from '../../site/standalone-document.tsx';
import { makePdf } from '../../src/cli/write-pdf.ts';
import { composeFile } from '../../src/reports/provenance-file.ts';
import { behindOf } from '../../src/reports/source-book.ts';
import { annotate, type SetDocument } from '../../src/typeset/annotate.ts';
import { openBrowser } from '../browser/browser.ts';
import { computeFiles, filesOf, ROOT } from '../workspace.ts';

// Prints ratios of one run; decides nothing. The peer is Chromium printing the same document as HTML (no notes at the foot, no archive level).

const { file } = computeFiles(filesOf(ROOT));
const object = file.catalogue.ofType('object').find((one) => one.id === 'OB-lerakos');
if (!object) throw new Error('no object');
const style = (name: string): string => readFileSync(path.join(ROOT, 'site/styles', name), 'utf8');
const { list, pictures } = reportPictures(file, object, { drawings: style('drawings.css'), plan: style('plan.css') });
const once = annotate(composeFile(file, object, list, { built: '2024-06-01', version: '0' }), behindOf(file).book);

let salt = 0;

/** The document with its blocks several times over, its words never the same twice: the typesetter remembers what it has set. */
const times = (n: number): SetDocument => {
  salt += 1;
  const blocks = Array.from({ length: n }, () => once.blocks).flat();
  return { ...once, blocks: JSON.parse(JSON.stringify(blocks).replaceAll('"words":"', `"words":"${salt} `)) };
};

const pdf = (document: SetDocument): Promise<Buffer> =>
  makePdf({ document, pictures, built: '2024-06-01', author: 'A museum', attachment: null, folder: ROOT });

for (const [pages, n] of [
  [20, 1],
  [130, 7],
] as const) {
  const html = standaloneDocument(times(n), pictures, { style: style('document.css'), built: '2024-06-01' });
  describe(`a provenance file of about ${pages} pages`, async () => {
    const browser = await openBrowser();
    bench('PDF/A-3a by Typst', async () => void (await pdf(times(n))), { iterations: 2, warmupIterations: 0, time: 0 });
    bench(
      'the same printed by Chromium',
      async () => {
        const page = await browser.newPage();
        await page.setContent(html);
        await page.pdf({ format: 'A4' });
        await page.close();
      },
      { iterations: 2, warmupIterations: 0, time: 0 },
    );
  });
}
console.log(`memory after loading: ${Math.round(process.memoryUsage().rss / 1e6)} MB`);
