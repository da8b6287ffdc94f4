import { type Interval, plus, sayOutward, times } from '../base/interval.ts';
import { nearest } from '../base/nearest.ts';
import type { Place } from '../base/place.ts';
import { parseDensity, parseLengthMm, parseSectionMm2, parseWeightKg } from '../base/quantity.ts';
import { inRow, measured, phrase, type Said } from '../base/said.ts';
import type { Point } from '../geometry/point.ts';
import { intersection, regionArea, regionOf, union } from '../geometry/region.ts';
import { signedArea } from '../geometry/ring.ts';
import type { Catalogue } from '../model/catalogue.ts';
import type { Entry } from '../model/entry.ts';
import { citationOf } from '../model/row-citation.ts';
import table from '../reference/densities.json' with { type: 'json' };
import type { Section } from './panel-sections.ts';
import type { PanelGeometry, PanelShape } from './panel-shapes.ts';

/** One layer or one set of bars in a weight. */
export interface WeightPart {
  readonly trace: string;
  readonly words: Said;
  readonly kg: Interval;
  /** Of a layer over the whole panel; null for bars and for patches. */
  readonly thicknessMm: Interval | null;
  /** Where the density comes from, with its standing. */
  readonly source: Said;
}

/** A trace that has a thickness or pieces but cannot be weighed, with what is missing. */
export interface Unweighed {
  /** Null where no single trace is meant. */
  readonly trace: string | null;
  readonly missing: Said;
  /** What stands for the density where the table has no such row, where it stands, and the nearest rows. */
  readonly density?: string;
  readonly near?: readonly string[];
  readonly place?: Place;
}

/** The weight of a panel or a section. */
export interface Weight {
  readonly parts: readonly WeightPart[];
  readonly unweighed: readonly Unweighed[];
  /** Of the parts together; null where nothing could be counted. No weight is ever 0 kg. */
  readonly kg: Interval | null;
  /** By a scale, where it was weighed. */
  readonly weighed: Interval | null;
  /**
   * What to plan for at least: the highest of what was calculated, weighed and stated, in whole kilograms. Null where
   * something is not counted and nobody weighed it: any figure would be too low.
   */
  readonly planKg: number | null;
}

/** The weight of what nothing may be said about. */
export const NO_WEIGHT: Weight = { parts: [], unweighed: [], kg: null, weighed: null, planKg: null };

/** The weight in words: never a lower figure alone, never a plan figure that something is missing from. */
export function sayWeight({ unweighed, kg, weighed, planKg }: Weight): Said {
  const said = [
    ...(weighed ? [phrase('by a scale {0} kg', sayOutward(weighed, 1))] : []),
    ...(kg === null
      ? []
      : [
          unweighed.length > 0
            ? phrase('calculated {0} kg of what could be counted, which is not all', sayOutward(kg, 0))
            : phrase('calculated {0} kg', sayOutward(kg, 0)),
        ]),
    planKg === null ? phrase('heavier than any figure here') : phrase('plan for not less than {0} kg', planKg),
    phrase('weigh before lifting'),
  ];
  return inRow(said, '; ');
}

/** Kinds of trace that have weight as layers. */
const LAYERS: readonly string[] = ['plaster-layer', 'backing', 'addition', 'fill'];

/**
 * Weight of a panel, or of one section of it: for each layer area x thickness x density, for bars count x length x
 * section x density, every factor an interval. Densities from EN 1991-1-1:2002 Annex A are nominal, not extremes. Bars
 * are shared out to sections by area, since where they lie is seldom recorded.
 */
export function weightOf(
  catalogue: Catalogue,
  panel: PanelGeometry,
  section: Section | null,
  matched: StatedSection | null = null,
): Weight {
  const keys = (panel.object.keys.panels ?? []).find((one) => one.id === panel.panel);
  const named = section ? matched : keys;
  // A panel that is one section is that section: what a scale said of it was said of the panel.
  const only = section === null && keys?.sections?.length === 1 ? keys.sections[0] : undefined;
  const whole = Math.abs(signedArea(panel.outline));
  const share = section ? section.squareMm / whole : 1;
  const parts: WeightPart[] = [];
  const unweighed: Unweighed[] = [];
  for (const trace of tracesOf(catalogue, panel)) {
    const isLayer = LAYERS.includes(trace.keys.kind) && trace.keys.thickness !== undefined;
    if (!isLayer && !trace.keys.pieces) continue;
    const density = densityOf(trace);
    if (!density) {
      const text = trace.keys.density;
      unweighed.push({
        trace: trace.id,
        missing: missingDensity(trace),
        ...(text === undefined
          ? {}
          : {
              density: text,
              near: nearest(
                text,
                table.flatMap((one) => (one.kgPerM3Min === null ? [] : one.material)),
                2,
              ),
              place: trace.placeOf(['density']),
            }),
      });
      continue;
    }
    const volume = trace.keys.pieces ? piecesMm3(trace, share) : layerMm3(panel, trace, section);
    if (volume)
      parts.push({
        trace: trace.id,
        words: volume.words,
        kg: kgOf(volume.mm3, density.kgPerM3),
        thicknessMm: volume.thicknessMm,
        source: density.source,
      });
    else unweighed.push({ trace: trace.id, missing: phrase('a length or thickness that can be read') });
  }
  const rest = unseenThickness(keys?.thickness, parts);
  if (rest) unweighed.push(rest);
  const kg = parts.length === 0 ? null : plus(...parts.map((one) => one.kg));
  const weighed = read(named?.weighed ?? only?.weighed);
  const stated = read(matched?.['stated-weight'] ?? only?.['stated-weight']);
  const known = [kg, weighed, stated].flatMap((one) => (one === null ? [] : [one.most]));
  const told = weighed !== null || (kg !== null && unweighed.length === 0);
  return { parts, unweighed, kg, weighed, planKg: told ? Math.ceil(Math.max(...known) - 1e-9) : null };
}

/** A weight as it is written; null where none is. */
function read(text: string | undefined): Interval | null {
  return text === undefined ? null : parseWeightKg(text);
}

/** A section as the object names it. */
export type StatedSection = NonNullable<NonNullable<Entry<'object'>['keys']['panels']>[number]['sections']>[number];

/** How much the layers may fall short of the stated thickness before something must be missing, in mm. */
const THICKNESS_MM = 3;

/** The panel is thicker than all its layers over the whole of it together: something was not recorded. */
function unseenThickness(thickness: number | undefined, parts: readonly WeightPart[]): Unweighed | null {
  if (thickness === undefined || parts.length === 0) return null;
  const layers = parts.flatMap((one) => one.thicknessMm ?? []);
  const most = layers.reduce((sum, one) => sum + one.most, 0);
  if (layers.length === 0 || most >= thickness - THICKNESS_MM) return null;
  return {
    trace: null,
    missing: phrase(
      'layers for {0} mm more: the panel is {1} mm thick, its layers make at most {2} mm',
      Math.floor(thickness - most),
      thickness,
      Math.ceil(most),
    ),
  };
}

function tracesOf(catalogue: Catalogue, panel: PanelGeometry): readonly Entry<'evidence'>[] {
  return catalogue
    .onObject('evidence', panel.object.id)
    .filter((trace) => trace.keys.object === panel.object.id && trace.keys.panel === panel.panel);
}

interface Density {
  readonly kgPerM3: Interval;
  readonly source: Said;
}

/** The density that a trace states, or the row of the table that it names. */
export function densityOf(trace: Entry<'evidence'>): Density | null {
  const text = trace.keys.density;
  if (text === undefined) return null;
  const stated = parseDensity(text);
  if (stated) return { kgPerM3: stated, source: phrase('stated in {0}', trace.id) };
  const row = table.find((one) => one.material === text);
  if (!row || row.kgPerM3Min === null || row.kgPerM3Max === null) return null;
  return {
    kgPerM3: { least: row.kgPerM3Min, most: row.kgPerM3Max },
    source: phrase('{0} (nominal)', citationOf(row)),
  };
}

function missingDensity(trace: Entry<'evidence'>): Said {
  const text = trace.keys.density;
  return text === undefined
    ? phrase('a density')
    : phrase('a density: the table has no value for “{0}”; write it as 1000-1500 kg/m3', text);
}

interface Volume {
  readonly mm3: Interval;
  readonly words: Said;
  readonly thicknessMm: Interval | null;
}

/** Shapes of the back as they lie behind the front. */
function mirroredBack({ outline, back }: PanelGeometry): readonly PanelShape[] {
  const right = Math.max(...outline.map(([x]) => x));
  return back.shapes
    .filter((one) => one.trace.keys.face === 'back')
    .map((one) => ({ ...one, path: one.path.map(([x, y]): Point => [right - x, y]) }));
}

function layerMm3(panel: PanelGeometry, trace: Entry<'evidence'>, section: Section | null): Volume | null {
  const thickness = parseLengthMm(trace.keys.thickness ?? '');
  if (!thickness) return null;
  const shapes = [...panel.shapes, ...mirroredBack(panel)].filter(
    (one) => one.trace.id === trace.id && one.kind === 'area',
  );
  const place = regionOf(section ? section.ring : panel.outline);
  const region =
    shapes.length > 0 ? intersection(place, union(shapes.map((one) => regionOf(one.path, one.holes)))) : place;
  const area = regionArea(region);
  return {
    mm3: times({ least: area, most: area }, thickness),
    words: phrase('{0} m² × {1}', measured(area / 1e6, 2), trace.keys.thickness ?? ''),
    thicknessMm: shapes.length === 0 ? thickness : null,
  };
}

function piecesMm3(trace: Entry<'evidence'>, share: number): Volume | null {
  const { pieces } = trace.keys;
  const length = parseLengthMm(pieces?.length ?? '');
  const section = parseSectionMm2(pieces?.section ?? '');
  if (!pieces || !length || section === null) return null;
  const count = pieces.count * share;
  return {
    mm3: times({ least: count * section, most: count * section }, length),
    thicknessMm: null,
    words:
      share < 1
        ? phrase('{0} % of {1} × {2} × {3}', measured(100 * share, 0), pieces.count, pieces.length, pieces.section)
        : inRow([pieces.count, ' × ', pieces.length, ' × ', pieces.section], ''),
  };
}

function kgOf(mm3: Interval, kgPerM3: Interval): Interval {
  return times({ least: mm3.least / 1e9, most: mm3.most / 1e9 }, kgPerM3);
}
