import type { Diagnostic } from '../base/diagnostic.ts';
import { allOf, phrase, type Said } from '../base/said.ts';
import type { Path, Point } from '../geometry/point.ts';
import { isRegistrationFault, type MapKind, type Registration, register } from '../geometry/registration.ts';
import type { Catalogue } from '../model/catalogue.ts';
import type { Entry } from '../model/entry.ts';

/** A figure that control points bring into the frame of its panel. */
export interface RegisteredFigure {
  readonly figure: Entry<'figure'>;
  readonly registration: Registration;
}

/** How far a control point may miss before it is a doubt: 5 mm, or a hundredth of the panel where that is more. */
const FAR_MM = 5;
const FAR_SHARE = 0.01;

/** Brings every figure with control points into its frame; tells points that cannot be right. */
export function registerFigures(catalogue: Catalogue, problems: Diagnostic[]): ReadonlyMap<string, RegisteredFigure> {
  const registered = new Map<string, RegisteredFigure>();
  for (const figure of catalogue.ofType('figure')) {
    const registration = registerFigure(figure, problems);
    if (!registration) continue;
    registered.set(figure.id, { figure, registration });
    problems.push(...doubtsOf(catalogue, figure, registration));
  }
  return registered;
}

/** A point far off all others is mostly a slip of the pen; points that span little of the panel are mostly in another unit. */
function doubtsOf(catalogue: Catalogue, figure: Entry<'figure'>, { residualsMm }: Registration): readonly Diagnostic[] {
  const size = sizeOf(catalogue, figure);
  if (!size) return [];
  const points = (figure.keys['control-points'] ?? []).map(({ mm }) => mm as unknown as Point);
  const span = Math.max(extent(points, 0) / size[0], extent(points, 1) / size[1]);
  const worst = residualsMm.indexOf(Math.max(...residualsMm));
  const far = residualsMm[worst] ?? 0;
  // With few points the slip of one spreads over all alike.
  const standsOut = residualsMm.every((one, i) => i === worst || one < 0.8 * far);
  const limit = Math.max(FAR_MM, FAR_SHARE * Math.max(...size));
  const doubt = (message: Said, mend: Said, index: number | null): Diagnostic => ({
    code: 'control-points-doubtful',
    severity: 'doubt',
    place: figure.placeOf(index === null ? ['control-points'] : ['control-points', index]),
    entry: figure.id,
    message,
    mend,
  });
  return [
    ...(far > limit
      ? [
          doubt(
            standsOut
              ? phrase(
                  'control point {0} of {1} is missed by {2} mm, far more than the others',
                  worst + 1,
                  figure.id,
                  far.toFixed(1),
                )
              : phrase('the control points of {0} are missed by up to {1} mm', figure.id, far.toFixed(1)),
            phrase('look for a slip in their numbers: one wrong point pulls at all the others'),
            standsOut ? worst : null,
          ),
        ]
      : []),
    ...(span < 0.2 || span > 5
      ? [
          doubt(
            phrase("the control points of {0} span {1} % of the panel''s size", figure.id, Math.round(100 * span)),
            phrase('give them in millimetres; for a detail let them stand, as far apart as the photograph allows'),
            null,
          ),
        ]
      : []),
  ];
}

function extent(points: Path, axis: 0 | 1): number {
  const values = points.map((point) => point[axis]);
  return Math.max(...values) - Math.min(...values);
}

function sizeOf(catalogue: Catalogue, { keys }: Entry<'figure'>): readonly [number, number] | null {
  const object = catalogue.get(keys.object ?? '');
  if (object?.type !== 'object') return null;
  const panel = ((object as Entry<'object'>).keys.panels ?? []).find((one) => one.id === keys.panel);
  return panel?.width && panel.height ? [panel.width, panel.height] : null;
}

/** By the number of points: one more than is needed at least, so that a residual can be told. */
function kindOf(points: number): MapKind {
  if (points >= 6) return 'projective';
  return points >= 4 ? 'affine' : 'similarity';
}

function registerFigure(figure: Entry<'figure'>, problems: Diagnostic[]): Registration | null {
  const points = figure.keys['control-points'];
  if (!points) return null;
  const pairs = points.map(({ pixel, mm }) => ({ pixel: pixel as unknown as Point, mm: mm as unknown as Point }));
  const result = register(pairs, figure.keys.registration ?? kindOf(pairs.length));
  if (!isRegistrationFault(result)) {
    if (!result.isMirrored) return result;
    problems.push({
      code: 'control-points',
      severity: 'error',
      place: figure.placeOf(['control-points']),
      entry: figure.id,
      message: phrase('the control points of {0} show the picture in a mirror', figure.id),
      mend: phrase(
        'count millimetres from the lower left corner, x to the right, y upwards; pixels from the upper left corner of the picture',
      ),
    });
    return null;
  }
  const words = {
    'too-few': phrase('are too few for this kind of map'),
    repeated: phrase('say two things of one point ({0})', allOf(result.points)),
    'on-a-line': phrase('lie on a line, or nearly, so that they settle nothing across it'),
  }[result.fault];
  problems.push({
    code: 'control-points',
    severity: 'error',
    place: figure.placeOf(['control-points']),
    entry: figure.id,
    message: phrase('the control points of {0} {1}', figure.id, words),
    mend: phrase('give four points or more, near the corners of the panel'),
  });
  return null;
}
