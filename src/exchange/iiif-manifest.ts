import type { CaseFile } from '../findings/case-file.ts';
import type { Path } from '../geometry/point.ts';
import { titleOf } from '../model/catalogue.ts';
import type { Entry } from '../model/entry.ts';
import type { PanelShape } from '../physical/panel-shapes.ts';
import { extentOf, facesOf, type PanelFace } from '../publish/panel-faces.ts';

/** Pixels of a canvas for a millimetre of the panel. */
const PER_MM = 4;

/**
 * A IIIF Presentation 3.0 manifest of an object: a canvas for each face of a panel that has a registered photograph, the
 * photographs laid into the frame as its painting (several as a choice of techniques), each trace of the plan as an
 * annotation with its outline. Null where no face has a photograph. Addresses are absolute, as the standard has them.
 *
 * @param base address of the site, without a slash at the end
 * @param pictures addresses in the site of the photographs laid into the frame, by figure
 */
export function iiifManifest(
  file: CaseFile,
  object: Entry<'object'>,
  base: string,
  pictures: ReadonlyMap<string, string>,
): unknown {
  const faces = file.physical.panels
    .filter(({ geometry }) => geometry.object.id === object.id)
    .flatMap(facesOf)
    .filter((face) => face.figures.some(({ figure }) => pictures.has(figure.id)));
  if (faces.length === 0) return null;
  const id = `${base}/iiif/${object.id}.json`;
  const { workspace } = file.catalogue;
  return {
    '@context': 'http://iiif.io/api/presentation/3/context.json',
    id,
    type: 'Manifest',
    label: label(titleOf(object, file.settings.languages)),
    requiredStatement: {
      label: label('Institution'),
      value: label(workspace?.keys.institution ?? 'not named'),
    },
    items: faces.map((face) => canvas(file, face, `${id}/${face.panel}-${face.face}`, base, pictures)),
  };
}

function label(text: string): Readonly<Record<string, readonly string[]>> {
  return { none: [text] };
}

function canvas(
  file: CaseFile,
  face: PanelFace,
  id: string,
  base: string,
  pictures: ReadonlyMap<string, string>,
): unknown {
  const { width, height } = extentOf(face.outline);
  const size = { width: Math.round(width * PER_MM), height: Math.round(height * PER_MM) };
  const images = face.figures.flatMap(({ figure }) => {
    const address = pictures.get(figure.id);
    return address
      ? [
          {
            id: `${base}/${address}`,
            type: 'Image',
            format: address.endsWith('.png') ? 'image/png' : 'image/jpeg',
            label: label([titleOf(figure, file.settings.languages), figure.keys.technique].filter(Boolean).join(', ')),
          },
        ]
      : [];
  });
  return {
    id,
    type: 'Canvas',
    label: label(`Panel ${face.panel}, ${face.face}`),
    ...size,
    items: [
      {
        id: `${id}/page`,
        type: 'AnnotationPage',
        items: [
          {
            id: `${id}/painting`,
            type: 'Annotation',
            motivation: 'painting',
            target: id,
            body: images.length === 1 ? images[0] : { type: 'Choice', items: images },
          },
        ],
      },
    ],
    annotations: [
      {
        id: `${id}/traces`,
        type: 'AnnotationPage',
        label: label('Traces'),
        items: face.shapes.map((shape, i) => annotation(file, shape, `${id}/trace-${i + 1}`, id, size, height)),
      },
    ],
  };
}

function annotation(
  file: CaseFile,
  { trace, path, holes, kind }: PanelShape,
  id: string,
  target: string,
  size: { readonly width: number; readonly height: number },
  heightMm: number,
): unknown {
  const isClosed = kind === 'area' || kind === 'point';
  const d = [kind === 'point' ? squareAround(path) : path, ...holes]
    .map((one) => pathData(one, heightMm, isClosed))
    .join('');
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${size.width}" height="${size.height}"><path d="${d}" fill="none" stroke="black"/></svg>`;
  return {
    id,
    type: 'Annotation',
    motivation: 'commenting',
    body: {
      type: 'TextualBody',
      value: `${titleOf(trace, file.settings.languages)} (${trace.keys.kind}, ${trace.id})`,
      format: 'text/plain',
    },
    target: { type: 'SpecificResource', source: target, selector: { type: 'SvgSelector', value: svg } },
  };
}

/** A point as a square of 6 mm, so that there is something to be seen. */
function squareAround(path: Path): Path {
  return path.slice(0, 1).flatMap(([x, y]) => [
    [x - 3, y - 3],
    [x + 3, y - 3],
    [x + 3, y + 3],
    [x - 3, y + 3],
  ]) as unknown as Path;
}

/** A line of the frame, y up, as a path of the canvas, y down. */
function pathData(path: Path, heightMm: number, isClosed: boolean): string {
  const points = path.map(([x, y]) => `${round(x * PER_MM)} ${round((heightMm - y) * PER_MM)}`);
  return `M${points.join('L')}${isClosed ? 'Z' : ''}`;
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
