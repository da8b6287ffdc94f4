import matter from 'gray-matter';
import type { Diagnostic } from '../base/diagnostic.ts';
import { phrase, type Said } from '../base/said.ts';
import { isTemplateText } from '../model/template-texts.ts';
import { inFile, type PositionedYaml, parseYaml, placesIn, type YamlData } from './positioned-yaml.ts';
import type { TextFile } from './text-file.ts';

/** The keys of a file, and whether the text below them is still that of the template. */
export interface FrontMatter {
  readonly yaml: PositionedYaml | null;
  readonly isTemplate: boolean;
  readonly problems: readonly Diagnostic[];
}

/** What only the text decides of that: plain data, without the name of the file. */
export interface ParsedFrontMatter extends YamlData {
  /** The stretch of the text that holds the keys; null where a fence is missing. */
  readonly stretch: { readonly from: number; readonly to: number } | null;
  readonly isTemplate: boolean;
}

/** Engines that evaluate or convert are switched off: the front matter is only cut out here. */
const NEVER = () => {
  throw new Error('front matter languages are switched off');
};
const CUT_ONLY = {
  engines: {
    yaml: { parse: () => ({}) },
    js: { parse: NEVER },
    javascript: { parse: NEVER },
    json: { parse: NEVER },
    coffee: { parse: NEVER },
  },
};

/** Parts a Markdown text into its keys and what stands below; every trap of the fences has its own words. */
export function parseFrontMatter(text: string): ParsedFrontMatter {
  const fence = fenceProblem(text);
  if (fence) return { stretch: null, data: null, isTemplate: false, problems: [fence] };
  const from = text.indexOf('\n') + 1;
  const to = from + closingFence(text.slice(from));
  const isTemplate = isTemplateText(matter(text, CUT_ONLY).content);
  return { stretch: { from, to }, isTemplate, ...parseYaml(text, from, to) };
}

/** The keys of a file with their places, from its text or from what was parsed of the same text before. */
export function readFrontMatter({ file, text }: TextFile, parsed = parseFrontMatter(text)): FrontMatter {
  const { stretch, data, isTemplate } = parsed;
  const problems = inFile(parsed.problems, file);
  const yaml = stretch && { data, problems, ...placesIn(file, text, stretch.from, stretch.to) };
  return { yaml, isTemplate, problems };
}

/** Offset of the closing `---` in the text after the opening one; -1 where there is none. */
function closingFence(text: string): number {
  const found = /^---[ \t]*$/m.exec(text);
  return found ? found.index : -1;
}

function fenceProblem(text: string): Diagnostic | null {
  const [first = '', ...rest] = text.split('\n');
  const problem = (code: string, line: number, message: Said, mend: Said): Diagnostic => ({
    code,
    severity: 'error',
    place: { file: '', line, column: 1 },
    message,
    mend,
  });
  if (text.trim() === '') {
    return problem(
      'file-empty',
      1,
      phrase('the file is empty'),
      phrase('write an entry, or delete the file; "kerfmark new" makes one to fill in'),
    );
  }
  if (/\r(?!\n)/.test(text)) {
    return problem(
      'file-line-ends',
      1,
      phrase('the lines end in an old way (CR only) that hides them from this program'),
      phrase('save the file with line ends LF or CRLF'),
    );
  }
  if (/^---[ \t]*\r?$/.test(first)) {
    if (closingFence(rest.join('\n').replaceAll('\r', '')) !== -1) return null;
    const almost = rest.findIndex((line) => /^(--|-{4,}|[–—]+|===+)[ \t]*\r?$/.test(line));
    if (almost !== -1) {
      return problem(
        'front-matter-open',
        almost + 2,
        phrase('this line is to close the keys, but it is not three hyphens'),
        phrase('write exactly --- on this line'),
      );
    }
    return problem(
      'front-matter-open',
      1,
      phrase('the front matter is opened with --- but never closed'),
      phrase('write --- on a line of its own after the last key'),
    );
  }
  if (/^---\s*[\w]+/.test(first)) {
    return problem(
      'front-matter-language',
      1,
      phrase('the first line names a language ("{0}"); only plain YAML is read', first.trim()),
      phrase('write --- and nothing else on the first line'),
    );
  }
  const later = rest.findIndex((line) => /^---[ \t]*\r?$/.test(line));
  if (/^[\s]*$/.test(first) && later !== -1) {
    return problem(
      'front-matter-late',
      1,
      phrase('something stands before the first ---'),
      phrase('delete what stands above it, empty lines too'),
    );
  }
  return problem(
    'front-matter-missing',
    1,
    phrase('the file does not begin with a line of three hyphens, so it has no keys'),
    phrase(
      'begin the file with ---, then the keys (id, type, title), then --- again, then the text; files that are no entries belong outside entries/',
    ),
  );
}
