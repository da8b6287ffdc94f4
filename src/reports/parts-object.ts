import { type Entry, isOfType } from '../model/entry.ts';
import { type Block, list, type Passage, passage, section, type Term } from './document.ts';
import type { Matter } from './matter.ts';
import { nameOf, sayDate } from './say-entry.ts';

/** Numbers that dealers, carriers, houses and museums gave, for the concordance. */
export function concordance({ objects, file }: Matter): readonly Block[] {
  const rows = objects.flatMap((object) => [
    ...(object.keys['accession-numbers'] ?? []).map((number) => [
      passage(number, [object.id]),
      passage('accession'),
      passage(object.keys.holder && file.catalogue.get(object.keys.holder) ? nameOf(file, object.keys.holder) : ''),
      passage(''),
    ]),
    ...(object.keys.numbers ?? []).map((one) => [
      passage(one.number, [object.id, ...(one.source ? [one.source] : []), ...(one.on ? [one.on] : [])]),
      passage(one.kind),
      passage(one['given-by'] ? nameOf(file, one['given-by']) : ''),
      passage(one.given ? sayDate(file, one.given) : ''),
    ]),
  ]);
  const table: Block = {
    kind: 'table',
    caption: 'Concordance of numbers',
    head: ['Number', 'Kind', 'Given by', 'When'],
    widths: [3, 2, 3, 2],
    rows,
  };
  return section('Numbers', rows.length === 0 ? [] : [table], 'No number is recorded.');
}

/** Sections in which the pieces travelled, with what is stated and what is calculated of each. */
export function sections({ objects, file }: Matter): readonly Block[] {
  const rows = objects.flatMap((object) =>
    (object.keys.panels ?? []).flatMap((panel) =>
      (panel.sections ?? []).map((one) => [
        passage(`${panel.id}.${one.id}`, [object.id]),
        passage([one.label, one.at].filter(Boolean).join(', ')),
        passage([one['key-number'], one.crate ? `crate ${one.crate}` : ''].filter(Boolean).join('; ')),
        passage([one['stated-size'], one['stated-weight'], one.weighed].filter(Boolean).join('; ')),
      ]),
    ),
  );
  if (rows.length === 0) return [];
  const measured = file.physical.panels.filter(({ geometry }) => objects.some((one) => one.id === geometry.object.id));
  const weights = measured.flatMap(({ geometry, weight, isCut }): readonly Passage[] =>
    isCut || weight.parts.length === 0
      ? []
      : [
          passage(
            `Panel ${geometry.panel}: calculated ${Math.floor(weight.kg.least)} to ${Math.ceil(weight.kg.most)} kg${weight.planKg === null ? ', with layers that are not counted' : `; plan for not less than ${Math.ceil(weight.planKg)} kg`}. Weigh before lifting.`,
            [geometry.object.id],
          ),
        ],
  );
  return section(
    'Sections',
    [
      {
        kind: 'table',
        caption: 'Sections as recorded; sizes and weights as stated',
        head: ['Section', 'Where', 'Marks', 'Stated'],
        widths: [1, 3, 2, 3],
        rows,
      },
      ...list(weights),
    ],
    '',
  );
}

/** Names of pieces, parties and places, by who uses them, with transliteration. */
export function names({ file, objects }: Matter): readonly Block[] {
  const named = file.catalogue.entries.filter(
    (entry): entry is Entry<'object' | 'party' | 'place'> =>
      isOfType(entry, 'party') || isOfType(entry, 'place') || objects.some((one) => one.id === entry.id),
  );
  const rows = named.flatMap((entry) =>
    (entry.keys.names ?? []).map((one) => [
      passage(nameOf(file, entry.id), [entry.id]),
      passage(one.text),
      passage(one.romanised ?? ''),
      passage(
        [one.language, one['used-by'], one.from || one.to ? `${one.from ?? ''}–${one.to ?? ''}` : '', one.standing]
          .filter(Boolean)
          .join(', '),
      ),
    ]),
  );
  const table: Block = {
    kind: 'table',
    caption: 'Names, their writing, and who uses them',
    head: ['Entry', 'Name', 'Romanised', 'Language, users, years'],
    widths: [3, 3, 3, 3],
    rows,
  };
  return section('Names and transliteration', rows.length === 0 ? [] : [table], 'No further names are recorded.');
}

/** Photographs and drawings, with credit and rights. */
export function figuresList({ file, objects }: Matter): readonly Block[] {
  const figures = file.catalogue
    .ofType('figure')
    .filter((one) => one.keys.object === undefined || objects.some((object) => object.id === one.keys.object));
  const said = figures.map(({ id, keys }) =>
    passage(
      [
        nameOf(file, id),
        keys.technique ?? '',
        keys.taken ? `taken ${sayDate(file, keys.taken)}` : '',
        keys.credit ?? 'no credit recorded',
        keys.rights ?? 'rights not recorded',
        keys['rights-end'] ? `until ${sayDate(file, keys['rights-end'])}` : '',
      ]
        .filter(Boolean)
        .join('; ')
        .concat('.'),
      [id],
    ),
  );
  return section('Figures, credits and rights', list(said), 'No figure is recorded.');
}

/** Examinations: when, by what means, by whom; what was looked for and not seen, what could not be reached. */
export function examinations({ file, objects }: Matter): readonly Block[] {
  const looks = file.catalogue
    .ofType('examination')
    .filter((one) => one.keys.objects.some((id) => objects.some((object) => id.split('/')[0] === object.id)));
  const terms = looks.map(({ id, keys }): Term => {
    const who = (keys.examiner ?? []).map((one) => nameOf(file, one)).join(', ');
    const facts = [
      keys.technique.join(', '),
      keys.when ? sayDate(file, keys.when) : 'date not recorded',
      who === '' ? 'examiner not recorded' : who,
      [keys.lamp, keys.filter, keys.camera, keys.conditions].filter(Boolean).join(', '),
      (keys['looked-for-not-seen'] ?? []).length > 0
        ? `looked for and not seen: ${(keys['looked-for-not-seen'] ?? []).join(', ')}`
        : '',
      (keys['not-accessible'] ?? []).length > 0 ? `not accessible: ${(keys['not-accessible'] ?? []).join(', ')}` : '',
    ];
    return {
      name: nameOf(file, id),
      passage: passage(`${facts.filter(Boolean).join('; ')}.`, [id, ...(keys.report ? [keys.report] : [])]),
    };
  });
  return section('Examinations', terms.length === 0 ? [] : [{ kind: 'terms', terms }], 'No examination is recorded.');
}
