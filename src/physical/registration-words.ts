import { measured, phrase, type Said } from '../base/said.ts';
import type { Registration } from '../geometry/registration.ts';

/** The error of a registration in words. */
export function sayError({ errorMm, rootMeanSquareMm, residualsMm }: Registration): Said {
  const missed = phrase(
    'points missed by {0} mm (root mean square of {1})',
    measured(rootMeanSquareMm, 2),
    residualsMm.length,
  );
  return errorMm === null
    ? phrase('{0}; its error cannot be told without a point to spare', missed)
    : phrase('{0}; off by about {1} mm', missed, measured(errorMm, 2));
}
