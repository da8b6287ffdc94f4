import { type ParsedArgument, parseArgument } from './argument.ts';
import { type ParsedFrontMatter, parseFrontMatter } from './front-matter.ts';

/** All that only the text of an entry's file decides, so that it can be kept by the text: plain data, without the name of the file. */
export interface ParsedText {
  readonly front: ParsedFrontMatter;
  readonly argument: ParsedArgument;
}

/** Parses the text of a file: its keys, and what stands below them. */
export function parseText(text: string): ParsedText {
  return { front: parseFrontMatter(text), argument: parseArgument(text) };
}
