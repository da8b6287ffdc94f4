import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { TestProject } from 'vitest/node';
import { openBrowserOnce } from './browser/browser.ts';
import { buildSharedSites } from './shared-sites.ts';

/** Builds what many tests look at, and unpacks the browser, before workers could race for them. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  if (project.vitest.mode === 'benchmark') return async () => undefined;
  const home = await mkdtemp(path.join(tmpdir(), 'kerfmark-shared-'));
  // The sites are built while the first tests run; who needs one waits for it.
  const building = buildSharedSites(home);
  await openBrowserOnce();
  project.provide('sharedSites', home);
  return async () => {
    await building;
    await rm(home, { recursive: true, force: true });
  };
}
