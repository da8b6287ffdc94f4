import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Preview, startPreview } from '../../src/cli/serve.ts';
import { silentEffects } from '../cli/kerfmark.ts';
import { sharedSite } from '../shared-sites.ts';
import { ROOT } from '../workspace.ts';
import { openBrowser } from './browser.ts';
import { looked } from './looked.ts';
import { PAGE_KINDS } from './page-kinds.mjs';
import { inTwoTabs, openWatched, sideways, type Watched } from './watched-page.ts';

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

/** Opens an address and watches it; nothing may be asked for but what the preview and the disk hold. */
const open = (context: BrowserContext, address: string): Promise<Watched> =>
  openWatched(context, address, preview.address);

describe('the site of the demonstration file at 1440 x 1000, light', () => {
  let context: BrowserContext;
  beforeAll(async () => {
    context = await browser.newContext({ viewport: { width: 1440, height: 1000 }, colorScheme: 'light' });
  });
  afterAll(() => context?.close());

  it.each(PAGE_KINDS)('%s: no console error, no request off the site, no sideways scrolling', async (kind) => {
    const { page, errors, strangers } = await open(context, preview.address + kind);
    expect(errors).toEqual([]);
    expect(strangers).toEqual([]);
    expect(await sideways(page)).toBeLessThanOrEqual(0);
    expect((await page.title()).length).toBeGreaterThan(3);
    await page.close();
  });
});

/** What was seen of each kind of page on a small screen in the dark, which is opened once. */
const small = new Map<string, Omit<Watched, 'page'> & { readonly wider: number; readonly title: string }>();
const found = new Map<string, string[]>();
const counts = { whole: new Map<string, number>(), withoutScripts: new Map<string, number>() };
const COUNTED = ['main table', 'main svg', 'main a[href]', 'main img'];

async function count(page: Page, name: string, into: Map<string, number>): Promise<void> {
  for (const kind of COUNTED) into.set(`${name} ${kind}`, await page.locator(kind).count());
}

beforeAll(async () => {
  await inTwoTabs(
    browser,
    { viewport: { width: 390, height: 844 }, colorScheme: 'dark' },
    PAGE_KINDS,
    async (context, kind) => {
      const { page, errors, strangers } = await open(context, preview.address + kind);
      small.set(kind, { errors, strangers, wider: await sideways(page), title: await page.title() });
      await page.emulateMedia({ colorScheme: 'light' });
      for (const [what, faults] of Object.entries(await looked(page)))
        found.set(what, [...(found.get(what) ?? []), ...faults.map((one) => `${kind}: ${one}`)]);
      await count(page, kind, counts.whole);
      await page.close();
    },
  );
  await inTwoTabs(browser, { javaScriptEnabled: false }, PAGE_KINDS, async (context, kind) => {
    const { page } = await open(context, preview.address + kind);
    await count(page, kind, counts.withoutScripts);
    await page.close();
  });
});

describe('the site of the demonstration file at 390 x 844, dark', () => {
  it.each(PAGE_KINDS)('%s: no console error, no request off the site, no sideways scrolling', (kind) => {
    const seen = small.get(kind);
    expect(seen).toMatchObject({ errors: [], strangers: [] });
    expect(seen?.wider).toBeLessThanOrEqual(0);
    expect(seen?.title.length).toBeGreaterThan(3);
  });
});

describe('one page of every kind', () => {
  it.each([
    'axe: the same on a small screen',
    'reflow at 320 px, which is 1280 px at 400 % (WCAG 1.4.10)',
    'reflow at 720 px, which is 1440 px at 200 % (WCAG 1.4.4)',
    'spacing of WCAG 1.4.12: no words are lost',
    'motion: nothing moves where none is wanted',
    'forced colours: nothing in a drawing has the colour of the paper',
  ])('%s', (what) => {
    expect(small.size).toBe(PAGE_KINDS.length);
    expect(found.get(what)).toEqual([]);
  });

  it('is whole without scripts: every table, drawing and link that a reader with scripts gets', () => {
    const lost = [...counts.whole].filter(([kind, number]) => (counts.withoutScripts.get(kind) ?? 0) < number);
    expect(counts.withoutScripts.size).toBe(PAGE_KINDS.length * COUNTED.length);
    // The live trial, the search and the viewer are what scripts add; each says so without them.
    expect(lost.filter(([kind]) => !/^(trial|search|close\/|tracing\/)/.test(kind))).toEqual([]);
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
    expect(await page.getByRole('status').last().innerText()).toBe('Nothing found in what is shown here.');
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
