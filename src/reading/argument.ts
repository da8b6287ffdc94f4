import type { Definition, Html, Image, Link as MarkdownLink, Root } from 'mdast';
import remarkFrontmatter from 'remark-frontmatter';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import { visit } from 'unist-util-visit';
import type { Diagnostic } from '../base/diagnostic.ts';
import type { Place } from '../base/place.ts';
import { decodeTarget, isEntryLink } from '../model/text-links.ts';
import type { TextFile } from './text-file.ts';

/** A link in the text of an entry, not yet resolved. */
export interface TextLink {
  readonly target: string;
  readonly place: Place;
}

/** The argument of an entry as a tree, its links to other entries, and what is wrong in it. */
export interface Argument {
  readonly tree: Root;
  readonly links: readonly TextLink[];
  readonly problems: readonly Diagnostic[];
}

const markdown = unified().use(remarkParse).use(remarkFrontmatter).use(remarkGfm);

/** An empty argument, for rows of a table. */
export const NO_ARGUMENT: Root = { type: 'root', children: [] };

/** Parses the Markdown of a whole file, so that every position is a position in the file. */
export function readArgument({ file, text }: TextFile): Argument {
  const tree = markdown.parse(text);
  const links: TextLink[] = [];
  const problems: Diagnostic[] = [];
  const placeOf = (node: MarkdownLink | Definition | Html | Image): Place => ({
    file,
    line: node.position?.start.line ?? 1,
    column: node.position?.start.column ?? 1,
  });
  visit(tree, (node) => {
    if (node.type === 'html') problems.push(htmlNote(placeOf(node)));
    if (node.type === 'image') problems.push(pictureDoubt(placeOf(node)));
    if (node.type !== 'link' && node.type !== 'definition') return;
    if (isEntryLink(node.url)) links.push({ target: decodeTarget(node.url), place: placeOf(node) });
    else if (!/^(https?:|mailto:|#)/i.test(node.url)) problems.push(linkProblem(node.url, placeOf(node)));
  });
  const body: Root = { ...tree, children: tree.children.filter((node) => node.type !== 'yaml') };
  return { tree: body, links, problems };
}

function htmlNote(place: Place): Diagnostic {
  return {
    code: 'html-dropped',
    severity: 'note',
    place,
    message: 'HTML in the text is left out of the site',
    mend: 'use Markdown: *emphasis*, **strong**, [words](link), > quotation, a table with | bars',
  };
}

function pictureDoubt(place: Place): Diagnostic {
  return {
    code: 'picture-in-text',
    severity: 'doubt',
    place,
    message: 'a picture inside a text is not shown; its words are',
    mend: 'give the picture an entry of its own (type: figure), with its credit and what is to be seen, and link to it',
  };
}

function linkProblem(url: string, place: Place): Diagnostic {
  return {
    code: 'link-not-allowed',
    severity: 'error',
    place,
    message: `a link to "${url.slice(0, 60)}" is not allowed`,
    mend: 'link to an entry by its id, or to an address that begins with https://, http:// or mailto:',
  };
}
