import { sayOutward } from '../base/interval.ts';
import { inRow, measured, named, phrase, type Said } from '../base/said.ts';
import { JOIN_TRIALS } from '../geometry/edge-join.ts';
import { isCounted } from './panel-areas.ts';
import { sayRadius } from './panel-motifs.ts';
import { sayWeight } from './panel-weight.ts';
import type { PanelFindings, PossibleJoin } from './panels.ts';
import { sayError } from './registration-words.ts';

/** Why a measured result is what it is. */
export interface MeasuredReason {
  /** Name by which pages and other programs address it, as `areas` or `motif-PE-medallion`. */
  readonly id: string;
  readonly what: Said;
  /** The result in words, an interval or a count. */
  readonly result: Said;
  /** Entries that it was computed from. */
  readonly inputs: readonly string[];
  readonly method: Said;
  readonly source: Said;
  readonly caution: Said | null;
}

/** Every result of a panel with its inputs, its method and where that is published; in the order of the page. */
export function reasonsOfPanel(panel: PanelFindings, joins: readonly PossibleJoin[]): readonly MeasuredReason[] {
  return [
    ...registrationReasons(panel),
    ...areaReasons(panel),
    ...sectionReasons(panel),
    ...motifReasons(panel),
    ...weightReasons(panel),
    ...layerReasons(panel),
    ...joins.map(joinReason),
  ];
}

function registrationReasons({ geometry }: PanelFindings): readonly MeasuredReason[] {
  return [...geometry.figures, ...geometry.back.figures].map(({ figure, registration }) => ({
    id: `registration-${figure.id}`,
    what: phrase('How {0} lies in the frame', figure.id),
    result: phrase(
      '{0} map; {1}; at most {2} mm',
      named(registration.kind),
      sayError(registration),
      measured(Math.max(...registration.residualsMm), 2),
    ),
    inputs: [figure.id],
    method: phrase(
      'Least squares over the control points, brought to their middle and to one scale first; for the projective map the distances in millimetres are then made least by Gauss-Newton steps.',
    ),
    source: phrase(
      'Hartley, In defense of the eight-point algorithm, IEEE PAMI 19 (1997), for the scaling; the rest is common practice, no source',
    ),
    caution:
      registration.errorMm === null
        ? phrase('As many points as the map needs: it misses none of them, which says nothing of its error.')
        : phrase('The error is judged from few points; it is that of a point between them, not far outside.'),
  }));
}

function areaReasons({ areas, geometry }: PanelFindings): readonly MeasuredReason[] {
  if (areas.length === 0) return [];
  return [
    {
      id: 'areas',
      what: phrase('Surface by category'),
      result: inRow(
        areas.map((one) => phrase('{0} {1} %', named(one.category), sayOutward(one.perCent, 1))),
        '; ',
      ),
      inputs: unique(geometry.shapes.filter(isCounted).map((one) => one.trace.id)),
      method: phrase(
        'Boolean operations on the traced rings, so that overlaps count once; losses first, then fills and what is painted on them, additions, retouching, what is recorded as original; the rest is not recorded as anything else. Each border may be off by its tracing error, so an area may be off by the length of its border inside the panel times that error.',
      ),
      source: phrase(
        'Boolean operations: Martinez, Rueda and Feito, Computers and Geosciences 35 (2009; not verified). The width of the interval is our own choice, no source',
      ),
      caution: phrase('What nobody traced is not recorded as anything else; it may be original, or not.'),
    },
  ];
}

function sectionReasons({ sections }: PanelFindings): readonly MeasuredReason[] {
  if (sections.joints.length === 0) return [];
  const inputs = unique(sections.joints.map((one) => one.trace.id));
  const loose = sections.dangling.length > 0 ? phrase('; {0} end inside a section', sections.dangling.length) : '';
  const spacing = [sections.upright, sections.level].flatMap((one) =>
    one?.isRegular
      ? [
          phrase(
            'every {0} mm; {1} of 100 random sets do as well',
            measured(one.module, 0),
            measured(100 * one.byChance, 1),
          ),
        ]
      : [],
  );
  return [
    {
      id: 'sections',
      what: phrase('Sections for transport'),
      result: phrase(
        '{0} sections by {1, plural, one {# joint} other {# joints}}{2}',
        sections.sections.length,
        inputs.length,
        loose,
      ),
      inputs,
      method: phrase(
        'The faces of the planar division that the outline and the lines taken for section joints make; ends up to 3 mm too short or too long are joined. Checked against the count of Euler: faces = edges - points + parts + 1.',
      ),
      source: phrase(
        'de Berg and others, Computational Geometry (3rd edition 2008), chapter 2, for the division (not verified)',
      ),
      caution: phrase(
        'Only lines whose best-graded reading is a section joint are counted; another reading gives another division.',
      ),
    },
    ...(sections.tooFew
      ? []
      : [
          {
            id: 'spacing',
            what: phrase('Spacing of the joints'),
            result:
              spacing.length > 0
                ? inRow(spacing, '; ')
                : phrase('no regular spacing that chance would not give as well'),
            inputs,
            method: phrase(
              'Least squares with missing lines allowed; the score is set beside that of random lines (seeded, so that it can be repeated).',
            ),
            source: phrase(
              'Own method, no source; that a score is set beside chance follows Kendall, Philosophical Transactions A 276 (1974)',
            ),
            caution: phrase('Few joints; a regular spacing does not say what tool or cart set it.'),
          },
        ]),
  ];
}

function motifReasons({ motifs }: PanelFindings): readonly MeasuredReason[] {
  return motifs.map(({ shape, fit, beyond }) => ({
    id: `motif-${shape.trace.id}`,
    what: phrase('A motif cut by an edge'),
    result: phrase(
      'radius {0} mm ({1}) from {2}° of arc{3}',
      measured(fit.circle.radius, 0),
      sayRadius(fit),
      measured(fit.arc, 0),
      beyond.length > 0
        ? phrase(
            '; if it was a full circle, {0}',
            inRow(
              beyond.map((one) =>
                phrase('at least {0} mm beyond the {1} edge', measured(one.least, 0), named(one.side)),
              ),
              ', ',
            ),
          )
        : '',
    ),
    inputs: [shape.trace.id],
    method: phrase(
      'A circle by least squared distances (geometric fit), started from an algebraic one; the interval holds the middle 95 per cent of 2,000 trials in which the points are moved by the tracing error (seeded); no upper end below 25 degrees of arc.',
    ),
    source: phrase(
      'Gander, Golub and Strebel, BIT 34 (1994); start: Taubin, IEEE PAMI 13 (1991); short arcs: Al-Sharadqah and Chernov, Electronic Journal of Statistics 3 (2009)',
    ),
    caution: phrase(
      'It may never have been a full circle. Points along one drawn line err together, so the true interval may be wider.',
    ),
  }));
}

function weightReasons({ weight, geometry }: PanelFindings): readonly MeasuredReason[] {
  if (weight.parts.length === 0) return [];
  return [
    {
      id: 'weight',
      what: phrase('Weight'),
      result: sayWeight(weight),
      inputs: [...weight.parts.map((one) => one.trace), ...weight.unweighed.flatMap((one) => one.trace ?? [])],
      method: phrase(
        'Area times thickness times density for each layer, count times length times section times density for bars; every factor an interval{0}. Bars are shared out to sections by area.',
        geometry.outlineTraced ? '' : phrase(', the area by the stated width and height'),
      ),
      source: phrase('Densities as each row says; EN 1991-1-1:2002 Annex A gives nominal weights, not extremes'),
      caution:
        weight.unweighed.length > 0
          ? phrase(
              'Not counted: {0}. The piece is heavier by these.',
              inRow(
                weight.unweighed.map((one) =>
                  phrase('{0} (wants {1})', one.trace ?? phrase('the rest of the panel'), one.missing),
                ),
                '; ',
              ),
            )
          : phrase('Only what is recorded is counted; unseen iron, cement or wet plaster makes a piece heavier.'),
    },
  ];
}

function layerReasons({ layers }: PanelFindings): readonly MeasuredReason[] {
  if (layers.lines.length === 0 && layers.loops.length === 0) return [];
  return [
    {
      id: 'layers',
      what: phrase('Order of layers'),
      result: phrase(
        '{0} relations drawn, {1} said by others, {2, plural, one {# loop} other {# loops}}',
        layers.lines.length,
        layers.redundant.length,
        layers.loops.length,
      ),
      inputs: layers.boxes.flat(),
      method: phrase(
        'What lies over, cuts or fills comes later (superposition and succession); relations that longer ways already say are left out of the drawing (transitive reduction), and none of the computation of dates.',
      ),
      source: phrase('Harris, World Archaeology 11 (1979); Aho, Garey and Ullman, SIAM Journal on Computing 1 (1972)'),
      caution: phrase('His laws of horizontality and continuity do not carry over to walls and are not used.'),
    },
  ];
}

function joinReason({ first, second, join, byChance, pairs, alikeMm }: PossibleJoin): MeasuredReason {
  return {
    id: `join-${first.trace.id}-${second.trace.id}`,
    what: phrase('Edges that may join'),
    result: phrase(
      'alike over {0} mm to {1} mm, no finer than they are traced; {2}; {3} compared',
      Math.round(join.matched),
      measured(alikeMm, 1),
      sayChance(byChance),
      phrase('{0, plural, one {one pair} other {# pairs}}', pairs),
    ),
    inputs: [first.trace.id, second.trace.id],
    method: phrase(
      'Both edges as heights above the line through their ends; the second is laid along the first at every offset, a constant gap for the saw and a straight difference taken out. The deviation is set beside that of 500 edges with the same waves in other phases (seeded), times the number of pairs compared. Edges whose relief is under one and a half times their tracing error are left out.',
    ),
    source: phrase('Rivals: Theiler and others, Physica D 58 (1992; not verified); the rest is our own, no source'),
    caution: phrase('May join, not joins: material, layers and painting have to agree as well.'),
  };
}

/** The chance in words; the least that the trials can tell is a bound, not a value. */
export function sayChance(byChance: number): Said {
  return byChance <= 1 / JOIN_TRIALS
    ? phrase('fewer than one in {0} rivals does as well', JOIN_TRIALS)
    : phrase('{0} of 100 rivals do as well', measured(100 * byChance, 1));
}

function unique(list: readonly string[]): readonly string[] {
  return [...new Set(list)];
}
