import type { Definition, Link as MarkdownLink, Root } from 'mdast';
import { visit } from 'unist-util-visit';
import { oncePer } from '../base/once.ts';

/** A link or a link definition in an argument. */
export type LinkNode = MarkdownLink | Definition;

/** Finds the links of an argument whose target has the shape of an entry id. */
export const findEntryLinks = oncePer((argument: Root): readonly LinkNode[] => {
  const found: LinkNode[] = [];
  visit(argument, (node) => {
    if ((node.type === 'link' || node.type === 'definition') && isEntryLink(node.url)) found.push(node);
  });
  return found;
});

/** True where a link's target has the shape of an entry id (also `OB-east/A`, `EV-x#1`). */
export function isEntryLink(url: string): boolean {
  return /^[A-Za-z0-9][A-Za-z0-9.-]*(\/[A-Za-z0-9][A-Za-z0-9.-]*)?(#[A-Za-z0-9.-]+)?$/.test(decodeTarget(url));
}

/** The id that a link's target names, without the `#` part. */
export function idOfTarget(url: string): string {
  return decodeTarget(url).split('#')[0] as string;
}

/** A link's target with `%20` and the like undone. */
export function decodeTarget(url: string): string {
  try {
    return decodeURIComponent(url);
  } catch {
    return url;
  }
}
