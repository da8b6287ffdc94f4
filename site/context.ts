import type { Access } from '../src/base/access.ts';
import type { Diagnostic } from '../src/base/diagnostic.ts';
import type { CaseFile } from '../src/findings/case-file.ts';
import type { RestingBound } from '../src/findings/resting.ts';
import type { SentFile } from '../src/model/sent-file.ts';
import type { LayerDrawing } from '../src/publish/layer-drawing.ts';
import type { Land } from '../src/publish/places-drawing.ts';

/** A large picture as static tiles (IIIF Image API 3, level 0). */
export interface TiledPicture {
  /** Folder of the tiles in the site. */
  readonly address: string;
  readonly width: number;
  readonly height: number;
  readonly tileSize: number;
  readonly scaleFactors: readonly number[];
  readonly sizes: readonly { readonly width: number; readonly height: number }[];
}

/** What every page is made from. */
export interface SiteData {
  readonly file: CaseFile;
  /** The same workspace computed for another audience. */
  fileFor(audience: Access, language?: string | null): CaseFile;
  /** Documents that were sent, by their names. */
  readonly sent: ReadonlyMap<string, SentFile>;
  /** ISO date of the build. */
  readonly built: string;
  readonly version: string;
  /** Problems that may be read by whom the site is for. */
  readonly problems: readonly Diagnostic[];
  /** Lines of the files that have problems, in a preview by who has the files; else null. */
  readonly excerpts: ReadonlyMap<string, readonly string[]> | null;
  /** Number of errors in the whole file. */
  readonly errors: number;
  readonly leftOut: readonly string[];
  readonly resting: ReadonlyMap<string, readonly RestingBound[]>;
  /** Pictures of figures, by entry id: address in the site. */
  readonly pictures: ReadonlyMap<string, string>;
  /** Pixels of a picture a pixel of its file. */
  readonly scales: ReadonlyMap<string, number>;
  /** The same figures laid into the frame of their panel, where control points allow it. */
  readonly plans: ReadonlyMap<string, string>;
  /** Layer diagrams, by the address of their panel. */
  readonly layers: ReadonlyMap<string, LayerDrawing>;
  /** Large figures cut into tiles, by entry id. */
  readonly tiles: ReadonlyMap<string, TiledPicture>;
  /** Land of the earth; null where no place has coordinates. */
  readonly land: Land | null;
  /** The style sheets of plans and of the other drawings, for files that stand alone. */
  readonly planStyle: string;
  readonly drawingStyle: string;
}

/** The site seen from one page. */
export interface PageContext extends SiteData {
  readonly path: string;
  /** Relative link from this page to an address of the site. */
  href(path: string): string;
}
