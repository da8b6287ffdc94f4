import type { Grade } from '../base/grade.ts';
import { oncePer } from '../base/once.ts';
import type { Entry, KeyPath } from './entry.ts';

/** Keys under which a trace says how it lies to others; all but the last say that it is the later one. */
export const LAYER_KEYS = ['over', 'cuts', 'fills', 'same-as'] as const;

/** What a trace says of how it lies to another one. */
export interface LayerRelation {
  readonly key: (typeof LAYER_KEYS)[number];
  /** Id of the other trace. */
  readonly id: string;
  /** The grade that is written there, or that of what is observed; possible where nothing is said. */
  readonly grade: Grade;
  readonly why?: string | undefined;
  readonly ref?: string | undefined;
  /** Where it stands in the entry. */
  readonly path: KeyPath;
}

/** All that a trace says of how it lies to others, in the order of the keys. */
export const layerRelations = oncePer((trace: Entry<'evidence'>): readonly LayerRelation[] => {
  const usual = trace.keys.observed?.grade ?? 'possible';
  return LAYER_KEYS.flatMap((key) =>
    (trace.keys[key] ?? []).map((other, i): LayerRelation => {
      const path = [key, i];
      return typeof other === 'string'
        ? { key, id: other, grade: usual, path }
        : { ...other, key, grade: other.grade ?? usual, path };
    }),
  );
});
