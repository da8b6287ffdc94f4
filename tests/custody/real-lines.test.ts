import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { lazily } from '../../src/base/once.ts';
import type { ReadLine } from '../../src/custody/line-types.ts';
import { readLine } from '../../src/custody/read-line.ts';
import { writeLine } from '../../src/custody/write-line.ts';
import { cpuSecondsOf } from '../folders.ts';
import { SHARED } from '../workspace.ts';

/*
 * Provenance lines as museums published them, CC0-1.0 (Carnegie Museum of Art, collection data, 2017; National Gallery of Art, open data, 2023), with a
 * truth made by hand by somebody outside this project. They are read where they lie and nothing of them is copied. The same words
 * may be counted right in more than one spelling only where this file says so.
 */

const folder = path.join(SHARED, 'real');
const there = existsSync(path.join(folder, 'dev-30.jsonl'));
if (!there) console.log('The real provenance lines are not beside this checkout; their tests are left out.');

interface Truth {
  readonly id: string;
  readonly holdings: readonly {
    readonly holder: string | null;
    readonly 'passage-to-next': string | null;
    readonly begins: { readonly earliest: number | null; readonly latest: number | null };
    readonly ends: { readonly earliest: number | null; readonly latest: number | null };
  }[];
}

const ALL_LINES = 'provenance-lines.jsonl';

const linesOf = (file: string): readonly { readonly id: string; readonly text: string }[] =>
  readFileSync(path.join(folder, file), 'utf8')
    .split('\n')
    .filter((one) => one.trim() !== '')
    .map((one) => JSON.parse(one));

/** Every character of the text is in a holding, a note, the kept text, or is a mark, a note number or a blank between them. */
function strayText(text: string): string {
  const read = readLine(text);
  const left = [...text];
  const clear = ([from, to]: readonly [number, number]): void => {
    let unit = 0;
    left.forEach((one, i) => {
      if (unit >= from && unit < to) left[i] = ' ';
      unit += one.length;
    });
  };
  for (const one of read.holdings) clear(one.span);
  for (const one of read['note-texts']) clear(one.span);
  for (const one of read['kept-as-text']) clear(one.span);
  return left
    .join('')
    .replace(/notes?\s*:/gi, '')
    .replace(/\[?\d{1,3}\]?\s*[.)]?/g, '')
    .replace(/[\s;.]/g, '');
}

/** The lines that keep to the convention, each as it is read and as it is written again: several tests ask about them. */
const conforming = lazily(() =>
  linesOf(ALL_LINES).flatMap(({ id, text }) => {
    const read = readLine(text);
    if (!read['keeps-convention'] || read.holdings.length === 0) return [];
    const once = writeLine(read.holdings, read['note-texts']);
    return [{ id, read, once, again: readLine(once) }];
  }),
);

describe.skipIf(!there)('real provenance lines', () => {
  it('the thirty open lines: holdings, holders, passages, years', () => {
    const truth = new Map(
      (JSON.parse(readFileSync(path.join(folder, 'dev-30.truth.json'), 'utf8')) as Truth[]).map((one) => [one.id, one]),
    );
    const counts = { lines: 0, linesRight: 0, holdings: 0, holders: 0, passages: 0, years: 0 };
    const wrong: string[] = [];
    for (const { id, text } of linesOf('dev-30.jsonl')) {
      const wanted = truth.get(id);
      if (!wanted) throw new Error(id);
      const { holdings } = readLine(text);
      counts.lines += 1;
      if (holdings.length !== wanted.holdings.length) {
        wrong.push(
          `${id}: ${holdings.length} holdings for ${wanted.holdings.length}: ${holdings.map((one) => one.holder).join(' | ')}`,
        );
        continue;
      }
      counts.linesRight += 1;
      wanted.holdings.forEach((one, i) => {
        const read = holdings[i];
        counts.holdings += 1;
        const holder = read?.holder === (one.holder ?? '');
        const passage = read?.['passage-to-next'] === one['passage-to-next'];
        const years = JSON.stringify([read?.begins, read?.ends]) === JSON.stringify([one.begins, one.ends]);
        if (holder) counts.holders += 1;
        if (passage) counts.passages += 1;
        if (years) counts.years += 1;
        if (!holder) wrong.push(`${id} ${i + 1}: holder ${read?.holder} for ${one.holder}`);
        if (!passage) wrong.push(`${id} ${i + 1}: passage ${read?.['passage-to-next']} for ${one['passage-to-next']}`);
        if (!years)
          wrong.push(
            `${id} ${i + 1}: years ${JSON.stringify([read?.begins, read?.ends])} for ${JSON.stringify([one.begins, one.ends])}`,
          );
      });
    }
    const share = (a: number, b: number): string => `${a} of ${b} (${((100 * a) / b).toFixed(1)} %)`;
    console.log(
      `Real lines: holdings right in ${share(counts.linesRight, counts.lines)}; in those holders ${share(counts.holders, counts.holdings)}, passages ${share(counts.passages, counts.holdings)}, years ${share(counts.years, counts.holdings)}`,
    );
    for (const one of wrong) console.log(`  ${one}`);
    expect(counts.lines).toBe(30);
    expect(counts.linesRight / counts.lines).toBeGreaterThanOrEqual(0.9);
    expect(counts.holders / counts.holdings).toBeGreaterThanOrEqual(0.95);
    expect(counts.passages / counts.holdings).toBeGreaterThanOrEqual(0.97);
    expect(counts.years / counts.holdings).toBeGreaterThanOrEqual(0.95);
  });

  it('all of them: no crash, every character accounted for, in under ten seconds of work', async () => {
    const lines = linesOf(ALL_LINES);
    expect(lines.length).toBeGreaterThan(1900);
    const seconds = await cpuSecondsOf(() => {
      const stray = lines.flatMap(({ id, text }) => {
        const left = strayText(text);
        return left === '' ? [] : [`${id}: ${left}`];
      });
      expect(stray).toEqual([]);
    });
    expect(seconds).toBeLessThan(10);
  });

  it('a line that is written, read and written again is the same line, where the reader calls it conforming', () => {
    const lines = conforming();
    const different = lines.flatMap(({ id, once, again }) => {
      const twice = writeLine(again.holdings, again['note-texts']);
      return once === twice ? [] : [`${id}\n    ${once.split('\n')[0]}\n    ${twice.split('\n')[0]}`];
    });
    console.log(
      `Real lines: ${lines.length} conforming; written, read and written again the same: ${lines.length - different.length}`,
    );
    for (const one of different.slice(0, 25)) console.log(`  ${one}`);
    expect(lines.length).toBeGreaterThan(1000);
    expect(different).toEqual([]);
  });

  it('so is one written in the other house styles: latest first, marks exchanged', () => {
    const styles = [
      { order: 'latest first', marks: 'semicolon is direct' },
      { order: 'earliest first', marks: 'period is direct' },
      { order: 'latest first', marks: 'period is direct' },
    ] as const;
    for (const style of styles) {
      const lines = conforming().filter(({ read }) => read.holdings.length >= 2);
      const compared = lines.length;
      const key = (one: ReadLine): string =>
        JSON.stringify(one.holdings.map((h) => [h.holder.toLowerCase(), h['passage-to-next'], h.begins, h.ends]));
      const different = lines.filter(({ read, again }) => {
        const written = writeLine(read.holdings, read['note-texts'], style);
        return key(readLine(written, style)) !== key(again);
      });
      console.log(
        `Real lines, ${style.order}, ${style.marks}: ${compared - different.length} of ${compared} read back with the same holders, passages and years`,
      );
      expect(compared).toBeGreaterThan(1000);
      expect(different.length / compared).toBeLessThan(0.02);
    }
  });

  it("the museum's own rows: agreement is printed as a second opinion, not asserted", () => {
    const rows = JSON.parse(readFileSync(path.join(folder, 'nga-own-structure.dev.json'), 'utf8')) as Record<
      string,
      readonly { readonly holder: string; readonly 'begins-year': number | null; readonly 'ends-year': number | null }[]
    >;
    const lines = new Map(linesOf('dev-30.jsonl').map((one) => [one.id, one.text]));
    const found = { lines: 0, sameNumber: 0, rows: 0, holder: 0, begins: 0, beginsOf: 0, ends: 0, endsOf: 0 };
    const bare = (name: string): string =>
      name
        .toLowerCase()
        .replace(/[^\p{L}]+/gu, ' ')
        .trim();
    for (const [id, own] of Object.entries(rows)) {
      const text = lines.get(id);
      if (text === undefined) continue;
      const { holdings } = readLine(text);
      found.lines += 1;
      if (holdings.length === own.length) found.sameNumber += 1;
      for (const row of own) {
        found.rows += 1;
        const last = bare(row.holder).split(' ').at(-1) ?? '';
        const read = holdings.find((one) => bare(one.holder).split(' ').includes(last));
        if (!read) continue;
        found.holder += 1;
        if (row['begins-year'] !== null) {
          found.beginsOf += 1;
          if (read.begins.latest === row['begins-year']) found.begins += 1;
        }
        if (row['ends-year'] !== null) {
          found.endsOf += 1;
          // Their rows carry the next beginning as the end, where the passage was direct.
          const next =
            read['passage-to-next'] === 'direct' ? holdings[holdings.indexOf(read) + 1]?.begins.latest : null;
          if ((read.ends.latest ?? next) === row['ends-year']) found.ends += 1;
        }
      }
    }
    console.log(
      `The museum's own rows (a second opinion): ${found.lines} lines, the same number of holdings in ${found.sameNumber}; ${found.holder} of ${found.rows} holders found; begin years ${found.begins} of ${found.beginsOf}, end years ${found.ends} of ${found.endsOf} the same`,
    );
    expect(found.lines).toBeGreaterThan(5);
  });
});
