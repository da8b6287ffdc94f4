import type { Diagnostic } from '../base/diagnostic.ts';
import { lazily } from '../base/once.ts';
import { bestJoin, type EdgeJoin, joinByChance, reliefOf } from '../geometry/edge-join.ts';
import type { Catalogue } from '../model/catalogue.ts';
import { layerRelations } from '../model/layer-relations.ts';
import { coverageOf } from './coverage.ts';
import { type LayerOrder, type LayerRelation, orderLayers } from './layer-order.ts';
import { areasByCategory, type CategoryArea } from './panel-areas.ts';
import { type CutMotif, findCutMotifs } from './panel-motifs.ts';
import { findSections, type Section, type Sections, sectionAt } from './panel-sections.ts';
import { findPanelShapes, type PanelGeometry, type PanelShape } from './panel-shapes.ts';
import { NO_WEIGHT, type StatedSection, type Weight, weightOf } from './panel-weight.ts';
import { doubtsOfSections } from './section-doubts.ts';
import { readUltraviolet, type UltravioletReading } from './ultraviolet.ts';

/** All that is computed of one panel. */
export interface PanelFindings {
  readonly geometry: PanelGeometry;
  readonly areas: readonly CategoryArea[];
  readonly sections: Sections;
  readonly motifs: readonly CutMotif[];
  readonly weight: Weight;
  /** By section, in their order; empty where there are no joints. */
  readonly sectionWeights: readonly Weight[];
  readonly layers: LayerOrder;
  /** True where entries or keys of this panel are not shown to this audience: surface and weights would be false. */
  readonly isCut: boolean;
}

/** Two cut edges of different panels that run alike: they may join. */
export interface PossibleJoin {
  readonly first: PanelShape;
  readonly second: PanelShape;
  readonly join: EdgeJoin;
  /** How often an edge of the same roughness does as well by chance. */
  readonly byChance: number;
  /** How many pairs were compared, and the tracing error of both edges together, in mm. */
  readonly pairs: number;
  readonly errorMm: number;
  /** To what they run alike, in mm: never finer than they were traced. */
  readonly alikeMm: number;
}

/** Everything computed from the physical evidence of a catalogue. */
export interface PhysicalFindings {
  readonly panels: readonly PanelFindings[];
  /** All pairs that may join; compared when first asked for. */
  joins(): readonly PossibleJoin[];
  /** Looks under ultraviolet, of all traces that record one. */
  readonly ultraviolet: readonly UltravioletReading[];
  /** Pairs of edges of which one belongs to this panel. */
  joinsOf(object: string, panel: string): readonly PossibleJoin[];
  /** What is wrong with figures and shapes. */
  readonly faults: readonly Diagnostic[];
  /** Doubts about sections, thicknesses and weights. */
  readonly doubts: readonly Diagnostic[];
}

/** Measures every panel that has a size; each measure when it is first asked for. */
export function findPhysical(catalogue: Catalogue): PhysicalFindings {
  const { panels: geometries, problems } = findPanelShapes(catalogue);
  const panels = geometries.map((geometry): PanelFindings => {
    const isCut = catalogue.cutPanels.has(`${geometry.object.id}/${geometry.panel}`);
    const sections = lazily(() => findSections(geometry));
    const areas = lazily(() => (isCut ? [] : areasByCategory(geometry, isFrontExamined(catalogue, geometry))));
    const motifs = lazily(() => findCutMotifs(geometry));
    const weight = lazily(() => (isCut ? NO_WEIGHT : weightOf(catalogue, geometry, null)));
    const weighed = (section: Section): Weight =>
      weightOf(catalogue, geometry, section, statedOf(geometry, sections(), section));
    const sectionWeights = lazily(() =>
      isCut || sections().joints.length === 0 ? [] : sections().sections.map(weighed),
    );
    const layers = lazily(() => layersOf(catalogue, geometry));
    return {
      geometry,
      isCut,
      get areas() {
        return areas();
      },
      get sections() {
        return sections();
      },
      get motifs() {
        return motifs();
      },
      get weight() {
        return weight();
      },
      get sectionWeights() {
        return sectionWeights();
      },
      get layers() {
        return layers();
      },
    };
  });
  const joins = lazily(() => possibleJoins(geometries));
  const ultraviolet = lazily(() => readUltraviolet(catalogue));
  const doubts = lazily(() => panels.flatMap(doubtsOfSections));
  const isOn =
    (object: string, panel: string) =>
    ({ trace: { keys } }: PanelShape): boolean =>
      keys.object === object && keys.panel === panel;
  return {
    panels,
    joins,
    get ultraviolet() {
      return ultraviolet();
    },
    joinsOf: (object, panel) => joins().filter(({ first, second }) => [first, second].some(isOn(object, panel))),
    faults: problems,
    get doubts() {
      return doubts();
    },
  };
}

/** What the object says of a section, where a place in it says which one is meant. */
export function statedOf(
  { object, panel }: PanelGeometry,
  { sections }: Sections,
  section: Section,
): StatedSection | null {
  const named = (object.keys.panels ?? []).find((one) => one.id === panel)?.sections ?? [];
  return named.find((one) => sectionAt(sections, one.point) === section) ?? null;
}

/** An edge is compared only where its relief is this many times its tracing error: else it shows the tracer's hand. */
const RELIEF_BY_ERROR = 1.5;

/** Pairs of cut edges of different panels; those that chance gives less often than once in twenty, all pairs taken together. */
function possibleJoins(panels: readonly PanelGeometry[]): readonly PossibleJoin[] {
  const edges = panels.flatMap((panel, at) =>
    panel.shapes
      .filter((one) => one.kind === 'line' && one.trace.keys.kind === 'cut-edge' && one.path.length >= 8)
      .map((shape) => ({ shape, at })),
  );
  const pairs = edges.flatMap((one, i) =>
    edges.slice(i + 1).flatMap((other) => (other.at === one.at ? [] : [[one.shape, other.shape] as const])),
  );
  return pairs.flatMap(([first, second]): readonly PossibleJoin[] => {
    const errorMm = Math.hypot(first.errorMm, second.errorMm);
    if ([first, second].some((one) => reliefOf(one.path) < RELIEF_BY_ERROR * one.errorMm)) return [];
    const join = bestJoin(first.path, second.path);
    if (!join) return [];
    const byChance = joinByChance(first.path, second.path);
    // Bonferroni: among many pairs one fits well by chance alone.
    return byChance * pairs.length < 0.05
      ? [{ first, second, join, byChance, pairs: pairs.length, errorMm, alikeMm: Math.max(join.deviation, errorMm) }]
      : [];
  });
}

function layersOf(catalogue: Catalogue, { object, panel }: PanelGeometry): LayerOrder {
  const traces = catalogue
    .onObject('evidence', object.id)
    .filter(
      (trace) =>
        trace.keys.object === object.id && trace.keys.panel === panel && trace.keys.seen !== 'looked for, not seen',
    );
  const here = new Set(traces.map((trace) => trace.id));
  const relations: LayerRelation[] = [];
  const same: (readonly [string, string])[] = [];
  for (const trace of traces)
    for (const { key, id } of layerRelations(trace)) {
      if (!here.has(id)) continue;
      if (key === 'same-as') same.push([trace.id, id]);
      else relations.push({ upper: trace.id, lower: id, kind: key });
    }
  return orderLayers([...here], relations, same);
}

/** True where an examination looked at the front of a panel. */
function isFrontExamined(catalogue: Catalogue, { object, panel }: PanelGeometry): boolean {
  return coverageOf(catalogue, object.id, panel).some(({ faces }) => faces.front === 'looked at');
}
