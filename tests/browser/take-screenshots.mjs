// Takes pictures of the built site, so that people can look: npm run build-demo is not needed,
// "npx kerfmark build" is. Usage: npm run screenshots [-- FOLDER OUT]
import { mkdirSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';
import { FLAGS, packagedChromium } from './packaged-chromium.mjs';
import { PAGE_KINDS } from './page-kinds.mjs';

const [site = '_site', out = '.tmp/screenshots'] = process.argv.slice(2);
mkdirSync(out, { recursive: true });
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
  for (const name of PAGE_KINDS) {
    const [file, hash] = name.split('#');
    await page.goto(`${pathToFileURL(path.resolve(site, file)).href}${hash ? `#${hash}` : ''}`);
    await page.screenshot({
      path: path.join(
        out,
        `${file.replace('/', '-').replace('.html', '')}${hash ? '-state' : ''}-${width}-${media === 'print' ? 'print' : colorScheme}.png`,
      ),
      fullPage: true,
    });
  }
  await context.close();
}
await browser.close();
