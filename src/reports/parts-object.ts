import { type Entry, isOfType } from '../model/entry.ts';
import { sayWeight } from '../physical/panel-weight.ts';
import { type Block, list, type Passage, passage, section, type Term } from './document.ts';
import type { Matter } from './matter.ts';
import { finenessOf, nameOf, sayDate } from './say-entry.ts';

/** Numbers that dealers, carriers, houses and museums gave, for the concordance. */
export function concordance({ objects, file }: Matter): readonly Block[] {
  const { words, term } = file.sayer;
  const rows = objects.flatMap((object) => [
    ...(object.keys['accession-numbers'] ?? []).map((number) => [
      passage(number, [object.id]),
      passage(words('accession')),
      passage(object.keys.holder && file.catalogue.get(object.keys.holder) ? nameOf(file, object.keys.holder) : ''),
      passage(''),
    ]),
    ...(object.keys.numbers ?? []).map((one) => [
      passage(one.number, [object.id, ...(one.source ? [one.source] : []), ...(one.on ? [one.on] : [])]),
      passage(term(one.kind)),
      passage(one['given-by'] ? nameOf(file, one['given-by']) : ''),
      passage(one.given ? sayDate(file, one.given) : ''),
    ]),
  ]);
  const table: Block = {
    kind: 'table',
    caption: words('Concordance of numbers'),
    head: [words('Number'), words('Kind'), words('Given by'), words('When')],
    widths: [3, 2, 3, 2],
    rows,
  };
  return section(words('Numbers'), rows.length === 0 ? [] : [table]);
}

/** Sections in which the pieces travelled, with what is stated and what is calculated of each. */
export function sections({ objects, file }: Matter): readonly Block[] {
  const { say, words } = file.sayer;
  const rows = objects.flatMap((object) =>
    (object.keys.panels ?? []).flatMap((panel) =>
      (panel.sections ?? []).map((one) => [
        passage(`${panel.id}.${one.id}`, [object.id]),
        passage([one.label, one.at].filter(Boolean).join(', ')),
        passage(
          [one['key-number'], one.crate ? words('crate {0}', one.crate) : '']
            .filter(Boolean)
            .join(file.sayer.semicolon),
        ),
        passage([one['stated-size'], one['stated-weight'], one.weighed].filter(Boolean).join(file.sayer.semicolon)),
      ]),
    ),
  );
  if (rows.length === 0) return [];
  const measured = file.physical.panels.filter(({ geometry }) => objects.some((one) => one.id === geometry.object.id));
  const weights = measured.flatMap(({ geometry, weight, isCut }): readonly Passage[] =>
    isCut || (weight.kg === null && weight.weighed === null)
      ? []
      : [passage(words('Panel {0}: {1}.', geometry.panel, say(sayWeight(weight))), [geometry.object.id])],
  );
  return section(
    words('Sections'),
    [
      {
        kind: 'table',
        caption: words('Sections as recorded; sizes and weights as stated'),
        head: [words('Section'), words('Where'), words('Marks'), words('Stated')],
        widths: [1, 3, 2, 3],
        rows,
      },
      ...list(weights),
    ],
    '',
  );
}

/** Names of pieces, parties and places, by who uses them, with transliteration. */
export function names({ file, objects, dossier }: Matter): readonly Block[] {
  const { term, words } = file.sayer;
  const named = dossier.filter(
    (entry): entry is Entry<'object' | 'party' | 'place'> =>
      isOfType(entry, 'party') || isOfType(entry, 'place') || objects.some((one) => one.id === entry.id),
  );
  const rows = named.flatMap((entry) =>
    (entry.keys.names ?? []).map((one) => [
      passage(nameOf(file, entry.id), [entry.id]),
      passage(one.text),
      passage(one.romanised ?? ''),
      passage(
        [
          one.language,
          one['used-by'],
          one.from || one.to
            ? [one.from, one.to].map((date) => (date === undefined ? '' : sayDate(file, date))).join('–')
            : '',
          term(one.standing ?? ''),
        ]
          .filter(Boolean)
          .join(', '),
      ),
    ]),
  );
  const table: Block = {
    kind: 'table',
    caption: words('Names, their writing, and who uses them'),
    head: [words('Entry'), words('Name'), words('Romanised'), words('Language, users, years')],
    widths: [3, 3, 3, 3],
    rows,
  };
  const known = named.flatMap((entry) =>
    !isOfType(entry, 'party') && !isOfType(entry, 'place')
      ? []
      : (entry.keys['authority-ids'] ?? []).map(({ scheme, id }) =>
          passage(words('{0}: {1} {2}', nameOf(file, entry.id), scheme, id), [entry.id]),
        ),
  );
  return section(words('Names and transliteration'), [...(rows.length === 0 ? [] : [table]), ...list(known)]);
}

/** Photographs and drawings, with credit and rights. */
export function figuresList({ file, objects }: Matter): readonly Block[] {
  const { term, words } = file.sayer;
  const figures = file.catalogue
    .ofType('figure')
    .filter((one) => one.keys.object === undefined || objects.some((object) => object.id === one.keys.object));
  const said = figures.map(({ id, keys }) =>
    passage(
      [
        nameOf(file, id),
        term(keys.technique ?? ''),
        keys.taken ? words('taken {0}', sayDate(file, keys.taken)) : '',
        keys.capture,
        keys.credit,
        keys.rights,
        keys['rights-end']
          ? words('until {0}', sayDate(file, keys['rights-end']), finenessOf(file, keys['rights-end']))
          : '',
        (keys.shows ?? []).length > 0
          ? words('shows: {0}', (keys.shows ?? []).map((one) => nameOf(file, one)).join(', '))
          : '',
        keys['agreed-with'] ? words('use agreed with {0}', keys['agreed-with']) : '',
      ]
        .filter(Boolean)
        .join(file.sayer.semicolon)
        .concat('.'),
      [id],
    ),
  );
  return section(words('Figures, credits and rights'), list(said));
}

/** Examinations: when, by what means, by whom; what was looked for and not seen, what could not be reached. */
export function examinations({ file, objects }: Matter): readonly Block[] {
  const { term, words } = file.sayer;
  const looks = file.catalogue
    .ofType('examination')
    .filter((one) => one.keys.objects.some((id) => objects.some((object) => id.split('/')[0] === object.id)));
  const terms = looks.map(({ id, keys }): Term => {
    const who = (keys.examiner ?? []).map((one) => nameOf(file, one)).join(', ');
    const facts = [
      keys.technique.map(term).join(', '),
      keys.when ? sayDate(file, keys.when) : '',
      who,
      [keys.lamp, keys.filter, keys.camera, keys.conditions].filter(Boolean).join(', '),
      (keys.saw ?? []).length > 0
        ? words('seen: {0}', (keys.saw ?? []).map((one) => nameOf(file, one)).join(', '))
        : '',
      (keys['looked-for-not-seen'] ?? []).length > 0
        ? words('looked for and not seen: {0}', (keys['looked-for-not-seen'] ?? []).join(', '))
        : '',
      (keys['not-accessible'] ?? []).length > 0
        ? words('not accessible: {0}', (keys['not-accessible'] ?? []).join(', '))
        : '',
    ];
    return {
      name: nameOf(file, id),
      passage: passage(`${facts.filter(Boolean).join(file.sayer.semicolon)}.`, [
        id,
        ...(keys.report ? [keys.report] : []),
        ...(keys.saw ?? []),
      ]),
    };
  });
  return section(words('Examinations'), terms.length === 0 ? [] : [{ kind: 'terms', terms }]);
}
