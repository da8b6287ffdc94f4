import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startPreview } from '../../src/cli/serve.ts';
import { silentEffects } from '../cli/kerfmark.ts';
import { demoCopy, testFolder } from '../folders.ts';
import { openBrowser } from './browser.ts';

const folder = demoCopy(testFolder());
let browser: Browser;
let context: BrowserContext;
let preview: Awaited<ReturnType<typeof startPreview>>;

beforeAll(async () => {
  browser = await openBrowser();
  context = await browser.newContext({ viewport: { width: 1200, height: 1100 } });
  const flags = { in: folder, audience: 'internal' };
  preview = await startPreview({ words: [], flags }, silentEffects(folder), 0);
});

afterAll(async () => {
  preview?.close();
  await browser?.close();
});

const open = async (): Promise<Page> => {
  const page = await context.newPage();
  await page.goto(`${preview.address}tracing/FI-A-visible.html`, { waitUntil: 'load' });
  await page.locator('#tracing.live').waitFor();
  return page;
};

/** What somebody has entered, as it stands on the page. */
const entered = async (page: Page): Promise<readonly string[]> => [
  await page.locator('input[name=kind]:checked').inputValue(),
  await page.locator('input[name=error]').inputValue(),
  await page.locator('input[name=title]').inputValue(),
  await page.locator('select[name=is]').inputValue(),
  await page.locator('#shape-text').inputValue(),
];

async function enter(page: Page): Promise<void> {
  await page.getByLabel('area', { exact: true }).check();
  await page.locator('input[name=error]').fill('3');
  await page.locator('input[name=title]').fill('A stain under the hem');
  await page.locator('select[name=is]').selectOption('deposit');
  const board = page.locator('.tracing-board svg');
  for (const [x, y] of [
    [60, 60],
    [140, 60],
    [140, 160],
  ] as const)
    await board.click({ position: { x, y } });
}

describe('tracing in the preview loses nothing', () => {
  it('an edit of another file does not load the page anew over what is not saved; all of it is saved then', async () => {
    const page = await open();
    await enter(page);
    const before = await entered(page);
    expect(before.slice(0, 4)).toEqual(['area', '3', 'A stain under the hem', 'deposit']);
    expect(before[4]).toMatch(/^shape: \{ in: FI-A-visible, error: 3, area: /);
    const other = path.join(folder, 'entries/events/EV-strip.md');
    writeFileSync(other, `${readFileSync(other, 'utf8')}\nA line more.\n`);
    await page.locator('.changed-meanwhile').waitFor({ timeout: 30_000 });
    expect(await entered(page)).toEqual(before);
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    // Once it is saved the page is loaded anew, and tells so.
    await page.locator('.saved').waitFor({ timeout: 30_000 });
    await expect.poll(async () => (await entered(page))[4], { timeout: 20_000 }).toBe('');
    expect(await page.locator('input[name=title]').inputValue()).toBe('');
    const written = readdirSync(path.join(folder, 'entries'), { recursive: true })
      .map(String)
      .filter((name) => /\.md$/.test(name))
      .map((name) => readFileSync(path.join(folder, 'entries', name), 'utf8'))
      .find((text) => text.includes('A stain under the hem'));
    expect(written).toMatch(/^kind: "?deposit"?$/m);
    expect(written).toMatch(/error: 3, area: /);
    await page.close();
  });

  it('a reload, a closed tab and a preview that has stopped leave every field as it was', async () => {
    const page = await open();
    await enter(page);
    const before = await entered(page);
    await page.reload();
    await page.locator('#tracing.live').waitFor();
    expect(await entered(page)).toEqual(before);
    await page.close();
    const again = await open();
    expect(await entered(again)).toEqual(before);
    await again.route('**/_preview/trace', (route) => route.abort());
    await again.getByRole('button', { name: 'Save', exact: true }).click();
    await again.getByText('The preview does not answer; copy the line instead.').waitFor();
    expect(await entered(again)).toEqual(before);
    await again.close();
  });

  it('Escape takes all points away and brings them back; so does Ctrl+Z, step by step', async () => {
    const page = await open();
    const shape = page.locator('#shape-text');
    const before = await shape.inputValue();
    expect(before).toContain('area: ');
    const board = page.locator('.tracing-board svg');
    await board.focus();
    await page.keyboard.press('Escape');
    expect(await shape.inputValue()).toBe('');
    expect(await page.locator('input[name=title]').inputValue()).toBe('A stain under the hem');
    await page.keyboard.press('Escape');
    expect(await shape.inputValue()).toBe(before);
    await page.keyboard.press('Backspace');
    expect(await shape.inputValue()).not.toBe(before);
    await page.keyboard.press('Control+z');
    expect(await shape.inputValue()).toBe(before);
    await page.close();
  });
});
