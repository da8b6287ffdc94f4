import { describe, expect, it } from 'vitest';
import { offeredReferences, sayNothingOffered } from '../../src/findings/offered-references.ts';
import { inEnglish } from '../spoken.ts';
import { computeFiles, entries } from '../workspace.ts';

/** What is offered for one event in a place under a rule. Dates of laws: the built-in table, each with its source and standing. */
function offered(rule: string, event: string, more: Record<string, string> = {}) {
  const { file } = computeFiles(
    entries({
      'PL-land': `type: place\ntitle: A land\n${rule}`,
      'PL-town': 'type: place\ntitle: A town\nwithin: PL-land',
      'EV-a': `type: event\ntitle: An act\nplace: PL-town\n${event}`,
      ...more,
    }),
  );
  return offeredReferences(file);
}

const ids = (list: ReturnType<typeof offered>) => list.flatMap((one) => one.rows.map(({ row }) => row.id));
const GREECE = 'rule: [{ power: Greece, from: "1832", kind: sovereign, jurisdiction: greece }]';

describe('reference dates offered by the rule over a place', () => {
  it('rows of the land that ruled then, that speak of such an act, and that may have been in force', () => {
    const list = offered(GREECE, 'kind: removal\nstated: [{ date: "1920", grade: established }]');
    expect(ids(list)).toContain('greece-1899-state-ownership');
    expect(ids(list)).not.toContain('greece-1932-state-ownership');
    expect(ids(list).filter((id) => id.endsWith('-export'))).toEqual([]);
    expect(ids(offered(GREECE, 'kind: export\nstated: [{ date: "1940", grade: established }]'))).toContain(
      'greece-1932-export',
    );
  });

  it('a range that lies across a law offers both', () => {
    const across = ids(offered(GREECE, 'kind: removal\nstated: [{ date: "[1929..1933]", grade: probable }]'));
    expect(across).toContain('greece-1899-state-ownership');
    expect(across).toContain('greece-1932-state-ownership');
  });

  it('the rule is that of the time of the event, found in what the place lies within', () => {
    const rules =
      'rule: [{ power: Ottoman Empire, to: "1912", kind: sovereign }, { power: Italy, from: "1912", to: "1947", kind: occupation, jurisdiction: italy }]';
    const early = offered(rules, 'kind: removal\nstated: [{ date: "1890", grade: established }]');
    expect(early.map((one) => one.jurisdiction)).toEqual(['ottoman-empire']);
    expect(ids(early).length).toBeGreaterThan(0);
    const late = offered(rules, 'kind: removal\nstated: [{ date: "1930", grade: established }]');
    expect(late.map((one) => one.jurisdiction)).toEqual(['italy']);
  });

  it('never an empty list: no rows for a land, none at that time, no rule, no place', () => {
    const say = (list: ReturnType<typeof offered>) => list.map((one) => inEnglish(sayNothingOffered(one) ?? ''));
    const act = 'kind: removal\nstated: [{ date: "1890", grade: established }]';
    expect(say(offered('rule: [{ power: Ruritania, kind: sovereign }]', act))).toEqual([
      'no rows for Ruritania in this table',
    ]);
    expect(say(offered(GREECE, 'kind: import\nstated: [{ date: "1890", grade: established }]'))[0]).toMatch(
      /^none of the \d+ rows for Greece in this table speaks of such an act at that time$/,
    );
    expect(say(offered('', act))).toEqual(['no rule over the place at that time is recorded']);
    expect(say(offered('', 'kind: removal', { 'EV-a': 'type: event\ntitle: An act\nkind: removal' }))).toEqual([
      'no place is recorded for it',
    ]);
  });

  it('a person chooses or declines; the program only says which', () => {
    const workspace = {
      workspace:
        'type: workspace\ntitle: A file\ninstitution: W\naccess-default: public\nreference-dates: [greece-1899-state-ownership, { id: greece-1834-state-ownership, declined: older }]',
    };
    const list = offered(GREECE, 'kind: removal\nstated: [{ date: "1920", grade: established }]', workspace);
    const decisions = new Map(list.flatMap((one) => one.rows.map(({ row, decision }) => [row.id, decision])));
    expect(decisions.get('greece-1899-state-ownership')).toBe('chosen');
    expect(decisions.get('greece-1834-state-ownership')).toBe('declined');
  });
});
