import { inRow, phrase, type Said } from '../base/said.ts';
import type { Stretch } from '../findings/chain.ts';
import { sayExactly, sayStretch } from '../findings/custody-words.ts';
import { BANDS, type Band, type Step } from '../findings/four-chains.ts';
import { type NamedDay, place, type Ruling, ruleWindow, WIDE, windowOf } from './chronology-drawing.ts';

/** A step as it is drawn: stretches across the drawing, and words. */
export interface ChainRow {
  readonly step: Step;
  readonly y: number;
  readonly label: Said;
  readonly years: Said;
  /** From x to x; null where it lies outside what is drawn. */
  readonly possibly: {
    readonly x1: number;
    readonly x2: number;
    readonly openLeft: boolean;
    readonly openRight: boolean;
  } | null;
  readonly throughout: { readonly x1: number; readonly x2: number } | null;
  /** Middle of a stretch in which it was so at some time. */
  readonly recordedAt: number | null;
  /** Lies before (after) the stretch of time that is drawn. */
  readonly outside: 'before' | 'after' | null;
  readonly sentence: Said;
}

/** One chain: its name and its rows. */
export interface ChainBand {
  readonly band: Band;
  readonly top: number;
  readonly rows: readonly ChainRow[];
}

/** Four chains on one axis. */
export interface ChainsDrawing {
  readonly ruling: Ruling;
  readonly bands: readonly ChainBand[];
  readonly top: number;
  readonly bottom: number;
}

const ROW = 22;
const HEAD = 38;

/** Lays out the four chains of an object: one scale, a band for each chain that has a step. */
export function layOutChains(steps: readonly Step[], references: readonly NamedDay[], top: number): ChainsDrawing {
  const days = steps.flatMap(({ possibly, throughout, recorded }) =>
    [possibly.first, possibly.last, throughout?.first, throughout?.last, recorded?.first, recorded?.last].filter(
      (day): day is number => day !== undefined && Number.isFinite(day),
    ),
  );
  const ruling = ruleWindow(windowOf(days), references, WIDE);
  let y = top;
  const bands = BANDS.flatMap((band): readonly ChainBand[] => {
    const own = steps.filter((step) => step.band === band);
    if (own.length === 0) return [];
    const bandTop = y;
    const rows = own.map((step, i) => layOutStep(step, ruling, bandTop + HEAD + i * ROW));
    y = bandTop + HEAD + own.length * ROW + 6;
    return [{ band, top: bandTop, rows }];
  });
  return { ruling, bands, top, bottom: y };
}

function layOutStep(step: Step, ruling: Ruling, y: number): ChainRow {
  const { window } = ruling;
  const { possibly, throughout, recorded } = step;
  const outside = possibly.last < window.first ? 'before' : possibly.first > window.last ? 'after' : null;
  const x = (day: number): number => place(ruling, day);
  const label = step.panels.length > 0 ? phrase('{0}: {1}', step.panels.join(', '), step.name) : step.name;
  const isOpen = !Number.isFinite(possibly.first) && !Number.isFinite(possibly.last);
  const years = isOpen && recorded ? phrase('recorded {0}', sayStretch(recorded)) : sayStretch(possibly);
  const certainly =
    throughout && !outside
      ? { x1: x(throughout.first), x2: Math.max(x(throughout.last), x(throughout.first) + 3) }
      : null;
  return {
    step,
    y,
    label,
    years,
    possibly: outside
      ? null
      : {
          x1: x(possibly.first),
          x2: Math.max(x(possibly.last), x(possibly.first) + 3),
          openLeft: possibly.first < window.first,
          openRight: possibly.last > window.last,
        },
    throughout: certainly,
    recordedAt: recorded ? x((recorded.first + recorded.last) / 2) : null,
    outside,
    sentence: phrase(
      '{0}: {1}',
      label,
      inRow(
        [
          throughout ? sayThroughout(step, throughout) : '',
          step.band === 'title' ? phrase('asserted for {0}', years) : phrase('possibly {0}', years),
        ],
        '; ',
      ),
    ),
  };
}

function sayThroughout({ is }: Step, throughout: Stretch): Said {
  const when = sayExactly(throughout);
  return is === 'act' ? phrase('under way {0}', when) : phrase('held throughout {0}', when);
}
