import type { Root } from 'mdast';
import rehypeSanitize, { defaultSchema } from 'rehype-sanitize';
import rehypeStringify from 'rehype-stringify';
import remarkRehype from 'remark-rehype';
import { unified } from 'unified';
import { visit } from 'unist-util-visit';
import { decodeTarget, isEntryLink } from '../model/text-links.ts';

/** Where a link to an entry (or a statement or part of one) goes, and the title shown with it. */
export interface LinkTarget {
  readonly href: string;
  readonly title: string;
}

/** What stands over the footnotes of a text, and what is read out at the way back from one. */
export interface FootnoteWords {
  readonly label: string;
  back(note: string): string;
}

/**
 * Renders an argument to HTML: headings two levels down (or as many as `deeper` says), links to entries resolved, raw HTML
 * dropped, everything else through the sanitiser. A link that leads nowhere becomes its words.
 */
export function argumentHtml(
  argument: Root,
  id: string,
  resolve: (target: string) => LinkTarget | null,
  deeper = 2,
  footnotes: FootnoteWords = { label: 'Footnotes', back: (note) => `Back to reference ${note}` },
): string {
  const tree = structuredClone(argument);
  visit(tree, (node, index, parent) => {
    if (node.type === 'image' && parent && index !== undefined)
      parent.children.splice(index, 1, { type: 'text', value: node.alt ?? '' });
    if (node.type === 'heading') node.depth = Math.min(6, node.depth + deeper) as 1;
    if ((node.type !== 'link' && node.type !== 'definition') || !isEntryLink(node.url)) return;
    const target = resolve(decodeTarget(node.url));
    if (target) {
      node.url = target.href;
      node.title = target.title;
    } else if (node.type === 'link' && parent && index !== undefined) {
      parent.children.splice(index, 1, ...node.children);
    }
  });
  const prefix = `${id.toLowerCase().replaceAll('.', '-')}-`;
  const processor = unified()
    .use(remarkRehype, {
      clobberPrefix: prefix,
      footnoteLabel: footnotes.label,
      footnoteBackLabel: (note, again) => footnotes.back(again > 1 ? `${note + 1}-${again}` : String(note + 1)),
    })
    .use(rehypeSanitize, { ...defaultSchema, clobberPrefix: '' })
    .use(rehypeStringify);
  return processor.stringify(processor.runSync(tree));
}
