import { passagesOf, type ReportDocument } from '../reports/document.ts';
import type { Inline } from '../reports/inline.ts';
import type { SourceBook } from '../reports/source-book.ts';
import { annotate, type SetBlock, type SetDocument, type SetPassage } from './annotate.ts';

/** What a renderer needs to know of the file behind a document. */
export interface FileBehind {
  readonly book: SourceBook;
  /** The words of a statement; null where there is none of that name. */
  statement(id: string): string | null;
  /** File name of a picture beside the text; null where it is left out. */
  picture?(key: string): string | null;
}

/**
 * A document as Markdown that can be read without any program: notes with sources and ids of entries, and at the
 * end the statements that the dates rest on, in the words that they had. The same document gives the same bytes.
 */
export function documentMarkdown(document: ReportDocument, behind: FileBehind): string {
  const set = annotate(document, behind.book);
  const notes: string[] = [];
  const say = ({ words, note }: SetPassage): string => {
    if (note === null) return escaped(words);
    notes.push(inline(note));
    return `${escaped(words)}[^${notes.length}]`;
  };
  const body = set.blocks.map((block) => blockText(block, say, behind)).join('\n\n');
  const draft = set.draft === null ? [] : [`> **${set.draft}**`];
  const subtitle = set.subtitle === '' ? [] : [`*${escaped(set.subtitle)}*`];
  const parts = [
    `# ${escaped(set.title)}`,
    ...subtitle,
    ...draft,
    body,
    ...bibliography(set),
    ...citedStatements(document, behind),
    notes.map((note, i) => `[^${i + 1}]: ${note}`).join('\n'),
    escaped(set.foot),
  ];
  return `${parts.filter((part) => part !== '').join('\n\n')}\n`;
}

function citedStatements(document: ReportDocument, { statement, book }: FileBehind): readonly string[] {
  const cited = [...new Set(passagesOf(document).flatMap((one) => one.cites))].sort();
  const lines = cited.flatMap((id) => {
    const words = statement(id);
    return words === null ? [] : [`- \`${id}\`: ${words.replace(/\s+/g, ' ').trim()}`];
  });
  return lines.length === 0
    ? []
    : [`## ${book.sayer.words('Statements that the dates rest on, as they stood')}`, lines.join('\n')];
}

function bibliography({ isLong, pageWords, bibliography: { archives, literature } }: SetDocument): readonly string[] {
  if (!isLong) return [];
  const lines = (items: readonly (readonly Inline[])[]): string =>
    items.map((one) => `- ${atStart(inline(one))}`).join('\n');
  return [
    ...(archives.length === 0 ? [] : [`## ${pageWords.archives}`]),
    ...archives.flatMap(({ name, items }) => [`### ${escaped(name)}`, lines(items)]),
    ...(literature.length === 0 ? [] : [`## ${pageWords.literature}`, lines(literature)]),
  ];
}

function blockText(block: SetBlock, say: (one: SetPassage) => string, { picture }: FileBehind): string {
  switch (block.kind) {
    case 'heading':
      return `${'#'.repeat(block.level)} ${escaped(block.words)}`;
    case 'paragraph':
      return atStart(say(block.said));
    case 'list':
      return block.items.map((one) => `- ${atStart(say(one))}`).join('\n');
    case 'terms':
      return block.terms.map(({ name, said }) => `- **${name}:** ${say(said)}`).join('\n');
    case 'table': {
      const cells = [block.head.map(escaped), block.head.map(() => '---'), ...block.rows.map((row) => row.map(say))];
      const rows = cells.map((row) => `| ${row.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`);
      return `**${escaped(block.caption)}**\n\n${rows.join('\n')}`;
    }
    case 'figure': {
      const file = picture?.(block.picture) ?? null;
      const image = file === null ? `*${escaped(block.alt)}*` : `![${escaped(block.alt)}](${file})`;
      return `${image}\n\n${say(block.caption)}`;
    }
  }
}

function inline(runs: readonly Inline[]): string {
  return runs.map((one) => (typeof one === 'string' ? escaped(one) : `*${escaped(one.italic)}*`)).join('');
}

/** Text in which nothing counts as Markdown. */
function escaped(text: string): string {
  return text.replace(/\s+/g, ' ').replace(/[\\`*_[\]<>#~]/g, '\\$&');
}

/** Words at the beginning of a line, where a number or a hyphen would begin a list. */
function atStart(text: string): string {
  return text.replace(/^(\d+)([.)])/, '$1\\$2').replace(/^([-+])/, '\\$1');
}
