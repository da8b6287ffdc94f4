import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { dayOf } from '../../src/dates/day.ts';
import type { DatesReport } from '../../src/findings/dates-report.ts';
import { sayDay } from '../../src/language/date-words.ts';
import { kerfmark } from '../cli/kerfmark.ts';
import { sharedSite } from '../shared-sites.ts';
import { inEnglish } from '../spoken.ts';
import { ROOT } from '../workspace.ts';
import { bringAxe, violations } from './axe.ts';
import { openBrowser } from './browser.ts';

const site = await sharedSite('internal');
let browser: Browser;

beforeAll(async () => {
  browser = await openBrowser();
});

afterAll(() => browser?.close());

/** Opens the page from the disk, as a reader with a copy of the site would. */
async function open(hash = '', options: BrowserContextOptions = {}): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 1000 }, ...options });
  const page = await context.newPage();
  page.on('pageerror', (error) => {
    throw error;
  });
  await page.goto(`${pathToFileURL(path.join(site, 'trial.html')).href}${hash}`, { waitUntil: 'load' });
  return page;
}

const box = (page: Page, id: string) => page.locator(`input[data-statement="${id}"]`);
const cell = async (page: Page, title: string, column: number): Promise<string> =>
  (await page.locator('table tbody tr', { hasText: title }).first().locator('td').nth(column).innerText()).trim();
const around = (page: Page, entry: string) => page.locator(`details[id="on-${entry}"] > summary`);

/** A day of the machine-readable dates, as the page prints it. */
function printed(iso: string | null | undefined): string {
  const [year, month, day] = (iso ?? '').split('-').map(Number) as [number, number, number];
  return inEnglish(sayDay(dayOf(year, month, day), 'day'));
}

describe('withdraw and see', () => {
  it('a statement that holds a bound is struck out: the new range is that of "kerfmark dates --without"', async () => {
    const page = await open();
    const before = await cell(page, 'Taken off the refectory wall', 1);
    await around(page, 'EV-sighting-1929').click();
    await box(page, 'EV-sighting-1929#2').uncheck();
    const report = JSON.parse(
      (await kerfmark(['dates', '--json', '--without', 'EV-sighting-1929#2'], ROOT)).out,
    ) as DatesReport;
    const range = (edge: string) =>
      report.moments.find((one) => one.entry === 'EV-removal' && one.edge === edge)?.ranges[1];
    const expected = `${printed(range('start')?.earliest)} – ${printed(range('end')?.latest)}`;
    expect(expected).toBe('16 May 1925 – 6 October 1933');
    const after = await cell(page, 'Taken off the refectory wall', 1);
    expect(after).not.toBe(before);
    expect(after.replaceAll(/\s+/g, ' ')).toContain(`probable ${expected}`.replace('probable ', ''));
    expect(after).toContain(`it was ${before.replace(/^probable\s*/, '')}`);
    expect(await page.locator('.trial-notice').innerText()).toContain('EV-sighting-1929#2');
    await page.context().close();
  });

  it('says in every state that it is a trial, announces the change, and puts everything back', async () => {
    const page = await open();
    expect(await page.locator('.trial-notice').innerText()).toContain('A reader’s trial, not the museum’s finding.');
    const status = page.getByRole('status').filter({ hasText: /./ });
    expect(await status.count()).toBe(0);
    await around(page, 'EV-removal').click();
    await box(page, 'CL-interview').uncheck();
    expect(await status.innerText()).toMatch(/^A reader’s trial\. Changed: \d+ dates, 3 contradictions/);
    expect(await page.title()).toMatch(/^Trial: /);
    expect(await page.locator('.trial-notice').innerText()).toContain('an altered file');
    expect(await page.locator('#what-changed + div').innerText()).toContain('Gone: CL-crate-list, CL-interview.');
    await page.getByRole('button', { name: 'Put everything back' }).first().click();
    // The page draws itself anew after the click; on a busy machine that takes a moment.
    await expect.poll(() => box(page, 'CL-interview').isChecked()).toBe(true);
    expect(await page.locator('#what-changed + p').innerText()).toBe('Nothing: this is the file as published.');
    expect(await page.title()).not.toMatch(/^Trial/);
    await page.context().close();
  });

  it('works by keyboard alone, and the address holds the state for another reader', async () => {
    const page = await open();
    await around(page, 'EV-removal').focus();
    await page.keyboard.press('Enter');
    await page.keyboard.press('Tab');
    const first = await page.evaluate(() => (document.activeElement as HTMLElement).dataset.statement);
    await page.keyboard.press('Space');
    await page.waitForSelector('select[data-grade="CL-crate-list"]:disabled');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    const second = await page.evaluate(() => (document.activeElement as HTMLElement).dataset.grade);
    expect(first).toBe('CL-crate-list');
    expect(second).toBe('CL-interview');
    await page.locator('select[data-grade="CL-interview"]').selectOption('established');
    expect(await page.evaluate(() => (document.activeElement as HTMLElement).dataset.grade)).toBe('CL-interview');
    const address = new URL(page.url());
    expect(decodeURIComponent(address.hash)).toBe('#without=CL-crate-list&as=CL-interview:established');
    const told = await page.locator('.changed').innerText();
    const other = await open(address.hash);
    expect(await other.locator('.changed').innerText()).toBe(told);
    expect(await box(other, 'CL-crate-list').isChecked()).toBe(false);
    expect(await other.locator('select[data-grade="CL-interview"]').inputValue()).toBe('established');
    expect(told).toContain('Codified law 5351 on antiquities, established, probable, possible, conjectural: within');
    await page.goBack();
    expect(decodeURIComponent(new URL(page.url()).hash)).toBe('#without=CL-crate-list');
    await page.context().close();
    await other.context().close();
  });

  it('stays on the trial when a link to a place on the page is followed', async () => {
    const page = await open('#without=CL-interview');
    await page.locator('.skip').focus();
    await page.keyboard.press('Enter');
    await page.waitForTimeout(100);
    expect(await page.locator('.trial-notice').innerText()).toContain('CL-interview');
    await page.context().close();
  });

  it('names what an old address asks for and the file no longer holds', async () => {
    const page = await open('#without=CL-gone,CL-interview');
    expect(await page.locator('.trial-notice').innerText()).toMatch(/no longer holds.*: CL-gone/);
    expect(await box(page, 'CL-interview').isChecked()).toBe(false);
    await page.context().close();
  });

  it('without scripts it is the file as published, and says so', async () => {
    const page = await open('', { javaScriptEnabled: false });
    const text = await page.locator('#trial').innerText();
    expect(text).toContain('Trying needs scripts, which do not run here. What stands below is the file as published.');
    expect(await page.locator('input, select, #trial button').count()).toBe(0);
    expect(await cell(page, 'Taken off the refectory wall', 1)).toContain('May 1929 – October 1933');
    await page.context().close();
  });

  it('ranges move, but not for those who asked for less motion', async () => {
    const duration = async (reducedMotion: 'reduce' | 'no-preference'): Promise<string> => {
      const page = await open('#without=CL-interview', { reducedMotion });
      const value = await page
        .locator('.chronology path.probable')
        .first()
        .evaluate((path) => getComputedStyle(path).transitionDuration);
      await page.context().close();
      return value;
    };
    expect(await duration('no-preference')).toContain('0.35s');
    expect(await duration('reduce')).toBe('0s');
  });

  it('a printed copy says that it shows an altered file, and leaves the controls out', async () => {
    const page = await open('#without=CL-interview');
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.trial-notice').isVisible()).toBe(true);
    expect(await page.locator('.trial-notice').innerText()).toContain('Withdrawn: “Taken off the refectory wall”');
    expect(await page.locator('.strip').isVisible()).toBe(false);
    expect(await page.locator('svg.chronology').isVisible()).toBe(true);
    expect(await page.evaluate(() => getComputedStyle(document.body).getPropertyValue('page'))).toBe('trial');
    await page.context().close();
  });

  it('is accessible while it is used, and nothing leaves the page', async () => {
    for (const colorScheme of ['light', 'dark'] as const) {
      const page = await open('', { colorScheme, bypassCSP: true });
      const asked: string[] = [];
      // A face of the site itself may come when its letters are first shown.
      page.on('request', (request) => {
        if (!/^file:.*\/assets\/fonts\/[\w-]+\.woff2$/.test(request.url())) asked.push(request.url());
      });
      await around(page, 'EV-removal').click();
      await box(page, 'CL-interview').uncheck();
      await page.locator('select[data-grade="CL-ledger"]').selectOption('probable');
      expect(asked).toEqual([]);
      await bringAxe(page);
      expect(await violations(page)).toEqual([]);
      expect(await page.evaluate(() => [localStorage.length, sessionStorage.length, document.cookie])).toEqual([
        0,
        0,
        '',
      ]);
      await page.context().close();
    }
  });
});
