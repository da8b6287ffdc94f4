import type { z } from 'zod';
import { ACCESS, type Access, maySee } from '../../src/base/access.ts';
import { ENTRY_SCHEMAS } from '../../src/model/entry.ts';
import { ENTRY_TYPES, type EntryType } from '../../src/model/entry-type-names.ts';
import { fieldNotes } from '../../src/model/fields.ts';

/** A value that is written only into workspaces for readers who may see it. */
class Kept {
  readonly access: Access;
  readonly value: unknown;
  constructor(access: Access, value: unknown) {
    this.access = access;
    this.value = value;
  }
}

type Keys = Record<string, unknown>;

/** Canary word of an access level: it stands in every text of every entry of that level. */
export const canary = (access: Access): string => `zq${access}`;

/** The year in every date of an access level. */
const YEARS: Readonly<Record<Access, string>> = { public: '1926', internal: '1927', restricted: '1925' };

interface Filling {
  readonly access: Access;
  word(path: string): string;
  ref(types: readonly EntryType[] | 'any'): string;
  /** Only what must be there. */
  readonly least: boolean;
}

const PREFIX: Readonly<Record<EntryType, string>> = {
  workspace: 'workspace',
  object: 'OB',
  evidence: 'PE',
  examination: 'EX',
  survey: 'SV',
  event: 'EV',
  claim: 'CL',
  holding: 'HO',
  title: 'TI',
  source: 'SO',
  party: 'PA',
  place: 'PL',
  figure: 'FI',
  search: 'SE',
  question: 'QU',
  reading: 'RD',
  inquiry: 'IN',
  'request-for-return': 'RQ',
  response: 'RE',
  'reference-date': 'RF',
};

/** Id of the filled entry of a type and level; of the short one with `least`. */
export const idOf = (type: EntryType, access: Access, least = false): string =>
  `${PREFIX[type]}-${access === 'public' ? 'open' : canary(access)}${least ? '-short' : ''}`;

type Inner = z.ZodType & {
  readonly def: {
    readonly type: string;
    readonly shape?: Readonly<Record<string, Inner>>;
    readonly element?: Inner;
    readonly innerType?: Inner;
    readonly options?: readonly Inner[];
    readonly out?: Inner;
    readonly valueType?: Inner;
    readonly entries?: Readonly<Record<string, string>>;
    readonly values?: readonly unknown[];
    readonly checks?: readonly { readonly _zod: { readonly def: object } }[];
  };
  readonly minValue?: number;
  readonly maxValue?: number;
};

/** A value for every key of a schema, however deep: canaries as text, real dates, ids of entries that are there. */
function fill(schema: Inner, path: string, filling: Filling): unknown {
  const note = fieldNotes.get(schema);
  if (note?.holds === 'date') return YEARS[filling.access];
  if (note?.holds === 'duration') return 'P6M';
  // Free words may stand here too: the public entries use them, the hidden ones name an entry.
  if (note?.refersTo && !(note.orWords && filling.access === 'public')) return filling.ref(note.refersTo);
  const { def } = schema;
  switch (def.type) {
    case 'string':
      return textFor(schema, path, filling);
    case 'number':
      return Math.min(Math.max(12, schema.minValue ?? 12), schema.maxValue ?? 12);
    case 'boolean':
      return false;
    case 'enum':
      return Object.values(def.entries ?? {})[0];
    case 'literal':
      return def.values?.[0];
    case 'optional':
      return filling.least ? undefined : fill(def.innerType as Inner, path, filling);
    case 'pipe':
      return fill(def.out as Inner, path, filling);
    case 'union':
      return fill(richest(def.options ?? []), path, filling);
    case 'record':
      return { en: fill(def.valueType as Inner, path, filling) };
    case 'array': {
      const length =
        (def.checks ?? [])
          .map((one) => (one._zod.def as { length?: number }).length)
          .find((one) => one !== undefined) ?? 1;
      return Array.from({ length }, () => fill(def.element as Inner, path, filling));
    }
    case 'object':
      return fillKeys(schema, path, filling);
    default:
      throw new Error(`${path}: nothing is known of ${def.type}`);
  }
}

function fillKeys(schema: Inner, path: string, filling: Filling): Keys {
  const keys: Keys = {};
  for (const [key, inner] of Object.entries(schema.def.shape ?? {})) {
    const value = fill(inner, `${path}.${key}`, filling);
    if (value !== undefined) keys[key] = value;
  }
  return keys;
}

function richest(options: readonly Inner[]): Inner {
  return options.find((one) => one.def.type === 'object') ?? (options.at(-1) as Inner);
}

function textFor(schema: Inner, path: string, filling: Filling): string {
  const word = filling.word(path);
  const tries = [
    word,
    '12 mm',
    `https://example.org/${word}`,
    `${word}.csv`,
    word.replaceAll(' ', '-'),
    path.replace(/\W+/g, '-'),
    'en',
  ];
  const fitting = tries.find((one) => schema.safeParse(one).success);
  if (fitting === undefined) throw new Error(`${path}: no text fits`);
  return fitting;
}

/**
 * A workspace in which every key of every type holds something at each access level, written as one audience would
 * have it if the entries above it had never existed. For `restricted` it is the whole file.
 */
export function filledWorkspace(seenBy: Access): Record<string, string> {
  const files: Record<string, string> = {};
  for (const type of ENTRY_TYPES) {
    if (type === 'workspace') continue;
    for (const access of ACCESS) {
      for (const least of [false, true]) {
        if (!maySee(seenBy, access)) continue;
        const keys = withHidden(type, access, least, settled(type, access, least));
        const id = idOf(type, access, least);
        files[`entries/${type}/${id}.md`] = entryText(keys, seenBy, access);
      }
    }
  }
  for (const access of ACCESS) {
    for (const least of [false, true]) {
      if (!maySee(seenBy, access)) continue;
      const [id, words] = [idOf('survey', access, least), canary(access)];
      files[`entries/survey/${id}.csv`] =
        `id,title,kind,where,colour\nPE-row-${id},${words} row,crack,${words} in a row,${words} colour\n`;
    }
  }
  files['entries/workspace.md'] = entryText(
    {
      id: 'workspace',
      type: 'workspace',
      title: 'A filled file',
      institution: 'Wexcombe Museum of Art',
      access: 'public',
      'access-default': 'public',
      'base-url': 'https://files.example.org/filled/',
      circa: { year: 10, decade: 10, century: 25, month: 3, day: 30 },
      'unshown-note': { off: true, ground: 'the two files that are compared must say the same' },
    },
    seenBy,
    'public',
  );
  return files;
}

function entryText(keys: Keys, seenBy: Access, access: Access): string {
  const head = Object.entries(keys)
    .filter(([, value]) => !(value instanceof Kept) || maySee(seenBy, value.access))
    .map(([key, value]) => `${key}: ${JSON.stringify(written(value, seenBy))}`);
  const hidden = (['internal', 'restricted'] as const).map((one) => {
    const [shown, target] = ['a word that stays', idOf('event', one)];
    return maySee(seenBy, one)
      ? `[${shown}](${target} "${canary(one)}") and [${shown}][${one}]\n\n[${one}]: ${target} "${canary(one)}"\n`
      : `${shown} and ${shown}\n`;
  });
  const own = access === 'public' ? 'open words' : `${canary(access)} argument`;
  return `---\n${head.join('\n')}\n---\n\nArgument with ${own}.\n\n${access === 'public' ? hidden.join('\n') : ''}`;
}

function written(value: unknown, seenBy: Access): unknown {
  if (Array.isArray(value))
    return value
      .filter((one) => !(one instanceof Kept) || maySee(seenBy, one.access))
      .map((one) => written(one instanceof Kept ? one.value : one, seenBy));
  if (value instanceof Kept) return written(value.value, seenBy);
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([, one]) => !(one instanceof Kept) || maySee(seenBy, one.access))
      .map(([key, one]) => [key, written(one, seenBy)]),
  );
}

/** Items of lists that name hidden entries, added at the end of every list of a public entry that may hold them. */
function withHidden(type: EntryType, access: Access, least: boolean, keys: Keys): Keys {
  if (access !== 'public') return keys;
  const schema = ENTRY_SCHEMAS[type] as unknown as Inner;
  for (const hidden of ['internal', 'restricted'] as const) {
    const whole = settled(type, hidden, false);
    for (const [key, inner] of Object.entries(schema.def.shape ?? {})) {
      if (NEVER_HIDDEN.includes(key) || !namesEntries(inner) || (type === 'inquiry' && key === 'from')) continue;
      const [own, other] = [keys[key], whole[key]];
      if (Array.isArray(own) && Array.isArray(other))
        keys[key] = [...own, ...other.map((one) => new Kept(hidden, one))];
      else if (least && own === undefined && hidden === 'restricted' && other !== undefined && !Array.isArray(other))
        keys[key] = new Kept(hidden, other);
    }
  }
  return keys;
}

/** Keys that are looked at in tests of their own: they say on the page that something is kept back. */
const NEVER_HIDDEN = ['panels', 'derives-from', 'questions', 'shape', 'objects'];

function namesEntries(schema: Inner): boolean {
  const note = fieldNotes.get(schema);
  if (note?.refersTo) return true;
  const { def } = schema;
  const parts = [
    def.element,
    def.innerType,
    def.out,
    def.valueType,
    ...(def.options ?? []),
    ...Object.values(def.shape ?? {}),
  ];
  return parts.some((one) => one !== undefined && namesEntries(one));
}

/** The keys of an entry, filled, with what only sense can choose put right. */
function settled(
  type: EntryType,
  access: Access,
  least: boolean,
  mark = access === 'public' ? 'open' : canary(access),
): Keys {
  let count = 0;
  const filling: Filling = {
    access,
    least,
    word: (path) => {
      count += 1;
      const name = path.split('.').at(-1);
      return `${mark} ${name} ${count}`;
    },
    ref: (types) => idOf(types === 'any' ? 'object' : (types[0] as EntryType), access, !least),
  };
  const schema = ENTRY_SCHEMAS[type] as unknown as Inner;
  const keys = fillKeys(schema, type, filling);
  const own = { ...keys, id: idOf(type, access, least), access };
  for (const key of UNUSED) delete (own as Keys)[key];
  return { ...own, ...SENSE[type]?.(access, least) };
}

/** Keys that have tests of their own: they change what is said about others, or want a file beside the entry. */
const UNUSED = [
  'withhold',
  'may-be-named',
  'public-name',
  'not-disclosed',
  'public-text',
  'present-store',
  'shapes',
  'control-points',
  'sent-file',
  'cites',
];

/** The corners of the panel in the pictures. */
const CORNERS = [
  { pixel: [50, 440], mm: [0, 0] },
  { pixel: [550, 440], mm: [500, 0] },
  { pixel: [550, 40], mm: [500, 400] },
  { pixel: [50, 40], mm: [0, 400] },
];

/** What stands in place of a filled value, by type. */
const SENSE: Partial<Record<EntryType, (access: Access, least: boolean) => Keys>> = {
  object: (access, least) =>
    least
      ? { panels: [{ id: 'A', width: 500, height: 400 }] }
      : {
          panels: [
            { id: 'A', width: 500, height: 400, thickness: 30, sections: [{ id: '1', at: word(access, 'section') }] },
          ],
          'made-into': [],
          jurisdictions: ['Greece'],
        },
  evidence: (access, least) => ({
    object: idOf('object', access, false),
    panel: 'A',
    ...(least
      ? {}
      : {
          shape: [
            {
              line: [
                [10, 10],
                [200, 300],
              ],
            },
          ],
          density: '1200-1800 kg/m3',
          cuts: [],
          fills: [],
          'same-as': [],
          'bonded-with': [],
        }),
  }),
  event: (access, least) =>
    least
      ? {}
      : {
          relations: [
            {
              ref: `${word(access, 'relation')}`.replace(' ', '-'),
              after: idOf('event', access, true),
              grade: 'probable',
              why: word(access, 'relation'),
            },
          ],
          'under-law': [],
          applies: [{ law: 'unesco-1970', why: word(access, 'applies'), by: idOf('party', access, true) }],
        },
  source: (access, least) =>
    least
      ? {}
      : { url: `https://example.org/${canary(access)}`, 'under-law': [], authenticity: authenticityOf(access) },
  title: () => ({ 'under-law': [] }),
  party: (access, least) => {
    const dated = (date: string): Keys => ({ date, grade: 'probable', source: idOf('source', access, true) });
    const [first, last] = [dated('1871'), dated('1938')];
    return least ? {} : { living: 'no', born: first, died: last, founded: first, closed: last };
  },
  holding: (access, least) =>
    least
      ? {}
      : {
          held: [
            {
              ref: word(access, 'held').replace(' ', '-'),
              date: YEARS[access],
              source: idOf('source', access, true),
              'as-written': word(access, 'held'),
              grade: 'probable',
            },
          ],
        },
  'reference-date': (access) => ({ made: YEARS[access], 'in-force-from': YEARS[access], tests: 'export' }),
  place: (_, least) => (least ? {} : { coordinates: { latitude: 36.5, longitude: 27.5 }, show: 'exact' }),
  figure: (access, least) => ({
    file: pictureOf(access),
    ...(least ? {} : { object: idOf('object', access), panel: 'A', face: 'front', 'control-points': CORNERS }),
  }),
  survey: (access, least) => ({
    table: `${idOf('survey', access, least)}.csv`,
    object: idOf('object', access),
    panel: 'A',
  }),
  examination: (access, least) => ({
    objects: [idOf('object', access)],
    ...(least
      ? {}
      : {
          covered: [{ object: idOf('object', access), panel: 'A', faces: ['front'], where: word(access, 'covered') }],
        }),
  }),
  inquiry: (access, least) => (least ? {} : { objects: [idOf('object', access)], state: 'in research' }),
  'request-for-return': () => ({}),
};

function authenticityOf(access: Access): unknown {
  return access === 'public'
    ? 'accepted'
    : { is: 'accepted', by: idOf('party', access, true), why: word(access, 'reason') };
}

/** File name of the picture of the figures of a level. */
export const pictureOf = (access: Access): string => `${access === 'public' ? 'open' : canary(access)}-picture.jpg`;

function word(access: Access, what: string): string {
  return `${access === 'public' ? 'open' : canary(access)} ${what}`;
}

/** What stands in a key that is withheld, and in the names of those who may not be named. */
export const WITHHELD = 'zqwithheld';

/**
 * A workspace of public entries in which every key that may be missing is withheld, with persons who may be living,
 * figures that may not be shown, a present store, a public name, a holding that is known and not disclosed.
 */
export function withheldWorkspace(): Record<string, string> {
  const files = filledWorkspace('public');
  for (const type of ENTRY_TYPES) {
    if (type === 'workspace') continue;
    const filled = settled(type, 'public', false, WITHHELD);
    const least = Object.keys(settled(type, 'public', true));
    const [kept, away]: [Keys, Keys] = [{}, {}];
    for (const [key, value] of Object.entries(filled)) (least.includes(key) ? kept : away)[key] = value;
    const openly = settled(type, 'public', false);
    for (const key of Object.keys(kept)) kept[key] = openly[key];
    const id = `${PREFIX[type]}-partly`;
    const keys = { ...kept, ...away, id, withhold: Object.keys(away) };
    files[`entries/${type}/${id}.md`] = entryText(keys, 'public', 'public');
  }
  files['entries/survey/SV-partly.csv'] = `id,title,kind\nPE-row-partly,a row,crack\n`;
  files['entries/survey/SV-partly.md'] = (files['entries/survey/SV-partly.md'] as string).replace(
    'SV-open.csv',
    'SV-partly.csv',
  );
  const kept: Readonly<Record<string, Keys>> = {
    'PA-living': { type: 'party', is: 'person', living: 'not known', title: `${WITHHELD} living` },
    'PA-veiled': { type: 'party', is: 'person', 'public-name': 'A private collector', title: `${WITHHELD} veiled` },
    'PL-store': {
      type: 'place',
      'present-store': true,
      title: `${WITHHELD} store`,
      coordinates: { latitude: 36.5, longitude: 27.5 },
    },
    'FI-unshown': {
      type: 'figure',
      'may-be-shown': 'no',
      title: `${WITHHELD} figure`,
      file: 'open-picture.jpg',
      alternative: WITHHELD,
    },
    'HO-undisclosed': {
      type: 'holding',
      access: 'restricted',
      'not-disclosed': { ground: 'asked for it' },
      capacity: 'possessor',
      objects: ['OB-open'],
      holder: 'PA-open',
      title: `${WITHHELD} holding`,
      begins: [{ date: '1930', grade: 'probable', 'as-written': WITHHELD, why: WITHHELD }],
    },
    'HO-veiled': {
      type: 'holding',
      capacity: 'possessor',
      objects: ['OB-open'],
      holder: 'PA-veiled',
      title: 'Held by a collector',
      place: 'PL-store',
      begins: [{ date: '1940', by: 'PA-living', grade: 'probable' }],
    },
    'RQ-kept': {
      type: 'request-for-return',
      access: 'restricted',
      'public-text': 'A request was received.',
      from: `${WITHHELD} claimant`,
      received: '2020',
      objects: ['OB-open'],
      state: WITHHELD,
      title: `${WITHHELD} request`,
    },
  };
  for (const [id, keys] of Object.entries(kept))
    files[`entries/kept/${id}.md`] = entryText({ id, ...keys }, 'public', 'public');
  files['entries/kept/open-picture.jpg'] = '';
  return files;
}

/** A workspace of public entries in which every text of every type is one and the same text; links in Markdown are refused when they are read, so the arguments hold none. */
export function workspaceOf(text: string): Record<string, string> {
  const files: Record<string, string> = {
    'entries/workspace.md': entryText(
      {
        id: 'workspace',
        type: 'workspace',
        title: text,
        institution: text,
        contact: text,
        'how-to-respond': text,
        access: 'public',
        'access-default': 'public',
        circa: { year: 10, decade: 10, century: 25, month: 3, day: 30 },
      },
      'public',
      'public',
    ),
  };
  for (const type of ENTRY_TYPES) {
    if (type === 'workspace') continue;
    for (const least of [false, true]) {
      const keys = settled(type, 'public', least, text);
      files[`entries/${type}/${idOf(type, 'public', least)}.md`] =
        `${entryText({ ...keys, title: text }, 'public', 'public')}\n${text.replace(/\]\(/g, '] (')}\n`;
    }
  }
  for (const least of [false, true]) {
    const id = idOf('survey', 'public', least);
    const cell = `"${text.replaceAll('"', '""')}"`;
    files[`entries/survey/${id}.csv`] = `id,title,kind,where,colour\nPE-row-${id},${cell},crack,${cell},${cell}\n`;
  }
  return files;
}
