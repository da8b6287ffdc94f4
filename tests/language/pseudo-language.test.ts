import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { sitePages } from '../../site/pages.tsx';
import { standaloneDocument } from '../../site/standalone-document.tsx';
import { loadWorkspace } from '../../src/cli/load-workspace.ts';
import { Session } from '../../src/cli/session.ts';
import { flatDataOf, withLayers } from '../../src/cli/write-site.ts';
import type { Language } from '../../src/language/language.ts';
import { ENTRY_TYPES } from '../../src/model/entry-type-names.ts';
import { jsonSchemaOf } from '../../src/model/json-schema.ts';
import { compute } from '../../src/pipeline.ts';
import { answerTo } from '../../src/reports/answer.ts';
import { composeAppendix, composeFile } from '../../src/reports/provenance-file.ts';
import { behindOf } from '../../src/reports/source-book.ts';
import { annotate } from '../../src/typeset/annotate.ts';
import { documentMarkdown } from '../../src/typeset/markdown.ts';
import { kerfmarkIn } from '../cli/kerfmark.ts';
import { demoCopy, testFolder } from '../folders.ts';
import { english, everyMessage } from '../spoken.ts';
import { ROOT } from '../workspace.ts';

/** A language in which everything that the program says stands between marks. */
const PSEUDO: Language = {
  ...english.language,
  tag: 'en-XA',
  notice: '',
  messages: everyMessage((message) => `⟦${message}⟧`),
  shown: everyMessage((message) => `⟦${message}⟧`),
  pages: {},
  keys: everyMessage((word) => `⟦${word}⟧`),
  terms: everyMessage((word) => `⟦${word}⟧`),
  prose: everyMessage((name) => `⟦${name}⟧`),
};

/** Letters and digits only, in small letters. */
const plain = (text: string): string =>
  text
    .normalize('NFC')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '');

/** Everything that entries and rows of the reference tables hold, run together. */
const HELD = plain(
  ['entries', 'src/reference']
    .flatMap((folder) =>
      readdirSync(path.join(ROOT, folder), { recursive: true, encoding: 'utf8' })
        .filter((name) => /\.(md|csv|ya?ml|svg|json)$/.test(name))
        .map((name) => readFileSync(path.join(ROOT, folder, name), 'utf8')),
    )
    .join('\n')
    .replace(/\\"/g, '"')
    // A link in a text shows its words alone.
    .replace(/\]\([^)]*\)/g, ''),
);

const MONTHS =
  /\b(?:\d{1,2} )?(?:January|February|March|April|May|June|July|August|September|October|November|December) -?\d+\b/g;

/** Words that entries hold by their schemas: told in every language, whatever entries hold them. */
const SCHEMA_WORDS = new Set(
  JSON.stringify(ENTRY_TYPES.map((type) => jsonSchemaOf(type)))
    .match(/"enum":\[[^\]]*\]/g)
    ?.flatMap((list) => JSON.parse(list.slice('"enum":'.length)) as string[])
    .filter((word) => word.length > 3)
    .map(plain),
);

/** Ids, paths and codes, which are the same in every language. */
const CODES = /\b[A-Z]{2}-[\w.#-]+|\bentries\/[\w./#-]+|\bunesco-1970-adopted\b/g;

/** What of a text stands outside of all marks and is neither a date, a number, nor held by an entry or a row. */
function unmarked(text: string): readonly string[] {
  const outside: string[] = [''];
  let depth = 0;
  for (const letter of text) {
    if (letter === '⟦') depth += 1;
    else if (letter === '⟧') {
      depth -= 1;
      outside.push('');
    } else if (depth === 0) outside[outside.length - 1] += letter;
  }
  // A name that is cut short loses its last mark.
  if (!text.includes('…')) expect(depth, text.slice(0, 200)).toBe(0);
  return outside
    .flatMap((run) => run.replace(MONTHS, ';').split(/[,.;:?()[\]|*–—→·×\n]+| {2,}/))
    .map((run) => run.trim())
    .map((run) => run.replace(CODES, '').trim())
    .filter((run) => /\p{L}{2}/u.test(run) && !HELD.includes(plain(run)));
}

/** The texts of a page: between its tags, and in what is read out or shown in a bubble. */
function textsOf(html: string): readonly string[] {
  const decoded = (text: string): string =>
    text
      .replaceAll('&lt;', '<')
      .replaceAll('&gt;', '>')
      .replaceAll('&quot;', '"')
      .replaceAll('&#39;', "'")
      .replaceAll('&#x27;', "'")
      .replaceAll('&amp;', '&');
  const attributes = [...html.matchAll(/ (?:title|alt|aria-label|aria-description|placeholder)="([^"]*)"/g)];
  const between = html
    .replace(/<(script|style|sup)\b[\s\S]*?<\/\1>/g, '')
    // An element inside a sentence may stand between the marks of a message.
    .replace(/<\/?(?:a|code|cite|b|i|abbr|time|tspan|span)\b[^>]*>/g, '\n')
    .replace(/<\/?(?:em|strong)\b[^>]*>/g, '')
    .split(/<[^>]*>/);
  return [...attributes.map(([, text = '']) => text), ...between].map((text) => decoded(text)).filter(Boolean);
}

/** Words of the schemas that fill a whole cell, fact or bubble and are told as they are written. */
function wordsOfSchemas(html: string): readonly string[] {
  return [
    ...html.matchAll(/<(td|th|dd|span)\b[^>]*>([^<>]+)(?=<\/\1>)/g),
    ...html.matchAll(/ (title|aria-label)="([^"]*)"/g),
  ].flatMap(([, , text = '']) => (SCHEMA_WORDS.has(plain(text)) && !text.includes('⟦') ? [text] : []));
}

/** Words that are the same in every language: the name of the program, of formats and of standards, and what is typed. */
const NAMES = new Set(
  [
    'kerfmark',
    'Kerfmark 0.1.0',
    ...readdirSync(path.join(ROOT, 'docs/messages')).map((name) => name.replace(/\.md$/, '')),
    // Names of languages come from the engine (Unicode CLDR), as the names of months do.
    ...['el', 'en', 'fr', 'it'].map((tag) => new Intl.DisplayNames(['en-GB'], { type: 'language' }).of(tag) ?? ''),
  ].map(plain),
);

/** Unmarked runs of some texts, each once. */
function faultsOf(texts: readonly string[]): readonly string[] {
  return [...new Set(texts.flatMap(unmarked))].filter((run) => !NAMES.has(plain(run))).sort();
}

const home = testFolder();
const NO_PICTURES = { pictures: new Map(), scales: new Map(), plans: new Map(), tiles: new Map() };

describe('a language in which everything is marked', () => {
  it.each(['restricted', 'public'] as const)('leaves nothing unmarked on any page for %s readers', async (audience) => {
    const session = new Session();
    const computed = compute(await loadWorkspace(ROOT, session), audience, {
      languages: [PSEUDO],
      spoken: PSEUDO,
      session,
    });
    const flat = await flatDataOf({ computed, folder: ROOT, built: '2024-06-01', session }, NO_PICTURES);
    const data = await withLayers(flat, session, () => true);
    let pages = 0;
    const faults = new Map<string, string>();
    for (const page of sitePages(data).filter((one) => /\.(html|svg)$/.test(one.path))) {
      pages += 1;
      const html = page.render();
      for (const fault of [...faultsOf(textsOf(html)), ...wordsOfSchemas(html)]) {
        if (!faults.has(fault)) faults.set(fault, page.path);
      }
    }
    expect(pages).toBeGreaterThan(250);
    expect([...faults].map(([run, page]) => `${page}: ${run}`)).toEqual([]);
  });

  it('leaves nothing unmarked in any document', async () => {
    const computed = compute(await loadWorkspace(ROOT), 'internal', { languages: [PSEUDO], spoken: PSEUDO });
    const { file } = computed;
    const pictures = { chronology: null, chains: null, plates: [] };
    const making = { built: '2024-06-01', version: '0.1.0' };
    const documents = [
      ...file.catalogue
        .ofType('object')
        .flatMap((object) => [composeFile, composeAppendix].map((compose) => compose(file, object, pictures, making))),
      ...file.catalogue
        .ofType('inquiry')
        .map((inquiry) => answerTo(inquiry, file.catalogue, computed.fileFor).document),
    ];
    expect(documents.length).toBeGreaterThan(3);
    const behind = behindOf(file);
    const texts = documents.flatMap((document) => [
      ...documentMarkdown(document, behind)
        .replace(/\\([\\`*_[\]<>#~.)+-])/g, '$1')
        .replace(/`[^`\n]*`/g, '')
        .split(/\n|\|/),
      ...textsOf(standaloneDocument(annotate(document, behind.book), [], { style: '', built: '2024-06-01' })),
    ]);
    expect(faultsOf(texts)).toEqual([]);
  });

  it.each([
    ['check'],
    ['dates'],
    ['dates', '--without', 'CL-interview'],
    ['why', 'EV-removal'],
    ['worth'],
    ['worth', 'CL-interview'],
    ['references'],
    ['references', '--offered'],
    ['custody'],
    ['panels'],
    ['answer', 'IN-2021-3', '--changes'],
    ['number', '--dry-run'],
    ['upgrade', '--dry-run'],
    ['why', 'EV-nothing'],
    ['answer'],
    ['file', 'OB-nothing'],
    ['check', '--format', 'poem'],
    ['chekc'],
    ['dates', 'stray'],
  ])('leaves nothing unmarked in what the terminal prints: %s %s %s', async (...line) => {
    const { out, err } = await kerfmarkIn(PSEUDO, line.filter(Boolean), ROOT);
    const lines = `${out}\n${err}`.split('\n').map((one) =>
      one
        // Places, codes and what is typed are the same in every language.
        .replace(/^entries\/\S+:\d+:\d+/, '')
        .replace(/\[[a-z-]+\]/g, ''),
    );
    expect(faultsOf([lines.join('\n')])).toEqual([]);
  });

  it('leaves nothing unmarked in questions and in what they write about', async () => {
    const folder = demoCopy(home);
    const began = await kerfmarkIn(PSEUDO, ['new'], folder, ['event', 'A title', 'removal', '', 'n', '', '', '', '']);
    expect(faultsOf([began.out.replace(/^ +\d+ .*$/gm, ''), began.err])).toEqual([]);
  });
});
