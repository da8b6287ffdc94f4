import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { inEnglish } from '../spoken.ts';
import { computeFiles, filesOf, ROOT } from '../workspace.ts';

const folder = path.join(ROOT, 'docs/messages');
const base = filesOf(path.join(ROOT, 'tests/messages/base'));
const pages = readdirSync(folder).filter((name) => name.endsWith('.md'));

interface Example {
  readonly fails: Record<string, string>;
  readonly passes: Record<string, string>;
  readonly said: string;
  readonly mend: string;
}

/** The examples of a page: blocks "fails", "passes" and "beside", and the quoted message. */
function exampleOf(text: string): Example {
  const fails: Record<string, string> = {};
  const passes: Record<string, string> = {};
  let beside: Record<string, string> = {};
  for (const [, kind, file, body] of text.matchAll(/^~~~ (fails|passes|beside) (\S+)\n([\s\S]*?)^~~~$/gm)) {
    const plain = (body as string)
      .replaceAll('␍', '\r')
      .replaceAll('⍽', '\u00a0')
      .replaceAll('⇥', '\t')
      .replace(/\r\n$/, '\r');
    if (kind === 'beside') beside = { [file as string]: plain };
    else Object.assign(kind === 'fails' ? fails : passes, beside, { [file as string]: plain === '\n' ? '' : plain });
    if (kind !== 'beside') beside = {};
  }
  const [, said = '', mend = ''] = /^> (.*)\n>\n> Mend: (.*)$/m.exec(text) ?? [];
  return { fails, passes, said, mend };
}

describe('pages of messages', () => {
  const withExample = pages.filter((name) => readFileSync(path.join(folder, name), 'utf8').includes('~~~ fails'));

  it('there are at least 40 with an example', () => {
    expect(withExample.length).toBeGreaterThanOrEqual(40);
  });

  it.each(withExample)('%s: the failing example gives the message, place and mend; the other gives none', (name) => {
    const code = name.replace('.md', '');
    const example = exampleOf(readFileSync(path.join(folder, name), 'utf8'));
    const found = computeFiles({ ...base, ...example.fails }).problems.filter((one) => one.code === code);
    const said = found.map(
      (one) => `${one.place.file}:${one.place.line}:${one.place.column} ${inEnglish(one.message)}`,
    );
    expect(said).toContain(example.said);
    expect(found.map((one) => inEnglish(one.mend))).toContain(example.mend);
    const clean = computeFiles({ ...base, ...example.passes }).problems;
    expect(clean.filter((one) => one.severity !== 'note' || one.code === code)).toEqual([]);
  });

  it('every code that the program can report has its page', () => {
    const sources = readdirSync(path.join(ROOT, 'src'), { recursive: true, encoding: 'utf8' }).filter((file) =>
      file.endsWith('.ts'),
    );
    const codes = new Set<string>();
    for (const file of sources) {
      const text = readFileSync(path.join(ROOT, 'src', file), 'utf8');
      for (const [, code] of text.matchAll(/code:\s*'([a-z]+(?:-[a-z]+)+)'/g)) codes.add(code as string);
      for (const [, code] of text.matchAll(
        /(?:error|problem|doubt)\(\s*(?:\w+,\s*)?(?:\[[^\]]*\],\s*)?'([a-z]+(?:-[a-z]+)+)'/g,
      ))
        codes.add(code as string);
    }
    expect(codes.size).toBeGreaterThan(50);
    const known = new Set(pages.map((name) => name.replace('.md', '')));
    expect([...codes].filter((code) => !known.has(code))).toEqual([]);
  });
});
