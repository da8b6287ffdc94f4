import { cp, mkdtemp, readFile, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { bench, describe } from 'vitest';
import { openTrialFile, type TrialFile } from '../../src/findings/run-trial.ts';
import { trialFileOf } from '../../src/findings/trial-file.ts';
import { openBrowser } from '../browser/browser.ts';
import { computeFiles, filesOf, ROOT } from '../workspace.ts';

/** The demonstration file, 25 times over: 500 events with all their holdings, traces and contradictions; `tied`: each copy's removal after the last one's. */
function manyTimes(times: number, tied: boolean): TrialFile {
  const base = trialFileOf(computeFiles(filesOf(ROOT)).file);
  const removal = base.entries.find((one) => one.id === 'EV-removal');
  const shift = (link: TrialFile['axioms'][number], k: number): TrialFile['axioms'][number] => ({
    ...link,
    from: link.from < 0 ? -1 : link.from + k * base.moments,
    to: link.to < 0 ? -1 : link.to + k * base.moments,
  });
  const copies = Array.from({ length: times }, (_, k) => k);
  const tie = (k: number): TrialFile['statements'] =>
    tied && k > 0 && removal
      ? [
          {
            id: `T-${k}`,
            grade: 'established',
            text: 'not before the one before',
            source: null,
            precision: 'day',
            about: false,
            links: [
              {
                from: removal.start + (k - 1) * base.moments,
                to: removal.end + k * base.moments,
                days: 0,
                role: 'order',
              },
            ],
          },
        ]
      : [];
  return {
    ...base,
    moments: base.moments * times,
    axioms: copies.flatMap((k) => base.axioms.map((link) => shift(link, k))),
    statements: [
      ...copies.flatMap((k) =>
        base.statements.map((one) => ({
          ...one,
          id: `${one.id}-${k}`,
          links: one.links.map((link) => shift(link, k)),
          ...(one.choice ? { choice: one.choice.map((member) => member.map((link) => shift(link, k))) } : {}),
        })),
      ),
      ...copies.flatMap(tie),
    ],
    entries: copies.flatMap((k) =>
      base.entries.map((one) => ({
        ...one,
        id: `${one.id}-${k}`,
        start: one.start + k * base.moments,
        end: one.end + k * base.moments,
        statements: one.statements.map((i) => i + k * base.statements.length),
      })),
    ),
    references: base.references.map((one) => ({
      ...one,
      entries: copies.flatMap((k) => one.entries.map((id) => `${id}-${k}`)),
    })),
  };
}

const median = (list: readonly number[]): number =>
  list.toSorted((a, b) => a - b)[Math.floor(list.length / 2)] ?? Number.NaN;

/** Strikes out 60 statements, one after the other, on the page itself; the script's own time for each update. */
async function inBrowser(file: TrialFile): Promise<number> {
  const folder = await mkdtemp(path.join(tmpdir(), 'kerfmark-bench-'));
  await cp(path.join(ROOT, 'site/styles/kerfmark.css'), path.join(folder, 'kerfmark.css'));
  const script = await readFile(path.join(ROOT, 'dist/scripts/trial.js'), 'utf8');
  await writeFile(path.join(folder, 'trial.js'), script);
  await writeFile(
    path.join(folder, 'trial.html'),
    `<!doctype html><meta charset="utf-8"><link rel="stylesheet" href="kerfmark.css"><main><div id="trial"></div><script type="application/json" id="trial-file">${JSON.stringify(file).replaceAll('<', '\\u003c')}</script><script src="trial.js" defer></script></main>`,
  );
  const browser = await openBrowser();
  const page = await browser.newPage({ viewport: { width: 1440, height: 1000 } });
  await page.goto(pathToFileURL(path.join(folder, 'trial.html')).href);
  const ids = file.statements.map((one) => one.id);
  for (let i = 0; i < 60; i += 1) {
    const id = ids[(i * 41) % ids.length] as string;
    await page.evaluate(
      (hash) => {
        location.hash = hash;
      },
      `#without=${encodeURIComponent(id)}`,
    );
    await page.waitForTimeout(20);
  }
  const times = await page.evaluate(() => performance.getEntriesByName('kerfmark-trial').map((one) => one.duration));
  await browser.close();
  return median(times.slice(5));
}

// Prints figures of one run; decides nothing.
for (const tied of [false]) {
  const file = manyTimes(25, tied);
  const events = file.entries.filter((one) => one.type === 'event').length;
  const name = `${events} events, ${file.statements.length} statements, ${tied ? 'all tied together' : 'in pieces'}`;
  const script = await inBrowser(file);
  console.info(`an update of the live page with ${name}: median ${script.toFixed(1)} ms of script`);
  describe(name, () => {
    const trials = openTrialFile(file);
    let i = 0;
    bench('computing one trial', () => {
      i += 41;
      trials.run({ withdrawn: [file.statements[i % file.statements.length]?.id ?? ''], grades: {} });
    });
  });
}
