import type { Diagnostic } from '../base/diagnostic.ts';
import { bestJoin, type EdgeJoin, joinByChance } from '../geometry/edge-join.ts';
import type { Catalogue } from '../model/catalogue.ts';
import type { Entry } from '../model/entry.ts';
import { type LayerOrder, type LayerRelation, orderLayers } from './layer-order.ts';
import { areasByCategory, type CategoryArea } from './panel-areas.ts';
import { type CutMotif, findCutMotifs } from './panel-motifs.ts';
import { findSections, type Sections } from './panel-sections.ts';
import { findPanelShapes, type PanelGeometry, type PanelShape } from './panel-shapes.ts';
import { type Weight, weightOf } from './panel-weight.ts';
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
}

/** Two cut edges of different panels that run alike: they may join. */
export interface PossibleJoin {
  readonly first: PanelShape;
  readonly second: PanelShape;
  readonly join: EdgeJoin;
  /** How often an edge of the same roughness does as well by chance. */
  readonly byChance: number;
}

/** Everything computed from the physical evidence of a catalogue. */
export interface PhysicalFindings {
  readonly panels: readonly PanelFindings[];
  readonly joins: readonly PossibleJoin[];
  /** Looks under ultraviolet, of all traces that record one. */
  readonly ultraviolet: readonly UltravioletReading[];
  /** Pairs of edges of which one belongs to this panel. */
  joinsOf(object: string, panel: string): readonly PossibleJoin[];
  readonly problems: readonly Diagnostic[];
}

/** Measures every panel that has a size. */
export function findPhysical(catalogue: Catalogue): PhysicalFindings {
  const { panels: geometries, problems } = findPanelShapes(catalogue);
  const panels = geometries.map((geometry): PanelFindings => {
    const sections = findSections(geometry);
    return {
      geometry,
      areas: areasByCategory(geometry),
      sections,
      motifs: findCutMotifs(geometry),
      weight: weightOf(catalogue, geometry, null),
      sectionWeights:
        sections.joints.length === 0 ? [] : sections.sections.map((one) => weightOf(catalogue, geometry, one)),
      layers: layersOf(catalogue, geometry),
    };
  });
  const joins = possibleJoins(geometries);
  const isOn =
    (object: string, panel: string) =>
    ({ trace: { keys } }: PanelShape): boolean =>
      keys.object === object && keys.panel === panel;
  return {
    panels,
    joins,
    ultraviolet: readUltraviolet(catalogue),
    joinsOf: (object, panel) => joins.filter(({ first, second }) => [first, second].some(isOn(object, panel))),
    problems: [...problems, ...panels.flatMap(doubtsOfSections)],
  };
}

/** Pairs of cut edges of different panels; those that chance gives less often than once in twenty. */
function possibleJoins(panels: readonly PanelGeometry[]): readonly PossibleJoin[] {
  const edges = panels.flatMap((panel, at) =>
    panel.shapes
      .filter((one) => one.kind === 'line' && one.trace.keys.kind === 'cut-edge' && one.path.length >= 8)
      .map((shape) => ({ shape, at })),
  );
  return edges.flatMap(({ shape: first, at }, i) =>
    edges.slice(i + 1).flatMap(({ shape: second, at: other }): readonly PossibleJoin[] => {
      if (at === other) return [];
      const join = bestJoin(first.path, second.path);
      if (!join) return [];
      const byChance = joinByChance(first.path, second.path);
      return byChance < 0.05 ? [{ first, second, join, byChance }] : [];
    }),
  );
}

function layersOf(catalogue: Catalogue, { object, panel }: PanelGeometry): LayerOrder {
  const traces = catalogue
    .ofType('evidence')
    .filter(
      (trace) =>
        trace.keys.object === object.id && trace.keys.panel === panel && trace.keys.seen !== 'looked for, not seen',
    );
  const here = new Set(traces.map((trace) => trace.id));
  const others = (trace: Entry<'evidence'>, key: 'over' | 'cuts' | 'fills' | 'same-as'): readonly string[] =>
    (trace.keys[key] ?? []).map((one) => (typeof one === 'string' ? one : one.id)).filter((id) => here.has(id));
  const relations = traces.flatMap((trace) =>
    (['over', 'cuts', 'fills'] as const).flatMap((kind) =>
      others(trace, kind).map((lower): LayerRelation => ({ upper: trace.id, lower, kind })),
    ),
  );
  const same = traces.flatMap((trace) => others(trace, 'same-as').map((other) => [trace.id, other] as const));
  return orderLayers([...here], relations, same);
}
