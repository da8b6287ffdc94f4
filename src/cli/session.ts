import type { DatedBefore } from '../findings/dated-part.ts';
import type { Remembered } from '../pipeline.ts';
import type { LayerDrawing } from '../publish/layer-drawing.ts';
import type { ParsedText } from '../reading/parsed-text.ts';
import type { ReadBefore } from '../reading/reading.ts';
import type { SitePictures } from './write-site.ts';

/** A text as it was read, and what the disk said of its file then. */
export interface TextBefore {
  readonly state: string;
  readonly text: string;
}

/**
 * All that is kept between two computations of one workspace, so that the second one need not do again what nothing has
 * touched. A command makes one and hands it to whatever loads, reads and computes; a preview keeps its own as long as it
 * runs. Two sessions beside each other know nothing of each other, and give what each would give alone.
 */
export class Session implements Remembered {
  /** Texts by the path of their file. */
  readonly texts = new Map<string, TextBefore>();
  /** Parsed texts by the hash of the text. */
  readonly parsed = new Map<string, ParsedText>();
  /** Entries by the name of their file. */
  readonly readings = new Map<string, ReadBefore>();
  /** What was computed of times, by audience and language. */
  readonly dated = new Map<string, DatedBefore>();
  /** Pictures that lie in the site that was written last, and what they were made from. */
  pictures: { readonly key: string; readonly made: SitePictures } | null = null;
  /** Layouts of layers by what they were made from. */
  layouts: ReadonlyMap<string, LayerDrawing | null> = new Map();
}
