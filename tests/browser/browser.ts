import { existsSync } from 'node:fs';
import { type Browser, chromium } from 'playwright-core';
import { FLAGS, packagedChromium } from './packaged-chromium.mjs';

/**
 * Opens a real browser: CHROMIUM_PATH where it is set; else the one inside the npm package
 * @sparticuz/chromium (Linux x64), unpacked into a folder of its own; else one installed on the
 * machine. Fails loudly where there is none, so that no browser test is ever left out silently.
 */
export async function openBrowser(): Promise<Browser> {
  return chromium.launch({ ...(await found()), args: FLAGS });
}

/** Opens and closes it, so that unpacking is done. */
export async function openBrowserOnce(): Promise<void> {
  await (await openBrowser()).close();
}

async function found(): Promise<{ readonly executablePath: string; readonly env?: Record<string, string> }> {
  const given = process.env.CHROMIUM_PATH;
  if (given !== undefined && given !== '') return { executablePath: given };
  if (process.platform === 'linux' && process.arch === 'x64') return packagedChromium();
  const installed = [
    '/usr/bin/chromium',
    '/usr/bin/google-chrome',
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    'C:/Program Files/Google/Chrome/Application/chrome.exe',
  ].find((one) => existsSync(one));
  if (installed) return { executablePath: installed };
  throw new Error('No browser was found for the tests. Install Chromium or Chrome, or set CHROMIUM_PATH to it.');
}
