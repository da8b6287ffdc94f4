/** A document as it was sent, and the values that it rests on. */
export interface SentFile {
  /** SHA-256 of its bytes, in hexadecimal. */
  readonly sha256: string;
  /** Its text; null for what is no text (a PDF). */
  readonly text: string | null;
  /** The values kept beside it; null where none are. */
  readonly values: { readonly sha256: string; readonly text: string } | null;
}

/** Folder that keeps documents as they were sent; nothing in it is read as an entry. */
export const SENT_FOLDER = 'entries/sent';

/** Where documents that were sent lay in workspaces of the first format. */
export const OLD_SENT_FOLDER = 'sent';

/** The file of the values of a document: `entries/sent/IN-1.json` beside `entries/sent/IN-1.md`. */
export function valuesFileOf(document: string): string {
  return document.replace(/(\.[^./]*)?$/, '.json');
}
