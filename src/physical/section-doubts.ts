import type { Diagnostic } from '../base/diagnostic.ts';
import { sayOutward } from '../base/interval.ts';
import { parseSizeMm, parseWeightKg } from '../base/quantity.ts';
import { oneOf, phrase } from '../base/said.ts';
import type { Entry } from '../model/entry.ts';
import { type Section, sectionAt } from './panel-sections.ts';
import type { Weight } from './panel-weight.ts';
import type { PanelFindings } from './panels.ts';

/** How far a stated measure may be off before it is a doubt: a hundredth part, and 10 mm for saw, packing and rule. */
const SIZE_SHARE = 0.01;
const SIZE_MM = 10;

/** Joints that end inside a section, sections that the object names and the joints do not make, and stated sizes and weights that differ from what is measured. */
export function doubtsOfSections({ geometry, sections, weight, sectionWeights }: PanelFindings): readonly Diagnostic[] {
  const { object, panel } = geometry;
  const index = (object.keys.panels ?? []).findIndex((one) => one.id === panel);
  const named = object.keys.panels?.[index]?.sections?.length ?? 0;
  const made = sections.sections.length;
  const ends = sections.dangling.map(
    ({ joint, at }): Diagnostic => ({
      code: 'joint-ends-inside',
      severity: 'doubt',
      place: joint.trace.placeOf(['shape']),
      entry: joint.trace.id,
      message: phrase(
        'the joint {0} ends inside a section, at ({1}, {2}); it divides nothing there',
        joint.trace.id,
        Math.round(at[0]),
        Math.round(at[1]),
      ),
      mend: phrase('lengthen its line to the next joint or edge, if it goes on; else leave it so'),
    }),
  );
  const whole = [
    ...thicknessDoubt(object, ['panels', index, 'thickness'], panel, weight),
    ...densityDoubts(weight),
    ...weighedDoubt(object, ['panels', index, 'weighed'], `panel ${panel}`, weight),
  ];
  if (named === 0 || sections.joints.length === 0) return [...ends, ...whole];
  const said = object.keys.panels?.[index]?.sections ?? [];
  const compared = said.flatMap((one, i) => {
    const section = sectionAt(sections.sections, one.point);
    if (!section) return [];
    const path = ['panels', index, 'sections', i];
    const name = `section ${panel}.${one.id}`;
    const kg = sectionWeights[section.number - 1];
    return [
      ...sizeDoubt(object, [...path, 'stated-size'], name, one['stated-size'], section),
      ...(kg ? statedWeightDoubt(object, [...path, 'stated-weight'], name, one['stated-weight'], kg) : []),
      ...(kg ? weighedDoubt(object, [...path, 'weighed'], name, kg) : []),
    ];
  });
  if (named === made) return [...ends, ...whole, ...compared];
  return [
    ...ends,
    ...whole,
    ...compared,
    {
      code: 'sections-differ',
      severity: 'doubt',
      place: object.placeOf(['panels', index, 'sections']),
      entry: object.id,
      message: phrase('panel {0} is said to have {1} sections, but its section joints make {2}', panel, named, made),
      mend: phrase('check which lines are section joints (under inferred), and the sections of the panel'),
    },
  ];
}

function sizeDoubt(
  object: Entry<'object'>,
  path: readonly (string | number)[],
  name: string,
  stated: string | undefined,
  section: Section | undefined,
): readonly Diagnostic[] {
  const size = stated === undefined ? null : parseSizeMm(stated);
  if (!size || !section) return [];
  const sorted = (list: readonly number[]): readonly number[] => [...list].sort((a, b) => a - b);
  const measured = sorted([section.width, section.height]);
  const fits = sorted(size).every((mm, i) => Math.abs(mm - (measured[i] ?? 0)) <= SIZE_MM + SIZE_SHARE * mm);
  if (fits) return [];
  return [
    {
      code: 'size-differs',
      severity: 'doubt',
      place: object.placeOf(path),
      entry: object.id,
      message: phrase(
        '{0} is stated as {1}, but its joints and edges measure {2} x {3} mm',
        name,
        stated,
        Math.round(section.width),
        Math.round(section.height),
      ),
      mend: phrase(
        'check whether the paper gives the crate or the piece, which piece it means, and whether it was cut again',
      ),
    },
  ];
}

function statedWeightDoubt(
  object: Entry<'object'>,
  path: readonly (string | number)[],
  name: string,
  stated: string | undefined,
  { kg: calculated }: Weight,
): readonly Diagnostic[] {
  const kg = stated === undefined ? null : parseWeightKg(stated);
  if (!kg || !calculated || (kg.least <= calculated.most && kg.most >= calculated.least)) return [];
  return [
    {
      code: 'weight-differs',
      severity: 'doubt',
      place: object.placeOf(path),
      entry: object.id,
      message: phrase(
        '{0} is stated to weigh {1}; calculated {2} kg from its layers',
        name,
        stated,
        sayOutward(calculated, 0),
      ),
      mend: phrase(
        'a crate counts its wood and packing; unseen iron or cement makes a piece heavier. Plan for the higher figure; weigh before lifting',
      ),
    },
  ];
}

function weighedDoubt(
  object: Entry<'object'>,
  path: readonly (string | number)[],
  name: string,
  { weighed, kg }: Weight,
): readonly Diagnostic[] {
  if (!weighed || !kg || (weighed.least <= kg.most && weighed.most >= kg.least)) return [];
  return [
    {
      code: 'weight-differs',
      severity: 'doubt',
      place: object.placeOf(path),
      entry: object.id,
      message: phrase(
        '{0} weighs {1} kg by the scale; calculated {2} kg from its layers',
        name,
        sayOutward(weighed, 1),
        sayOutward(kg, 0),
      ),
      mend: phrase('the scale counts; look for a layer that is missing, thicker or of another material'),
    },
  ];
}

/** The stated thickness asks for more than the layers make. */
function thicknessDoubt(
  object: Entry<'object'>,
  path: readonly (string | number)[],
  panel: string,
  { unweighed }: Weight,
): readonly Diagnostic[] {
  const found = unweighed.find((one) => one.trace === null);
  if (!found) return [];
  return [
    {
      code: 'thickness-differs',
      severity: 'doubt',
      place: object.placeOf(path),
      entry: object.id,
      message: phrase('panel {0} wants {1}', panel, found.missing),
      mend: phrase(
        'record the layer that is missing, or correct a thickness; until then no weight can be told to plan for',
      ),
    },
  ];
}

/** Layers with a thickness whose density cannot be found. */
function densityDoubts({ unweighed }: Weight): readonly Diagnostic[] {
  return unweighed.flatMap(({ trace, near, density, place }) =>
    trace === null || density === undefined || place === undefined
      ? []
      : [
          {
            code: 'density-unknown',
            severity: 'doubt' as const,
            place,
            entry: trace,
            message: phrase('the table of densities has no value for "{0}"', density),
            mend:
              near && near.length > 0
                ? phrase('did you mean {0}? Or write a value as 1000-1500 kg/m3', oneOf(near))
                : phrase('the table stands on the method page; or write a value as 1000-1500 kg/m3'),
          },
        ],
  );
}
