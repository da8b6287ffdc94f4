// Takes pictures of the built site, so that people can look: npm run build-demo is not needed,
// "npx kerfmark build" is. Usage: npm run screenshots [-- FOLDER OUT]
import { mkdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import chromiumPackage from '@sparticuz/chromium';
import { chromium } from 'playwright-core';

const [site = '_site', out = '.tmp/screenshots'] = process.argv.slice(2);
process.env.AWS_EXECUTION_ENV = 'AWS_Lambda_nodejs22.x';
process.env.TMPDIR = path.join(tmpdir(), 'kerfmark-chromium-143.0.4');
mkdirSync(process.env.TMPDIR, { recursive: true });
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
  'why/EV-removal',
];
const executablePath = process.env.CHROMIUM_PATH ?? (await chromiumPackage.executablePath());
const browser = await chromium.launch({
  executablePath,
  args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking'],
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
