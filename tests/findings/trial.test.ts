import { describe, expect, it } from 'vitest';
import { formatTrial, readTrial } from '../../site/trial/trial-state.ts';
import { GRADES } from '../../src/base/grade.ts';
import { buildCaseFile } from '../../src/findings/case-file.ts';
import { whatToCheckFirst } from '../../src/findings/check-first.ts';
import { sayRange } from '../../src/findings/printed-range.ts';
import { testReferences } from '../../src/findings/reference-tests.ts';
import { isUnchanged, NO_CHANGE, openTrialFile, type TrialFile } from '../../src/findings/run-trial.ts';
import { changesOf, summaryOf } from '../../src/findings/trial-changes.ts';
import { trialFileOf } from '../../src/findings/trial-file.ts';
import { clustersOfContradictions, rangeOfEntry } from '../../src/findings/ways-out.ts';
import { english, inEnglish } from '../spoken.ts';
import { computeFiles, filesOf, ROOT } from '../workspace.ts';

const files = filesOf(ROOT);
const { file } = computeFiles(files, 'internal');
/** As the page gets it: through JSON. */
const data = JSON.parse(JSON.stringify(trialFileOf(file))) as TrialFile;

const rangesOf = (made: typeof file, id: string) => {
  const entry = made.catalogue.get(id);
  if (!entry) throw new Error(`no entry ${id}`);
  const moments = made.statements.moments.all.filter((one) => one.entry === id);
  const [starts, ends] = [moments[0], moments.at(-1)].map((moment) => (moment ? made.rangesOf(moment) : []));
  return [starts, ends].map((ranges) => (ranges ?? []).map((one) => [sayRange(one), one.consistent]));
};

describe('the live page against the commands, on the demonstration file', () => {
  it('holds every statement once, under an entry, and no infinite number', () => {
    const placed = data.entries.flatMap((entry) => entry.statements);
    expect(placed.toSorted((a, b) => a - b)).toEqual(data.statements.map((_, i) => i));
    expect(data).toEqual(trialFileOf(file));
  });

  it('each statement withdrawn: ranges, printed words, disputes and contradictions are those of --without', () => {
    const trials = openTrialFile(data);
    let moved = 0;
    const standing = trials.run(NO_CHANGE);
    // Read once: what is withdrawn changes nothing of the reading.
    const whole = computeFiles(files, 'restricted').file.catalogue;
    for (const { id } of data.statements) {
      const without = buildCaseFile(whole, 'internal', english, [id]);
      const trial = trials.run({ withdrawn: [id], grades: {} });
      for (const row of trial.rows) {
        const told = [row.starts, row.ends].map((ranges) => ranges.map((one) => [sayRange(one), one.consistent]));
        expect(told, `${row.id} without ${id}`).toEqual(rangesOf(without, row.id));
      }
      expect(trial.contradictions.map((one) => `${one.kind} ${one.grade} ${one.statements.join(',')}`)).toEqual(
        without.contradictions.map((one) => `${one.kind} ${one.grade} ${one.statements.map((s) => s.id).join(',')}`),
      );
      moved += changesOf(standing, trial).dates.length;
    }
    expect(moved).toBeGreaterThan(100);
  });

  it('the file as published is the published one, also after a trial', () => {
    const trials = openTrialFile(data);
    const before = trials.run(NO_CHANGE);
    trials.run({ withdrawn: ['CL-interview'], grades: {} });
    expect(trials.run(NO_CHANGE)).toBe(before);
    for (const row of before.rows) {
      const told = [row.starts, row.ends].map((ranges) => ranges.map((one) => [sayRange(one), one.consistent]));
      expect(told).toEqual(rangesOf(file, row.id));
    }
  });

  it('rows that a trial leaves alone are the same objects', () => {
    const trials = openTrialFile(data);
    const before = trials.run(NO_CHANGE);
    const after = trials.run({ withdrawn: ['EV-painting#1'], grades: {} });
    const same = after.rows.filter((row, i) => row === before.rows[i]).length;
    expect(same).toBeGreaterThan(30);
    expect(same).toBeLessThan(after.rows.length);
  });

  it('a grade raised decides the order to the law; the change is told', () => {
    const trials = openTrialFile(data);
    const before = trials.run(NO_CHANGE);
    const changes = changesOf(before, trials.run({ withdrawn: [], grades: { 'CL-interview': 'established' } }));
    expect(
      changes.references.map(inEnglish).some((text) => text.includes('Codified law 5351') && text.includes('within')),
    ).toBe(true);
    expect(inEnglish(summaryOf(changes))).toMatch(/^Changed: \d+ dates/);
    expect(inEnglish(summaryOf(changesOf(before, before)))).toBe('No date changes.');
  });

  it('a restricted letter is not in the data of another audience', () => {
    const hidden = computeFiles(files, 'restricted').file.statements.used.filter(
      (one) => !data.statements.some((shown) => shown.id === one.id),
    );
    expect(hidden.length).toBeGreaterThan(0);
    const text = JSON.stringify(data);
    for (const one of hidden) expect(text).not.toContain(`"${one.id}"`);
  });
});

describe('the address of a trial', () => {
  it('holds the state and gives it back', () => {
    const state = { withdrawn: ['CL-ledger', 'EV-removal#2'], grades: { 'CL-interview': 'probable' as const } };
    const address = formatTrial(state);
    expect(readTrial(address, data)).toEqual({ state, unknown: [] });
    expect(readTrial(formatTrial(NO_CHANGE), data)?.state).toEqual(NO_CHANGE);
    expect(readTrial('', data)?.state).toEqual(NO_CHANGE);
  });

  it('names what the file does not hold, and takes nothing else from a hostile address', () => {
    const read = readTrial(
      '#without=CL-nobody,CL-ledger&as=CL-ledger:probable,CL-interview:certain,__proto__:possible',
      data,
    );
    expect(read?.state).toEqual({ withdrawn: ['CL-ledger'], grades: {} });
    expect(read?.unknown).toEqual(['CL-nobody', '__proto__', 'CL-interview:certain']);
    expect(isUnchanged(readTrial('#as=CL-interview:possible', data)?.state ?? NO_CHANGE)).toBe(true);
    expect(readTrial('#main', data)).toBe(null);
  });
});

describe('what hangs on statements, on the demonstration file', () => {
  it('under each way out the dates are those of the file without its statements', () => {
    const clusters = clustersOfContradictions(file);
    expect(clusters.length).toBeGreaterThan(0);
    for (const cluster of clusters) {
      expect(cluster.ways.length).toBeGreaterThan(1);
      const rank = GRADES.indexOf(cluster.grade);
      for (const way of cluster.ways) {
        const without = computeFiles(
          files,
          'internal',
          way.withdrawn.map((one) => one.id),
        ).file;
        expect(way.ranges.map(sayRange)).toEqual(
          cluster.affected.map((entry) => sayRange(rangeOfEntry(without, without.chronology, rank, entry))),
        );
      }
    }
  });

  it('a statement said to decide an order decides it, and one that is not said to does not', () => {
    let decided = 0;
    for (const { reference, events } of testReferences(file)) {
      for (const { event, answers } of events) {
        // Where it is open whether a date speaks of an act at all, the page of trials does not ask.
        if (answers.some((one) => one.decides !== null || one.order === 'outside' || one.order === 'no place'))
          continue;
        for (const { grade, decidedBy } of answers) {
          for (const { order, statements } of decidedBy) {
            const [one] = statements;
            if (!one || !reference.from) continue;
            const trial = openTrialFile(data).run({ withdrawn: [], grades: { [one.id]: 'established' } });
            const answer = trial.answers.find(
              (candidate) => candidate.reference === inEnglish(reference.title) && candidate.entry === event.id,
            );
            const words = { before: 'before', within: 'within', after: 'after', partly: 'partly within' } as const;
            if (one.grade === 'established' || !(order in words)) continue;
            expect(inEnglish(answer?.words[GRADES.indexOf(grade)] ?? '')).toBe(words[order as keyof typeof words]);
            decided += 1;
          }
        }
      }
    }
    expect(decided).toBeGreaterThan(5);
  });

  it('what to check first moves key dates at the printed grade, none of it established, in order', () => {
    const object = file.catalogue.ofType('object').find((one) => one.id === 'OB-lerakos');
    if (!object) throw new Error('no such object');
    const list = whatToCheckFirst(file, object);
    expect(list.length).toBeGreaterThan(5);
    const opened = list.map(({ moved }) => moved.filter((one) => !Number.isFinite(one.after)).length);
    expect(opened).toEqual(opened.toSorted((a, b) => b - a));
    for (const { statement, moved } of list) {
      expect(statement.grade).not.toBe('established');
      expect(moved.every((one) => object.keys['key-events']?.includes(one.at.entry) && one.rank === 1)).toBe(true);
    }
  });
});
