import type { Interval } from '../base/interval.ts';
import {
  difference,
  innerBoundary,
  intersection,
  type Region,
  regionArea,
  regionOf,
  union,
} from '../geometry/region.ts';
import type { PanelGeometry, PanelShape } from './panel-shapes.ts';

/** What a part of a panel's surface is. */
export type AreaCategory =
  | 'loss'
  | 'reconstruction'
  | 'unpainted fill'
  | 'later addition'
  | 'retouched'
  | 'original surface'
  | 'not recorded as anything else';

/** A category with its extent. */
export interface CategoryArea {
  readonly category: AreaCategory;
  readonly region: Region;
  readonly squareMm: number;
  /** Share of the panel in per cent, as far as the tracing errors leave it open. */
  readonly perCent: Interval;
  /** Traces that make it up. */
  readonly traces: readonly string[];
}

/** Kinds of trace whose areas make up the surface, beside what is recorded as original. */
const COUNTED_KINDS: readonly string[] = ['loss', 'fill', 'addition', 'retouching'];

/** True for an area that counts in the surface. */
export function isCounted({ kind, trace }: PanelShape): boolean {
  return kind === 'area' && (COUNTED_KINDS.includes(trace.keys.kind) || trace.keys.original === true);
}

/**
 * Areas of a panel by category. Overlaps count once: losses first; then what is retouched over a loss
 * or a fill (a reconstruction), fills without paint, later additions, retouching on original paint; then what
 * was examined and recorded as original; what is left of the outline is not recorded as anything else. Each boundary may be off by its
 * tracing error, so an area may be off by about the length of its boundary inside the panel times that error. Empty where no area is
 * traced: nothing is then known of the surface.
 *
 * @param examined true where the front was examined; else what is left of the outline says nothing, and is left out
 */
export function areasByCategory(panel: PanelGeometry, examined: boolean): readonly CategoryArea[] {
  const shapes = panel.shapes.filter(isCounted);
  const outline = regionOf(panel.outline);
  const of = (kind: string) => shapes.filter(({ trace }) => trace.keys.original !== true && trace.keys.kind === kind);
  const regionFor = (list: typeof shapes): Region =>
    list.length === 0 ? [] : intersection(outline, union(list.map((one) => regionOf(one.path, one.holes))));
  const [losses, fills, additions, retouchings] = [of('loss'), of('fill'), of('addition'), of('retouching')];
  const originals = shapes.filter(({ trace }) => trace.keys.original === true);
  const [loss, fill, addition, retouching] = [losses, fills, additions, retouchings].map(regionFor) as [
    Region,
    Region,
    Region,
    Region,
  ];
  const recorded = regionFor(originals);
  if ([loss, fill, addition, retouching, recorded].every((one) => one.length === 0)) return [];
  const lacking = union([loss, fill].filter((one) => one.length > 0));
  const reconstruction = intersection(retouching, lacking);
  const openLoss = difference(loss, fill, retouching);
  const unpainted = difference(fill, reconstruction);
  const later = difference(addition, lacking);
  const retouched = difference(retouching, lacking, addition);
  const original = difference(recorded, lacking, addition, retouching);
  const rest = difference(outline, openLoss, reconstruction, unpainted, later, retouched, original);
  const parts: readonly (readonly [AreaCategory, Region, readonly PanelShape[]])[] = [
    ['loss', openLoss, losses],
    ['reconstruction', reconstruction, [...retouchings, ...fills, ...losses]],
    ['unpainted fill', unpainted, fills],
    ['later addition', later, additions],
    ['retouched', retouched, retouchings],
    ...(originals.length > 0 ? ([['original surface', original, originals]] as const) : []),
    ...(examined
      ? ([
          ['not recorded as anything else', rest, [...losses, ...fills, ...additions, ...retouchings, ...originals]],
        ] as const)
      : []),
  ];
  const whole = regionArea(outline);
  return parts.map(([category, region, traces]) => {
    const squareMm = regionArea(region);
    const error = Math.max(0, ...traces.map((one) => one.errorMm));
    // The outline itself is taken as exact: shares are of the panel as it is stated or traced.
    const inner = innerBoundary(region, panel.outline);
    const off = traces.length === 0 ? 0 : inner * error;
    return {
      category,
      region,
      squareMm,
      perCent: {
        least: (100 * Math.max(0, squareMm - off)) / whole,
        most: (100 * Math.min(whole, squareMm + off)) / whole,
      },
      traces:
        category === 'not recorded as anything else'
          ? []
          : [
              ...new Set(
                traces
                  .filter((one) => regionArea(intersection(region, regionOf(one.path, one.holes))) > 0)
                  .map((one) => one.trace.id),
              ),
            ],
    };
  });
}
