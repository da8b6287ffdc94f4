import { describe, expect, it } from 'vitest';
import { dayOf } from '../../src/dates/day.ts';
import { findChains } from '../../src/findings/custody-chains.ts';
import { BANDS, fourChains } from '../../src/findings/four-chains.ts';
import { layOutChains } from '../../src/publish/chains-drawing.ts';
import { computeFiles, entries, filesOf, ROOT } from '../workspace.ts';

const { file } = computeFiles(filesOf(ROOT));
const object = file.catalogue.ofType('object').find((one) => one.id === 'OB-lerakos');
if (!object) throw new Error('no object');

describe('four chains side by side', () => {
  const steps = fourChains(file, object);

  it('come band by band; sold is not in the physical state, removed is not in custody', () => {
    const bands = steps.map((one) => one.band);
    expect(bands).toEqual([...bands].sort((a, b) => BANDS.indexOf(a) - BANDS.indexOf(b)));
    const kinds = (band: string) =>
      steps
        .filter((one) => one.band === band)
        .map((one) => (file.catalogue.get(one.entry)?.keys as { kind?: string } | undefined)?.kind);
    expect(kinds('state')).not.toContain('sale');
    expect(kinds('state')).toContain('removal');
    expect(
      new Set(steps.filter((one) => one.band === 'custody').map((one) => file.catalogue.get(one.entry)?.type)),
    ).toEqual(new Set(['holding']));
  });

  it('the whole group names the panels of a step that concerns only some; one panel sees its own only', () => {
    const ofC = fourChains(file, object, 'C').map((one) => one.entry);
    expect(ofC).toContain('HO-castagnou-C');
    expect(ofC).not.toContain('HO-dray');
    expect(ofC).not.toContain('EV-strip');
    expect(steps.find((one) => one.entry === 'HO-dray')?.panels).toEqual(['A', 'B']);
    expect(steps.find((one) => one.entry === 'HO-monastery')?.panels).toEqual([]);
    expect(steps.find((one) => one.entry === 'EV-strip')?.panels).toEqual(['B']);
    expect(steps.every((one) => one.possibly.first <= one.possibly.last)).toBe(true);
  });

  it('are drawn on one axis: no stretch leaves it, and certain lies in possible', () => {
    const { bands, ruling } = layOutChains(steps, [], 14);
    const rows = bands.flatMap((one) => one.rows);
    expect(rows).toHaveLength(steps.length);
    for (const { possibly, throughout } of rows) {
      if (!possibly) continue;
      expect(possibly.x1).toBeGreaterThanOrEqual(ruling.format.left);
      expect(possibly.x2).toBeLessThanOrEqual(ruling.format.right + 5);
      if (throughout) expect(throughout.x1).toBeGreaterThanOrEqual(possibly.x1);
    }
    const ys = rows.map((one) => one.y);
    expect(ys).toEqual([...ys].sort((a, b) => a - b));
  });
});

describe('a loan', () => {
  const files = entries({
    'OB-a': 'type: object\ntitle: A piece\npanels: [{ id: A }, { id: B }]',
    'HO-1':
      'type: holding\ntitle: Owner\ncapacity: possessor\nobjects: [OB-a]\nbegins: [{ date: "1950-01-01", grade: established }]\nends: [{ date: "1970-01-01", grade: established }]',
    'HO-2':
      'type: holding\ntitle: Borrower\ncapacity: borrower\nobjects: [OB-a/B]\nfrom: HO-1\nbegins: [{ date: "1960-02-01", grade: established }]\nends: [{ date: "1960-05-01", grade: established }]',
    'HO-3':
      'type: holding\ntitle: Next\ncapacity: possessor\nobjects: [OB-a]\nbegins: [{ date: "1970-01-02", grade: established }]',
  });

  it('stands beside the chain: it makes no gap and does not part the panels', () => {
    const chains = findChains(computeFiles(files).file);
    expect(chains).toHaveLength(1);
    expect(chains[0]?.holdings.map((one) => one.holding.id)).toEqual(['HO-1', 'HO-3']);
    expect(chains[0]?.meanwhile.map((one) => one.holding.id)).toEqual(['HO-2']);
    expect(chains[0]?.gaps).toEqual([]);
    expect(chains[0]?.holdings[0]?.throughout).toEqual({ first: dayOf(1950, 1, 1), last: dayOf(1970, 1, 1) });
  });

  it('from whom somebody got it stands in the chain in whatever capacity', () => {
    const passed = {
      ...files,
      'entries/HO-3.md': (files['entries/HO-3.md'] ?? '').replace('capacity', 'from: HO-2\ncapacity'),
    };
    const chains = findChains(computeFiles(passed).file);
    expect(chains.find((one) => one.panels.includes('B'))?.holdings.map((one) => one.holding.id)).toEqual([
      'HO-1',
      'HO-2',
      'HO-3',
    ]);
  });

  it('a holder recorded once is neither throughout nor nowhere', () => {
    const once = entries({
      'OB-a': 'type: object\ntitle: A piece',
      'HO-1':
        'type: holding\ntitle: Dealer\ncapacity: agent or dealer\nobjects: [OB-a]\nheld: [{ date: "1936-10", grade: established }]',
    });
    const [chain] = findChains(computeFiles(once).file);
    expect(chain?.holdings[0]?.throughout).toBe(null);
    expect(chain?.holdings[0]?.recorded).toEqual({ first: dayOf(1936, 10, 1), last: dayOf(1936, 10, 31) });
  });
});
