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
  await Promise.all([openBrowserOnce(), buildSharedSites(home)]);
  project.provide('sharedSites', home);
  return () => rm(home, { recursive: true, force: true });
}
