import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { run } from '../../src/cli/run.ts';
import { ROOT } from '../workspace.ts';
import { openBrowser } from './browser.ts';

let browser: Browser;
let site: string;

beforeAll(async () => {
  site = path.join(await mkdtemp(path.join(tmpdir(), 'kerfmark-panel-')), 'site');
  const quiet = {
    cwd: ROOT,
    out: () => undefined,
    err: () => undefined,
    today: () => '2024-06-01',
    ask: async () => null,
  };
  await run(['build', '--in', ROOT, '--out', site], quiet);
  browser = await openBrowser();
});

afterAll(async () => {
  await browser?.close();
  await rm(path.dirname(site), { recursive: true, force: true });
});

async function open(address: string, javaScriptEnabled = true): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 1200 }, javaScriptEnabled });
  const page = await context.newPage();
  await page.goto(pathToFileURL(path.join(site, address)).href, { waitUntil: 'load' });
  return page;
}

describe('the plan of a panel', () => {
  it('shows and hides lines and photographs without any script', async () => {
    const page = await open('panel/OB-lerakos-A.html', false);
    const fill = page.locator('a.mark-fill');
    expect(await fill.isVisible()).toBe(true);
    await page.getByLabel('fill', { exact: true }).uncheck();
    expect(await fill.isVisible()).toBe(false);
    expect(await page.locator('image.under-2').isVisible()).toBe(false);
    await page.getByLabel('ultraviolet').check();
    expect(await page.locator('image.under-2').isVisible()).toBe(true);
    expect(await page.locator('image.under-1').isVisible()).toBe(false);
    await page.context().close();
  });

  it('a shape leads to its entry by keyboard', async () => {
    const page = await open('panel/OB-lerakos-A.html');
    await page.locator('svg.plan a.mark-section-joint').first().focus();
    await page.keyboard.press('Enter');
    await page.waitForURL(/entry\/PE-joint-A1\.html$/);
    await page.context().close();
  });

  it('every number on the plan stands in the key', async () => {
    const page = await open('panel/OB-lerakos-A.html');
    const numbers = await page.locator('.plan-number').allTextContents();
    const key = await page.locator('section[aria-label="Key of the plan"] tbody td:first-child').allInnerTexts();
    expect(numbers.length).toBe(key.length);
    expect(numbers.toSorted()).toEqual(key.toSorted());
    await page.context().close();
  });
});

describe('tracing', () => {
  it('by mouse: points in pixels of the file, with length and area in the frame of the panel', async () => {
    const page = await open('tracing/FI-A-visible.html');
    const board = page.locator('.tracing-board svg');
    const box = await board.boundingBox();
    if (!box) throw new Error('no board');
    const click = async (x: number, y: number): Promise<void> => {
      await page.mouse.move(0, 0);
      await board.click({ position: { x: (x / 915) * box.width, y: (y / 1480) * box.height } });
    };
    await click(100, 100);
    await click(300, 100);
    expect(await page.locator('#shape-text').inputValue()).toMatch(
      /^shape: \{ in: FI-A-visible, error: 2, line: \[\[(99|100)(\.\d)?, (99|100)(\.\d)?\], \[(299|300)(\.\d)?, (99|100)(\.\d)?\]\] \}$/,
    );
    // One pixel is very nearly one millimetre in this picture.
    const told = await page.getByRole('status').last().innerText();
    expect(Number(/Length ([\d.]+) mm/.exec(told)?.[1])).toBeGreaterThan(198);
    expect(Number(/Length ([\d.]+) mm/.exec(told)?.[1])).toBeLessThan(202);
    await page.getByLabel('area', { exact: true }).check();
    await click(300, 300);
    expect(await page.getByRole('status').last().innerText()).toMatch(/Area (19|20)\d\.\d cm²/);
    await page.context().close();
  });

  it('by keyboard alone', async () => {
    const page = await open('tracing/FI-A-visible.html');
    const board = page.locator('.tracing-board svg');
    await board.focus();
    await page.keyboard.press('Enter');
    for (let i = 0; i < 4; i += 1) await page.keyboard.press('Shift+ArrowRight');
    await page.keyboard.press('Enter');
    const two = await page.locator('#shape-text').inputValue();
    expect(two).toMatch(/line: \[\[457\.5, 740\], \[5\d\d(\.\d)?, 740\]\]/);
    await page.keyboard.press('Backspace');
    expect(await page.locator('#shape-text').inputValue()).toBe('');
    expect(await page.getByRole('status').last().innerText()).toContain('One point');
    await page.context().close();
  });

  it('without scripts the page says that it cannot', async () => {
    const page = await open('tracing/FI-A-visible.html', false);
    expect(await page.locator('.no-script').isVisible()).toBe(true);
    await page.context().close();
  });
});
