// Prints what each kind of page weighs on its way to a reader: npm run weights [-- FOLDER]
import { existsSync, readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import { gzipSync } from 'node:zlib';
import { PAGE_KINDS } from './page-kinds.mjs';

const site = process.argv[2] ?? '_site';
if (!existsSync(path.join(site, 'index.html'))) {
  process.stderr.write(`There is no site in ${site}; "npx kerfmark build" makes one.\n`);
  process.exit(2);
}
const kb = (bytes) => `${(bytes / 1024).toFixed(1).padStart(8)}`;
const packed = (file) => gzipSync(readFileSync(file)).length;

process.stdout.write('KiB, gzip for texts        page  scripts   styles pictures  scripts of the page\n');
for (const kind of PAGE_KINDS.filter((one) => !one.includes('#'))) {
  const file = path.join(site, kind);
  const html = readFileSync(file, 'utf8');
  const from = (address) => path.join(path.dirname(file), address);
  const all = (pattern) =>
    [...new Set([...html.matchAll(pattern)].map(([, address]) => from(address)))].filter(existsSync);
  const scripts = all(/<script src="([^"]+)"/g);
  const styles = all(/<link rel="stylesheet" href="([^"]+)"/g);
  const pictures = all(/<(?:img|image)[^>]* (?:src|href)="([^"]+)"/g);
  const sum = (files, weigh) => files.reduce((total, one) => total + weigh(one), 0);
  const cells = [packed(file), sum(scripts, packed), sum(styles, packed), sum(pictures, (one) => statSync(one).size)];
  process.stdout.write(
    `${kind.padEnd(30).slice(0, 30)}${cells.map(kb).join(' ').slice(2)}  ${scripts.map((one) => path.basename(one)).join(', ')}\n`,
  );
}
