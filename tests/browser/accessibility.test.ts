import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sharedSite } from '../shared-sites.ts';
import { bringAxe, colourViolations, violations } from './axe.ts';
import { openBrowser } from './browser.ts';
import { PAGE_KINDS } from './page-kinds.mjs';
import { inTwoTabs, sideways } from './watched-page.ts';

const site = await sharedSite('internal');
let browser: Browser;

beforeAll(async () => {
  browser = await openBrowser();
});

afterAll(() => browser?.close());

const addressOf = (name: string, folder: string): string => {
  const [file = '', hash] = name.split('#');
  return `${pathToFileURL(path.join(folder, file)).href}${hash === undefined ? '' : `#${hash}`}`;
};

describe('every page', () => {
  it('passes WCAG 2.2 A and AA by axe in light, the colours also in dark, and what axe does not ask', async () => {
    const pages = (await readdir(site, { recursive: true })).filter((file) => file.endsWith('.html')).sort();
    expect(pages.length).toBeGreaterThan(250);
    const titles = new Set<string>();
    const seeming: string[] = [];
    await inTwoTabs(browser, WIDE, byFolder(pages), async (context, names) => {
      const page = await context.newPage();
      const show = await showInTurn(page, site);
      for (const name of names) {
        await show(name);
        titles.add(`${name} ${await page.title()}`);
        if ((await faultsOf(page)).length > 0) seeming.push(name);
      }
      await page.close();
    });
    expect(titles.size).toBe(pages.length);
    // What seems at fault in a document that was written anew is opened by itself, and that is what counts.
    const wrong: string[] = [];
    await inTwoTabs(browser, WIDE, seeming, async (context, name) => {
      const page = await context.newPage();
      await (await showInTurn(page, site))(name);
      wrong.push(...(await faultsOf(page)).map((one) => `${name}: ${one}`));
      await page.close();
    });
    expect(wrong).toEqual([]);
    expect(seeming.length).toBeLessThan(pages.length / 2);
  });
});

const WIDE = { viewport: { width: 1440, height: 1000 }, bypassCSP: true };

/** The pages of each folder, in parts that take about as long. */
function byFolder(pages: readonly string[]): readonly (readonly string[])[] {
  return [...new Set(pages.map((one) => path.dirname(one)))].flatMap((folder) => {
    const names = pages.filter((one) => path.dirname(one) === folder);
    return Array.from({ length: Math.ceil(names.length / 40) }, (_, i) => names.slice(40 * i, 40 * (i + 1)));
  });
}

/** What axe finds in light, in the colours of dark, and what it does not ask. */
async function faultsOf(page: Page): Promise<readonly string[]> {
  await page.emulateMedia({ colorScheme: 'light' });
  const light = [...(await violations(page, { colours: false })), ...(await colourViolations(page))];
  await page.emulateMedia({ colorScheme: 'dark' });
  const dark = await colourViolations(page);
  await page.emulateMedia({ colorScheme: 'light' });
  return [...light.map((one) => `light ${one}`), ...dark.map((one) => `dark ${one}`), ...(await unasked(page))];
}

/**
 * Shows the pages of one folder one after the other in one document, at the address of the first: to bring the checker
 * into a new document takes as long as to ask it.
 */
async function showInTurn(page: Page, folder: string): Promise<(name: string) => Promise<void>> {
  let isFirst = true;
  return async (name) => {
    if (isFirst) {
      isFirst = false;
      await page.goto(addressOf(name, folder));
      return bringAxe(page);
    }
    const html = await readFile(path.join(folder, name), 'utf8');
    await page.evaluate(async (text) => {
      document.open();
      document.write(text);
      document.close();
      if (document.readyState !== 'complete')
        await new Promise((resolve) => window.addEventListener('load', resolve, { once: true }));
      // Faces are asked for when the lines are first laid out.
      document.body.getBoundingClientRect();
      await document.fonts.ready;
      await new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve)));
    }, html);
  };
}

/** Headings in order, one h1, tables with heads, drawings with names, no own order of focus, a language. */
function unasked(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const wrong: string[] = [];
    const all = [...document.querySelectorAll<HTMLElement>('h1,h2,h3,h4,h5,h6')];
    if (all.filter((one) => one.tagName === 'H1').length !== 1) wrong.push('not one h1');
    let before = 0;
    for (const one of all) {
      const level = Number(one.tagName[1]);
      if (level > before + 1) wrong.push(`h${level} after h${before}: ${one.innerText}`);
      before = level;
    }
    for (const table of document.querySelectorAll('table')) {
      if (!table.querySelector('th')) wrong.push('a table without heads');
      for (const th of table.querySelectorAll('thead th'))
        if (!th.getAttribute('scope')) wrong.push(`a head without scope: ${th.textContent}`);
      const named =
        table.caption ?? table.getAttribute('aria-label') ?? table.closest('section[aria-label], figure[aria-label]');
      if (!named) wrong.push(`a table without a name: ${table.textContent?.slice(0, 60)}`);
    }
    for (const svg of document.querySelectorAll('svg:not(svg svg)')) {
      const hidden = svg.closest('[aria-hidden="true"]');
      const named =
        svg.getAttribute('aria-label') ??
        svg.getAttribute('aria-labelledby') ??
        svg.querySelector('title')?.textContent;
      if (!hidden && !named) wrong.push('a drawing without a name');
      for (const link of svg.querySelectorAll('a')) {
        const words =
          link.getAttribute('aria-label') ?? link.querySelector('title')?.textContent ?? link.textContent ?? '';
        if (words.trim() === '') wrong.push('a link in a drawing without words');
      }
    }
    for (const image of document.querySelectorAll('img'))
      if (!image.hasAttribute('alt')) wrong.push('a picture without alt');
    if (document.querySelector('[tabindex]:not([tabindex="0"]):not([tabindex="-1"])'))
      wrong.push('an order of focus of its own');
    if (!document.documentElement.lang) wrong.push('no language');
    return wrong;
  });
}

describe('the site in French', () => {
  it('one page of every kind passes axe, fits 390 px and speaks French where a script draws it anew', async () => {
    const french = await sharedSite('french');
    const wrong: string[] = [];
    let seen = 0;
    // The state that stands in an address is read when a page is opened, so such a page is opened by itself.
    const states = PAGE_KINDS.filter((one) => one.includes('#')).map((one) => [one]);
    const works = [...states, ...byFolder(PAGE_KINDS.filter((one) => !one.includes('#')))];
    await inTwoTabs(
      browser,
      { viewport: { width: 390, height: 900 }, bypassCSP: true },
      works,
      async (context, names) => {
        const page = await context.newPage();
        const show = await showInTurn(page, french);
        for (const name of names) {
          await show(name);
          seen += 1;
          const trial = name.startsWith('trial') ? await page.innerText('#trial') : '';
          wrong.push(...(await violations(page)).map((one) => `${name}: ${one}`));
          if ((await sideways(page)) > 0) wrong.push(`${name}: wider than the screen`);
          if (name.includes('#without') && !trial.includes('Changé')) wrong.push(`${name}: the trial is not in French`);
        }
        await page.close();
      },
    );
    expect(seen).toBe(PAGE_KINDS.length);
    expect(wrong).toEqual([]);
  });
});
