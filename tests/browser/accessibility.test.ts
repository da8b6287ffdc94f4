import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { kerfmark } from '../cli/kerfmark.ts';
import { ROOT } from '../workspace.ts';
import { bringAxe, COLOURS, violations } from './axe.ts';
import { openBrowser } from './browser.ts';
import { PAGE_KINDS } from './page-kinds.mjs';

const home = await mkdtemp(path.join(tmpdir(), 'kerfmark-accessible-'));
const site = path.join(home, 'site');
let browser: Browser;

beforeAll(async () => {
  expect((await kerfmark(['build', '--out', site], ROOT)).code).toBe(0);
  browser = await openBrowser();
});

afterAll(async () => {
  await browser?.close();
  await rm(home, { recursive: true, force: true });
});

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
    const pages = (await readdir(site, { recursive: true })).filter((file) => file.endsWith('.html'));
    expect(pages.length).toBeGreaterThan(250);
    let checked = 0;
    const wrong = await visit(pages, { viewport: { width: 1440, height: 1000 }, bypassCSP: true }, async (page) => {
      await bringAxe(page);
      await page.emulateMedia({ colorScheme: 'light' });
      const light = await violations(page);
      await page.emulateMedia({ colorScheme: 'dark' });
      const dark = await violations(page, COLOURS);
      checked += 1;
      return [...light.map((one) => `light ${one}`), ...dark.map((one) => `dark ${one}`), ...(await unasked(page))];
    });
    expect(wrong).toEqual([]);
    expect(checked).toBe(pages.length);
  }, 900_000);
});

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

describe('one page of every kind', () => {
  it('passes the same on a small screen', async () => {
    const wrong = await visit(PAGE_KINDS, { viewport: { width: 390, height: 844 }, bypassCSP: true }, async (page) => {
      await bringAxe(page);
      return violations(page);
    });
    expect(wrong).toEqual([]);
  });

  it('reflows at 320 px, which is 1280 px at 400 % (WCAG 1.4.10), and at 720 px, 1440 px at 200 % (1.4.4)', async () => {
    for (const width of [320, 720]) {
      const wrong = await visit(PAGE_KINDS, { viewport: { width, height: 900 } }, async (page) =>
        (await sideways(page)) > 0 ? [`wider than ${width} px`] : [],
      );
      expect(wrong).toEqual([]);
    }
  });

  it('loses no words with the spacing of WCAG 1.4.12', async () => {
    const wrong = await visit(PAGE_KINDS, { viewport: { width: 390, height: 900 }, bypassCSP: true }, async (page) => {
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
      return (await sideways(page)) > 0 ? [...cut, 'wider than the window'] : cut;
    });
    expect(wrong).toEqual([]);
  });

  it('moves nothing where motion is not wanted', async () => {
    const wrong = await visit(PAGE_KINDS, { reducedMotion: 'reduce' }, (page) =>
      page.evaluate(() =>
        [...document.querySelectorAll('*')]
          .filter((one) => {
            const { transitionDuration, animationName, scrollBehavior } = getComputedStyle(one);
            return transitionDuration !== '0s' || animationName !== 'none' || scrollBehavior === 'smooth';
          })
          .map((one) => one.outerHTML.slice(0, 80)),
      ),
    );
    expect(wrong).toEqual([]);
  });

  it('keeps its lines and marks in forced colours: nothing in a drawing has the colour of the paper', async () => {
    const wrong = await visit(PAGE_KINDS, { forcedColors: 'active', viewport: { width: 1440, height: 1000 } }, (page) =>
      page.evaluate(() => {
        const paper = getComputedStyle(document.body).backgroundColor;
        return [...document.querySelectorAll('svg:not(.sample) path, svg line, svg text')]
          .filter((one) => {
            const { stroke, fill, display } = getComputedStyle(one);
            if (display === 'none' || one.closest('defs') || one.closest('[aria-hidden="true"]')) return false;
            const seen = [stroke, fill].filter((colour) => colour !== 'none');
            return seen.length > 0 && seen.every((colour) => colour === paper);
          })
          .map((one) => one.outerHTML.slice(0, 100));
      }),
    );
    expect(wrong).toEqual([]);
  });

  it('is whole without scripts: every table, drawing and link that a reader with scripts gets', async () => {
    const counts = async (javaScriptEnabled: boolean): Promise<ReadonlyMap<string, number>> => {
      const found = new Map<string, number>();
      await visit(PAGE_KINDS, { javaScriptEnabled }, async (page, name) => {
        const kinds = ['main table', 'main svg', 'main a[href]', 'main img'];
        for (const kind of kinds) found.set(`${name} ${kind}`, await page.locator(kind).count());
        return [];
      });
      return found;
    };
    const [without, withScripts] = [await counts(false), await counts(true)];
    const lost = [...withScripts].filter(([kind, count]) => (without.get(kind) ?? 0) < count);
    // The live trial, the search and the viewer are what scripts add; each says so without them.
    expect(lost.filter(([kind]) => !/^(trial|search|close\/|tracing\/)/.test(kind))).toEqual([]);
  });
});

describe('the site in French', () => {
  it('one page of every kind passes axe, fits 390 px and speaks French where a script draws it anew', async () => {
    const french = path.join(home, 'french');
    expect((await kerfmark(['build', '--language', 'fr', '--out', french], ROOT)).code).toBe(0);
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
      french,
    );
    expect(wrong).toEqual([]);
  }, 300_000);
});
