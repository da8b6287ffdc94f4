import { cautionsFor } from '../findings/cautions.ts';
import type { Entry } from '../model/entry.ts';
import { type Block, list, type Passage, passage, section } from './document.ts';
import type { Matter } from './matter.ts';
import { nameOf } from './say-entry.ts';

/** Traces of the pieces, by panel, in the order of their ids. */
export function tracesOf({ file, objects }: Matter): readonly Entry<'evidence'>[] {
  return objects
    .flatMap((object) => file.catalogue.onObject('evidence', object.id))
    .sort((a, b) => (a.keys.panel ?? '').localeCompare(b.keys.panel ?? '', 'en'));
}

/** Every trace with a number, what is seen and what it is taken for. */
export function numberedEvidence(matter: Matter): readonly Block[] {
  const { term, words, semicolon } = matter.file.sayer;
  const rows = tracesOf(matter).map((trace, i) => {
    const { keys } = trace;
    const taken = (keys.inferred ?? []).map((one) => `${term(one.as)} (${term(one.grade)})`).join(semicolon);
    const where = [keys.panel ? words('panel {0}', keys.panel) : '', term(keys.face ?? ''), keys.where]
      .filter(Boolean)
      .join(', ');
    const seen =
      keys.seen === undefined || keys.seen === 'seen'
        ? (keys.observed?.text ?? nameOf(matter.file, trace.id))
        : words('{0}: {1}', term(keys.seen), nameOf(matter.file, trace.id));
    return [
      passage(String(i + 1), [trace.id]),
      passage(term(keys.kind)),
      passage(where),
      passage(
        `${seen}${keys.reads ? words('; it reads “{0}”', keys.reads) : ''}${keys.observed ? ` (${term(keys.observed.grade)})` : ''}`,
      ),
      passage(taken),
    ];
  });
  const table: Block = {
    kind: 'table',
    caption: words('Evidence on the pieces; grades of what is seen and of what it is taken for'),
    head: [words('No.'), words('Kind'), words('Where'), words('What is seen'), words('Taken for')],
    widths: [1.6, 2, 2.4, 4, 3],
    rows,
  };
  return section(words('Evidence'), rows.length === 0 ? [] : [table], words('No trace is recorded.'));
}

/** Kinds of trace that consist of something, and so have a layer's place in the technical table. */
const LAYERS: readonly string[] = [
  'plaster-layer',
  'paint-layer',
  'coating-or-residue',
  'backing',
  'armature',
  'fill',
  'addition',
  'retouching',
];

/** The technical table with its fixed columns; what nobody recorded is left open. */
export function technicalTable(matter: Matter): readonly Block[] {
  const { term, words, semicolon } = matter.file.sayer;
  const layers = tracesOf(matter).filter((one) => LAYERS.includes(one.keys.kind));
  const rows = layers.map((trace) => {
    const { keys } = trace;
    const materials = keys.materials ?? [];
    const isBinder = (name: string): boolean =>
      /lime|gypsum|plaster|glue|oil|resin|cement|casein|egg|wax|binder/i.test(name);
    const named = (wanted: boolean): string =>
      materials
        .filter((one) => isBinder(one.name) === wanted)
        .map((one) => `${one.name} (${term(one['identified-as'])}, ${term(one.grade)})`)
        .join(semicolon);
    const methods = [...new Set(materials.flatMap((one) => (one.method ? term(one.method) : [])))].join(semicolon);
    const analysts = [...new Set(materials.flatMap((one) => one.analyst ?? []))].map((id) =>
      matter.file.catalogue.get(id) ? nameOf(matter.file, id) : id,
    );
    const samples = [...new Set(materials.flatMap((one) => one.sample ?? []))].join(semicolon);
    return [
      passage(nameOf(matter.file, trace.id), [trace.id, ...materials.flatMap((one) => one.report ?? [])]),
      passage(term(keys.kind).replaceAll('-', ' ')),
      passage(keys.colour ?? ''),
      passage(keys.thickness ?? ''),
      passage(named(true)),
      passage(named(false)),
      passage([methods, ...analysts].filter(Boolean).join(semicolon)),
      passage(samples),
    ];
  });
  const cautions = [...new Set(layers.flatMap((one) => cautionsFor(one).map(({ text }) => term(text))))];
  const table: Block = {
    kind: 'table',
    caption: words('Technical table: layers and what they consist of'),
    head: [
      words('Layer'),
      words('Function'),
      words('Colour'),
      words('Thickness'),
      words('Binder'),
      words('Pigments'),
      words('Method'),
      words('Sample'),
    ],
    widths: [2.6, 1.8, 1.4, 1.6, 2.2, 2.2, 1.8, 1.6],
    rows,
  };
  const said: readonly Passage[] = cautions.map((text) => passage(text));
  return section(words('Technique'), rows.length === 0 ? [] : [table, ...list(said)]);
}
