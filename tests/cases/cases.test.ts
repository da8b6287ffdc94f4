import { inEnglish } from '../spoken.ts';
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { datesReport } from '../../src/findings/dates-report.ts';
import { fourChains } from '../../src/findings/four-chains.ts';
import { testReferences } from '../../src/findings/reference-tests.ts';
import { sayContradiction } from '../../src/findings/say-contradiction.ts';
import { computeFiles, filesOf } from '../workspace.ts';

const folder = import.meta.dirname;
const cases = readdirSync(folder, { withFileTypes: true }).filter((one) => one.isDirectory()).map((one) => one.name);

const rangeOf = (name: string, entry: string, edge: string, grade: string) => {
  const { file } = computeFiles(filesOf(path.join(folder, name)));
  const moment = datesReport(file).moments.find((one) => one.entry === entry && one.edge === edge);
  const range = moment?.ranges.find((one) => one.grade === grade);
  return [range?.earliest ?? null, range?.latest ?? null];
};

describe('a folder is a case', () => {
  it('there are cases', () => {
    expect(cases.length).toBeGreaterThanOrEqual(12);
  });

  it.each(cases)('%s: no error, and the dates are the expected ones', (name) => {
    const { file, problems } = computeFiles(filesOf(path.join(folder, name)));
    const told = problems.filter((one) => one.severity !== 'note' && one.code !== 'contradiction');
    expect(told).toEqual([]);
    expect(file.contradictions.length > 0).toBe(name.startsWith('contradiction-'));
    const actual = `${JSON.stringify(datesReport(file), null, 1)}\n`;
    const expected = path.join(folder, name, 'expected.json');
    const kept = path.join(folder, name, 'actual.json');
    const same = existsSync(expected) && readFileSync(expected, 'utf8') === actual;
    // A difference is kept beside the expected file, to be looked at; nothing accepts it.
    if (!same) writeFileSync(kept, actual);
    else if (existsSync(kept)) rmSync(kept);
    expect(same, `compare ${kept} with ${expected}`).toBe(true);
  });
});

/** Each kind of contradiction: what cannot all be right, and the sentence that names both sides. */
const KINDS: readonly (readonly [name: string, kind: string, statements: string, said: string | null])[] = [
  [
    'removal-before-last-sighting',
    'dates',
    'EV-removal#1 EV-removal#2 EV-seen#1',
    'the beginning of “Taken off the wall”: not before 4 May 1925, not after 1920',
  ],
  [
    'customs-before-removal',
    'dates',
    'EV-customs#1 EV-customs#2 EV-removal#1',
    'the beginning of “Cleared at the port”: not before 1922, not after 2 March 1921',
  ],
  [
    'sister-pieces',
    'dates',
    'EV-removal#1 EV-removal-sister#1 EV-removal-sister#2',
    'the beginning of “Taken off the wall”: not before 1920, not after 1915',
  ],
  [
    'fill-earlier-than-joint',
    'dates',
    'EV-joining#1 EV-treatment#1 PE-fill#1 PE-fill#2 PE-joint#1',
    'the making of “Fill in the joint”: not before 1934, not after 1921',
  ],
  [
    'material-before-first-known',
    'dates',
    'EV-removal#1 PE-cut#1 PE-cut#2 PE-paint#1',
    'the making of “Sawn edge”: not before 1927, not after 1910',
  ],
  [
    'direct-passage',
    'dates',
    'HO-one#1 HO-two#1 HO-two#passage',
    'the end of “The first possessor”: not before 1933, not after 1930',
  ],
  ['gaps-of-a-date', 'dates', 'EV-removal#1 EV-removal#2 EV-removal#3', null],
  [
    'length',
    'dates',
    'EV-removal#1 EV-removal#2 EV-removal#lasts',
    'the beginning of “Taken off the wall”: not before October 1925, not after March 1925',
  ],
  ['loop-of-order', 'order', 'EV-facing#1 EV-removal#1 EV-sectioning#1', null],
];

describe('kinds of contradiction (model.md and common practice, no source; invented files)', () => {
  it('every folder of the kind is in the table', () => {
    expect(KINDS.map(([name]) => `contradiction-${name}`).toSorted()).toEqual(
      cases.filter((name) => name.startsWith('contradiction-')).toSorted(),
    );
  });

  it.each(KINDS)('%s', (name, kind, statements, said) => {
    const { file } = computeFiles(filesOf(path.join(folder, `contradiction-${name}`)));
    const [first] = file.contradictions;
    expect(first && [first.kind, first.statements.map((one) => one.id).join(' ')]).toEqual([kind, statements]);
    const sentence = first ? sayContradiction(file, first) : null;
    expect(sentence && [sentence.moment, ': ', sentence.earliest.words, ', ', sentence.latest.words].map(inEnglish).join('')).toBe(said);
    for (const way of first?.waysOut ?? []) {
      const without = computeFiles(
        filesOf(path.join(folder, `contradiction-${name}`)),
        'restricted',
        way.map((one) => one.id),
      );
      expect(without.file.contradictions).toEqual([]);
    }
    expect(first?.waysOut.length).toBeGreaterThan(2);
  });
});

describe('near misses (common practice, no source): orders that are no contradiction and no doubt', () => {
  it('facing before removal, joining after shipping, retouching after purchase, two campaigns, sold but not removed, cut again, known before sold, old things used again', () => {
    const { file, problems } = computeFiles(filesOf(path.join(folder, 'near-misses')));
    expect(problems).toEqual([]);
    expect(file.contradictions).toEqual([]);
    expect(file.statements.used.length).toBeGreaterThan(20);
  });
});

describe('castile (checks/cases.md: press on the official gazette; a learned society, 2024; medium certainty)', () => {
  const { file } = computeFiles(filesOf(path.join(folder, 'castile')));

  it('no contradiction: sold is not removed, facing before removal, two campaigns on one wall', () => {
    expect(file.contradictions).toEqual([]);
    expect(file.catalogue.ofType('event').filter((event) => event.keys.kind === 'removal').length).toBe(2);
    expect(rangeOf('castile', 'EV-sale-1922', 'end', 'established')).toEqual(['1922-01-01', '1922-12-31']);
  });

  it('the second removal lies after the ruling and by 26 July 1926', () => {
    expect(rangeOf('castile', 'EV-removal-2', 'start', 'established')).toEqual(['1925-02-12', '1926-07-26']);
    expect(rangeOf('castile', 'EV-removal-2', 'end', 'established')).toEqual(['1925-02-12', '1926-07-26']);
  });

  it('the order of 1917 lies before every later step', () => {
    const order = rangeOf('castile', 'EV-order-1917', 'end', 'established')[1] as string;
    for (const event of ['EV-sale-1922', 'EV-removal-1', 'EV-removal-2', 'EV-exchange']) {
      expect((rangeOf('castile', event, 'start', 'probable')[0] ?? '') > order, event).toBe(true);
    }
  });
});

describe('four chains of both cases (checks/cases.md)', () => {
  const chainsOf = (name: string) => {
    const { file } = computeFiles(filesOf(path.join(folder, name)));
    const [object] = file.catalogue.ofType('object');
    if (!object) throw new Error(name);
    const steps = fourChains(file, object);
    const ids = (band: string) => steps.filter((one) => one.band === band).map((one) => one.entry);
    const orders = testReferences(file).flatMap(({ reference, events }) =>
      events.map(({ event, answers }) => [reference.id, event.id, answers[1]?.order] as const),
    );
    return { ids, steps, orders };
  };

  it('castile: the sale moves title and changes nothing in the physical state; each step on the right side of order and ruling', () => {
    const { ids, steps, orders } = chainsOf('castile');
    expect(ids('state')).toEqual(['EV-facing-1', 'EV-removal-1', 'EV-removal-2']);
    expect(ids('title')).toEqual(['TI-buyer']);
    expect(ids('custody')).toEqual([]);
    const asserted = steps.find((one) => one.entry === 'TI-buyer')?.possibly.first ?? 0;
    const removed = steps.find((one) => one.entry === 'EV-removal-2')?.possibly.first ?? 0;
    expect(asserted).toBeLessThan(removed);
    expect(orders.filter(([law]) => law === 'RF-order-1917').map(([, event, order]) => `${event} ${order}`).toSorted()).toEqual([
      'EV-exchange after',
      'EV-put-back after',
      'EV-removal-1 after',
      'EV-removal-2 after',
      'EV-sale-1922 after',
    ]);
    const ruling = new Map(orders.filter(([law]) => law === 'RF-ruling-1925').map(([, event, order]) => [event, order]));
    expect([ruling.get('EV-sale-1922'), ruling.get('EV-removal-1'), ruling.get('EV-removal-2')]).toEqual(['before', 'before', 'after']);
  });

  it('roussillon: state, place, custody and title are four chains; the removal lies before the day on which it was held to make a movable', () => {
    const { ids, orders } = chainsOf('roussillon');
    expect(ids('state')).toEqual(['EV-removal']);
    expect(ids('place')).toEqual(['EV-discovery']);
    expect(ids('custody')).toEqual(['HO-museum', 'HO-loan']);
    expect(ids('title').toSorted()).toEqual(['TI-museum', 'TI-owners']);
    expect(orders).toEqual([['RF-movable', 'EV-removal', 'before']]);
  });
});

describe('roussillon (checks/cases.md: an art-law case platform; high certainty)', () => {
  const { file } = computeFiles(filesOf(path.join(folder, 'roussillon')));

  it('title, custody and physical state are apart: two overlapping titles are no contradiction and never enter the network', () => {
    expect(file.catalogue.ofType('title').length).toBe(2);
    expect(file.contradictions).toEqual([]);
    expect(file.statements.all.filter((one) => one.entry.startsWith('TI-'))).toEqual([]);
  });

  it('a loan does not end the possession', () => {
    expect(rangeOf('roussillon', 'HO-loan', 'begins', 'established')).toEqual(['1997-07-01', '1997-07-01']);
    expect(rangeOf('roussillon', 'HO-museum', 'ends', 'probable')).toEqual(['2003-03-19', null]);
  });

  it('the removal lies after the discovery of 1953 and before the first judgment', () => {
    expect(rangeOf('roussillon', 'EV-removal', 'start', 'probable')).toEqual(['1953-01-01', '1955-05-27']);
  });
});

it('20 Safar 1291 printed as 24 March 1874 is a doubt; its true conversion is none (checks/cases.md, dated conversions from statutes)', () => {
  const entry = (date: string) => ({
    'entries/workspace.md': '---\nid: workspace\ntype: workspace\ntitle: A\ninstitution: B\n---\n',
    'entries/a.md': `---\nid: EV-a\ntype: event\nkind: permit\ntitle: Regulation\nstated: [{ date: "${date}", as-written: "20 Safar 1291", grade: probable }]\n---\n`,
  });
  const doubts = (date: string) => computeFiles(entry(date)).problems.filter((one) => one.code === 'text-and-date-differ').length;
  expect(doubts('1874-03-24')).toBe(1);
  expect(doubts('1874-04-08')).toBe(0);
});
