import { describe, expect, it } from 'vitest';
import { datesReport } from '../../src/findings/dates-report.ts';
import { countRoots } from '../../src/findings/independence.ts';
import { NO_CHANGE, openTrialFile } from '../../src/findings/run-trial.ts';
import { trialFileOf } from '../../src/findings/trial-file.ts';
import { computeFiles, entries } from '../workspace.ts';

const EVENT = 'type: event\nkind: removal\ntitle: Taken off the wall\n';
const SOURCE = (more: string) => `type: source\nkind: ledger\ntitle: A ledger\n${more}`;

/** Earliest and latest day of the start of an entry at a grade, for an audience. */
function start(
  files: Record<string, string>,
  audience: 'public' | 'internal' | 'restricted',
  entry = 'EV-a',
  grade = 'established',
) {
  const { file, problems } = computeFiles(files, audience);
  expect(problems.filter((one) => one.severity === 'error')).toEqual([]);
  const moment = datesReport(file).moments.find((one) => one.entry === entry);
  const range = moment?.ranges.find((one) => one.grade === grade);
  return {
    range: [range?.earliest ?? null, range?.latest ?? null],
    because: [...(range?.earliestBecause ?? []), ...(range?.latestBecause ?? [])],
  };
}

describe('audiences: taken out before anything is computed', () => {
  it('a statement that rests on a restricted source bounds nothing in public, and the others keep their names', () => {
    const files = entries({
      'SO-a': SOURCE('access: restricted'),
      'EV-a': `${EVENT}stated:\n  - { date: "1920", sense: not-before, source: SO-a, grade: established }\n  - { date: "1930", sense: by, grade: established }`,
    });
    expect(start(files, 'restricted')).toEqual({ range: ['1920-01-01', '1930-12-31'], because: ['EV-a#1', 'EV-a#2'] });
    expect(start(files, 'public')).toEqual({ range: [null, '1930-12-31'], because: ['EV-a#2'] });
  });

  it('withheld dates are not computed with', () => {
    const files = entries({ 'EV-a': `${EVENT}withhold: [date]\nstated: [{ date: "1926", grade: established }]` });
    expect(start(files, 'public').range).toEqual([null, null]);
    expect(start(files, 'restricted').range).toEqual(['1926-01-01', '1926-12-31']);
  });

  it.each([
    [
      'authenticity',
      SOURCE('withhold: [authenticity]\nauthenticity: { is: questioned, by: x, why: y }'),
      'SO-a',
      [null, null],
    ],
  ])('withholding %s does not lift the cap of the source', (_, source, id, expected) => {
    const files = entries({
      [id]: source,
      'EV-a': `${EVENT}stated: [{ date: "1926", source: SO-a, grade: established }]`,
    });
    expect(start(files, 'public').range).toEqual(expected);
    expect(start(files, 'public', 'EV-a', 'possible').range).toEqual(['1926-01-01', '1926-12-31']);
  });

  it('a rejected claim stays rejected where its standing is withheld', () => {
    const files = entries({
      'SO-a': SOURCE(''),
      'EV-a': EVENT,
      'CL-a':
        'type: claim\ntitle: A claim\nabout: EV-a\nsays: { date: "1926" }\nsource: SO-a\ngrade: established\nstanding: rejected\nwhy: another wall\nwithhold: [standing, why]',
    });
    expect(start(files, 'public').range).toEqual([null, null]);
  });

  it('a calendar that is withheld takes its date with it', () => {
    const files = entries({
      'SO-a': SOURCE(''),
      'EV-a': EVENT,
      'CL-a':
        'type: claim\ntitle: A claim\nabout: EV-a\nsays: { date: "1926-01-01", calendar: julian }\nsource: SO-a\ngrade: established\nwithhold: [calendar]',
    });
    expect(start(files, 'public').range).toEqual([null, null]);
    expect(start(files, 'restricted').range).toEqual(['1926-01-14', '1926-01-14']);
  });

  it('of two events given for one trace, one that is not shown counts as if nobody had named it', () => {
    const trace =
      'type: evidence\nkind: fill\ntitle: A fill\nobject: OB-a\nobserved: { text: seen, grade: established }\nleft-by:\n  - { event: EV-a, grade: probable }\n  - { event: EV-b, grade: probable }';
    const files = entries({
      'OB-a': 'type: object\ntitle: A wall',
      'EV-a': `${EVENT}stated: [{ date: "1926", grade: established }]`,
      'EV-b': `${EVENT}access: restricted`,
      'PE-a': trace,
    });
    expect(start(files, 'public', 'PE-a', 'probable').range).toEqual(['1926-01-01', '1926-12-31']);
    expect(start(files, 'restricted', 'PE-a', 'probable').range).toEqual([null, null]);
  });

  it('who judged so is no ground to take a statement out', () => {
    const files = entries({
      'PA-a': 'type: party\nis: person\ntitle: A living person\nliving: yes',
      'EV-a': `${EVENT}stated: [{ date: "1926", by: PA-a, grade: established }]`,
    });
    expect(start(files, 'public').range).toEqual(['1926-01-01', '1926-12-31']);
  });

  it('a holding that is known, not disclosed stays in the chain without its name', () => {
    const holding = 'type: holding\ncapacity: possessor\nobjects: [OB-a]\n';
    const files = entries({
      'OB-a': 'type: object\ntitle: A wall',
      'HO-secret': `${holding}title: The secret collector\naccess: restricted\nnot-disclosed: { ground: asked for it }\nends: [{ date: "1930", grade: established }]`,
      'HO-b': `${holding}title: The next\nfrom: HO-secret\npassage: { is: direct, grade: established }`,
    });
    const { file } = computeFiles(files, 'public');
    expect(file.catalogue.get('HO-secret')).toBeUndefined();
    expect(JSON.stringify(datesReport(file))).not.toMatch(/secret/i);
    expect(start(files, 'public', 'HO-b').range).toEqual(['1930-01-01', '1931-01-01']);
  });

  it('the settings are read for every audience, their text only by those who may', () => {
    const files = entries({});
    files['entries/workspace.md'] =
      '---\nid: workspace\ntype: workspace\ntitle: A file\ninstitution: Wexcombe Museum of Art\n---\nAbout the claimant.\n';
    const text = (audience: 'public' | 'internal') =>
      JSON.stringify(computeFiles(files, audience).file.catalogue.workspace?.argument);
    expect(text('public')).not.toContain('claimant');
    expect(text('internal')).toContain('claimant');
  });
});

describe('words of statements that an audience may not see', () => {
  const shownTo = (list: Record<string, string>) => {
    const { file } = computeFiles(entries(list), 'public');
    return JSON.stringify([file.statements.all, trialFileOf(file)]);
  };

  it('a holding that is known, not disclosed, keeps none of the words of its papers', () => {
    const text = shownTo({
      'OB-a': 'type: object\ntitle: A panel',
      'HO-a':
        'type: holding\ntitle: Secret\ncapacity: possessor\nobjects: [OB-a]\naccess: restricted\nnot-disclosed: { ground: asked }\nbegins: [{ date: "1926-05-10", grade: probable, as-written: "bought by Mr Zquill" }]',
    });
    expect(text).toContain('1926');
    expect(text).not.toContain('Zquill');
  });

  it('withheld words go whole, inner quotation marks included', () => {
    const text = shownTo({
      'EV-a':
        'type: event\nkind: removal\ntitle: A\nwithhold: [as-written]\nstated: [{ date: "1926", grade: probable, as-written: \'the year the ”Countess” sold it\' }]',
    });
    expect(text).not.toContain('Countess');
  });

  it('a relation that bounds nothing does not name what is not shown; a withheld inner key takes its statement along', () => {
    const text = shownTo({
      'EV-s': 'type: event\nkind: sale\ntitle: Zsecret sale\naccess: restricted',
      'EV-b': 'type: event\nkind: sale\ntitle: Another sale',
      'EV-a': 'type: event\nkind: removal\ntitle: A\nrelations: [{ bonded-with: EV-s, grade: probable }]',
      'EV-c':
        'type: event\nkind: removal\ntitle: C\nwithhold: [gap]\nrelations: [{ after: EV-b, gap: { max: P10D }, grade: probable }]',
    });
    expect(text).not.toContain('Zsecret');
    expect(text).not.toContain('10 days');
  });

  it('a copied source with a hidden parent may have another root', () => {
    const { file } = computeFiles(
      entries({
        'SO-a': 'type: source\nkind: letter\ntitle: A',
        'SO-h': 'type: source\nkind: letter\ntitle: H\naccess: restricted',
        'SO-c': 'type: source\nkind: list\ntitle: C\nderives-from: [SO-a, SO-h]',
        'EV-a': 'type: event\nkind: removal\ntitle: A\nstated: [{ date: "1926", source: SO-c, grade: probable }]',
      }),
      'public',
    );
    expect(countRoots(file.catalogue, file.statements.used)).toMatchObject({ least: 1, most: 2 });
  });
});

it('a set with an open end goes through the data of the live page unchanged', () => {
  const { file } = computeFiles(
    entries({
      'EV-a':
        'type: event\nkind: removal\ntitle: A\nstated: [{ date: "[1920,1925..]", grade: probable }, { date: "1925", sense: not-before, grade: probable }]',
    }),
  );
  const plain = openTrialFile(trialFileOf(file)).run(NO_CHANGE);
  const throughJson = openTrialFile(JSON.parse(JSON.stringify(trialFileOf(file)))).run(NO_CHANGE);
  expect(throughJson).toEqual(plain);
  expect(plain.contradictions).toEqual([]);
});
