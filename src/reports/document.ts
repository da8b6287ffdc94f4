/**
 * A printed outcome as a tree, before it becomes a page, a text or a file. Every passage that states a fact carries
 * the entries that it rests on; how they are shown (links, notes, citations) is for whoever sets the document.
 */
export interface ReportDocument {
  /** The entry that it belongs to. */
  readonly id: string;
  readonly title: string;
  /** What kind of document it is, or what it is about; '' for none. */
  readonly subtitle: string;
  /** Set with a list of contents and a bibliography. */
  readonly isLong: boolean;
  /** Language of its words, as a BCP 47 tag. */
  readonly language: string;
  /** Stands on every page while the document is not the institution's word; null once it is. */
  readonly draft: string | null;
  /** Words at the foot: institution, file, for whom it was composed. */
  readonly foot: string;
  readonly blocks: readonly Block[];
}

/** A sentence or two, and what they rest on. */
export interface Passage {
  readonly words: string;
  /** Ids of entries; empty for what states no fact of the file. */
  readonly rests: readonly string[];
  /** Ids of the very statements, where a date was computed from them. */
  readonly cites: readonly string[];
}

/** One part of a document. */
export type Block =
  | { readonly kind: 'heading'; readonly level: 2 | 3; readonly words: string }
  | { readonly kind: 'paragraph'; readonly passage: Passage }
  | { readonly kind: 'list'; readonly passages: readonly Passage[] }
  | { readonly kind: 'terms'; readonly terms: readonly Term[] }
  | Table
  | Figure;

/** A table; the caption is set above it, the head repeats on every page. */
export interface Table {
  readonly kind: 'table';
  readonly caption: string;
  readonly head: readonly string[];
  /** Shares of the width; equal where missing. */
  readonly widths?: readonly number[];
  readonly rows: readonly Row[];
}

/** A drawing or photograph, named by a key under which the renderer is given its bytes. */
export interface Figure {
  readonly kind: 'figure';
  readonly picture: string;
  /** What is to be seen, for those who do not see it. */
  readonly alt: string;
  /** Width in print; null for the width of the text. */
  readonly widthMm: number | null;
  readonly caption: Passage;
}

/** A name and what is said under it. */
export interface Term {
  readonly name: string;
  readonly passage: Passage;
}

/** Cells of a row, in the order of the head. */
export type Row = readonly Passage[];

/** A passage; the same entry is named once. */
export function passage(words: string, rests: readonly string[] = [], cites: readonly string[] = []): Passage {
  return { words, rests: [...new Set(rests)], cites: [...new Set(cites)] };
}

/**
 * A heading with what stands under it; a sentence where there is nothing. What nobody was asked for is left out: without the
 * sentence an empty section is none.
 */
export function section(words: string, blocks: readonly Block[], nothing: string | null = null): readonly Block[] {
  const filled = blocks.length === 0 && nothing !== null ? [paragraph(nothing)] : blocks;
  if (filled.length === 0) return [];
  return [{ kind: 'heading', level: 2, words }, ...filled];
}

/** A paragraph of one passage. */
export function paragraph(words: string, rests: readonly string[] = [], cites: readonly string[] = []): Block {
  return { kind: 'paragraph', passage: passage(words, rests, cites) };
}

/** A list; no block where it is empty. */
export function list(passages: readonly Passage[]): readonly Block[] {
  return passages.length === 0 ? [] : [{ kind: 'list', passages }];
}

/** Every passage of a document, in order. */
export function passagesOf({ blocks }: ReportDocument): readonly Passage[] {
  return blocks.flatMap(passagesIn);
}

function passagesIn(block: Block): readonly Passage[] {
  switch (block.kind) {
    case 'heading':
      return [];
    case 'paragraph':
      return [block.passage];
    case 'list':
      return block.passages;
    case 'terms':
      return block.terms.map((one) => one.passage);
    case 'table':
      return block.rows.flat();
    case 'figure':
      return [block.caption];
  }
}
