import { GRADES } from '../base/grade.ts';
import type { Entry, Keys } from '../model/entry.ts';
import { SHEET_WORDS } from '../model/sheet-columns.ts';
import { EVIDENCE_KINDS, SEEN_UNDER } from '../model/types/evidence.ts';

type Panel = NonNullable<Keys<'object'>['panels']>[number];

/** A column of the sheet and of the table: the key of `evidence`, what is written on paper, its width in mm. */
export interface SheetColumn {
  readonly key: string;
  readonly words: string;
  readonly widthMm: number;
}

const WIDTHS_MM: Readonly<Record<(typeof SHEET_WORDS)[number][0], number>> = {
  id: 18,
  title: 40,
  kind: 23,
  face: 14,
  where: 37,
  'seen-under': 18,
  'observed.text': 52,
  'observed.grade': 11,
  thickness: 16,
  over: 13,
  cuts: 12,
  fills: 13,
};

/** The columns of a survey by hand, in the order in which one looks; 267 mm together, an A4 sheet on its side. */
export const SHEET_COLUMNS: readonly SheetColumn[] = SHEET_WORDS.map(([key, words]) => ({
  key,
  words,
  widthMm: WIDTHS_MM[key],
}));

/** Scales of the sketch, as the divisor of true size. */
const SCALES = [1, 2, 5, 10, 20, 25, 50, 100, 200] as const;

/** Room for each of the two sketches, in mm. */
const ROOM = { width: 128, height: 149 };

/** The head of a survey table to type the sheet into: the same columns, no row. */
export function sheetTable(): string {
  return `${SHEET_COLUMNS.map((one) => one.key).join(',')}\n`;
}

/**
 * What the printed sheet says, as JSON for the typesetter: the head to fill in, columns, words that may be written, and
 * the outline of the panel for a sketch of front and back, where its size is known.
 */
export function sheetData(
  object: Entry<'object'> | null,
  panel: Panel | null,
  title: string,
  institution: string,
  rows: number,
): string {
  const [width, height] = [panel?.width ?? null, panel?.height ?? null];
  const scale = width !== null && height !== null ? scaleFor(width, height) : null;
  return JSON.stringify({
    institution,
    object: object ? `${title} (${object.id})` : '',
    panel: panel ? `${panel.id}${panel.label ? `, ${panel.label}` : ''}` : '',
    columns: SHEET_COLUMNS.map(({ words, widthMm }) => ({ words, width: widthMm })),
    rows,
    kinds: EVIDENCE_KINDS.join(', '),
    faces: 'front, back, top, right, bottom, left, within',
    lights: SEEN_UNDER.join(', '),
    grades: GRADES.join(', '),
    sketch: scale === null || width === null || height === null ? null : { width, height, scale },
  });
}

/** The largest scale at which a panel fits into the room of a sketch; the smallest one where none does. */
function scaleFor(width: number, height: number): number {
  return SCALES.find((one) => width / one <= ROOM.width && height / one <= ROOM.height) ?? 200;
}
