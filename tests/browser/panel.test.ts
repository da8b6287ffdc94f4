import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readDrawing } from '../../src/reading/drawing.ts';
import { sharedSite } from '../shared-sites.ts';
import { inEnglish } from '../spoken.ts';
import { openBrowser } from './browser.ts';

const site = await sharedSite('internal');
let browser: Browser;

beforeAll(async () => {
  browser = await openBrowser();
});

afterAll(() => browser?.close());

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
    expect(await page.locator('image.under-2').first().isVisible()).toBe(false);
    await page.getByRole('radio', { name: 'ultraviolet' }).check();
    expect(await page.locator('image.under-2').first().isVisible()).toBe(true);
    expect(await page.locator('image.under-1').first().isVisible()).toBe(false);
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
    const numbers = await page.locator('.plan-desk').first().locator('.plan-number').allTextContents();
    const key = await page
      .locator('section[aria-label="Key of the plan"] tbody td:first-child')
      .evaluateAll((cells) => cells.map((one) => one.lastChild?.textContent ?? ''));
    // The parts of one trace share its number.
    expect([...new Set(numbers)].toSorted()).toEqual(key.toSorted());
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
    expect(await page.getByRole('status').last().innerText()).toContain('Points: 1.');
    await page.context().close();
  });

  it('without scripts the page says that it cannot', async () => {
    const page = await open('tracing/FI-A-visible.html', false);
    expect(await page.locator('.no-script').isVisible()).toBe(true);
    await page.context().close();
  });
});

describe('two lights compared', () => {
  it('side by side without a script; one over the other with a border that keys move, with it', async () => {
    const plain = await open('panel/OB-lerakos-A.html', false);
    const boxes = await plain
      .locator('.compare-board img')
      .evaluateAll((list) => list.map((one) => one.getBoundingClientRect().x));
    expect(boxes[0]).not.toBe(boxes[1]);
    expect(await plain.locator('.compare-choices').isVisible()).toBe(false);
    await plain.context().close();
    const page = await open('panel/OB-lerakos-A.html');
    const border = page.getByLabel('Border between them');
    await border.focus();
    await page.keyboard.press('Home');
    await page.keyboard.press('ArrowRight');
    const cut = await page
      .locator('.compare-board img')
      .nth(1)
      .evaluate((one) => getComputedStyle(one).clipPath);
    expect(cut).toMatch(/^inset\(0px 0px 0px 1%\)$/);
    await page.getByLabel('On the right').selectOption({ label: 'visible' });
    expect(await page.locator('.compare-board img').nth(1).getAttribute('src')).toContain('FI-A-visible');
    expect(await page.locator('.compare-board img').nth(1).getAttribute('alt')).toBe('Panel A, visible');
    await page.context().close();
  });
});

describe('looking closely at a large figure', () => {
  it('from a disk: tiles arrive, none is missing, keys and buttons come nearer', async () => {
    const context = await browser.newContext({ viewport: { width: 1000, height: 900 } });
    const page = await context.newPage();
    const asked: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    await page.goto(pathToFileURL(path.join(site, 'close/FI-B-visible.html')).href);
    await page.locator('.close-view.drawn').waitFor();
    const before = asked.length;
    for (let i = 0; i < 4; i += 1) await page.getByRole('button', { name: 'Nearer' }).click();
    await page.waitForTimeout(1200);
    expect(asked.length).toBeGreaterThan(before);
    expect(await page.locator('.close-view.failed').count()).toBe(0);
    expect(
      asked.filter((url) => !url.startsWith('file://') && !url.startsWith('data:') && !url.startsWith('blob:')),
    ).toEqual([]);
    expect(asked.filter((url) => /\/1024,1024,|\/512,512,/.test(url)).length).toBeGreaterThan(0);
    await context.close();
  });

  it('without a script the whole picture is there', async () => {
    const page = await open('close/FI-B-visible.html', false);
    const width = await page.locator('.close-view img').evaluate((one) => (one as HTMLImageElement).naturalWidth);
    expect(width).toBe(2660);
    await page.context().close();
  });
});

describe('plates and plan files', () => {
  it('a plate is drawn at the scale that it states', async () => {
    const page = await open('plate/OB-lerakos-A-front.html');
    const scale = Number(/Scale 1 : ([\d.]+) /.exec(await page.locator('.plate figcaption').innerText())?.[1]);
    expect(scale).toBe(10);
    const width = await page.locator('.plate .outline').evaluate((one) => one.getBoundingClientRect().width);
    // 96 CSS pixels an inch of 25.4 mm; the panel is 915 mm wide.
    expect(Math.abs((width / 96) * 25.4 * scale - 915)).toBeLessThan(6);
    await page.context().close();
  });

  it('the plan file is SVG that stands alone, in true size, with a group for every trace', async () => {
    const context = await browser.newContext();
    const page = await context.newPage();
    const errors: string[] = [];
    page.on('pageerror', (error) => errors.push(error.message));
    await page.goto(pathToFileURL(path.join(site, 'plate/OB-lerakos-A-front.svg')).href);
    const found = await page.evaluate(() => ({
      root: document.documentElement.nodeName,
      broken: document.querySelector('parsererror') !== null,
      links: document.querySelectorAll('a, image, script').length,
      bars: document.querySelectorAll('g[id^="PE-bars-A"] path.shape').length,
      width: document.querySelector('.outline')?.getBoundingClientRect().width ?? 0,
      stroke: getComputedStyle(document.querySelector('.outline') as Element).stroke,
    }));
    expect(found).toMatchObject({ root: 'svg', broken: false, links: 0, bars: 4, stroke: 'rgb(31, 28, 24)' });
    expect(Math.abs((found.width / 96) * 25.4 - 915)).toBeLessThan(2);
    expect(errors).toEqual([]);
    await context.close();
  });
});

describe('drawings over photographs', () => {
  it('are read as the browser draws them', async () => {
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 500 400" width="500" height="400">
      <g transform="translate(30 20) rotate(12)"><g transform="scale(1.2 0.8) skewX(8)">
        <path id="c1" d="M20 30 C60 -40 140 120 200 30 S280 200 300 90"/><path id="c2" d="M20 200 Q90 120 160 200 T300 200"/>
        <path id="c3" d="M40 260 a60 30 20 1 1 120 40 A 20 50 0 0 0 220 280"/><path id="c4" d="m250 250 h40 v-30 l-20 -20 z m60 0 h20 v20 z"/>
        <ellipse id="c5" cx="320" cy="60" rx="40" ry="20"/><polyline id="c6" points="10,300 40,310 70,290"/>
      </g></g></svg>`;
    const drawing = readDrawing(svg);
    if ('fault' in drawing) throw new Error(inEnglish(drawing.fault));
    const context = await browser.newContext();
    const page = await context.newPage();
    await page.setContent(svg);
    for (const { name, paths } of drawing.elements) {
      const drawn = await page.evaluate((id) => {
        const element = document.getElementById(id) as unknown as SVGGeometryElement;
        const svgRoot = element.ownerSVGElement as SVGSVGElement;
        const matrix = (svgRoot.getScreenCTM() as DOMMatrix).inverse().multiply(element.getScreenCTM() as DOMMatrix);
        const length = element.getTotalLength();
        return Array.from({ length: 101 }, (_, i) => {
          const { x, y } = element.getPointAtLength((length * i) / 100).matrixTransform(matrix);
          return [x, y] as const;
        });
      }, name);
      const lines = paths.flatMap(({ points, closed }) => {
        const all = closed ? [...points, points[0] as readonly [number, number]] : points;
        return all.slice(1).map((to, i) => [all[i] as readonly [number, number], to] as const);
      });
      for (const [x, y] of drawn) {
        const off = Math.min(
          ...lines.map(([[ax, ay], [bx, by]]) => {
            const squared = (bx - ax) ** 2 + (by - ay) ** 2;
            const t =
              squared === 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / squared));
            return Math.hypot(x - ax - t * (bx - ax), y - ay - t * (by - ay));
          }),
        );
        expect(off, name).toBeLessThan(0.2);
      }
    }
    expect(drawing.elements.map((one) => one.name).sort()).toEqual(['c1', 'c2', 'c3', 'c4', 'c5', 'c6']);
    await context.close();
  });
});
