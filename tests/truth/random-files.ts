import { seededRandom } from '../../src/geometry/seeded-random.ts';
import { entries } from '../workspace.ts';

/** Lands with the name that the table of reference dates has for them. */
export const LANDS: Readonly<Record<string, string>> = {
  Greece: 'greece',
  Italy: 'italy',
  France: 'france',
  'United States': 'united-states',
};

const LAWS = [
  'greece-1932-export',
  'greece-2002-export',
  'italy-1939-state-ownership',
  'france-1941-export',
  'united-states-1983-import',
  'period-1933-1945',
  'unesco-1970',
];

/** The laws of the list that a table holds. */
export function lawsIn(known: readonly string[]): readonly string[] {
  return LAWS.filter((one) => known.includes(one));
}

const ACTS = [
  'sale',
  'gift',
  'exchange',
  'confiscation',
  'return',
  'loan',
  'deposit',
  'consignment',
  'bequest',
] as const;
const GRADES = ['established', 'probable', 'possible', 'conjectural'] as const;
const ACCESS = ['public', 'public', 'internal', 'restricted'] as const;
const CAPACITIES = [
  'possessor',
  'possessor',
  'agent or dealer',
  'borrower',
  'depositary',
  'custodian',
  'unknown',
] as const;

/**
 * A small file made at random: a wall, panels, parties with lives, acts and holdings, places under one rule or two, traces and
 * layers, searches; any entry may be kept from some readers. The same number gives the same file. Every word in it is positive.
 */
export function randomFile(seed: number, laws: readonly string[]): Record<string, string> {
  const random = seededRandom(seed * 7919 + 1);
  const below = (count: number): number => Math.floor(random() * count);
  const one = <Item>(list: readonly Item[]): Item => list[below(list.length)] as Item;
  const year = (): number => 1880 + below(100);
  const date = (): string =>
    one([
      () => String(year()),
      () => `${year()}-0${1 + below(9)}`,
      () => `${year()}-0${1 + below(9)}-1${below(9)}`,
      () => {
        const from = year();
        return `[${from}..${from + 1 + below(12)}]`;
      },
    ])();
  const dated = (): string =>
    `{ date: "${date()}"${random() < 0.3 ? `, sense: ${one(['by', 'not-before'])}` : ''}, grade: ${one(GRADES)}${random() < 0.5 ? ', source: SO-1' : ''} }`;
  const access = (): string => `\naccess: ${one(ACCESS)}`;
  const list: Record<string, string> = {};
  const panels = ['A', 'B', 'C'].slice(0, 1 + below(3));
  list['OB-a'] = `type: object\ntitle: The panels\nof: PL-1\npanels: [${panels
    .map(
      (id) =>
        `{ id: ${id}, width: ${300 + below(900)}, height: ${300 + below(900)}${random() < 0.5 ? `, sections: [{ id: "1" }, { id: "2", weighed: ${20 + below(90)} kg }]` : ''} }`,
    )
    .join(', ')}]`;
  const piece = (): string => (random() < 0.5 ? 'OB-a' : `OB-a/${one(panels)}`);
  const powers = Object.keys(LANDS);
  for (let i = 1; i <= 3; i += 1) {
    const power = one(powers);
    const change = 1900 + below(40);
    const rule =
      random() < 0.7
        ? `{ power: ${power}, kind: sovereign, jurisdiction: ${LANDS[power]} }`
        : `{ power: Ottoman Empire, to: "${change}", kind: sovereign, jurisdiction: ottoman-empire }, { power: ${power}, from: "${change + 1}", kind: ${one(['sovereign', 'occupation'])}, jurisdiction: ${LANDS[power]} }`;
    list[`PL-${i}`] = `type: place\ntitle: Town ${i}\nkind: town\nrule: [${rule}]`;
  }
  list['SO-1'] = 'type: source\nkind: ledger\ntitle: A ledger\nrepository: An archive';
  for (let i = 1; i <= 4; i += 1) {
    const life = random() < 0.5 ? `\nfounded: "${1860 + below(60)}"` : '';
    list[`PA-${i}`] = `type: party\ntitle: Party ${i}\nis: firm${life}${i > 1 ? access() : ''}`;
  }
  const party = (): string => `PA-${1 + below(4)}`;
  const place = (): string => (random() < 0.8 ? `\nplace: PL-${1 + below(3)}` : '');
  list['EV-removal'] = `type: event\nkind: removal\ntitle: The removal\nobjects: [OB-a]\nstated: [${dated()}]`;
  for (let i = 1; i <= 2 + below(4); i += 1) {
    const kind = one(ACTS);
    const objects = piece();
    const own = kind === 'exchange' ? `, objects: [${objects}]` : '';
    const [giver, getter] = [party(), party()];
    const lines = [
      ...(random() < 0.9 ? [`{ party: ${giver}, role: gives${own} }`] : []),
      ...(giver === getter ? [] : [`{ party: ${getter}, role: gets${own} }`]),
      ...(random() < 0.2 ? [`{ party: ${party()}, role: through }`] : []),
    ];
    list[`EV-act-${i}`] =
      `type: event\nkind: ${kind}\ntitle: Act ${i}\nobjects: [${objects}]\nparties: [${lines.join(', ')}]${place()}\nstated: [${dated()}]${access()}`;
  }
  for (let i = 1; i <= below(3); i += 1)
    list[`EV-way-${i}`] =
      `type: event\nkind: ${one(['export', 'import'])}\ntitle: Way ${i}\nobjects: [${piece()}]${place()}\nto: PL-${1 + below(3)}\nstated: [${dated()}]${access()}`;
  for (let i = 1; i <= below(4); i += 1) {
    const begins = random() < 0.6 ? `\nbegins: [${dated()}]` : '';
    const ends = random() < 0.5 ? `\nends: [${dated()}]` : '';
    list[`HO-${i}`] =
      `type: holding\ntitle: Holding ${i}\nholder: ${party()}\ncapacity: ${one(CAPACITIES)}\nobjects: [${piece()}]${place()}${begins}${ends}${access()}`;
  }
  if (random() < 0.5)
    list['SE-1'] =
      `type: search\ntitle: A search\nrepository: An archive\nfor: the panels\noutcome: partly\nabout: [OB-a]${access()}`;
  if (random() < 0.5)
    list['PE-1'] =
      `type: evidence\nkind: plaster-layer\ntitle: The plaster\nobject: OB-a\npanel: A\nthickness: ${5 + below(40)} mm\ndensity: 1200-1800 kg/m3\nobserved: { text: plaster, grade: established }${access()}`;
  return {
    ...entries(list),
    'entries/workspace.md': `---\nid: workspace\ntype: workspace\ntitle: A file\ninstitution: A museum\naccess-default: public\ncirca: { year: 10 }\nreference-dates: [${laws.join(', ')}]\n---\n`,
  };
}
