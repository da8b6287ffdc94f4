/** Years as a line states them, ends closed; null where it states none. */
export interface YearRange {
  readonly earliest: number | null;
  readonly latest: number | null;
}

/** Somebody named beside a holder: an agent, or one with whom it was shared. */
export interface NamedParty {
  readonly holder: string;
  readonly place: string | null;
}

/** Whether the next holder had it from this one. */
export type Passage = 'direct' | 'not direct';

/** How a holder came by it, in words of the trade. */
export type Acquisition =
  | 'purchase'
  | 'sale'
  | 'gift'
  | 'bequest'
  | 'inheritance'
  | 'descent'
  | 'exchange'
  | 'auction'
  | 'consignment'
  | 'joint account'
  | 'commission'
  | 'confiscation'
  | 'restitution'
  | 'deposit'
  | 'loan'
  | 'transfer'
  | 'acquired'
  | 'sent';

/** One holding as a line tells it. */
export interface ReadHolding {
  /** As written, titles and all; empty where the line names nobody. */
  readonly holder: string;
  readonly capacity: 'dealer' | 'auction' | 'estate' | 'fund' | null;
  readonly 'acquired-by': Acquisition | null;
  readonly place: string | null;
  readonly begins: YearRange;
  readonly ends: YearRange;
  /** The very day on which it began, as ISO 8601, where the line states one. */
  readonly 'begins-on'?: string | null;
  readonly 'begins-circa': boolean;
  readonly 'ends-circa': boolean;
  /** About the holder or the passage; never about a date alone. */
  readonly hedge: 'possibly' | 'probably' | null;
  readonly 'passage-to-next': Passage | null;
  readonly 'life-dates': string | null;
  readonly lot: string | null;
  readonly 'consigned-by': string | null;
  readonly through: readonly NamedParty[];
  readonly 'shared-with': readonly NamedParty[];
  readonly notes: readonly number[];
  /** Where it stands in the text: from and to, in UTF-16 units, the end not included. */
  readonly span: readonly [number, number];
}

/** A note below a line. */
export interface LineNote {
  readonly n: number;
  readonly text: string;
  readonly span: readonly [number, number];
}

/** Text that was kept as it is, since it tells no holding. */
export interface KeptText {
  readonly text: string;
  readonly span: readonly [number, number];
}

/** A provenance line as it was read. Every character of the text lies in a holding, a note, a mark or blank between them, or in the kept text. */
export interface ReadLine {
  readonly format: 'kerfmark-line/1';
  readonly 'keeps-convention': boolean;
  readonly holdings: readonly ReadHolding[];
  readonly 'note-texts': readonly LineNote[];
  readonly 'kept-as-text': readonly KeptText[];
}
