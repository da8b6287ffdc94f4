import { naturalOrder } from '../base/natural-order.ts';
import type { Compiled } from './compiled.ts';

/** The id of a statement. */
export function idOf(compiled: Compiled, statement: number): string {
  return compiled.network.statements[statement]?.id ?? '';
}

/** Compares two lists of statements by their ids in natural order, the shorter first where one begins the other. */
export function compareIds(compiled: Compiled, a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < Math.min(a.length, b.length); i += 1) {
    const difference = naturalOrder(idOf(compiled, a[i] as number), idOf(compiled, b[i] as number));
    if (difference !== 0) return difference;
  }
  return a.length - b.length;
}
