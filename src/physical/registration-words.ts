import type { Registration } from '../geometry/registration.ts';
import { words } from '../language/spoken.ts';

/** The error of a registration in words. */
export function sayError({ errorMm, rootMeanSquareMm, residualsMm }: Registration): string {
  const missed = words(
    'points missed by {0} mm (root mean square of {1})',
    rootMeanSquareMm.toFixed(2),
    residualsMm.length,
  );
  return errorMm === null
    ? words('{0}; its error cannot be told without a point to spare', missed)
    : words('{0}; off by about {1} mm', missed, errorMm.toFixed(2));
}
