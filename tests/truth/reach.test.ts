import { describe, expect, it } from 'vitest';
import { testReferences } from '../../src/findings/reference-tests.ts';
import { inEnglish } from '../spoken.ts';
import { computeFiles, entries, filesOf, ROOT } from '../workspace.ts';

const OBJECT = { 'OB-a': 'type: object\ntitle: A panel' };
const place = (rule: string): string => `type: place\ntitle: A town\nrule: [${rule}]`;
const GREEK = '{ power: Greece, from: "1832", kind: sovereign, jurisdiction: greece }';
const OTTOMAN_THEN_GREEK =
  '{ power: Ottoman Empire, to: "1912-10", kind: sovereign, jurisdiction: ottoman-empire }, { power: Greece, from: "1912-11", kind: sovereign, jurisdiction: greece }';
const event = (kind: string, date: string, more = 'place: PL-a'): string =>
  `type: event\nkind: ${kind}\ntitle: An act\nobjects: [OB-a]\nstated: [{ date: "${date}", grade: established }]\n${more}`;

/** How the one act of a file lies to a reference date, at the established grade; `left out` where it is not printed. */
function told(chosen: string, list: Readonly<Record<string, string>>, entry = 'EV-a') {
  const files = {
    ...entries({ ...OBJECT, ...list }),
    'entries/workspace.md': `---\nid: workspace\ntype: workspace\ntitle: A file\ninstitution: A museum\nreference-dates: [${chosen}]\n---\n`,
  };
  const { file, problems } = computeFiles(files);
  expect(problems.filter((one) => one.severity === 'error').map((one) => inEnglish(one.message))).toEqual([]);
  const test = testReferences(file).find((one) => one.reference.id === chosen);
  const found = test?.events.find((one) => one.event.id === entry);
  const answer = found?.answers[0];
  return answer ? [answer.order, answer.decides === null ? null : inEnglish(answer.decides)] : 'left out';
}

describe('laws by place and power', () => {
  it('a Greek law is not tested on a shipment between two other countries', () => {
    const list = {
      'PL-a': place('{ power: France, kind: sovereign, jurisdiction: france }'),
      'EV-a': event('export', '1947'),
    };
    expect(told('greece-1932-export', list)).toBe('left out');
  });

  it('a time of rule is not tested on a purchase on another continent, and is where the land lay under it', () => {
    const us = place('{ power: United States, kind: sovereign, jurisdiction: united-states }');
    expect(told('period-1933-1945', { 'PL-a': us, 'EV-a': event('sale', '1938') })).toBe('left out');
    const occupied = place(
      '{ power: France, kind: sovereign, jurisdiction: france }, { power: Germany, from: "1942-11", to: "1944-08", kind: occupation, jurisdiction: germany }',
    );
    expect(told('period-1933-1945', { 'PL-a': occupied, 'EV-a': event('confiscation', '1943-02') })).toEqual([
      'within',
      null,
    ]);
    expect(told('period-1933-1945', { 'PL-a': occupied, 'EV-a': event('sale', '1938') })).toBe('left out');
    expect(told('period-1933-1945', { 'PL-a': occupied, 'EV-a': event('sale', '[1938..1943]') })).toEqual([
      'undetermined',
      'who ruled A town on that day',
    ]);
  });

  it('an act without a place is not tested, and says so', () => {
    expect(told('greece-2002-export', { 'EV-a': event('export', '1938', '') })).toEqual(['no place', null]);
    expect(
      told('greece-2002-export', { 'PL-a': 'type: place\ntitle: A town', 'EV-a': event('export', '2010') }),
    ).toEqual(['undetermined', 'who ruled A town then']);
  });

  it('of a land that came under the power after the law was made, nothing is settled unless a person says so', () => {
    const list = { 'PL-a': place(OTTOMAN_THEN_GREEK), 'EV-a': event('removal', '1920') };
    expect(told('greece-1899-state-ownership', list)).toEqual(expect.arrayContaining(['undetermined']));
    const applied = {
      ...list,
      'PA-a': 'type: party\ntitle: A curator\nis: person\nliving: no',
      'EV-a': event(
        'removal',
        '1920',
        'place: PL-a\napplies: [{ law: greece-1899-state-ownership, why: put in force there in 1914, by: PA-a }]',
      ),
    };
    expect(told('greece-1899-state-ownership', applied)).toEqual(['within', null]);
  });

  it('an act that may have been done on either side of a change of rule is undetermined for both', () => {
    const list = { 'PL-a': place(OTTOMAN_THEN_GREEK), 'EV-a': event('removal', '[1910..1914]') };
    expect(told('ottoman-empire-1906-state-ownership', list)?.[0]).toBe('undetermined');
    expect(told('greece-1899-state-ownership', list)?.[0]).toBe('undetermined');
  });

  it('what came before a law came before it wherever it was done', () => {
    const list = { 'PL-a': place(GREEK), 'EV-a': event('export', '1925') };
    expect(told('unesco-1970', list)).toEqual(['before', null]);
  });

  it('an import is tested where the piece arrived, an export where it left', () => {
    const list = {
      'PL-a': place(GREEK),
      'PL-b':
        'type: place\ntitle: Another\nrule: [{ power: United States, kind: sovereign, jurisdiction: united-states }]',
      'EV-a': event('import', '1985', 'place: PL-a\nto: PL-b'),
    };
    expect(told('united-states-1983-import', list)).not.toBe('left out');
    expect(told('greece-1932-export', { ...list, 'EV-a': event('export', '1985', 'place: PL-b\nto: PL-a') })).toBe(
      'left out',
    );
  });

  it.each(['public', 'restricted'] as const)(
    'in the demonstration file no answer for %s readers is given outside a law’s land',
    (audience) => {
      const { file } = computeFiles(filesOf(ROOT), audience);
      const tests = testReferences(file);
      expect(tests.some((one) => one.outside.length > 0)).toBe(true);
      const american = tests
        .filter((one) => one.reference.row.jurisdiction === 'greece')
        .flatMap((one) => one.events)
        .filter(({ event: one }) => ['PL-new-york', 'PL-wexcombe', 'PL-marseille'].includes(one.keys.place ?? ''));
      expect(american).toEqual([]);
    },
  );
});
