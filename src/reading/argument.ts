import type { Definition, Html, Image, Link as MarkdownLink, Nodes, Root } from 'mdast';
import remarkFrontmatter from 'remark-frontmatter';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import { visit } from 'unist-util-visit';
import type { Diagnostic } from '../base/diagnostic.ts';
import type { Place } from '../base/place.ts';
import { phrase } from '../base/said.ts';
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

/** What only the text of a file decides, so that it can be kept by it: plain data, without the name of the file. */
export interface ParsedArgument {
  /** Without positions. */
  readonly tree: Root;
  readonly links: readonly { readonly target: string; readonly line: number; readonly column: number }[];
  readonly faults: readonly {
    readonly kind: 'html' | 'image' | 'link';
    readonly url: string;
    readonly line: number;
    readonly column: number;
  }[];
}

const plain = unified().use(remarkParse).use(remarkFrontmatter);
const extended = unified().use(remarkParse).use(remarkFrontmatter).use(remarkGfm);

/** What tables, footnotes, strikethrough, task lists and bare addresses all need; most texts have none of it. */
const NEEDS_EXTENSIONS = /[|~@]|\[\^|\[[ xX]\]|:\/\/|www\./;

/** An empty argument, for rows of a table. */
export const NO_ARGUMENT: Root = { type: 'root', children: [] };

/** Parses the Markdown of a whole file, so that every position is a position in the file. */
export function parseArgument(text: string): ParsedArgument {
  const body = withoutKeys(text);
  const tree = (NEEDS_EXTENSIONS.test(body) ? extended : plain).parse(body);
  const links: ParsedArgument['links'][number][] = [];
  const faults: ParsedArgument['faults'][number][] = [];
  const at = (node: MarkdownLink | Definition | Html | Image): { readonly line: number; readonly column: number } => ({
    line: node.position?.start.line ?? 1,
    column: node.position?.start.column ?? 1,
  });
  visit(tree, (node) => {
    if (node.type === 'html') faults.push({ kind: 'html', url: '', ...at(node) });
    if (node.type === 'image') faults.push({ kind: 'image', url: '', ...at(node) });
    if (node.type !== 'link' && node.type !== 'definition') return;
    if (isEntryLink(node.url)) links.push({ target: decodeTarget(node.url), ...at(node) });
    else if (!/^(https?:|mailto:|#)/i.test(node.url)) faults.push({ kind: 'link', url: node.url, ...at(node) });
  });
  visit(tree, (node: Nodes) => {
    delete node.position;
  });
  return { tree: { ...tree, children: tree.children.filter((node) => node.type !== 'yaml') }, links, faults };
}

/** The text with empty lines in place of its keys: they are read elsewhere, and every line keeps its number. */
function withoutKeys(text: string): string {
  const fenced = /^(---[ \t]*\r?\n)([\s\S]*?\n)?(---[ \t]*(?:\r?\n|$))/.exec(text);
  if (!fenced) return text;
  const [whole, opening = '', keys = '', closing = ''] = fenced;
  return `${opening}${'\n'.repeat(keys.split('\n').length - 1)}${closing}${text.slice(whole.length)}`;
}

/** The argument of a file, from its text, or from what was parsed of the same text before. */
export function readArgument({ file, text }: TextFile, parsed = parseArgument(text)): Argument {
  const place = ({ line, column }: { readonly line: number; readonly column: number }): Place => ({
    file,
    line,
    column,
  });
  return {
    tree: parsed.tree,
    links: parsed.links.map((one) => ({ target: one.target, place: place(one) })),
    problems: parsed.faults.map((one) => FAULTS[one.kind](place(one), one.url)),
  };
}

const FAULTS: Readonly<Record<ParsedArgument['faults'][number]['kind'], (place: Place, url: string) => Diagnostic>> = {
  html: (place) => htmlNote(place),
  image: (place) => pictureDoubt(place),
  link: (place, url) => linkProblem(url, place),
};

function htmlNote(place: Place): Diagnostic {
  return {
    code: 'html-dropped',
    severity: 'note',
    place,
    message: phrase('HTML in the text is left out of the site'),
    mend: phrase('use Markdown: *emphasis*, **strong**, [words](link), > quotation, a table with | bars'),
  };
}

function pictureDoubt(place: Place): Diagnostic {
  return {
    code: 'picture-in-text',
    severity: 'doubt',
    place,
    message: phrase('a picture inside a text is not shown; its words are'),
    mend: phrase(
      'give the picture an entry of its own (type: figure), with its credit and what is to be seen, and link to it',
    ),
  };
}

function linkProblem(url: string, place: Place): Diagnostic {
  return {
    code: 'link-not-allowed',
    severity: 'error',
    place,
    message: phrase('a link to "{0}" is not allowed', url.slice(0, 60)),
    mend: phrase('link to an entry by its id, or to an address that begins with https://, http:// or mailto:'),
  };
}
