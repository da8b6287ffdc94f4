import { formatOutward } from '../base/interval.ts';
import { panelsReport } from '../findings/panels-report.ts';
import { titleOf } from '../model/catalogue.ts';
import { sayChance } from '../physical/measured-reasons.ts';
import { sayWeight } from '../physical/panel-weight.ts';
import type { PanelFindings } from '../physical/panels.ts';
import { sayError } from '../physical/registration-words.ts';
import { compute } from '../pipeline.ts';
import cautions from '../reference/cautions.json' with { type: 'json' };
import { audienceOf, folderOf, type RunCommand } from './commands.ts';
import { loadWorkspace } from './load-workspace.ts';

export const panels: RunCommand = async (options, effects) => {
  const { file, errors } = compute(await loadWorkspace(folderOf(options, effects)), audienceOf(options));
  const { physical } = file;
  if (options.flags.json) effects.out(`${JSON.stringify(panelsReport(file), null, 2)}\n`);
  else {
    const told = physical.panels.map((panel) => tell(panel, titleOf(panel.geometry.object, file.settings.languages)));
    const joins = physical
      .joins()
      .map(
        ({ first, second, join, byChance, pairs, errorMm }) =>
          `${first.trace.id} and ${second.trace.id} may join: alike over ${Math.round(join.matched)} mm to ${join.deviation.toFixed(1)} mm, traced to ${errorMm.toFixed(1)} mm; ${sayChance(byChance)}; pairs compared: ${pairs}.`,
      );
    const caution = cautions.find((one) => one.subject === 'lifting')?.text ?? '';
    effects.out(`${[...told, ...joins, caution].join('\n\n')}\n`);
  }
  return errors.length > 0 ? 1 : 0;
};

function tell(
  { geometry, areas, sections, motifs, weight, sectionWeights, layers, isCut }: PanelFindings,
  title: string,
): string {
  const cm2 = (squareMm: number): string => `${(squareMm / 100).toFixed(0)} cm²`;
  return [
    `Panel ${geometry.panel} of ${title}`,
    ...[...geometry.figures, ...geometry.back.figures].map(
      ({ figure, registration }) => `  ${figure.id}: ${registration.kind}, ${sayError(registration)}`,
    ),
    ...(isCut
      ? ['  Surface and weights are not told to this audience: entries of this panel are not shown.']
      : areas.length > 0
        ? ['  Surface, as far as it is traced:']
        : ['  No areas are traced.']),
    ...areas
      .filter((one) => one.squareMm > 0)
      .map((one) => `    ${one.category}: ${cm2(one.squareMm)}, ${formatOutward(one.perCent, 1)} %`),
    ...(sections.joints.length > 0
      ? [
          `  Sections by ${sections.joints.length} ${sections.joints.length === 1 ? 'joint' : 'joints'}: ${sections.sections.length}`,
        ]
      : []),
    ...(sections.joints.length > 0
      ? sections.sections.map(
          (one, i) =>
            `    ${one.number}: ${Math.round(one.width)} × ${Math.round(one.height)} mm, ${cm2(one.squareMm)}${sectionWeights[i]?.parts.length ? `; ${sayWeight(sectionWeights[i] as PanelFindings['weight'])}` : ''}`,
        )
      : []),
    ...motifs.map(({ shape, fit, beyond }) => {
      const to = fit.radius.most === null ? 'no upper end' : `${fit.radius.most.toFixed(0)} mm`;
      const reach = beyond.map((one) => `${one.side} edge by ${one.least.toFixed(0)} mm at least`).join(', ');
      return `  ${shape.trace.id}: radius ${fit.circle.radius.toFixed(0)} mm (${fit.radius.least.toFixed(0)} mm to ${to}), ${fit.arc.toFixed(0)}° of arc${reach ? `; if it was a full circle, the painting went on beyond the ${reach}` : ''}`;
    }),
    ...(weight.parts.length > 0 || weight.weighed ? [`  Weight: ${sayWeight(weight)}`] : []),
    ...weight.parts.map((part) => `    ${part.trace}: ${part.words}, ${formatOutward(part.kg, 1)} kg (${part.source})`),
    ...weight.unweighed.map((one) => `    ${one.trace ?? 'The rest'}: not counted, wants ${one.missing}`),
    ...(layers.lines.length > 0 ? ['  Layers, the later first:'] : []),
    ...layers.lines.map(
      (one) =>
        `    ${layers.boxes[one.upper]?.join(' = ')} ${one.kinds.join(' and ')} ${layers.boxes[one.lower]?.join(' = ')}`,
    ),
    ...layers.loops.map(
      (loop) => `  A loop of layers: ${loop.map((box) => layers.boxes[box]?.join(' = ')).join(', ')}`,
    ),
  ].join('\n');
}
