import { describe, expect, it } from 'vitest';
import { supportOf } from '../../src/findings/company.ts';
import { countRoots, restingOnAlone, rootsOf, sayRootCount } from '../../src/findings/independence.ts';
import { inEnglish } from '../spoken.ts';
import { computeFiles, entries } from '../workspace.ts';

const source = (from = '') => `type: source\nkind: catalogue\ntitle: A paper\n${from}`;
const event = (stated: readonly string[]) =>
  `type: event\nkind: removal\ntitle: Taken off\nstated:\n${stated.map((one) => `  - { ${one}, grade: probable }`).join('\n')}`;

/** Five catalogues that repeat one invoice, one paper of unknown parentage, one that joins two. */
const file = entries({
  'SO-invoice': source(),
  'SO-cat-1': source('derives-from: [SO-invoice]'),
  'SO-cat-2': source('derives-from: [SO-invoice]'),
  'SO-cat-3': source('derives-from: [SO-cat-1]'),
  'SO-cat-4': source('derives-from: [SO-cat-3, SO-cat-2]'),
  'SO-letter': source(),
  'SO-stray': source('derives-from: unknown'),
  'SO-book': source('derives-from: [SO-cat-4, SO-letter]'),
  'EV-a': event(['date: "1926", sense: by, source: SO-cat-1', 'date: "1926", sense: by, source: SO-cat-4']),
  'EV-b': event(['date: "1926", sense: by, source: SO-cat-2', 'date: "1926", sense: by, source: SO-letter']),
  'EV-c': event(['date: "1926", sense: by, source: SO-cat-1', 'date: "1926", sense: by, source: SO-stray']),
  'EV-d': event(['date: "1926", sense: by, source: SO-book', 'date: "1920", sense: not-before']),
});

describe('independence', () => {
  const { file: made, problems } = computeFiles(file);
  const { catalogue, statements, settings } = made;
  const about = (id: string) => statements.used.filter((one) => one.entry === id);

  it('the example is a file without errors', () => {
    expect(problems.filter((one) => one.severity === 'error')).toEqual([]);
    expect(settings.printedGrade).toBe('probable');
  });

  it('copies go back to one root, also through each other and along two ways', () => {
    expect([...rootsOf(catalogue, 'SO-cat-4').known]).toEqual(['SO-invoice']);
    expect([...rootsOf(catalogue, 'SO-invoice').known]).toEqual(['SO-invoice']);
    expect([...rootsOf(catalogue, 'SO-book').known].toSorted()).toEqual(['SO-invoice', 'SO-letter']);
  });

  it('five statements of five catalogues are one root; a paper of unknown parentage gives a range', () => {
    expect(countRoots(catalogue, about('EV-a'))).toMatchObject({ sourced: 2, least: 1, most: 1 });
    expect(countRoots(catalogue, about('EV-b'))).toMatchObject({ sourced: 2, least: 2, most: 2 });
    expect(countRoots(catalogue, about('EV-c'))).toMatchObject({ sourced: 2, least: 1, most: 2 });
    expect(inEnglish(sayRootCount(countRoots(catalogue, about('EV-a'))))).toBe(
      'Two sourced statements, one independent origin',
    );
    expect(inEnglish(sayRootCount(countRoots(catalogue, about('EV-c'))))).toBe(
      'Two sourced statements, one to two independent origins',
    );
    expect(inEnglish(sayRootCount(countRoots(catalogue, about('EV-d'))))).toBe(
      'One sourced statement, two independent origins; one that names no source',
    );
  });

  it('what goes back to a root alone falls with it; what joins two does not', () => {
    const resting = restingOnAlone(catalogue, statements.used, 'SO-invoice').map((one) => one.source);
    expect(resting.toSorted()).toEqual(['SO-cat-1', 'SO-cat-1', 'SO-cat-2', 'SO-cat-4']);
  });

  it('a bound held twice says whether by one root', () => {
    const end = (id: string) => {
      const moment = statements.moments.momentOf(id, 'end');
      if (!moment) throw new Error('no such moment');
      return supportOf(made, moment, 1, 'latest');
    };
    const ids = (list: readonly { readonly id: string }[]) => list.map((one) => one.id);
    const [twice, apart, perhaps] = [end('EV-a'), end('EV-b'), end('EV-c')];
    expect(ids(twice.sole)).toEqual([]);
    expect(twice.company.map((one) => [ids(one.spared), ids(one.instead), one.oneRoot, one.perhapsOneRoot])).toEqual([
      [['EV-a#1'], ['EV-a#2'], ['SO-invoice'], false],
    ]);
    expect(apart.company.map((one) => [one.oneRoot, one.perhapsOneRoot])).toEqual([[[], false]]);
    expect(perhaps.company.map((one) => [one.oneRoot, one.perhapsOneRoot])).toEqual([[[], true]]);
    expect(ids(end('EV-d').sole)).toEqual(['EV-d#1']);
  });

  it('a statement is not said to have company in what contradicts it', () => {
    const { file: made } = computeFiles(
      entries({
        'EV-a':
          'type: event\nkind: removal\ntitle: A\nstated: [{ date: "1926", grade: established }, { date: "1926/1930", grade: possible }]',
      }),
    );
    const moment = made.statements.moments.momentOf('EV-a', 'start');
    if (!moment) throw new Error('no such moment');
    const { sole, company } = supportOf(made, moment, 2, 'earliest');
    expect(sole).toEqual([]);
    expect(company.map((one) => [one.spared.map((s) => s.id), one.instead.map((s) => s.id), one.freed])).toEqual([
      [['EV-a#1'], ['EV-a#2'], true],
    ]);
  });

  it('a circle of copies is an error and does not hang', () => {
    const { problems: found } = computeFiles(
      entries({ 'SO-a': source('derives-from: [SO-b]'), 'SO-b': source('derives-from: [SO-a]') }),
    );
    expect(found.filter((one) => one.severity === 'error').map((one) => one.code)).toEqual([
      'copies-in-a-circle',
      'copies-in-a-circle',
    ]);
  });
});
