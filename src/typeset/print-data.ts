import type { SetDocument } from './annotate.ts';

/** A picture of a document as bytes, under the key by which the document names it. */
export interface Picture {
  readonly key: string;
  readonly svg: string;
}

/** What a document is printed with beside its own words. */
export interface PrintFacts {
  /** ISO date of the day on which it is made; also the date inside the file. */
  readonly built: string;
  readonly author: string;
  /** Families of further faces, for scripts beyond Latin, Greek and Cyrillic. */
  readonly faces: readonly string[];
  /** What the attached file is; null for no attachment. */
  readonly attachment: string | null;
}

/** The document as the print template reads it: JSON only, so that no words of a file can become markup. */
export function printData(document: SetDocument, pictures: readonly Picture[], facts: PrintFacts): string {
  const keys = pictures.map((one) => one.key);
  const { built, author, faces, attachment } = facts;
  return JSON.stringify({
    ...document,
    // A picture that could not be made is left out with its caption.
    blocks: document.blocks.flatMap((block): readonly unknown[] => {
      if (block.kind !== 'figure') return [block];
      return keys.includes(block.picture) ? [{ ...block, path: picturePath(block.picture, keys) }] : [];
    }),
    date: built.split('-').map(Number),
    dated: built,
    author,
    faces,
    attachment,
    words: document.pageWords,
  });
}

/** Where the template finds a picture. */
export function picturePath(key: string, keys: readonly string[]): string {
  return `/picture-${keys.indexOf(key)}.svg`;
}
