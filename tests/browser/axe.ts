import axe from 'axe-core';
import type { Page } from 'playwright-core';

/** Tags of the rules of WCAG 2.2 A and AA, and of good practice. */
const EVERY = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** What depends on the colours alone. */
const COLOURS = { type: 'rule', values: ['color-contrast', 'link-in-text-block'] };

/** Brings the checker into a page, whose context must go round its policy (`bypassCSP`). */
export async function bringAxe(page: Page): Promise<void> {
  await page.evaluate(axe.source);
}

/** Violations of the page as it is now, each with its first element. Run inside the page: no second page is opened. */
export function violations(page: Page): Promise<readonly string[]> {
  return page.evaluate(async (values) => {
    const { axe: checker } = window as unknown as { axe: typeof axe };
    // No rule that is asked needs what `preload` fetches (moving pictures, sound, the turning of a screen).
    const options = { runOnly: { type: 'tag', values }, resultTypes: ['violations'], preload: false } as const;
    const found = await checker.run(document, options as unknown as axe.RunOptions);
    return found.violations.map((one) => `${one.id}: ${one.nodes[0]?.html.slice(0, 120)}`);
  }, EVERY);
}

/**
 * Violations of the colours alone, of every text that stands otherwise than one that this tab has seen already: in other
 * elements or classes, of another colour, size or weight, or on other grounds, from the text up to the page.
 */
export function colourViolations(page: Page): Promise<readonly string[]> {
  return page.evaluate(async (rules) => {
    const tab = window as unknown as { axe: typeof axe; seenInColour?: Set<string> };
    tab.seenInColour ??= new Set();
    const seen = tab.seenInColour;
    const standing = new Map<Element, string>();
    const standingOf = (element: Element): string => {
      const known = standing.get(element);
      if (known !== undefined) return known;
      const { color, backgroundColor, fontSize, fontWeight, opacity, position, textShadow, fill } =
        getComputedStyle(element);
      const own = [color, backgroundColor, fontSize, fontWeight, opacity, position, textShadow, fill].join(' ');
      const above = element.parentElement ? standingOf(element.parentElement) : '';
      const all = `${above}>${element.tagName} ${element.getAttribute('class')} ${own}`;
      standing.set(element, all);
      return all;
    };
    const fresh = [...document.body.querySelectorAll('*')].filter((element) => {
      if (![...element.childNodes].some((one) => one.nodeType === Node.TEXT_NODE && one.nodeValue?.trim()))
        return false;
      const how = standingOf(element);
      if (seen.has(how)) return false;
      seen.add(how);
      return true;
    });
    if (fresh.length === 0) return [];
    const options = { runOnly: rules, resultTypes: ['violations'], preload: false };
    const found = await tab.axe.run({ include: fresh }, options as unknown as axe.RunOptions);
    return found.violations.map((one) => `${one.id}: ${one.nodes[0]?.html.slice(0, 120)}`);
  }, COLOURS);
}
