import { existsSync } from 'node:fs';
import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { HtmlValidate } from 'html-validate';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Preview, startPreview } from '../../src/cli/serve.ts';
import { silentEffects } from '../cli/kerfmark.ts';
import { sharedSite } from '../shared-sites.ts';
import { ROOT } from '../workspace.ts';
import { openBrowser } from './browser.ts';
import { PAGE_KINDS } from './page-kinds.mjs';

let browser: Browser;
let preview: Preview;
const site = await sharedSite('internal');

const quiet = silentEffects(ROOT);

beforeAll(async () => {
  preview = await startPreview({ words: [], flags: { in: ROOT } }, quiet, 0);
  browser = await openBrowser();
});

afterAll(async () => {
  await browser?.close();
  preview?.close();
});

interface Watched {
  readonly page: Page;
  readonly errors: string[];
  readonly strangers: string[];
}

async function open(context: BrowserContext, address: string): Promise<Watched> {
  const page = await context.newPage();
  const errors: string[] = [];
  const strangers: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('request', (request) => {
    if (!request.url().startsWith(preview.address) && !request.url().startsWith('file:')) strangers.push(request.url());
  });
  await page.goto(address, { waitUntil: 'load' });
  return { page, errors, strangers };
}

describe.each([
  [1440, 1000, 'light'],
  [390, 844, 'dark'],
] as const)('the site of the demonstration file at %i x %i, %s', (width, height, colorScheme) => {
  let context: BrowserContext;
  beforeAll(async () => {
    context = await browser.newContext({ viewport: { width, height }, colorScheme });
  });
  afterAll(() => context?.close());

  it.each(PAGE_KINDS)('%s: no console error, no request off the site, no sideways scrolling', async (kind) => {
    const { page, errors, strangers } = await open(context, preview.address + kind);
    expect(errors).toEqual([]);
    expect(strangers).toEqual([]);
    const overflow = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(overflow).toBeLessThanOrEqual(0);
    expect((await page.title()).length).toBeGreaterThan(3);
    await page.close();
  });
});

describe('reading and using the pages', () => {
  it('everything is there without scripts, and links lead to their anchors from a disk', async () => {
    const context = await browser.newContext({ javaScriptEnabled: false });
    const { page, errors } = await open(context, pathToFileURL(path.join(site, 'chronology.html')).href);
    expect(await page.locator('svg.chronology a').count()).toBeGreaterThan(15);
    await page.locator('table a[href="why/EV-removal.html#start-probable"]').click();
    expect(page.url()).toMatch(/why\/EV-removal\.html#start-probable$/);
    expect(await page.locator('#start-probable').count()).toBe(1);
    expect(await page.locator('body').evaluate((body) => getComputedStyle(body).fontFamily)).toContain(
      'Source Serif 4',
    );
    expect(errors).toEqual([]);
    await context.close();
  });

  it('a range on the opening page is the one that the commands print, and its reason cites the statements', async () => {
    const dates = JSON.parse(await readFile(path.join(site, 'data/dates.json'), 'utf8')) as {
      moments: {
        entry: string;
        edge: string;
        ranges: { grade: string; earliest: string; earliestBecause: string[] }[];
      }[];
    };
    const start = dates.moments.find((one) => one.entry === 'EV-removal' && one.edge === 'start');
    const probable = start?.ranges.find((one) => one.grade === 'probable');
    expect(probable?.earliest).toBe('1929-05-01');
    const context = await browser.newContext();
    const { page } = await open(context, `${preview.address}why/EV-removal.html`);
    const text = await page.locator('main').innerText();
    for (const id of probable?.earliestBecause ?? []) expect(text).toContain(id);
    await context.close();
  });

  it('the keyboard reaches everything that can be pressed, and shows where it is', async () => {
    const context = await browser.newContext({ viewport: { width: 1440, height: 1000 } });
    const { page } = await open(context, `${preview.address}register/sources.html`);
    await page.waitForSelector('.filter input');
    const wanted = await page.locator('a[href], button, input, select, summary').count();
    const seen = new Set<string>();
    for (let i = 0; i < wanted + 5; i += 1) {
      await page.keyboard.press('Tab');
      const at = await page.evaluate(() => {
        const element = document.activeElement;
        if (!element || element === document.body) return null;
        const all = [...document.querySelectorAll('a[href], button, input, summary')];
        return { index: all.indexOf(element), outline: getComputedStyle(element).outlineStyle };
      });
      if (at && at.index >= 0) {
        seen.add(String(at.index));
        expect(at.outline).not.toBe('none');
      }
    }
    expect(seen.size).toBe(wanted);
    await context.close();
  });

  it('a register can be filtered and sorted', async () => {
    const context = await browser.newContext();
    const { page } = await open(context, `${preview.address}register/sources.html`);
    await page.getByLabel('Show only rows with').fill('stock ledger');
    expect(await page.locator('tbody tr:visible').count()).toBe(1);
    await page.getByLabel('Show only rows with').fill('');
    const firstBefore = await page.locator('tbody tr th').first().innerText();
    await page.getByRole('button', { name: 'Title' }).click();
    await page.getByRole('button', { name: 'Title' }).click();
    expect(await page.locator('tbody tr th').first().innerText()).not.toBe(firstBefore);
    await context.close();
  });

  it('search finds ids, names in every writing without their accents, slips of the finger; works from a disk, shares its words', async () => {
    const context = await browser.newContext();
    const { page } = await open(context, pathToFileURL(path.join(site, 'search.html')).href);
    const titles = async (words: string): Promise<readonly string[]> => {
      await page.getByLabel('Search for').fill(words);
      return page.locator('.found a').allInnerTexts();
    };
    expect((await titles('HO-dray'))[0]).toBe('Stock of Harlan Dray and Sons');
    expect(await titles('αρχαγγελων')).toContain('Community of the Monastery of the Archangels');
    expect(await titles('Archangelon')).toContain('Community of the Monastery of the Archangels');
    expect(await titles('earthqauke')).toContain('Earthquake on Lerakos, 1933');
    expect(await titles('nothing like this')).toEqual([]);
    expect(await page.getByRole('status').last().innerText()).toBe('Nothing found.');
    await titles('medallion');
    expect(page.url()).toMatch(/#medallion$/);
    await page.locator('.found a').first().click();
    expect(page.url()).toMatch(/entry\/PE-medallion-A\.html$/);
    await context.close();
  });

  it('a print of the chronology keeps the drawing and fits A4', async () => {
    const context = await browser.newContext();
    const { page } = await open(context, `${preview.address}chronology.html`);
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('svg.chronology').isVisible()).toBe(true);
    const pdf = await page.pdf({ format: 'A4' });
    expect(pdf.length).toBeGreaterThan(10_000);
    await context.close();
  });
});

describe('the markup', () => {
  it('is valid HTML on every page, and every link of the site leads somewhere', async () => {
    const files = (await readdir(site, { recursive: true })).filter((file) => file.endsWith('.html'));
    expect(files.length).toBeGreaterThan(150);
    const validator = new HtmlValidate({
      extends: ['html-validate:recommended'],
      rules: {
        'long-title': 'off',
        'no-trailing-whitespace': 'off',
        'void-style': 'off',
        'no-raw-characters': 'off',
        'attribute-boolean-style': 'off',
        'attribute-empty-style': 'off',
        'prefer-native-element': 'off',
        'doctype-style': 'off',
        'no-inline-style': 'error',
        'require-sri': 'off',
        'valid-id': 'off',
        'tel-non-breaking': 'off',
      },
    });
    const problems: string[] = [];
    const ids = new Map<string, Set<string>>();
    const texts = new Map<string, string>();
    for (const file of files) {
      const text = await readFile(path.join(site, file), 'utf8');
      texts.set(file, text);
      ids.set(file, new Set([...text.matchAll(/ id="([^"]*)"/g)].map(([, id]) => id as string)));
    }
    for (const [file, text] of texts) {
      const report = await validator.validateString(text);
      for (const message of report.results[0]?.messages ?? [])
        problems.push(`${file}: ${message.ruleId} ${message.message}`);
      for (const [, href] of text.matchAll(/<a [^>]*href="([^"]*)"/g)) {
        if (/^(https?:|mailto:)/.test(href as string)) continue;
        const [address = '', anchor] = (href as string).split('#');
        // The state of a trial is written after the `#`; it is no place on the page.
        if (address.endsWith('trial.html') && anchor?.includes('=')) continue;
        const target = address === '' ? file : path.posix.normalize(path.posix.join(path.posix.dirname(file), address));
        if (!target.endsWith('.html')) {
          if (!existsSync(path.join(site, target))) problems.push(`${file}: ${href} leads nowhere`);
          continue;
        }
        if (!ids.has(target)) problems.push(`${file}: ${href} leads nowhere`);
        else if (anchor !== undefined && !ids.get(target)?.has(decodeURIComponent(anchor)))
          problems.push(`${file}: ${href} has no such anchor`);
      }
    }
    expect(problems.slice(0, 20)).toEqual([]);
  });
});
