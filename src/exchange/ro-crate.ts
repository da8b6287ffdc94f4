import type { CaseFile } from '../findings/case-file.ts';
import { titleOf } from '../model/catalogue.ts';

/** A file of a package, with the checksum of its bytes. */
export interface PackedFile {
  /** Path in the package, with `/`. */
  readonly path: string;
  readonly bytes: number;
  readonly sha256: string;
  readonly mediaType: string;
  /** What it is, in a few words. */
  readonly name: string;
}

/**
 * The metadata of an RO-Crate 1.1 (ro-crate-metadata.json): the root data set, its files with size and SHA-256, the
 * institution, the program. The checksums also stand in `manifest-sha256.txt`, in the form that BagIt has (RFC 8493).
 */
export function roCrate(
  file: CaseFile,
  files: readonly PackedFile[],
  facts: { readonly built: string; readonly version: string },
): unknown {
  const { workspace, audience } = file.catalogue;
  const institution = workspace?.keys.institution ?? 'Unknown institution';
  return {
    '@context': ['https://w3id.org/ro/crate/1.1/context', { sha256: 'https://schema.org/sha256' }],
    '@graph': [
      {
        '@id': 'ro-crate-metadata.json',
        '@type': 'CreativeWork',
        conformsTo: { '@id': 'https://w3id.org/ro/crate/1.1' },
        about: { '@id': './' },
      },
      {
        '@id': './',
        '@type': 'Dataset',
        name: workspace ? titleOf(workspace, file.settings.languages) : 'Untitled workspace',
        description: `A research file on pieces of walls, for the audience "${audience}". Dates and gaps rest on the shown entries only.`,
        datePublished: facts.built,
        license:
          'All rights in texts and images with the institution and those named in the entries; ask before reuse.',
        publisher: { '@id': '#institution' },
        hasPart: files.map(({ path }) => ({ '@id': encodeURI(path) })),
      },
      { '@id': '#institution', '@type': 'Organization', name: institution },
      {
        '@id': '#program',
        '@type': 'SoftwareApplication',
        name: 'Kerfmark',
        version: facts.version,
      },
      {
        '@id': '#making',
        '@type': 'CreateAction',
        name: 'Made from the entries',
        instrument: { '@id': '#program' },
        agent: { '@id': '#institution' },
        result: { '@id': './' },
        endTime: facts.built,
      },
      ...files.map(({ path, bytes, sha256, mediaType, name }) => ({
        '@id': encodeURI(path),
        '@type': 'File',
        name,
        encodingFormat: mediaType,
        contentSize: String(bytes),
        sha256,
      })),
    ],
  };
}

/** Checksums of a package, a line a file: `SHA256  path`. */
export function manifestText(files: readonly PackedFile[]): string {
  return files.map(({ sha256, path }) => `${sha256}  ${path}\n`).join('');
}
