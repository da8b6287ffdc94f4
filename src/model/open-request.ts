import type { Keys } from './entry.ts';

/** True for a request for return that nobody has closed: it has no outcome, and its state names none. */
export function isOpenRequest({
  state = '',
  outcome,
}: Pick<Keys<'request-for-return'>, 'outcome'> & { readonly state?: string }): boolean {
  return outcome === undefined && !/\b(?:closed|settled|withdrawn|refused|rejected|returned)\b/i.test(state);
}
