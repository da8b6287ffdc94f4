import type { Grade } from '../base/grade.ts';
import type { Entry } from './entry.ts';

/** When a person lived, a firm traded or an institution existed: the first or the last of it. */
export interface LifeDate {
  readonly key: 'born' | 'died' | 'founded' | 'closed';
  readonly date: string;
  /** A bare date counts as probable. */
  readonly grade: Grade;
  readonly source: string | undefined;
  readonly why: string | undefined;
}

/** The first or the last date of a party; null where none is recorded. */
export function lifeDate({ keys }: Entry<'party'>, edge: 'first' | 'last'): LifeDate | null {
  const first = keys.born === undefined ? 'founded' : 'born';
  const last = keys.died === undefined ? 'closed' : 'died';
  const key = edge === 'first' ? first : last;
  const value = edge === 'first' ? (keys.born ?? keys.founded) : (keys.died ?? keys.closed);
  if (value === undefined) return null;
  return typeof value === 'string'
    ? { key, date: value, grade: 'probable', source: undefined, why: undefined }
    : { key, date: value.date, grade: value.grade ?? 'probable', source: value.source, why: value.why };
}
