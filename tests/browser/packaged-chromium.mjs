// The browser inside the npm package @sparticuz/chromium (Linux x64), unpacked into a folder of its own, with fonts: the
// configuration that it brings names folders that are not there, and a browser without any font stops at the first page.
import { mkdirSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

/** Flags of our own: the package's hang after the first context is closed. */
export const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-quic',
];

/** Unpacks the browser where that was not done yet; returns its path and the environment to start it with. */
export async function packagedChromium() {
  const folder = path.join(tmpdir(), 'kerfmark-chromium-143.0.4');
  mkdirSync(folder, { recursive: true });
  const before = { ...process.env };
  process.env.TMPDIR = folder;
  process.env.AWS_EXECUTION_ENV = 'AWS_Lambda_nodejs22.x';
  const { default: package_ } = await import('@sparticuz/chromium');
  const executablePath = await package_.executablePath();
  const configuration = path.join(folder, 'kerfmark-fonts.conf');
  writeFileSync(
    configuration,
    `<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd"><fontconfig><dir>/usr/share/fonts</dir><dir>${folder}/fonts</dir><cachedir>${folder}/font-cache</cachedir></fontconfig>\n`,
  );
  const env = { ...process.env, TMPDIR: before.TMPDIR ?? tmpdir(), FONTCONFIG_FILE: configuration };
  for (const key of Object.keys(process.env)) if (!(key in before)) delete process.env[key];
  Object.assign(process.env, before);
  return { executablePath, env };
}
