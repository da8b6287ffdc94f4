import type { Said } from '../base/said.ts';
import type { How } from '../custody/passages.ts';
import type { DateExpression } from '../dates/expression.ts';
import type { Sense } from '../dates/sense.ts';
import type { LayerRelation } from '../model/layer-relations.ts';
import type { LifeDate } from '../model/life-dates.ts';
import type { RelationName } from '../model/types/event.ts';
import type { Gap } from './relation-links.ts';

/** What a statement speaks of: an entry, or an edge of its time. */
export interface Subject {
  readonly entry: string;
  readonly edge: 'begins' | 'ends' | 'delivery' | null;
  /** The title of the entry as the audience reads it. */
  readonly title: string;
}

/** Which year of a material bounds a layer: that of its first mention, or that of its trade. */
export type MaterialYear = 'first known' | 'in trade';

/** What a statement says, as data: no words but those that entries and tables hold. */
export type Saying =
  | {
      readonly is: 'dated';
      readonly subject: Subject;
      readonly sense: Sense;
      readonly date: DateExpression;
      /** The words of the document; null where none are kept, or none may be shown. */
      readonly written: string | null;
    }
  | {
      readonly is: 'relation';
      readonly relation: RelationName;
      readonly one: Subject;
      readonly other: Subject;
      readonly gap: Gap;
      readonly strict: boolean;
    }
  | { readonly is: 'lasted'; readonly subject: Subject; readonly gap: Gap }
  | {
      readonly is: 'layer';
      readonly relation: LayerRelation['key'];
      readonly one: Subject;
      readonly other: Subject;
    }
  | { readonly is: 'left by'; readonly one: Subject; readonly other: Subject }
  | {
      readonly is: 'material';
      readonly subject: Subject;
      readonly material: string;
      readonly year: MaterialYear;
      readonly from: number;
      /** What is cited for the row in the table of dated materials. */
      readonly table: Said;
    }
  | {
      readonly is: 'passed';
      readonly one: Subject;
      readonly other: Subject;
      readonly how: 'direct' | 'not direct' | 'unknown';
    }
  | {
      readonly is: 'handed on';
      readonly act: Subject;
      readonly how: How;
      /** The holdings that the act ties together; null where it names nobody. */
      readonly from: Subject | null;
      readonly to: Subject | null;
    }
  | { readonly is: 'life'; readonly subject: Subject; readonly key: LifeDate['key']; readonly date: DateExpression };
