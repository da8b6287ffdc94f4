import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { sharedSite } from '../shared-sites.ts';
import { bringAxe, COLOURS, violations } from './axe.ts';
import { openBrowser } from './browser.ts';
import { PAGE_KINDS } from './page-kinds.mjs';

const site = await sharedSite('internal');
let browser: Browser;

beforeAll(async () => {
  browser = await openBrowser();
});

afterAll(() => browser?.close());

const addressOf = (name: string, folder = site): string => {
  const [file = '', hash] = name.split('#');
  return `${pathToFileURL(path.join(folder, file)).href}${hash === undefined ? '' : `#${hash}`}`;
};

/** Visits pages in two tabs side by side and gathers what is wrong. */
async function visit(
  names: readonly string[],
  options: Parameters<Browser['newContext']>[0],
  look: (page: Page, name: string) => Promise<readonly string[]>,
  folder = site,
): Promise<readonly string[]> {
  const left = [...names];
  const wrong: string[] = [];
  const context = await browser.newContext(options);
  const work = async (): Promise<void> => {
    const page = await context.newPage();
    for (let name = left.shift(); name !== undefined; name = left.shift()) {
      await page.goto(addressOf(name, folder));
      wrong.push(...(await look(page, name)).map((one) => `${name}: ${one}`));
    }
  };
  await Promise.all([work(), work()]);
  await context.close();
  return wrong;
}

const sideways = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

describe('every page', () => {
  it('passes WCAG 2.2 A and AA by axe in light, the colours also in dark, and what axe does not ask', async () => {
    const pages = (await readdir(site, { recursive: true })).filter((file) => file.endsWith('.html')).sort();
    expect(pages.length).toBeGreaterThan(250);
    const titles = new Set<string>();
    const context = await browser.newContext({ viewport: { width: 1440, height: 1000 }, bypassCSP: true });
    const seeming: string[] = [];
    for (const folder of new Set(pages.map((one) => path.dirname(one)))) {
      const page = await context.newPage();
      const show = await showInTurn(page);
      for (const name of pages.filter((one) => path.dirname(one) === folder)) {
        await show(name);
        titles.add(`${name} ${await page.title()}`);
        if ((await faultsOf(page)).length > 0) seeming.push(name);
      }
      await page.close();
    }
    await context.close();
    expect(titles.size).toBe(pages.length);
    // What seems at fault in a document that was written anew is opened by itself, and that is what counts.
    const wrong = await visit(seeming, { viewport: { width: 1440, height: 1000 }, bypassCSP: true }, async (page) => {
      await bringAxe(page);
      return faultsOf(page);
    });
    expect(wrong).toEqual([]);
    expect(seeming.length).toBeLessThan(pages.length / 2);
  });
});

/** What axe finds in light, in the colours of dark, and what it does not ask. */
async function faultsOf(page: Page): Promise<readonly string[]> {
  await page.emulateMedia({ colorScheme: 'light' });
  const light = await violations(page);
  await page.emulateMedia({ colorScheme: 'dark' });
  const dark = await violations(page, COLOURS);
  await page.emulateMedia({ colorScheme: 'light' });
  return [...light.map((one) => `light ${one}`), ...dark.map((one) => `dark ${one}`), ...(await unasked(page))];
}

/**
 * Shows the pages of one folder one after the other in one document, at the address of the first: to bring the checker
 * into a new document takes as long as to ask it.
 */
async function showInTurn(page: Page): Promise<(name: string) => Promise<void>> {
  let isFirst = true;
  return async (name) => {
    if (isFirst) {
      isFirst = false;
      await page.goto(addressOf(name));
      return bringAxe(page);
    }
    const html = await readFile(path.join(site, name), 'utf8');
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

/** What is looked for on one page of every kind, and the faults that were found. */
type Looked = Readonly<Record<string, readonly string[]>>;

describe('one page of every kind', () => {
  const found = new Map<string, string[]>();
  const counts = { whole: new Map<string, number>(), withoutScripts: new Map<string, number>() };
  let visited = 0;

  // Each page is opened once with scripts and once without; every test below asks one thing of what was seen.
  beforeAll(async () => {
    await visit(PAGE_KINDS, { viewport: { width: 390, height: 844 }, bypassCSP: true }, async (page, name) => {
      visited += 1;
      for (const [what, faults] of Object.entries(await looked(page)))
        found.set(what, [...(found.get(what) ?? []), ...faults.map((one) => `${name}: ${one}`)]);
      await count(page, name, counts.whole);
      return [];
    });
    await visit(PAGE_KINDS, { javaScriptEnabled: false }, async (page, name) => {
      await count(page, name, counts.withoutScripts);
      return [];
    });
  });

  it.each([
    'axe: the same on a small screen',
    'reflow at 320 px, which is 1280 px at 400 % (WCAG 1.4.10)',
    'reflow at 720 px, which is 1440 px at 200 % (WCAG 1.4.4)',
    'spacing of WCAG 1.4.12: no words are lost',
    'motion: nothing moves where none is wanted',
    'forced colours: nothing in a drawing has the colour of the paper',
  ])('%s', (what) => {
    expect(visited).toBe(PAGE_KINDS.length);
    expect(found.get(what)).toEqual([]);
  });

  it('is whole without scripts: every table, drawing and link that a reader with scripts gets', () => {
    const lost = [...counts.whole].filter(([kind, number]) => (counts.withoutScripts.get(kind) ?? 0) < number);
    expect(counts.withoutScripts.size).toBe(PAGE_KINDS.length * COUNTED.length);
    // The live trial, the search and the viewer are what scripts add; each says so without them.
    expect(lost.filter(([kind]) => !/^(trial|search|close\/|tracing\/)/.test(kind))).toEqual([]);
  });
});

const COUNTED = ['main table', 'main svg', 'main a[href]', 'main img'];

async function count(page: Page, name: string, into: Map<string, number>): Promise<void> {
  for (const kind of COUNTED) into.set(`${name} ${kind}`, await page.locator(kind).count());
}

/** Everything that is asked of a page at 390 px, and what is asked of it at other widths and with other wishes. */
async function looked(page: Page): Promise<Looked> {
  await bringAxe(page);
  const axe = await violations(page);
  const wider = async (width: number): Promise<readonly string[]> => {
    await page.setViewportSize({ width, height: 900 });
    return (await sideways(page)) > 0 ? [`wider than ${width} px`] : [];
  };
  const reflow = [await wider(320), await wider(720)] as const;
  await page.emulateMedia({ reducedMotion: 'reduce' });
  const motion = await page.evaluate(() =>
    [...document.querySelectorAll('*')]
      .filter((one) => {
        const { transitionDuration, animationName, scrollBehavior } = getComputedStyle(one);
        return transitionDuration !== '0s' || animationName !== 'none' || scrollBehavior === 'smooth';
      })
      .map((one) => one.outerHTML.slice(0, 80)),
  );
  await page.setViewportSize({ width: 1440, height: 1000 });
  await page.emulateMedia({ reducedMotion: null, forcedColors: 'active' });
  const colours = await page.evaluate(() => {
    const paper = getComputedStyle(document.body).backgroundColor;
    return [...document.querySelectorAll('svg:not(.sample) path, svg line, svg text')]
      .filter((one) => {
        const { stroke, fill, display } = getComputedStyle(one);
        if (display === 'none' || one.closest('defs') || one.closest('[aria-hidden="true"]')) return false;
        const seen = [stroke, fill].filter((colour) => colour !== 'none');
        return seen.length > 0 && seen.every((colour) => colour === paper);
      })
      .map((one) => one.outerHTML.slice(0, 100));
  });
  await page.emulateMedia({ forcedColors: null });
  await page.setViewportSize({ width: 390, height: 900 });
  await page.addStyleTag({
    content:
      '* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important } p { margin-bottom: 2em !important }',
  });
  const cut = await page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('main *:not(svg *)')]
      .filter(
        (one) =>
          getComputedStyle(one).overflowY === 'hidden' &&
          one.scrollHeight > one.clientHeight + 1 &&
          one.clientHeight > 1,
      )
      .map((one) => `cut off: ${one.outerHTML.slice(0, 80)}`),
  );
  return {
    'axe: the same on a small screen': axe,
    'reflow at 320 px, which is 1280 px at 400 % (WCAG 1.4.10)': reflow[0],
    'reflow at 720 px, which is 1440 px at 200 % (WCAG 1.4.4)': reflow[1],
    'spacing of WCAG 1.4.12: no words are lost': (await sideways(page)) > 0 ? [...cut, 'wider than the window'] : cut,
    'motion: nothing moves where none is wanted': motion,
    'forced colours: nothing in a drawing has the colour of the paper': colours,
  };
}

describe('the site in French', () => {
  it('one page of every kind passes axe, fits 390 px and speaks French where a script draws it anew', async () => {
    const wrong = await visit(
      PAGE_KINDS,
      { viewport: { width: 390, height: 900 }, bypassCSP: true },
      async (page, name) => {
        await bringAxe(page);
        const trial = name.startsWith('trial') ? await page.innerText('#trial') : '';
        return [
          ...(await violations(page)),
          ...((await sideways(page)) > 0 ? ['wider than the screen'] : []),
          ...(name.includes('#without') && !trial.includes('Changé') ? ['the trial is not in French'] : []),
        ];
      },
      await sharedSite('french'),
    );
    expect(wrong).toEqual([]);
  });
});
