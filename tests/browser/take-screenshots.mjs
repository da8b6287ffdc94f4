// Takes pictures of the built site, so that people can look: npm run build-demo is not needed,
// "npx kerfmark build" is. Usage: npm run screenshots [-- FOLDER OUT]
import { mkdirSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';
import { FLAGS, packagedChromium } from './packaged-chromium.mjs';

const [site = '_site', out = '.tmp/screenshots'] = process.argv.slice(2);
mkdirSync(out, { recursive: true });
const pages = [
  'index',
  'chronology',
  'contradictions',
  'method',
  'registers',
  'doubts',
  'register/evidence',
  'entry/EV-removal',
  'entry/OB-lerakos',
  'entry/PE-fill-A1',
  'entry/FI-A-uv',
  'panel/OB-lerakos-A',
  'panel/OB-lerakos-A-how',
  'panel/OB-lerakos-B',
  'plate/OB-lerakos-A-front',
  'close/FI-B-visible',
  'trial',
  'custody',
  'research',
  'references',
  'check-first',
  'why/EV-removal',
];
const given = process.env.CHROMIUM_PATH;
const browser = await chromium.launch({
  ...(given ? { executablePath: given } : await packagedChromium()),
  args: FLAGS,
});
for (const [width, colorScheme, media] of [
  [1440, 'light', 'screen'],
  [390, 'light', 'screen'],
  [1440, 'dark', 'screen'],
  [760, 'light', 'print'],
]) {
  const context = await browser.newContext({ viewport: { width, height: 1000 }, colorScheme });
  const page = await context.newPage();
  await page.emulateMedia({ media });
  for (const name of pages) {
    await page.goto(pathToFileURL(path.resolve(site, `${name}.html`)).href);
    await page.screenshot({
      path: path.join(out, `${name.replace('/', '-')}-${width}-${media === 'print' ? 'print' : colorScheme}.png`),
      fullPage: true,
    });
  }
  await context.close();
}
await browser.close();
