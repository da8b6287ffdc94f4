import type { Page } from 'playwright-core';
import { bringAxe, violations } from './axe.ts';
import { sideways } from './watched-page.ts';

/** What is looked for on one page of every kind, and the faults that were found. */
type Looked = Readonly<Record<string, readonly string[]>>;

/** The spacing that WCAG 2.2, 1.4.12 asks a page to bear. */
const SPACING =
  '* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important } p { margin-bottom: 2em !important }';

/** Everything that is asked of a page at 390 px, and what is asked of it at other widths and with other wishes. */
export async function looked(page: Page): Promise<Looked> {
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
  // The way of a reader's own style sheet: the policy of the page does not stop it.
  await page.evaluate((rules) => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(rules);
    document.adoptedStyleSheets = [sheet];
  }, SPACING);
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
