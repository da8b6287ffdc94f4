import axe from 'axe-core';
import type { Page } from 'playwright-core';

/** Tags of the rules of WCAG 2.2 A and AA, and of good practice. */
const EVERY = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** What depends on the colours alone. */
const COLOURS = ['color-contrast', 'link-in-text-block'];

/** Brings the checker into a page, whose context must go round its policy (`bypassCSP`). */
export async function bringAxe(page: Page): Promise<void> {
  await page.evaluate(axe.source);
}

/**
 * Violations of the page as it is now, each with its first element. Run inside the page: no second page is opened.
 *
 * @param colours false where the colours are asked for by themselves
 */
export function violations(page: Page, { colours }: { readonly colours: boolean } = { colours: true }) {
  const rules = Object.fromEntries(COLOURS.map((one) => [one, { enabled: colours }]));
  // No rule that is asked needs what `preload` fetches (moving pictures, sound, the turning of a screen).
  return found(page, { runOnly: { type: 'tag', values: EVERY }, rules, resultTypes: ['violations'], preload: false });
}

/** What the checker finds on the whole page, or in the elements that the page has marked as fresh. */
function found(page: Page, options: axe.RunOptions, fresh = false): Promise<readonly string[]> {
  return page.evaluate(
    async ([options, fresh]) => {
      const tab = window as unknown as { axe: typeof axe; freshInColour: Element[] };
      const { violations } = await tab.axe.run(fresh ? { include: tab.freshInColour } : document, options);
      return violations.map((one) => `${one.id}: ${one.nodes[0]?.html.slice(0, 120)}`);
    },
    [options, fresh] as const,
  );
}

/**
 * Violations of the colours alone, of every text that stands otherwise than one that this tab has seen already: in other
 * elements or classes, of another colour, size or weight, or on other grounds, from the text up to the page.
 */
export async function colourViolations(page: Page): Promise<readonly string[]> {
  const count = await page.evaluate(() => {
    const tab = window as unknown as { standings?: Map<string, number>; freshInColour: Element[] };
    tab.standings ??= new Map();
    const all = tab.standings;
    const numberOf = (how: string): number => {
      const known = all.get(how);
      if (known === undefined) all.set(how, all.size);
      return known ?? all.size - 1;
    };
    const grounds = new Map<Element, number>();
    const groundOf = (element: Element): number => {
      const known = grounds.get(element);
      if (known !== undefined) return known;
      const { backgroundColor, opacity } = getComputedStyle(element);
      const above = element.parentElement ? groundOf(element.parentElement) : '';
      const all = numberOf(
        `${above}>${element.tagName} ${element.getAttribute('class')} ${backgroundColor} ${opacity}`,
      );
      grounds.set(element, all);
      return all;
    };
    tab.freshInColour = [...document.body.querySelectorAll('*')].filter((element) => {
      if (![...element.childNodes].some((one) => one.nodeType === Node.TEXT_NODE && one.nodeValue?.trim()))
        return false;
      const { color, fontSize, fontWeight } = getComputedStyle(element);
      const before = all.size;
      return numberOf(`${groundOf(element)}: ${color} ${fontSize} ${fontWeight}`) >= before;
    });
    return tab.freshInColour.length;
  });
  const runOnly = { type: 'rule', values: COLOURS } as const;
  return count === 0 ? [] : found(page, { runOnly, resultTypes: ['violations'], preload: false }, true);
}
