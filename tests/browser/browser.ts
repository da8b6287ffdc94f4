import { existsSync, mkdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { type Browser, chromium } from 'playwright-core';

const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-quic',
];

/**
 * Opens a real browser: CHROMIUM_PATH where it is set; else the one inside the npm package
 * @sparticuz/chromium (Linux x64), unpacked into a folder of its own; else one installed on the
 * machine. Fails loudly where there is none, so that no browser test is ever left out silently.
 */
export async function openBrowser(): Promise<Browser> {
  return chromium.launch({ executablePath: await executable(), args: FLAGS });
}

/** Opens and closes it, so that unpacking is done. */
export async function openBrowserOnce(): Promise<void> {
  await (await openBrowser()).close();
}

async function executable(): Promise<string> {
  const given = process.env.CHROMIUM_PATH;
  if (given !== undefined && given !== '') return given;
  if (process.platform === 'linux' && process.arch === 'x64') return packaged();
  const found = [
    '/usr/bin/chromium',
    '/usr/bin/google-chrome',
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    'C:/Program Files/Google/Chrome/Application/chrome.exe',
  ].find((one) => existsSync(one));
  if (found) return found;
  throw new Error('No browser was found for the tests. Install Chromium or Chrome, or set CHROMIUM_PATH to it.');
}

async function packaged(): Promise<string> {
  const folder = path.join(tmpdir(), 'kerfmark-chromium-143.0.4');
  mkdirSync(folder, { recursive: true });
  const before = { TMPDIR: process.env.TMPDIR, AWS: process.env.AWS_EXECUTION_ENV };
  process.env.TMPDIR = folder;
  process.env.AWS_EXECUTION_ENV = 'AWS_Lambda_nodejs22.x';
  try {
    const { default: package_ } = await import('@sparticuz/chromium');
    return await package_.executablePath();
  } finally {
    if (before.TMPDIR === undefined) delete process.env.TMPDIR;
    else process.env.TMPDIR = before.TMPDIR;
    if (before.AWS === undefined) delete process.env.AWS_EXECUTION_ENV;
    else process.env.AWS_EXECUTION_ENV = before.AWS;
  }
}
