import type { Sayer } from '../language/sayer.ts';
import { bibliographyEntry, collectionEntry, firstMention, isPublished, laterMention } from '../reports/citation.ts';
import { type Block, type Passage, passagesOf, type ReportDocument } from '../reports/document.ts';
import { type Inline, plainWords } from '../reports/inline.ts';
import type { SourceBook } from '../reports/source-book.ts';

/** A passage as it is set: its words, and its note. */
export interface SetPassage {
  readonly words: string;
  /**
   * Sources in full or in short, and the other entries of the file that it rests on; null where it rests on none, or where a neighbour
   * rests on the same entries. No id stands in the words themselves.
   */
  readonly note: readonly Inline[] | null;
}

/** A block in which every passage is set. */
export type SetBlock =
  | Extract<Block, { kind: 'heading' }>
  | { readonly kind: 'paragraph'; readonly said: SetPassage }
  | { readonly kind: 'list'; readonly items: readonly SetPassage[] }
  | { readonly kind: 'terms'; readonly terms: readonly { readonly name: string; readonly said: SetPassage }[] }
  | {
      readonly kind: 'table';
      readonly caption: string;
      readonly head: readonly string[];
      readonly widths: readonly number[];
      readonly rows: readonly (readonly SetPassage[])[];
    }
  | {
      readonly kind: 'figure';
      readonly picture: string;
      readonly alt: string;
      readonly widthMm: number | null;
      readonly caption: SetPassage;
    };

/** Words that a document needs on its pages beside its own. */
type PageWord = 'contents' | 'table' | 'figure' | 'archives' | 'literature' | 'notes' | 'back';

/** A document ready for a renderer: notes in order, first and later mentions settled, and a bibliography. */
export interface SetDocument extends Omit<ReportDocument, 'blocks'> {
  /** Words of the page that are not the document's own. */
  readonly pageWords: Readonly<Record<PageWord, string>>;
  readonly blocks: readonly SetBlock[];
  readonly bibliography: {
    readonly archives: readonly { readonly name: string; readonly items: readonly (readonly Inline[])[] }[];
    readonly literature: readonly (readonly Inline[])[];
  };
}

/**
 * Settles the notes of a document: one note for a passage that rests on sources, the source in full where it is first
 * mentioned and in short later, a collection announced where it is cited again. Every renderer sets the same notes.
 */
export function annotate(document: ReportDocument, book: SourceBook): SetDocument {
  const { sayer } = book;
  const mentions = mentionsOf(document, book);
  const seen = new Set<string>();
  const announced = new Set<string>();
  let toldLast = '';
  const cite = (id: string, statements: readonly string[]): readonly Inline[] => {
    const source = book.cited(id);
    if (!source) return [];
    const locator = book.locators(id, statements);
    if (seen.has(id)) return laterMention(sayer, source, locator);
    seen.add(id);
    const { collection } = source;
    const isAgain = collection !== null && !announced.has(collection) && (mentions.get(collection) ?? 0) > 1;
    if (collection !== null) announced.add(collection);
    return firstMention(sayer, source, locator, isAgain ? collection : null);
  };
  const say = (one: Passage, next?: Passage): SetPassage => {
    const sources = one.rests.filter((id) => book.cited(id));
    const entries = one.rests.filter((id) => !book.cited(id) && !book.standsIn(id));
    const isRepeated = next !== undefined && next.rests.join(' ') === one.rests.join(' ');
    const names = entries.join(', ');
    // What the passage before rested on is not told again.
    const isTold = isRepeated || (sources.length === 0 && names === toldLast);
    if (!isTold && entries.length > 0) toldLast = names;
    const cited = sources.flatMap((id, i) => [...(i === 0 ? [] : ['; ']), ...cite(id, one.cites)]);
    const named = entries.length === 0 || isTold ? [] : [sayer.words('in the file: {0}', names)];
    const note = [...cited, ...(cited.length > 0 && named.length > 0 ? ['; '] : []), ...named];
    return { words: one.words, note: note.length === 0 ? null : sentence(note) };
  };
  return {
    ...document,
    pageWords: pageWordsOf(sayer),
    blocks: document.blocks.map((block) => setBlock(block, say)),
    bibliography: bibliographyOf(document, book),
  };
}

function pageWordsOf({ words }: Sayer): SetDocument['pageWords'] {
  return {
    contents: words('Contents'),
    table: words('Table'),
    figure: words('Figure'),
    archives: words('Archives and collections'),
    literature: words('Published works'),
    notes: words('Notes'),
    back: words('Back to the text, note'),
  };
}

/** A note begins with a capital and ends with one full stop. */
function sentence(runs: readonly Inline[]): readonly Inline[] {
  const [first = '', ...rest] = runs;
  const head = typeof first === 'string' ? `${first.charAt(0).toUpperCase()}${first.slice(1)}` : first;
  const whole = [head, ...rest];
  return plainWords(whole).endsWith('.') ? whole : [...whole, '.'];
}

function setBlock(block: Block, say: (one: Passage, next?: Passage) => SetPassage): SetBlock {
  switch (block.kind) {
    case 'heading':
      return block;
    case 'paragraph':
      return { kind: 'paragraph', said: say(block.passage) };
    case 'list':
      return { kind: 'list', items: block.passages.map((one) => say(one)) };
    case 'terms':
      return {
        kind: 'terms',
        terms: block.terms.map(({ name, passage }, i) => ({ name, said: say(passage, block.terms[i + 1]?.passage) })),
      };
    case 'table':
      return {
        ...block,
        widths: block.widths ?? block.head.map(() => 1),
        rows: block.rows.map((row) => row.map((one) => say(one))),
      };
    case 'figure':
      return { ...block, caption: say(block.caption) };
  }
}

/** How often each collection is cited: once for each of its sources that the document names. */
function mentionsOf(document: ReportDocument, book: SourceBook): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const id of sourcesOf(document, book)) {
    const source = book.cited(id);
    const name = source?.collection ?? null;
    if (name !== null) counts.set(name, (counts.get(name) ?? 0) + 1);
  }
  return counts;
}

/** Sources that a document rests on, each once, in the order of their first mention. */
function sourcesOf(document: ReportDocument, book: SourceBook): readonly string[] {
  return [...new Set(passagesOf(document).flatMap((one) => one.rests))].filter((id) => book.cited(id));
}

/** Collections with the items cited from each, then published works, both by name. */
function bibliographyOf(document: ReportDocument, book: SourceBook): SetDocument['bibliography'] {
  const { sayer } = book;
  const cited = sourcesOf(document, book).flatMap((id) => book.cited(id) ?? []);
  const archival = cited.filter((one) => !isPublished(one));
  const names = [...new Set(archival.map((one) => collectionEntry(sayer, one)))].sort((a, b) =>
    a.localeCompare(b, 'en'),
  );
  const byWords = (a: readonly Inline[], b: readonly Inline[]): number =>
    plainWords(a).localeCompare(plainWords(b), 'en');
  return {
    archives: names.map((name) => ({
      name,
      items: archival
        .filter((one) => collectionEntry(sayer, one) === name)
        .map((one) => laterMention(sayer, { ...one, collection: null, repository: null }))
        .sort(byWords),
    })),
    literature: cited
      .filter(isPublished)
      .map((one) => bibliographyEntry(sayer, one))
      .sort(byWords),
  };
}
