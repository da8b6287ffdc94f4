import { type Block, type Passage, passagesOf, type ReportDocument } from '../reports/document.ts';

/** What a renderer needs to know of the file behind a document. */
export interface Names {
  /** An entry as a note names it. */
  cite(entry: string): string;
  /** The words of a statement; null where there is none of that name. */
  statement(id: string): string | null;
}

/**
 * A document as Markdown that can be read without any program: a note for what each passage rests on, and at the end
 * the statements that the dates rest on, in the words that they had. The same document gives the same bytes.
 */
export function documentMarkdown(document: ReportDocument, names: Names): string {
  const notes = new Map<string, number>();
  const mark = ({ rests }: Passage): string => {
    if (rests.length === 0) return '';
    const key = rests.join(' ');
    const n = notes.get(key) ?? notes.size + 1;
    notes.set(key, n);
    return `[^${n}]`;
  };
  const body = document.blocks.map((block) => blockText(block, mark)).join('\n\n');
  const definitions = [...notes].map(
    ([key, n]) =>
      `[^${n}]: ${key
        .split(' ')
        .map((id) => escaped(names.cite(id)))
        .join('; ')}.`,
  );
  const cited = [...new Set(passagesOf(document).flatMap((one) => one.cites))].sort();
  const statements = cited.flatMap((id) => {
    const words = names.statement(id);
    return words === null ? [] : [`- \`${id}\`: ${words.replace(/\s+/g, ' ').trim()}`];
  });
  const draft = document.draft === null ? [] : [`> **${document.draft}**`];
  const tail = statements.length === 0 ? [] : [`## ${CITED_HEADING}`, statements.join('\n')];
  return `${[`# ${escaped(document.title)}`, ...draft, body, ...tail, definitions.join('\n'), escaped(document.foot)]
    .filter((part) => part !== '')
    .join('\n\n')}\n`;
}

/** Head of the last part: the statements as they stood. */
export const CITED_HEADING = 'Statements that the dates rest on, as they stood';

function blockText(block: Block, mark: (one: Passage) => string): string {
  const say = (one: Passage): string => `${escaped(one.words)}${mark(one)}`;
  switch (block.kind) {
    case 'heading':
      return `${'#'.repeat(block.level)} ${escaped(block.words)}`;
    case 'paragraph':
      return atStart(say(block.passage));
    case 'list':
      return block.passages.map((one) => `- ${atStart(say(one))}`).join('\n');
    case 'terms':
      return block.terms.map(({ name, passage }) => `- **${name}:** ${say(passage)}`).join('\n');
    case 'table':
      return [block.head, block.head.map(() => '---'), ...block.rows.map((row) => row.map(say))]
        .map((row) => `| ${row.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`)
        .join('\n');
  }
}

/** Text in which nothing counts as Markdown. */
function escaped(text: string): string {
  return text.replace(/\s+/g, ' ').replace(/[\\`*_[\]<>#~]/g, '\\$&');
}

/** Words at the beginning of a line, where a number or a hyphen would begin a list. */
function atStart(text: string): string {
  return text.replace(/^(\d+)([.)])/, '$1\\$2').replace(/^([-+])/, '\\$1');
}
