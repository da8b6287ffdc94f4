import { openBrowserOnce } from './browser/browser.ts';

/** Unpacks the browser once, before workers could race for it. */
export default async function setup(): Promise<void> {
  await openBrowserOnce();
}
