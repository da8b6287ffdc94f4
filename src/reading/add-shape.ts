import { readFrontMatter } from './front-matter.ts';
import type { TextFile } from './text-file.ts';

/**
 * The text of an entry with one line more at the end of its keys: the shape. Nothing else of the text changes. Null where the
 * entry has a shape already, where its keys cannot be read, or where the line would change another key.
 */
export function addShape(file: TextFile, line: string): string | null {
  const before = keysOf(file);
  if (!before || 'shape' in before) return null;
  const lines = file.text.split('\n');
  const close = lines.findIndex((one, i) => i > 0 && /^---[ \t]*\r?$/.test(one));
  if (close === -1) return null;
  const end = lines[close]?.endsWith('\r') ? '\r' : '';
  const text = [...lines.slice(0, close), `${line}${end}`, ...lines.slice(close)].join('\n');
  const { shape, ...rest } = keysOf({ ...file, text }) ?? {};
  return shape !== undefined && JSON.stringify(rest) === JSON.stringify(before) ? text : null;
}

function keysOf(file: TextFile): Record<string, unknown> | null {
  const front = readFrontMatter(file);
  const data = front.yaml?.data;
  const broken = front.problems.some((one) => one.severity === 'error');
  return broken || data === null || typeof data !== 'object' || Array.isArray(data)
    ? null
    : (data as Record<string, unknown>);
}
