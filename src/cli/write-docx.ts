import { createRequire } from 'node:module';
import path from 'node:path';
import { unzipSync, zipSync } from 'fflate';
import type { SetDocument } from '../typeset/annotate.ts';
import { type DocxPicture, makeDocx } from '../typeset/docx.ts';
import type { Picture } from '../typeset/print-data.ts';

/** Width in pixels of pictures for readers that know no SVG. */
const PIXELS = 1800;

/** Sets a document as DOCX; the same input gives the same bytes in a fresh process. */
export async function writeDocx(
  document: SetDocument,
  pictures: readonly Picture[],
  built: string,
  author: string,
): Promise<Uint8Array> {
  const { Resvg } = await import('@resvg/resvg-js');
  const require = createRequire(import.meta.url);
  const fontFiles = ['@expo-google-fonts/source-sans-3', '@expo-google-fonts/source-serif-4'].flatMap((name) => {
    const root = path.dirname(require.resolve(`${name}/package.json`));
    const family = name.endsWith('sans-3') ? 'SourceSans3' : 'SourceSerif4';
    return ['400Regular', '600SemiBold'].map((weight) => path.join(root, weight, `${family}_${weight}.ttf`));
  });
  const drawn = new Map(
    pictures.map(({ key, svg }): readonly [string, DocxPicture] => {
      const image = new Resvg(svg, {
        fitTo: { mode: 'width', value: PIXELS },
        font: { fontFiles, loadSystemFonts: false, defaultFontFamily: 'Source Sans 3' },
      }).render();
      return [key, { svg, png: image.asPng(), widthPx: image.width, heightPx: image.height }];
    }),
  );
  return sameBytes(await makeDocx(document, drawn, author), built);
}

/** Fixed times and a fixed order of parts. */
function sameBytes(bytes: Uint8Array, built: string): Uint8Array {
  const parts = unzipSync(bytes);
  const core = parts['docProps/core.xml'];
  if (core) {
    const text = new TextDecoder()
      .decode(core)
      .replace(/(<dcterms:(?:created|modified)[^>]*>)[^<]*/g, `$1${built}T00:00:00Z`);
    parts['docProps/core.xml'] = new TextEncoder().encode(text);
  }
  const names = Object.keys(parts).sort(
    (a, b) => Number(b === '[Content_Types].xml') - Number(a === '[Content_Types].xml') || (a < b ? -1 : 1),
  );
  const mtime = new Date('1980-01-01T12:00:00');
  return zipSync(Object.fromEntries(names.map((name) => [name, [parts[name] as Uint8Array, { mtime, level: 6 }]])));
}
