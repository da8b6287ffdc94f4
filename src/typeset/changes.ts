import { diffArrays } from 'diff';
import { citedHeading } from '../language/sent-language.ts';

/** What a document says otherwise than an older one, under one of its headings. */
export interface Change {
  readonly heading: string;
  readonly was: readonly string[];
  readonly is: readonly string[];
}

interface Line {
  readonly heading: string;
  readonly words: string;
}

/**
 * Compares a document as it was sent with the same document composed today (both as `documentMarkdown` writes them):
 * passages that went, came or changed. Notes are not compared, nor the list of statements at the end, which is checked
 * by itself.
 */
export function changesSince(sent: string, today: string): readonly Change[] {
  const changes = new Map<string, { readonly heading: string; readonly was: string[]; readonly is: string[] }>();
  const parts = diffArrays([...linesOf(sent)], [...linesOf(today)], {
    comparator: (a, b) => a.words === b.words && a.heading === b.heading,
  });
  for (const part of parts.filter((one) => one.added || one.removed)) {
    for (const { heading, words } of part.value) {
      const change = changes.get(heading) ?? { heading, was: [], is: [] };
      changes.set(heading, change);
      (part.added ? change.is : change.was).push(words);
    }
  }
  return [...changes.values()];
}

function linesOf(markdown: string): readonly Line[] {
  const lines: Line[] = [];
  let heading = '';
  for (const line of markdown.split('\n')) {
    const head = /^#+ (.*)$/.exec(line)?.[1];
    if (head !== undefined) heading = plain(head);
    else if (line.trim() !== '' && heading !== citedHeading() && !/^\[\^\d+\]:/.test(line))
      lines.push({ heading, words: plain(line) });
  }
  return lines;
}

/** The words of a line without its marks. */
function plain(line: string): string {
  return line
    .replace(/^(?:- |> )+/, '')
    .replace(/\[\^\d+\]/g, '')
    .replace(/\*\*/g, '')
    .replace(/\\([\\`*_[\]<>#~.)+-])/g, '$1')
    .trim();
}
