import axe from 'axe-core';
import type { Page } from 'playwright-core';

/** Rules of WCAG 2.2 A and AA, and good practice. */
const EVERY = {
  type: 'tag',
  values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
} as const;

/** What depends on the colours alone. */
export const COLOURS = { type: 'rule', values: ['color-contrast', 'link-in-text-block'] } as const;

/** Brings the checker into a page, whose context must go round its policy (`bypassCSP`). */
export async function bringAxe(page: Page): Promise<void> {
  await page.evaluate(axe.source);
}

/** Violations of the page as it is now, each with its first element. Run inside the page: no second page is opened. */
export function violations(page: Page, rules: typeof EVERY | typeof COLOURS = EVERY): Promise<readonly string[]> {
  return page.evaluate(async ({ type, values }) => {
    const { axe: checker } = window as unknown as { axe: typeof axe };
    const runOnly = { type, values: [...values] };
    const found = await checker.run(document, { runOnly, resultTypes: ['violations'] });
    return found.violations.map((one) => `${one.id}: ${one.nodes[0]?.html.slice(0, 120)}`);
  }, rules);
}
