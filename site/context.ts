import type { Diagnostic } from '../src/base/diagnostic.ts';
import type { CaseFile } from '../src/findings/case-file.ts';
import type { RestingBound } from '../src/findings/resting.ts';

/** What every page is made from. */
export interface SiteData {
  readonly file: CaseFile;
  /** ISO date of the build. */
  readonly built: string;
  readonly version: string;
  readonly problems: readonly Diagnostic[];
  readonly leftOut: readonly string[];
  readonly resting: ReadonlyMap<string, readonly RestingBound[]>;
  /** Pictures of figures, by entry id: address in the site. */
  readonly pictures: ReadonlyMap<string, string>;
  /** Pixels of a picture a pixel of its file. */
  readonly scales: ReadonlyMap<string, number>;
  /** The same figures laid into the frame of their panel, where control points allow it. */
  readonly plans: ReadonlyMap<string, string>;
}

/** The site seen from one page. */
export interface PageContext extends SiteData {
  readonly path: string;
  /** Relative link from this page to an address of the site. */
  href(path: string): string;
}
