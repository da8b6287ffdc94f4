import type { Registration } from '../geometry/registration.ts';

/** The error of a registration in words. */
export function sayError({ errorMm, rootMeanSquareMm, residualsMm }: Registration): string {
  const missed = `points missed by ${rootMeanSquareMm.toFixed(2)} mm (root mean square of ${residualsMm.length})`;
  return errorMm === null
    ? `${missed}; its error cannot be told without a point to spare`
    : `${missed}; off by about ${errorMm.toFixed(2)} mm`;
}
