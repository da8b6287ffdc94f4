import { describe, expect, it } from 'vitest';
import { ACCESS, type Access } from '../../src/base/access.ts';
import { GRADES } from '../../src/base/grade.ts';
import { actOf } from '../../src/custody/acts.ts';
import type { CaseFile } from '../../src/findings/case-file.ts';
import { findChains } from '../../src/findings/custody-chains.ts';
import { panelsReport } from '../../src/findings/panels-report.ts';
import { fromTo, sayRange } from '../../src/findings/printed-range.ts';
import { isOfEveryLand } from '../../src/findings/reach.ts';
import { REFERENCE_IDS } from '../../src/findings/reference-dates.ts';
import { testReferences } from '../../src/findings/reference-tests.ts';
import { samePiece } from '../../src/model/pieces.ts';
import { compute } from '../../src/pipeline.ts';
import { composeFile } from '../../src/reports/provenance-file.ts';
import { behindOf } from '../../src/reports/source-book.ts';
import { documentMarkdown } from '../../src/typeset/markdown.ts';
import { inEnglish, LANGUAGES } from '../spoken.ts';
import { workspaceOf } from '../workspace.ts';
import { bareDenials, SHOWN } from './denials.ts';
import { LANDS, lawsIn, randomFile } from './random-files.ts';

const FILES = 200;
const laws = lawsIn(REFERENCE_IDS);

/** Everything found wrong in the files for one audience, by what it is; and what was looked at. */
function lookAt(audience: Access) {
  const wrong: Record<string, string[]> = { denied: [], hinted: [], gaps: [], lands: [], ranges: [], weights: [] };
  const seen = { kept: 0, gaps: 0, acts: 0, lands: 0, ranges: 0, weights: 0, drawn: 0 };
  const blame = (what: keyof typeof wrong, seed: number, words: readonly string[]): void => {
    wrong[what]?.push(...words.map((one) => `${seed}: ${one}`));
  };
  for (let seed = 1; seed <= FILES; seed += 1) {
    const { file, errors } = compute(workspaceOf(randomFile(seed, laws)), audience, { languages: LANGUAGES });
    expect(
      errors.map((one) => inEnglish(one.message)),
      `file ${seed}`,
    ).toEqual([]);
    const object = file.catalogue.get('OB-a');
    if (object?.type !== 'object') continue;
    const document = composeFile(file, object as never, NO_PICTURES, { built: '2024-06-01', version: '0' });
    const text = documentMarkdown(document, behindOf(file)).replace(/\[\^\d+\]:.*$/gm, '');
    if (file.catalogue.holdsMore) {
      seen.kept += 1;
      blame('denied', seed, bareDenials([['file.md', text]]));
    } else if (SHOWN.test(text)) blame('hinted', seed, [SHOWN.exec(text)?.[0] ?? '']);
    seen.drawn += file.catalogue.entries.filter((one) => one.drawnFrom).length;
    blame('gaps', seed, gapsBetweenParties(file, seen));
    blame('lands', seed, outsideTheirLand(file, seen));
    blame('ranges', seed, reversedRanges(file, seen));
    blame('weights', seed, noWeights(panelsReport(file), seen));
  }
  return { wrong, seen };
}

const NO_PICTURES = { chronology: null, chains: null, plates: [] };

/** Gaps that are printed between who gives and who gets by one act that hands a piece on for good. */
function gapsBetweenParties(file: CaseFile, seen: { gaps: number; acts: number }): readonly string[] {
  const acts = file.catalogue.ofType('event').flatMap((event) => actOf(event) ?? []);
  seen.acts += acts.length;
  return findChains(file).flatMap(({ gaps }) =>
    gaps.flatMap((gap) => {
      seen.gaps += 1;
      const between = acts.filter(
        ({ kind, lines }) =>
          kind === 'handed on' &&
          lines.some((one) => one.role === 'gives' && isOf(gap.before, one.party, one.objects)) &&
          lines.some((one) => one.role === 'gets' && isOf(gap.after, one.party, one.objects)),
      );
      // Where a party has the piece twice, which holding an act means may be unclear; then it is a doubt.
      const doubted = new Set(
        file.statements.problems.filter((one) => one.code === 'passage-unclear').map((one) => one.entry),
      );
      const twice = (party: string | undefined): boolean =>
        file.catalogue.ofType('holding').filter((one) => one.keys.holder === party).length > 1;
      return between
        .filter(
          ({ event }) => !doubted.has(event.id) && !twice(gap.before.keys.holder) && !twice(gap.after.keys.holder),
        )
        .map(({ event }) => `${gap.before.id} ${gap.after.id} by ${event.id}`);
    }),
  );
}

function isOf(
  holding: CaseFile['catalogue'] extends never
    ? never
    : { readonly keys: { readonly holder?: string | undefined; readonly objects: readonly string[] } },
  party: string,
  objects: readonly string[],
): boolean {
  return (
    holding.keys.holder === party && holding.keys.objects.some((one) => objects.some((other) => samePiece(one, other)))
  );
}

/** Orders to a land's law for acts at a place that only ever lay under another power. */
function outsideTheirLand(file: CaseFile, seen: { lands: number }): readonly string[] {
  return testReferences(file).flatMap(({ reference, events }) => {
    const { jurisdiction } = reference.row;
    if (!Object.values(LANDS).includes(jurisdiction) || isOfEveryLand(reference.row)) return [];
    return events.flatMap(({ event, answers }) => {
      seen.lands += 1;
      const id = event.keys.kind === 'import' ? (event.keys.to ?? event.keys.place) : event.keys.place;
      const place = file.catalogue.get(id ?? (event.keys.kind === 'removal' ? 'PL-1' : ''));
      const rules = place?.type === 'place' ? ((place.keys as { rule?: { jurisdiction?: string }[] }).rule ?? []) : [];
      const isElsewhere = rules.length > 0 && rules.every((one) => one.jurisdiction !== jurisdiction);
      return isElsewhere && answers.some((one) => one.order !== 'outside') ? [`${event.id} ${reference.id}`] : [];
    });
  });
}

/** Printed ranges that read as ending before they began. */
function reversedRanges(file: CaseFile, seen: { ranges: number }): readonly string[] {
  const { moments } = file.statements;
  return file.catalogue.entries.flatMap((entry) => {
    const own = moments.ofEntry(entry.id);
    const [first, last] = [own[0], own.at(-1)];
    if (!first || !last) return [];
    return GRADES.flatMap((_, rank) => {
      const pairs = [
        ...own.map((one) => file.rangesOf(one)[rank]),
        fromTo(file.rangesOf(first)[rank], file.rangesOf(last)[rank]),
      ];
      return pairs.flatMap((range) => {
        if (!range?.earliest || !range.latest) return [];
        seen.ranges += 1;
        const words = inEnglish(sayRange(range));
        const [from, to] = words.split(/\s?–\s?/).map(dayOfWords);
        return from !== undefined && to !== undefined && from > to ? [`${entry.id}: ${words}`] : [];
      });
    });
  });
}

const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

/** A printed date as a number that grows with time. */
function dayOfWords(words: string): number {
  const [, day = '0', month = '', year = '0'] = /(?:(\d{1,2}) )?(?:([A-Z]\w+) )?(\d{3,4})$/.exec(words) ?? [];
  return Number(year) * 10_000 + (MONTHS.indexOf(month) + 1) * 100 + Number(day);
}

/** Weights of 0 kg, wherever they stand. */
function noWeights(report: unknown, seen: { weights: number }): readonly string[] {
  const found: string[] = [];
  const walk = (value: unknown, key: string): void => {
    if (/Kg$|^kg$/.test(key) && value !== null) {
      seen.weights += 1;
      if (value === 0 || (value as { most?: number }).most === 0) found.push(key);
    }
    if (Array.isArray(value)) for (const one of value) walk(one, key);
    else if (value !== null && typeof value === 'object')
      for (const [name, one] of Object.entries(value)) walk(one, name);
  };
  walk(report, '');
  return found;
}

it('a hidden holding, act or search leaves no mark on passages, drawn holdings and lines: as if it had never been', () => {
  let differing = 0;
  for (let seed = 1; seed <= FILES; seed += 1) {
    const whole = randomFile(seed, laws);
    // What other entries name cannot be taken out alone; holdings, acts and searches are named by none.
    const isKept = ([name, text]: readonly [string, string]): boolean =>
      /(?:PA|OB|PL|SO|PE|workspace)/.test(name) || !/^access: (?:internal|restricted)$/m.test(text);
    const withoutHidden = Object.fromEntries(Object.entries(whole).filter(isKept));
    if (Object.keys(withoutHidden).length < Object.keys(whole).length) differing += 1;
    const told = (files: Readonly<Record<string, string>>) => {
      const { file } = compute(workspaceOf(files), 'public', { languages: LANGUAGES });
      return {
        statements: file.statements.all.map(({ id, grade, links }) => [id, grade, links]),
        holdings: file.catalogue.ofType('holding').map(({ id, keys, drawnFrom }) => [id, keys, drawnFrom]),
        chains: findChains(file).map(({ holdings, gaps }) => [
          holdings.map((one) => one.holding.id),
          gaps.map((gap) => [gap.before.id, gap.after.id, gap.least, gap.most]),
        ]),
      };
    };
    expect(told(whole), `file ${seed}`).toEqual(told(withoutHidden));
  }
  expect(differing).toBeGreaterThan(100);
});

describe.each(ACCESS)('200 random files, for %s readers', (audience) => {
  const { wrong, seen } = lookAt(audience);

  it('there is enough of everything to look at', () => {
    if (audience !== 'restricted') expect(seen.kept).toBeGreaterThan(100);
    for (const what of ['gaps', 'acts', 'lands', 'ranges', 'weights', 'drawn'] as const)
      expect(seen[what], what).toBeGreaterThan(50);
  });

  it.each([
    ['denied', 'no sentence denies over what is kept back'],
    ['hinted', 'no sentence hints where nothing is kept back'],
    ['gaps', 'no gap is printed between the parties of one act'],
    ['lands', 'no law is tested outside its land'],
    ['ranges', 'no range reads as ending before it began'],
    ['weights', 'no weight is 0 kg'],
  ] as const)('%s: %s', (what, _) => {
    expect(wrong[what]).toEqual([]);
  });
});
