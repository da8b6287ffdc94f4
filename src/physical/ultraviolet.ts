import type { Grade } from '../base/grade.ts';
import type { Said } from '../base/said.ts';
import type { Catalogue } from '../model/catalogue.ts';
import type { Entry } from '../model/entry.ts';
import { citationOf } from '../model/row-citation.ts';
import table from '../reference/uv-looks.json' with { type: 'json' };

/** A material known to look as a trace was seen to look under ultraviolet. */
export interface UltravioletMatch {
  readonly material: string;
  readonly look: string;
  readonly strength: string;
  readonly observedOn: string;
  readonly note: string;
  /** What is cited for the row of the table. */
  readonly source: Said;
  /** At most `possible`: a glow alone never names a material. */
  readonly grade: Grade;
}

/** What a trace looks like under ultraviolet, and what is known to look so. */
export interface UltravioletReading {
  readonly trace: Entry<'evidence'>;
  readonly colour: string;
  readonly strength: 'none' | 'weak' | 'medium' | 'strong';
  readonly grade: Grade;
  /** As recorded with the trace, else with its examination; null where nobody wrote it down. */
  readonly lamp: string | null;
  readonly filter: string | null;
  readonly matches: readonly UltravioletMatch[];
}

/** Colour words of the observations and of the table, brought to one word each. */
const HUES: Readonly<Record<string, readonly string[]>> = {
  yellow: ['yellow', 'yellowish', 'lemon'],
  green: ['green', 'greenish'],
  blue: ['blue', 'bluish'],
  white: ['white', 'whitish', 'milky', 'cream'],
  orange: ['orange'],
  pink: ['pink', 'pinkish'],
  red: ['red', 'reddish'],
  violet: ['violet', 'purple'],
  dark: ['dark', 'black', 'absorbs', 'none', 'dull'],
};

const STRENGTHS = ['none', 'weak', 'medium', 'strong'] as const;

/** Readings of all traces whose look under ultraviolet was recorded. */
export function readUltraviolet(catalogue: Catalogue): readonly UltravioletReading[] {
  return catalogue.ofType('evidence').flatMap((trace): readonly UltravioletReading[] => {
    const { glow } = trace.keys;
    if (!glow) return [];
    const examination = catalogue.get(glow.examination ?? trace.keys.examination ?? '');
    const keys = examination?.type === 'examination' ? (examination as Entry<'examination'>).keys : null;
    const underUltraviolet = keys?.technique.includes('ultraviolet') ? keys : null;
    return [
      {
        trace,
        colour: glow.colour,
        strength: glow.strength,
        grade: glow.grade,
        lamp: glow.lamp ?? underUltraviolet?.lamp ?? null,
        filter: glow.filter ?? underUltraviolet?.filter ?? null,
        matches: matchGlow(glow.colour, glow.strength),
      },
    ];
  });
}

/**
 * Rows of the reference table that fit a colour and a strength: at least one hue in common, and the strength equal or one
 * step beside it (a strength is judged by eye). Rows that the table does not suggest from, because they are too broad
 * or reports differ, are left out. Observed on a wall and well known: possible; all else conjectural.
 * @example matchGlow('bright orange', 'strong') // shellac
 */
export function matchGlow(colour: string, strength: (typeof STRENGTHS)[number]): readonly UltravioletMatch[] {
  const seen = huesOf(colour);
  return table
    .filter((row) => row.suggest === 'yes' && fitsStrength(row.strength, strength))
    .filter((row) => [...huesOf(row.lookUnderLongwaveUv)].some((hue) => seen.has(hue)))
    .map((row) => ({
      material: row.material,
      look: row.lookUnderLongwaveUv,
      strength: row.strength,
      observedOn: row.observedOn,
      note: row.note,
      source: citationOf(row),
      grade: /wall|general/.test(row.observedOn) && row.howSure !== 'doubtful' ? 'possible' : 'conjectural',
    }));
}

function huesOf(words: string): ReadonlySet<string> {
  const parts = words.toLowerCase().split(/[^a-z]+/);
  return new Set(Object.entries(HUES).flatMap(([hue, list]) => (list.some((one) => parts.includes(one)) ? [hue] : [])));
}

function fitsStrength(row: string, seen: (typeof STRENGTHS)[number]): boolean {
  const at = STRENGTHS.indexOf(row as (typeof STRENGTHS)[number]);
  return at === -1 || Math.abs(at - STRENGTHS.indexOf(seen)) <= (seen === 'none' || row === 'none' ? 0 : 1);
}
