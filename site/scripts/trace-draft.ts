import type { Point } from '../../src/geometry/point.ts';
import type { ShapeKind } from '../../src/geometry/shape-text.ts';

/** Everything that somebody has entered on a tracing page and not yet saved. */
export interface TraceDraft {
  readonly points: readonly Point[];
  readonly kind: ShapeKind;
  readonly error: string;
  /** The entry to save into; empty for a new trace. */
  readonly into: string;
  readonly title: string;
  readonly is: string;
}

/** The fields of a tracing page. */
export interface TraceFields {
  readonly kinds: readonly HTMLInputElement[];
  readonly error: HTMLInputElement;
  readonly into: HTMLSelectElement;
  readonly title: HTMLInputElement;
  readonly is: HTMLSelectElement;
}

/** The fields of a page. */
export function fieldsIn(root: HTMLElement): TraceFields {
  const one = <Field extends HTMLElement>(selector: string): Field => root.querySelector<Field>(selector) as Field;
  return {
    kinds: [...root.querySelectorAll<HTMLInputElement>('input[name=kind]')],
    error: one('input[name=error]'),
    into: one('select[name=into]'),
    title: one('input[name=title]'),
    is: one('select[name=is]'),
  };
}

/** What stands in the fields now. */
export function draftOf({ kinds, error, into, title, is }: TraceFields, points: readonly Point[]): TraceDraft {
  const kind = (kinds.find((one) => one.checked)?.value ?? 'line') as ShapeKind;
  return { points, kind, error: error.value, into: into.value, title: title.value, is: is.value };
}

/** Puts a draft back into the fields; what is no longer to be chosen stays as it is. */
export function restore({ kinds, error, into, title, is }: TraceFields, draft: TraceDraft): void {
  for (const one of kinds) one.checked = one.value === draft.kind;
  error.value = draft.error;
  title.value = draft.title;
  for (const [field, value] of [
    [into, draft.into],
    [is, draft.is],
  ] as const)
    if ([...field.options].some((option) => option.value === value)) field.value = value;
}

/** True where nothing would be lost. */
export function isEmpty({ points, title }: TraceDraft): boolean {
  return points.length === 0 && title.trim() === '';
}

/**
 * A draft kept in the browser until it is saved: through a reload, a closed tab and a preview that was stopped. Only on this
 * computer; nothing is sent anywhere.
 */
export class KeptDraft {
  private readonly key: string;

  constructor(figure: string) {
    this.key = `kerfmark-trace-${figure}`;
  }

  read(): TraceDraft | null {
    try {
      const read: unknown = JSON.parse(localStorage.getItem(this.key) ?? 'null');
      return isDraft(read) ? read : null;
    } catch {
      return null;
    }
  }

  write(draft: TraceDraft): void {
    // A page that holds what is not saved is not loaded anew by the preview.
    if (isEmpty(draft)) delete document.documentElement.dataset.unsaved;
    else document.documentElement.dataset.unsaved = '';
    try {
      if (isEmpty(draft)) localStorage.removeItem(this.key);
      else localStorage.setItem(this.key, JSON.stringify(draft));
    } catch {
      // A browser may forbid it; then the draft lasts as long as the page.
    }
  }
}

function isDraft(value: unknown): value is TraceDraft {
  if (value === null || typeof value !== 'object') return false;
  const draft = value as Partial<Record<keyof TraceDraft, unknown>>;
  const isPoint = (one: unknown): boolean => Array.isArray(one) && one.length === 2 && one.every(Number.isFinite);
  return (
    Array.isArray(draft.points) &&
    draft.points.every(isPoint) &&
    (['kind', 'error', 'into', 'title', 'is'] as const).every((key) => typeof draft[key] === 'string')
  );
}
