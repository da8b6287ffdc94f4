import type { ReadHolding, ReadLine, YearRange } from './line-types.ts';

/** A draft entry made from a line: its id, its keys as YAML lines, and its text. */
export interface DraftEntry {
  readonly id: string;
  readonly type: 'holding' | 'party';
  readonly keys: readonly string[];
  readonly body: string;
}

/** What the drafts are about, chosen by the person who imports. */
export interface DraftSettings {
  readonly object: string;
  readonly source: string | null;
  readonly grade: string;
  /** Gives an id that is not taken yet, made from words. */
  idFor(type: 'holding' | 'party', words: string): string;
}

const CAPACITIES: Readonly<Record<NonNullable<ReadHolding['capacity']>, string>> = {
  dealer: 'agent or dealer',
  auction: 'consignee',
  estate: 'trustee or executor',
  fund: 'unknown',
};

/**
 * Draft entries for the holdings and parties of a line. Each holding carries the very words it was read from; agents and sharers become
 * parties too. Places stay in the text, since a place is an entry of its own that nobody has written yet.
 */
export function draftEntries(text: string, read: ReadLine, settings: DraftSettings): readonly DraftEntry[] {
  const parties = new Map<string, string>();
  const drafts: DraftEntry[] = [];
  const partyOf = (name: string): string => {
    const known = parties.get(name);
    if (known !== undefined) return known;
    const id = settings.idFor('party', name);
    parties.set(name, id);
    drafts.push({
      id,
      type: 'party',
      keys: [`title: ${quoted(name)}`, `is: ${kindOf(name)}   # check`],
      body: 'As a provenance line names it. Not yet checked.',
    });
    return id;
  };
  let before: { readonly id: string; readonly passage: ReadHolding['passage-to-next'] } | null = null;
  for (const holding of read.holdings) {
    const name = holding.holder === '' ? null : holding.holder;
    const party = name === null ? null : partyOf(name);
    const id = settings.idFor('holding', name ?? 'not named');
    const shared = holding['shared-with'].map((one) => partyOf(one.holder));
    const keys = [
      `title: ${quoted(name ?? 'Holder not named in the line')}`,
      ...(party === null ? [] : [`holder: ${party}`]),
      `capacity: ${holding.capacity === null ? 'possessor' : CAPACITIES[holding.capacity]}`,
      `objects: [${settings.object}]`,
      ...(holding['acquired-by'] === null ? [] : [`acquired-by: ${holding['acquired-by']}`]),
      ...(shared.length === 0 ? [] : [`shared-with: [${shared.join(', ')}]`]),
      ...(before === null
        ? []
        : [
            `from: ${before.id}`,
            `passage: { is: ${before.passage ?? 'unknown'}, grade: ${settings.grade}, why: "by the mark in the line" }`,
          ]),
      ...dated('begins', holding, settings),
      ...dated('ends', holding, settings),
      ...dated('held', holding, settings),
    ];
    drafts.push({ id, type: 'holding', keys, body: bodyOf(text, holding, read) });
    before = { id, passage: holding['passage-to-next'] };
  }
  return drafts;
}

function dated(
  key: 'begins' | 'ends' | 'held',
  holding: ReadHolding,
  { source, grade }: DraftSettings,
): readonly string[] {
  const found = datesOf(key, holding);
  if (!found) return [];
  const parts = [
    `date: "${found.date}"`,
    ...(found.sense ? [`sense: ${found.sense}`] : []),
    ...(source === null ? [] : [`source: ${source}`]),
    `grade: ${grade}`,
  ];
  return [`${key}: [{ ${parts.join(', ')} }]`];
}

/** Held in year Y = begun by then and not ended before: the line's "by Y" and its bare years. */
function datesOf(
  key: 'begins' | 'ends' | 'held',
  holding: ReadHolding,
): { readonly date: string; readonly sense: string | null } | null {
  const { begins, ends } = holding;
  const circa = holding['begins-circa'] || holding['ends-circa'] ? '~' : '';
  if (key === 'held') {
    const year =
      ends.earliest !== null && ends.latest === null
        ? ends.earliest
        : begins.earliest === null && begins.latest !== null && ends.latest !== null
          ? begins.latest
          : null;
    return year === null ? null : { date: `${year}${circa}`, sense: null };
  }
  const range = key === 'begins' ? begins : ends;
  if (key === 'begins' && begins.earliest === null && (ends.earliest === begins.latest || ends.latest !== null))
    return null;
  if (key === 'ends' && ends.latest === null) return null;
  return edtf(range, circa);
}

function edtf(
  { earliest, latest }: YearRange,
  circa: string,
): { readonly date: string; readonly sense: string | null } | null {
  if (earliest !== null && latest !== null)
    return { date: earliest === latest ? `${earliest}${circa}` : `[${earliest}..${latest}]`, sense: null };
  if (latest !== null) return { date: `${latest}${circa}`, sense: 'by' };
  return earliest === null ? null : { date: `${earliest}${circa}`, sense: 'not-before' };
}

function bodyOf(text: string, holding: ReadHolding, read: ReadLine): string {
  const notes = read['note-texts'].filter((one) => holding.notes.includes(one.n));
  const facts = [
    holding.place === null ? null : `Place as written: ${holding.place}.`,
    holding['life-dates'] === null ? null : `Life dates as written: ${holding['life-dates']}.`,
    holding.lot === null ? null : `Lot ${holding.lot}.`,
    holding['consigned-by'] === null ? null : `Consigned by: ${holding['consigned-by']}.`,
    holding.through.length === 0
      ? null
      : `Through: ${holding.through.map((one) => [one.holder, one.place].filter(Boolean).join(', ')).join('; ')}.`,
    holding.hedge === null ? null : `The line says “${holding.hedge}”.`,
  ].filter((one) => one !== null);
  const [from, to] = holding.span;
  return [
    'Read from a provenance line; not yet checked. The words of the line:',
    `> ${text.slice(from, to).replace(/\s+/g, ' ')}`,
    ...(facts.length === 0 ? [] : [facts.join(' ')]),
    ...notes.map((one) => `Note ${one.n} of the line: ${one.text.replace(/\s+/g, ' ')}`),
    `Characters ${from} to ${to} of the line.`,
  ].join('\n\n');
}

/** A first guess from the words of a name; the entry says that it has to be checked. */
function kindOf(name: string): string {
  if (
    /\b(?:museum|institute|library|university|academy|association|foundation|trust|society|kupferstichkabinett)\b/i.test(
      name,
    )
  )
    return 'institution';
  if (/\b(?:galler|& co|and co|inc\b|ltd\b|sons|cie|auction|kunsthandel)|\s&\s/i.test(name)) return 'firm';
  return 'person';
}

function quoted(text: string): string {
  return `"${text.replaceAll('\\', '\\\\').replaceAll('"', '\\"').replace(/\s+/g, ' ')}"`;
}
