/** A document as it was sent. */
export interface SentFile {
  /** SHA-256 of its bytes, in hexadecimal. */
  readonly sha256: string;
  /** Its text; null for what is no text (a PDF). */
  readonly text: string | null;
}
