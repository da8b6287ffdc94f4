import type { Browser, BrowserContext, Page } from 'playwright-core';

/** A page that was opened, with the errors that its console told, and what it asked for elsewhere. */
export interface Watched {
  readonly page: Page;
  readonly errors: string[];
  readonly strangers: string[];
}

/** Opens an address in a new tab and watches it: whatever is asked for neither at `home` nor on the disk is strange. */
export async function openWatched(context: BrowserContext, address: string, home: string): Promise<Watched> {
  const page = await context.newPage();
  const errors: string[] = [];
  const strangers: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('request', (request) => {
    if (!request.url().startsWith(home) && !request.url().startsWith('file:')) strangers.push(request.url());
  });
  await page.goto(address, { waitUntil: 'load' });
  return { page, errors, strangers };
}

/** By how many pixels a page is wider than its window. */
export function sideways(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

/** Does one work after the other in two tabs side by side. */
export async function inTwoTabs<T>(
  browser: Browser,
  options: Parameters<Browser['newContext']>[0],
  works: readonly T[],
  work: (context: BrowserContext, one: T) => Promise<void>,
): Promise<void> {
  const left = [...works];
  const context = await browser.newContext(options);
  const tab = async (): Promise<void> => {
    for (let one = left.shift(); one !== undefined; one = left.shift()) await work(context, one);
  };
  await Promise.all([tab(), tab()]);
  await context.close();
}
