import matter from 'gray-matter';
import type { Diagnostic } from '../base/diagnostic.ts';
import { type PositionedYaml, readYaml } from './positioned-yaml.ts';
import type { TextFile } from './text-file.ts';

/** A file parted into its keys and its argument. */
export interface FrontMatter {
  readonly yaml: PositionedYaml | null;
  readonly body: string;
  readonly problems: readonly Diagnostic[];
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

/** Parts a Markdown file into front matter and body; every trap of the fences has its own words. */
export function readFrontMatter({ file, text }: TextFile): FrontMatter {
  const fence = fenceProblem(file, text);
  if (fence) return { yaml: null, body: '', problems: [fence] };
  const parted = matter(text, CUT_ONLY);
  const from = text.indexOf('\n') + 1;
  const to = from + closingFence(text.slice(from));
  const yaml = readYaml(file, text, from, to);
  return { yaml, body: parted.content, problems: yaml.problems };
}

/** Offset of the closing `---` in the text after the opening one; -1 where there is none. */
function closingFence(text: string): number {
  const found = /^---[ \t]*$/m.exec(text);
  return found ? found.index : -1;
}

function fenceProblem(file: string, text: string): Diagnostic | null {
  const [first = '', ...rest] = text.split('\n');
  const problem = (code: string, line: number, message: string, mend: string): Diagnostic => ({
    code,
    severity: 'error',
    place: { file, line, column: 1 },
    message,
    mend,
  });
  if (text.trim() === '') {
    return problem(
      'file-empty',
      1,
      'the file is empty',
      'write an entry, or delete the file; "kerfmark new" makes one to fill in',
    );
  }
  if (/\r(?!\n)/.test(text)) {
    return problem(
      'file-line-ends',
      1,
      'the lines end in an old way (CR only) that hides them from this program',
      'save the file with line ends LF or CRLF',
    );
  }
  if (/^---[ \t]*\r?$/.test(first)) {
    if (closingFence(rest.join('\n').replaceAll('\r', '')) !== -1) return null;
    const almost = rest.findIndex((line) => /^(--|-{4,}|[–—]+|===+)[ \t]*\r?$/.test(line));
    if (almost !== -1) {
      return problem(
        'front-matter-open',
        almost + 2,
        'this line is to close the keys, but it is not three hyphens',
        'write exactly --- on this line',
      );
    }
    return problem(
      'front-matter-open',
      1,
      'the front matter is opened with --- but never closed',
      'write --- on a line of its own after the last key',
    );
  }
  if (/^---\s*[\w]+/.test(first)) {
    return problem(
      'front-matter-language',
      1,
      `the first line names a language ("${first.trim()}"); only plain YAML is read`,
      'write --- and nothing else on the first line',
    );
  }
  const later = rest.findIndex((line) => /^---[ \t]*\r?$/.test(line));
  if (/^[\s]*$/.test(first) && later !== -1) {
    return problem(
      'front-matter-late',
      1,
      'something stands before the first ---',
      'delete what stands above it, empty lines too',
    );
  }
  return problem(
    'front-matter-missing',
    1,
    'the file does not begin with a line of three hyphens, so it has no keys',
    'begin the file with ---, then the keys (id, type, title), then --- again, then the text; files that are no entries belong outside entries/',
  );
}
