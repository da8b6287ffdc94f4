import { describe, expect, it } from 'vitest';
import { findChains } from '../../src/findings/custody-chains.ts';
import { datesReport } from '../../src/findings/dates-report.ts';
import { lineOfChain } from '../../src/findings/provenance-line.ts';
import { computeFiles, entries } from '../workspace.ts';

const OBJECT = { 'OB-a': 'type: object\ntitle: A panel' };
const PARTIES = Object.fromEntries(
  ['giver', 'taker', 'other', 'agent'].map((name) => [`PA-${name}`, `type: party\ntitle: The ${name}\nis: firm`]),
);
const act = (kind: string, date: string, parties: readonly string[], more = ''): string =>
  `type: event\nkind: ${kind}\ntitle: A ${kind}\nobjects: [OB-a]\nparties:\n${parties.map((one) => `  - { ${one} }`).join('\n')}\nstated: [{ date: "${date}", grade: established }]\n${more}`;
const holding = (holder: string, more: string, capacity = 'possessor'): string =>
  `type: holding\ntitle: With the ${holder}\nholder: PA-${holder}\ncapacity: ${capacity}\nobjects: [OB-a]\n${more}`;
const begins = (date: string): string => `begins: [{ date: "${date}", grade: established }]\n`;
const ends = (date: string): string => `ends: [{ date: "${date}", grade: established }]\n`;
const gives = (party: string, more = ''): string => `party: PA-${party}, role: gives${more}`;
const gets = (party: string, more = ''): string => `party: PA-${party}, role: gets${more}`;

/** What a file says of who had the piece: disagreements, doubts of passages, holdings in order, gaps, ranges of edges. */
function told(list: Readonly<Record<string, string>>) {
  const { file, problems } = computeFiles(entries({ ...OBJECT, ...PARTIES, ...list }));
  expect(problems.filter((one) => one.severity === 'error')).toEqual([]);
  const chains = findChains(file);
  const ranges = datesReport(file).moments;
  return {
    file,
    contradictions: file.contradictions.map((one) => one.statements.map(({ id }) => id)),
    unclear: problems.filter((one) => one.code === 'passage-unclear').map((one) => one.entry),
    holdings: chains.flatMap((chain) => chain.holdings.map((one) => one.holding.id)),
    meanwhile: chains.flatMap((chain) => chain.meanwhile.map((one) => one.holding.id)),
    gaps: chains.flatMap((chain) => chain.gaps.map((gap) => `${gap.before.id} ${gap.after.id}`)),
    estates: chains.flatMap((chain) => chain.gaps.filter((gap) => gap.passedOn?.atDeath).map((gap) => gap.before.id)),
    line: chains[0] ? (lineOfChain(file, chains[0]).split('\n\n')[0] as string) : '',
    range: (entry: string, edge: string) => {
      const found = ranges.find((one) => one.entry === entry && one.edge === edge)?.ranges[1];
      return [found?.earliest ?? null, found?.latest ?? null];
    },
    passages: file.statements.all.filter((one) => one.kind === 'passage').map((one) => one.id),
  };
}

describe('acts and holdings are one fact', () => {
  it('a sale that names seller and buyer closes the gap between them, and dates both', () => {
    const one = told({
      'EV-sale': act('sale', '1938-05-03', [gives('giver'), gets('taker')]),
      'HO-g': holding('giver', begins('1920')),
      'HO-t': holding('taker', ends('1951-04-02')),
    });
    expect(one).toMatchObject({ contradictions: [], gaps: [], holdings: ['HO-g', 'HO-t'] });
    expect(one.passages).toEqual(['EV-sale#passage:HO-g:HO-t']);
    expect(one.range('HO-g', 'ends')).toEqual(['1938-05-02', '1938-05-04']);
    expect(one.range('HO-t', 'begins')).toEqual(['1938-05-02', '1938-05-04']);
    expect(one.line).toMatch(/^The giver, 1920 until 1938; purchased by The taker, 1938 until 1951\./);
  });

  it('bought by 1938: the act bounds what it can, and nothing contradicts', () => {
    const one = told({
      'EV-sale': act('sale', '../1938', [gives('giver'), gets('taker')]),
      'HO-g': holding('giver', 'held: [{ date: "1936-10", grade: established }]\n'),
      'HO-t': holding('taker', 'held: [{ date: "1938", grade: established }]\n'),
    });
    expect(one).toMatchObject({ contradictions: [], gaps: [] });
    expect(one.range('HO-t', 'begins')).toEqual(['1936-10-01', '1938-12-31']);
  });

  it.each(['1926-12-31', '1927-01-01', '1926-12-31/1927-01-01'])(
    'had it until 31 December, and from 1 January, sold on %s: no contradiction',
    (date) => {
      const one = told({
        'EV-sale': act('sale', date, [gives('giver'), gets('taker')]),
        'HO-g': holding('giver', ends('1926-12-31')),
        'HO-t': holding('taker', begins('1927-01-01')),
      });
      expect(one).toMatchObject({ contradictions: [], gaps: [] });
    },
  );

  it('a seller who had it until a year before the sale is a contradiction, never a silence', () => {
    const one = told({
      'EV-sale': act('sale', '1938-05-03', [gives('giver'), gets('taker')], 'passage: { grade: established }'),
      'HO-g': holding('giver', ends('1937-05')),
      'HO-t': holding('taker', begins('1938-05-03')),
    });
    expect(one.contradictions.length).toBeGreaterThan(0);
    expect(one.contradictions.flat()).toContain('EV-sale#passage:HO-g:HO-t');
  });

  it('a loan and its return lie inside the possession of the lender', () => {
    const lent = {
      'EV-loan': act('loan', '1964-02-03', [gives('giver'), gets('taker')]),
      'EV-back': act('return', '1964-05-30', [gives('taker'), gets('giver')]),
      'HO-g': holding('giver', `${begins('1951')}held: [{ date: "2024", grade: established }]\n`),
    };
    const drawn = told(lent);
    expect(drawn).toMatchObject({ contradictions: [], gaps: [], unclear: [], holdings: ['HO-g'] });
    expect(drawn.meanwhile).toEqual(['PA-taker.got.EV-loan.gave.EV-back']);
    expect(drawn.range('PA-taker.got.EV-loan.gave.EV-back', 'ends')).toEqual(['1964-05-29', '1964-05-31']);
    expect(drawn.range('HO-g', 'begins')).toEqual(['1951-01-01', '1951-12-31']);
    const written = told({ ...lent, 'HO-t': holding('taker', begins('1964-02'), 'borrower') });
    expect(written).toMatchObject({ contradictions: [], gaps: [], meanwhile: ['HO-t'] });
  });

  it('a bequest after a dated death: what lies between is the estate', () => {
    const one = told({
      'PA-giver': 'type: party\ntitle: The giver\nis: person\ndied: { date: "1957-11-03", grade: established }',
      'EV-will': act('bequest', '1958-02-11', [gives('giver'), gets('taker')]),
      'HO-g': holding('giver', begins('1938')),
      'HO-t': holding('taker', begins('1958-02-11')),
    });
    expect(one).toMatchObject({ contradictions: [], estates: ['HO-g'] });
    expect(one.range('HO-g', 'ends')).toEqual(['1938-01-01', '1957-11-03']);
  });

  it('an exchange binds where each line names its pieces, and nothing where it does not', () => {
    const two = { 'OB-b': 'type: object\ntitle: Another panel' };
    const pieces = (one: string): string => `, objects: [${one}]`;
    const full = told({
      ...two,
      'EV-swap': act('exchange', '1930-06-01', [
        gives('giver', pieces('OB-a')),
        gets('taker', pieces('OB-a')),
        gives('taker', pieces('OB-b')),
        gets('giver', pieces('OB-b')),
      ]),
      'HO-g': holding('giver', begins('1920')),
    });
    expect(full).toMatchObject({ contradictions: [], gaps: [], unclear: [] });
    expect(full.holdings).toEqual(['HO-g', 'PA-taker.got.EV-swap', 'PA-taker.gave.EV-swap', 'PA-giver.got.EV-swap']);
    const bare = told({ ...two, 'EV-swap': act('exchange', '1930', [gives('giver'), gets('taker')]) });
    expect(bare.passages).toEqual([]);
  });

  it('taken and brought back are two holdings of the one it was taken from', () => {
    const acts = {
      'EV-taken': act('confiscation', '1941-03-01', [gives('giver'), gets('taker')]),
      'EV-back': act('return', '1947-08-20', [gives('taker'), gets('giver')]),
    };
    const drawn = told(acts);
    expect(drawn).toMatchObject({ contradictions: [], gaps: [], unclear: [] });
    expect(drawn.holdings).toEqual([
      'PA-giver.gave.EV-taken',
      'PA-taker.got.EV-taken.gave.EV-back',
      'PA-giver.got.EV-back',
    ]);
    const unclear = told({ ...acts, 'HO-g': holding('giver', begins('1930')) });
    expect(unclear).toMatchObject({ contradictions: [], unclear: ['EV-taken', 'EV-back'].sort() });
    const named = told({
      'EV-taken': act('confiscation', '1941-03-01', [gives('giver', ', holding: HO-g'), gets('taker')]),
      'EV-back': acts['EV-back'],
      'HO-g': holding('giver', begins('1930')),
    });
    expect(named).toMatchObject({ contradictions: [], gaps: [], unclear: [] });
    expect(named.holdings).toEqual(['HO-g', 'PA-taker.got.EV-taken.gave.EV-back', 'PA-giver.got.EV-back']);
  });

  it('a dealer through whom it went binds no owner; one who sold for another ends a consigned holding', () => {
    const through = told({
      'EV-sale': act('sale', '1938-05-03', [gives('giver'), gets('taker'), 'party: PA-agent, role: through']),
      'HO-agent': holding('agent', begins('1937-01'), 'consignee'),
    });
    expect(through).toMatchObject({ contradictions: [], gaps: [], meanwhile: ['HO-agent'] });
    expect(through.holdings).toEqual(['PA-giver.gave.EV-sale', 'PA-taker.got.EV-sale']);
    expect(through.range('HO-agent', 'ends')).toEqual(['1938-05-02', '1938-05-04']);
    const onBehalf = told({
      'EV-sale': act('sale', '1938-05-03', ['party: PA-agent, role: gives, on-behalf-of: PA-giver', gets('taker')]),
      'HO-g': holding('giver', begins('1920')),
      'HO-agent': holding('agent', begins('1937-01'), 'consignee'),
    });
    expect(onBehalf).toMatchObject({ contradictions: [], gaps: [], holdings: ['HO-g', 'PA-taker.got.EV-sale'] });
    expect(onBehalf.range('HO-agent', 'ends')).toEqual(['1938-05-02', '1938-05-04']);
    expect(onBehalf.range('HO-g', 'ends')).toEqual(['1938-05-02', '1938-05-04']);
  });

  it('an agent who has it for another, and sells it, ends only that', () => {
    const one = told({
      'EV-consigned': act('consignment', '1937-01-10', [gives('giver'), gets('agent')]),
      'EV-sale': act('sale', '1938-05-03', [gives('agent'), gets('taker')]),
      'HO-g': holding('giver', begins('1920')),
    });
    expect(one.contradictions).toEqual([]);
    expect(one.range('HO-g', 'ends')).toEqual(['1937-01-09', null]);
  });

  it('two buyers have it together', () => {
    const one = told({ 'EV-sale': act('sale', '1938-05-03', [gives('giver'), gets('taker'), gets('other')]) });
    expect(one.holdings).toEqual(['PA-giver.gave.EV-sale', 'PA-taker.got.EV-sale']);
    expect(one.file.catalogue.get('PA-taker.got.EV-sale')?.keys).toMatchObject({ 'shared-with': ['PA-other'] });
    const written = told({
      'EV-sale': act('sale', '1938-05-03', [gives('giver'), gets('taker'), gets('other')]),
      'HO-t': holding('other', 'shared-with: [PA-taker]\n'),
    });
    expect(written).toMatchObject({ contradictions: [], gaps: [], holdings: ['PA-giver.gave.EV-sale', 'HO-t'] });
  });

  it('a deposit that becomes a gift is two holdings of the same house', () => {
    const one = told({
      'EV-deposit': act('deposit', '1930-04-01', [gives('giver'), gets('taker')]),
      'EV-gift': act('gift', '1951-04-02', [gives('giver'), gets('taker')]),
      'HO-deposit': holding('taker', `${begins('1930-04-01')}${ends('1951-04-02')}`, 'depositary'),
      'HO-own': holding('taker', begins('1951-04-02')),
      'HO-g': holding('giver', begins('1920')),
    });
    expect(one).toMatchObject({ contradictions: [], gaps: [], unclear: [] });
    expect(one).toMatchObject({ holdings: ['HO-g', 'HO-own'], meanwhile: ['HO-deposit'] });
    expect(one.range('HO-g', 'ends')).toEqual(['1951-04-01', '1951-04-02']);
  });

  it('a delivery on another day is a statement of its own, and the passage follows it', () => {
    const one = told({
      'EV-sale': act(
        'sale',
        '1938-05-03',
        [gives('giver'), gets('taker')],
        'delivery: { date: "1938-07-20", grade: probable, why: entered that day }',
      ),
    });
    expect(one.range('PA-taker.got.EV-sale', 'begins')).toEqual(['1938-07-19', '1938-07-21']);
    expect(one.range('EV-sale', 'end')).toEqual(['1938-05-03', '1938-05-03']);
    expect(one.file.statement('EV-sale#delivery')?.grade).toBe('probable');
  });

  it('a party with another word for what it did gets and gives nothing', () => {
    const one = told({
      'EV-sale': act('sale', '1938', ['party: PA-agent, role: photographer', 'party: PA-other, role: executor']),
    });
    expect(one).toMatchObject({ passages: [], holdings: [] });
  });

  it('nobody holds before being founded, nor after closing', () => {
    const firm = 'type: party\ntitle: A firm\nis: firm\nfounded: { date: "1919", grade: established, source: SO-x }';
    const one = told({
      'PA-giver': firm,
      'SO-x': 'type: source\nkind: other\ntitle: A register',
      'HO-g': holding('giver', 'ends: [{ date: "1936", grade: established }]\n'),
    });
    expect(one.range('HO-g', 'begins')).toEqual(['1919-01-01', '1936-12-31']);
    const early = told({
      'PA-giver': firm,
      'HO-g': holding('giver', begins('1899')),
      'SO-x': 'type: source\nkind: other\ntitle: R',
    });
    expect(early.contradictions).toEqual([['HO-g#1', 'PA-giver#first']]);
  });
});
