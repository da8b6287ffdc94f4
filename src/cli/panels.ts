import { sayOutward } from '../base/interval.ts';
import { allOf, inRow, measured, named, phrase, type Said } from '../base/said.ts';
import { panelsReport } from '../findings/panels-report.ts';
import { titleOf } from '../model/catalogue.ts';
import { sayChance } from '../physical/measured-reasons.ts';
import { sayRadius } from '../physical/panel-motifs.ts';
import { sayWeight } from '../physical/panel-weight.ts';
import type { PanelFindings } from '../physical/panels.ts';
import { sayError } from '../physical/registration-words.ts';
import { compute } from '../pipeline.ts';
import cautions from '../reference/cautions.json' with { type: 'json' };
import { audienceOf, folderOf, type RunCommand } from './commands.ts';
import { loadWorkspace } from './load-workspace.ts';

export const panels: RunCommand = async (options, effects) => {
  const { file, errors } = compute(await loadWorkspace(folderOf(options, effects)), audienceOf(options), {
    spoken: effects.sayer.language,
  });
  const { physical } = file;
  if (options.flags.json) effects.out(inRow([JSON.stringify(panelsReport(file), null, 2), '\n'], ''));
  else {
    const told = physical.panels.map((panel) => tell(panel, titleOf(panel.geometry.object, file.settings.languages)));
    const joins = physical
      .joins()
      .map(
        ({ first, second, join, byChance, pairs, alikeMm }): Said =>
          phrase(
            '{0} and {1} may join: alike over {2} mm to {3} mm, no finer than they are traced; {4}; pairs compared: {5}.',
            first.trace.id,
            second.trace.id,
            Math.round(join.matched),
            measured(alikeMm, 1),
            sayChance(byChance),
            pairs,
          ),
      );
    const caution = cautions.find((one) => one.subject === 'lifting')?.text ?? '';
    effects.out(file.sayer.say(inRow([inRow([...told, ...joins, named(caution)], '\n\n'), '\n'], '')));
  }
  return errors.length > 0 ? 1 : 0;
};

function tell(
  { geometry, areas, sections, motifs, weight, sectionWeights, layers, isCut }: PanelFindings,
  title: string,
): Said {
  const cm2 = (squareMm: number): Said => phrase('{0} cm²', measured(squareMm / 100, 0));
  const lines: readonly Said[] = [
    phrase('Panel {0} of {1}', geometry.panel, title),
    ...[...geometry.figures, ...geometry.back.figures].map(
      ({ figure, registration }): Said =>
        inRow(['  ', figure.id, ': ', named(registration.kind), ', ', sayError(registration)], ''),
    ),
    ...(isCut
      ? [phrase('  Surface and weights are not told to this audience: entries of this panel are not shown.')]
      : areas.length > 0
        ? [phrase('  Surface, as far as it is traced:')]
        : [phrase('  No areas are traced.')]),
    ...areas
      .filter((one) => one.squareMm > 0)
      .map(
        (one): Said =>
          inRow(['    ', named(one.category), ': ', cm2(one.squareMm), ', ', sayOutward(one.perCent, 1), ' %'], ''),
      ),
    ...(sections.joints.length > 0
      ? [
          phrase(
            '  Sections by {0, plural, one {# joint} other {# joints}}: {1}',
            sections.joints.length,
            sections.sections.length,
          ),
        ]
      : []),
    ...(sections.joints.length > 0
      ? sections.sections.map(
          (one, i): Said =>
            phrase(
              '    {0}: {1} × {2} mm, {3}{4}',
              one.number,
              Math.round(one.width),
              Math.round(one.height),
              cm2(one.squareMm),
              sectionWeights[i]?.kg || sectionWeights[i]?.weighed
                ? inRow(['; ', sayWeight(sectionWeights[i] as PanelFindings['weight'])], '')
                : '',
            ),
        )
      : []),
    ...motifs.map(({ shape, fit, beyond }): Said => {
      const reach = inRow(
        beyond.map((one): Said => phrase('{0} edge by {1} mm at least', named(one.side), measured(one.least, 0))),
        ', ',
      );
      return phrase(
        '  {0}: radius {1} mm ({2}), {3}° of arc{4}',
        shape.trace.id,
        measured(fit.circle.radius, 0),
        sayRadius(fit),
        measured(fit.arc, 0),
        beyond.length > 0 ? phrase('; if it was a full circle, the painting went on beyond the {0}', reach) : '',
      );
    }),
    ...(weight.parts.length > 0 || weight.weighed ? [phrase('  Weight: {0}', sayWeight(weight))] : []),
    ...weight.parts.map(
      (part): Said => phrase('    {0}: {1}, {2} kg ({3})', part.trace, part.words, sayOutward(part.kg, 1), part.source),
    ),
    ...weight.unweighed.map(
      (one): Said => phrase('    {0}: not counted, wants {1}', one.trace ?? phrase('The rest'), one.missing),
    ),
    ...(layers.lines.length > 0 ? [phrase('  Layers, the later first:')] : []),
    ...layers.lines.map(
      (one): Said =>
        inRow(
          [
            '    ',
            layers.boxes[one.upper]?.join(' = ') ?? '',
            ' ',
            allOf(one.kinds.map(named)),
            ' ',
            layers.boxes[one.lower]?.join(' = ') ?? '',
          ],
          '',
        ),
    ),
    ...layers.loops.map(
      (loop): Said => phrase('  A loop of layers: {0}', loop.map((box) => layers.boxes[box]?.join(' = ')).join(', ')),
    ),
  ];
  return inRow(lines, '\n');
}
