import { type Interval, plus, times } from '../base/interval.ts';
import { parseDensity, parseLengthMm, parseSectionMm2, parseWeightKg } from '../base/quantity.ts';
import { intersection, regionArea, regionOf, union } from '../geometry/region.ts';
import { signedArea } from '../geometry/ring.ts';
import type { Catalogue } from '../model/catalogue.ts';
import type { Entry } from '../model/entry.ts';
import table from '../reference/densities.json' with { type: 'json' };
import type { Section } from './panel-sections.ts';
import type { PanelGeometry } from './panel-shapes.ts';

/** One layer or one set of bars in a weight. */
export interface WeightPart {
  readonly trace: string;
  readonly words: string;
  readonly kg: Interval;
  /** Where the density comes from, with its standing. */
  readonly source: string;
}

/** A trace that has a thickness or pieces but cannot be weighed, with what is missing. */
export interface Unweighed {
  readonly trace: string;
  readonly missing: string;
}

/** The weight of a panel or a section. */
export interface Weight {
  readonly parts: readonly WeightPart[];
  readonly unweighed: readonly Unweighed[];
  readonly kg: Interval;
  /** By a scale, where it was weighed. */
  readonly weighed: Interval | null;
}

/** Kinds of trace that have weight as layers. */
const LAYERS: readonly string[] = ['plaster-layer', 'backing', 'addition', 'fill'];

/**
 * Weight of a panel, or of one section of it: for each layer area x thickness x density, for bars count x length x
 * section x density, every factor an interval. Densities from EN 1991-1-1:2002 Annex A are nominal, not extremes. Bars
 * are shared out to sections by area, since where they lie is seldom recorded.
 */
export function weightOf(catalogue: Catalogue, panel: PanelGeometry, section: Section | null): Weight {
  const keys = (panel.object.keys.panels ?? []).find((one) => one.id === panel.panel);
  const named = section ? keys?.sections?.[section.number - 1] : keys;
  const whole = Math.abs(signedArea(panel.outline));
  const share = section ? section.squareMm / whole : 1;
  const parts: WeightPart[] = [];
  const unweighed: Unweighed[] = [];
  for (const trace of tracesOf(catalogue, panel)) {
    const isLayer = LAYERS.includes(trace.keys.kind) && trace.keys.thickness !== undefined;
    if (!isLayer && !trace.keys.pieces) continue;
    const density = densityOf(trace);
    if (!density) {
      unweighed.push({ trace: trace.id, missing: missingDensity(trace) });
      continue;
    }
    const volume = trace.keys.pieces ? piecesMm3(trace, share) : layerMm3(panel, trace, section);
    if (volume)
      parts.push({
        trace: trace.id,
        words: volume.words,
        kg: kgOf(volume.mm3, density.kgPerM3),
        source: density.source,
      });
    else unweighed.push({ trace: trace.id, missing: 'a length or thickness that can be read' });
  }
  const weighed = (section && !keys?.sections?.[section.number - 1] ? undefined : named?.weighed) ?? undefined;
  return {
    parts,
    unweighed,
    kg: plus(...parts.map((one) => one.kg)),
    weighed: weighed === undefined ? null : parseWeightKg(weighed),
  };
}

function tracesOf(catalogue: Catalogue, panel: PanelGeometry): readonly Entry<'evidence'>[] {
  return catalogue
    .ofType('evidence')
    .filter((trace) => trace.keys.object === panel.object.id && trace.keys.panel === panel.panel);
}

interface Density {
  readonly kgPerM3: Interval;
  readonly source: string;
}

/** The density that a trace states, or the row of the table that it names. */
export function densityOf(trace: Entry<'evidence'>): Density | null {
  const text = trace.keys.density;
  if (text === undefined) return null;
  const stated = parseDensity(text);
  if (stated) return { kgPerM3: stated, source: `stated in ${trace.id}` };
  const row = table.find((one) => one.material === text);
  if (!row || row.kgPerM3Min === null || row.kgPerM3Max === null) return null;
  return {
    kgPerM3: { least: row.kgPerM3Min, most: row.kgPerM3Max },
    source: `${row.source} (${row.standing}, nominal)`,
  };
}

function missingDensity(trace: Entry<'evidence'>): string {
  const text = trace.keys.density;
  return text === undefined
    ? 'a density'
    : `a density: the table has no value for “${text}”; write it as 1000-1500 kg/m3`;
}

function layerMm3(
  panel: PanelGeometry,
  trace: Entry<'evidence'>,
  section: Section | null,
): { readonly mm3: Interval; readonly words: string } | null {
  const thickness = parseLengthMm(trace.keys.thickness ?? '');
  if (!thickness) return null;
  const shapes = panel.shapes.filter((one) => one.trace.id === trace.id && one.kind === 'area');
  const place = regionOf(section ? section.ring : panel.outline);
  const region =
    shapes.length > 0 ? intersection(place, union(shapes.map((one) => regionOf(one.path, one.holes)))) : place;
  const area = regionArea(region);
  return {
    mm3: times({ least: area, most: area }, thickness),
    words: `${(area / 1e6).toFixed(2)} m² × ${trace.keys.thickness}`,
  };
}

function piecesMm3(trace: Entry<'evidence'>, share: number): { readonly mm3: Interval; readonly words: string } | null {
  const { pieces } = trace.keys;
  const length = parseLengthMm(pieces?.length ?? '');
  const section = parseSectionMm2(pieces?.section ?? '');
  if (!pieces || !length || section === null) return null;
  const count = pieces.count * share;
  return {
    mm3: times({ least: count * section, most: count * section }, length),
    words: `${share < 1 ? `${(100 * share).toFixed(0)} % of ` : ''}${pieces.count} × ${pieces.length} × ${pieces.section}`,
  };
}

function kgOf(mm3: Interval, kgPerM3: Interval): Interval {
  return times({ least: mm3.least / 1e9, most: mm3.most / 1e9 }, kgPerM3);
}
