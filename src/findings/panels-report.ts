import type { Sayer } from '../language/sayer.ts';
import { coverageOf } from '../physical/coverage.ts';
import { type MeasuredReason, reasonsOfPanel } from '../physical/measured-reasons.ts';
import type { PanelShape, RegisteredFigure } from '../physical/panel-shapes.ts';
import type { Weight } from '../physical/panel-weight.ts';
import type { PanelFindings } from '../physical/panels.ts';
import type { CaseFile } from './case-file.ts';

/** Everything measured, for other programs: lengths in mm, areas in mm2, weights in kg as intervals; each result with its reasons. */
export function panelsReport(file: CaseFile): unknown {
  const { panels, joins, ultraviolet } = file.physical;
  return {
    format: 'kerfmark-panels/4',
    caution: 'calculated weights: plan for not less than the upper figure; weigh before lifting',
    panels: panels.map((panel) => panelReport(file, panel)),
    joins: joins().map(({ first, second, join, byChance }) => ({
      first: first.trace.id,
      second: second.trace.id,
      says: 'may join',
      ...join,
      byChance,
    })),
    ultraviolet: ultraviolet.map(({ trace, matches, ...reading }) => ({
      trace: trace.id,
      ...reading,
      matches: matches.map((one) => ({ ...one, source: file.sayer.say(one.source) })),
    })),
  };
}

/** Kilograms: by a scale, calculated, and what to plan for at least; null where there is none, never 0. */
function weightReport(weight: Weight | undefined): Readonly<Record<string, unknown>> {
  return { weighedKg: weight?.weighed ?? null, calculatedKg: weight?.kg ?? null, planKg: weight?.planKg ?? null };
}

function panelReport(file: CaseFile, panel: PanelFindings): unknown {
  const { geometry, areas, sections, motifs, weight, sectionWeights, layers } = panel;
  const { object, panel: name } = geometry;
  return {
    object: object.id,
    panel: name,
    outline: geometry.outline,
    shapes: geometry.shapes.map(shapeReport),
    figures: geometry.figures.map(figureReport),
    back: {
      outline: geometry.back.outline,
      shapes: geometry.back.shapes.map(shapeReport),
      figures: geometry.back.figures.map(figureReport),
    },
    areas: areas.map(({ category, squareMm, perCent, traces }) => ({ category, squareMm, perCent, traces })),
    sections: sections.sections.map(({ number, squareMm, width, height, ring }, i) => ({
      number,
      squareMm,
      width,
      height,
      ring,
      weight: weightReport(sectionWeights[i]),
    })),
    joints: sections.joints.map((one) => one.trace.id),
    dangling: sections.dangling.map(({ joint, at }) => ({ joint: joint.trace.id, at })),
    spacing: { upright: sections.upright, level: sections.level, tooFew: sections.tooFew },
    motifs: motifs.map(({ shape, fit, beyond }) => ({
      trace: shape.trace.id,
      centre: fit.circle.centre,
      radius: fit.circle.radius,
      radius95: fit.radius,
      arcDegrees: fit.arc,
      beyond,
    })),
    weight: { ...weightReport(weight), ...saidWeight(file.sayer, weight) },
    layers: {
      boxes: layers.boxes,
      lines: layers.lines.map(({ upper, lower, kinds }) => ({
        upper: layers.boxes[upper],
        lower: layers.boxes[lower],
        kinds,
      })),
      loops: layers.loops.map((loop) => loop.map((box) => layers.boxes[box])),
    },
    coverage: coverageOf(file.catalogue, object.id, name).map((one) => ({
      examination: one.examination.id,
      faces: one.faces,
      notSeen: [...one.notSeen.map(({ id }) => id), ...one.notSeenWords],
      notAccessible: [...one.notAccessible.map(({ id }) => id), ...one.notAccessibleWords],
    })),
    reasons: reasonsOfPanel(panel, file.physical.joinsOf(object.id, name)).map((one) => saidReason(file.sayer, one)),
  };
}

function shapeReport({ trace, kind, path, holes, errorMm }: PanelShape): unknown {
  return { trace: trace.id, kind, path, holes, errorMm };
}

function saidWeight({ say }: Sayer, { parts, unweighed }: Weight): Readonly<Record<string, unknown>> {
  return {
    parts: parts.map((one) => ({ ...one, words: say(one.words), source: say(one.source) })),
    notCounted: unweighed.map((one) => ({ ...one, missing: say(one.missing) })),
  };
}

function saidReason({ say }: Sayer, { what, result, method, source, caution, ...rest }: MeasuredReason): unknown {
  const { id, inputs } = rest;
  return {
    id,
    what: say(what),
    result: say(result),
    inputs,
    method: say(method),
    source: say(source),
    caution: caution === null ? null : say(caution),
  };
}

function figureReport({ figure, registration }: RegisteredFigure): unknown {
  return {
    figure: figure.id,
    map: registration.kind,
    matrix: registration.matrix,
    residualsMm: registration.residualsMm,
    rootMeanSquareMm: registration.rootMeanSquareMm,
  };
}
