import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { parseXml, XmlElement } from '@rgrove/parse-xml';
import type { Browser } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { pictureOf, workspaceOf } from '../audiences/filled-workspace.ts';
import { openPdf, readOutputs } from '../audiences/read-outputs.ts';
import { openBrowser } from '../browser/browser.ts';
import { kerfmark } from '../cli/kerfmark.ts';

/**
 * Text that would run, load or break out if any output took it for more than text: HTML, a script in JSON, a link that
 * runs, a formula of a spreadsheet, markup and code of the typesetter, an end of XML.
 */
const HOSTILE = [
  '=1+HYPERLINK("https://off.example/zq")',
  '"><script>window.zqRan=1</script><img src="https://off.example/zq.png" onerror="window.zqRan=1">',
  '</script><svg onload="window.zqRan=1"></svg><iframe src="javascript:window.zqRan=1"></iframe>',
  '[run](javascript:window.zqRan=1) [data](data:text/html,zq) [file](file:///etc/passwd) ![x](https://off.example/zq.png)',
  '<style>*{display:none}</style> #panic("zq") #read("/etc/passwd") $ \\ ]]> <!-- &amp; \\u003c \'',
].join(' ');

const folder = mkdtempSync(path.join(tmpdir(), 'kerfmark-hostile-'));
let outputs: ReadonlyMap<string, string>;
let browser: Browser;

beforeAll(async () => {
  for (const [file, text] of Object.entries(workspaceOf(HOSTILE))) {
    mkdirSync(path.join(folder, path.dirname(file)), { recursive: true });
    writeFileSync(path.join(folder, file), text);
  }
  await sharp({ create: { width: 600, height: 480, channels: 3, background: '#c9b79c' } })
    .jpeg()
    .toFile(path.join(folder, 'entries/figure', pictureOf('public')));
  const to = ['--audience', 'public', '--out'];
  const documents = ['--format', 'pdf,docx,md,html', ...to, path.join(folder, 'out/documents')];
  for (const line of [
    ['build', ...to, path.join(folder, 'out/site')],
    ['export', ...to, path.join(folder, 'out/export')],
    ['file', 'OB-open', ...documents],
    ['appendix', 'OB-open', ...documents],
    ['answer', 'IN-open', ...documents],
  ])
    expect(await kerfmark(line, folder), line.join(' ')).toMatchObject({ code: 0, err: '' });
  outputs = await readOutputs(path.join(folder, 'out'));
  browser = await openBrowser();
});

afterAll(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
});

const named = (pattern: RegExp): readonly string[] => [...outputs.keys()].filter((name) => pattern.test(name));

describe('hostile text in every key of every type', () => {
  it('is text on every page and in every HTML document, also where no policy would stop it', async () => {
    const pages = named(/\.html$/);
    expect(pages.length).toBeGreaterThan(70);
    // The policy of the pages is switched off: the markup alone must hold.
    const context = await browser.newContext({ bypassCSP: true });
    const page = await context.newPage();
    const away: string[] = [];
    page.on('request', (request) => {
      if (!request.url().startsWith('file:')) away.push(request.url());
    });
    const found: string[] = [];
    let shown = 0;
    for (const name of pages) {
      await page.goto(pathToFileURL(path.join(folder, 'out', name)).href);
      const seen = await page.evaluate(() => {
        const all = [...document.querySelectorAll('*')];
        return {
          ran: 'zqRan' in window,
          strange: all
            .filter((one) => ['IFRAME', 'OBJECT', 'EMBED', 'BASE', 'FORM'].includes(one.tagName))
            .map((one) => one.tagName),
          handlers: all.flatMap((one) => one.getAttributeNames().filter((key) => key.startsWith('on'))),
          scripts: [...document.scripts]
            .filter(
              (one) => one.type !== 'application/json' && !/^assets\/|\/assets\//.test(one.getAttribute('src') ?? ''),
            )
            .map((one) => one.outerHTML),
          sources: all
            .flatMap((one) =>
              ['href', 'src', 'xlink:href', 'action'].map((key) => `${one.tagName} ${one.getAttribute(key) ?? ''}`),
            )
            // A plain address in a text may be a link to follow; nothing may be loaded from it.
            .filter(
              (one) =>
                /^\w+ \s*(javascript|data|vbscript|file|blob):|^(?!A )\w+ .*off\.example/i.test(one) &&
                !/^\w+ data:image\//.test(one),
            ),
          text: document.body.innerText.includes('<script>window.zqRan=1</script>'),
        };
      });
      if (seen.text) shown += 1;
      const { ran, strange, handlers, scripts, sources } = seen;
      if (ran || strange.length + handlers.length + scripts.length + sources.length > 0)
        found.push(`${name}: ${JSON.stringify({ ran, strange, handlers, scripts, sources })}`);
    }
    expect(found).toEqual([]);
    expect(away).toEqual([]);
    // It is read as it was written, not swallowed.
    expect(shown).toBeGreaterThan(pages.length / 2);
    await context.close();
  });

  it('every page carries the policy before anything else that could load, and no script or style of its own', () => {
    for (const name of named(/^site\/.*\.html$/)) {
      const text = outputs.get(name) ?? '';
      const head = text.slice(0, text.indexOf('</head>'));
      const policy = /<meta http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(head);
      expect(policy?.[1], name).toMatch(/default-src (?:'|&#39;)none(?:'|&#39;)/);
      expect(policy?.[1], name).not.toMatch(/unsafe/);
      expect(head.search(/<(link|script|style)/), name).toBeGreaterThan(policy?.index ?? Infinity);
      expect(text, name).not.toMatch(/<style|style="/);
    }
  });

  it('is text in PDF: nothing was evaluated, no link leads off the allowed kinds', async () => {
    const pdfs = named(/\.pdf$/);
    expect(pdfs.length).toBe(3);
    for (const name of pdfs) {
      const pdf = await openPdf(path.join(folder, 'out', name));
      expect(await pdf.getJSActions(), name).toBeNull();
      for (let n = 1; n <= pdf.numPages; n += 1) {
        const notes = (await (await pdf.getPage(n)).getAnnotations()) as { url?: string; unsafeUrl?: string }[];
        for (const { url, unsafeUrl } of notes)
          expect(`${url ?? ''}${unsafeUrl ?? ''}`).not.toMatch(/^(javascript|data|file):/);
      }
      expect(outputs.get(name)?.replace(/\s/g, ''), name).toContain('#panic(');
      expect(outputs.get(name), name).not.toContain('root:x:0');
    }
  });

  it('is text in DOCX: parts are XML, and lead nowhere but to http, https and mail', () => {
    const documents = named(/\.docx$/);
    expect(documents.length).toBe(3);
    for (const name of documents) {
      const text = outputs.get(name) ?? '';
      expect(text, name).not.toContain('<script>');
      for (const [, target] of text.matchAll(/Target="([^"]*)" TargetMode="External"/g))
        expect(target, name).toMatch(/^(https?|mailto):/);
    }
  });

  it('begins no cell of a register, and stays one string in JSON', () => {
    for (const name of named(/registers\/.*\.csv$/)) expect(outputs.get(name), name).not.toMatch(/(^|[,\n])"?[=+@]/);
    for (const name of named(/\.json$/)) expect(() => JSON.parse(outputs.get(name) ?? ''), name).not.toThrow();
    expect(outputs.get('export/case-file.json')).toContain('window.zqRan');
  });

  it('is text in pictures that stand alone', () => {
    const drawings = named(/\.svg$/).filter((name) => !name.endsWith('mark.svg'));
    expect(drawings.length).toBeGreaterThan(2);
    for (const name of drawings) {
      const walk = (node: XmlElement): void => {
        expect(['script', 'foreignObject', 'image', 'iframe'], name).not.toContain(node.name);
        for (const [key, value] of Object.entries(node.attributes)) {
          expect(key, name).not.toMatch(/^on/i);
          if (/href$/.test(key)) expect(value, name).not.toMatch(/^\s*(javascript|data):/i);
        }
        for (const child of node.children) if (child instanceof XmlElement) walk(child);
      };
      walk(parseXml(outputs.get(name) ?? '').root as XmlElement);
    }
  });
});
