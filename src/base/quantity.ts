import type { Interval } from './interval.ts';

const MILLIMETRES: Readonly<Record<string, number>> = { mm: 1, cm: 10, m: 1000, in: 25.4, ft: 304.8 };
const KILOGRAMS: Readonly<Record<string, number>> = { kg: 1, g: 0.001, lb: 0.45359237 };

const NUMBER = String.raw`(\d+(?:[.,]\d+)?)`;

/** A length as written, `40 mm`, `38 to 44 mm`, `1 1/4` not included; in millimetres. Null where it is none. */
export function parseLengthMm(text: string): Interval | null {
  return parse(text, MILLIMETRES);
}

/** A weight as written, `74 kg`, `150-160 lb`; in kilograms. Null where it is none. */
export function parseWeightKg(text: string): Interval | null {
  return parse(text, KILOGRAMS);
}

/** A section as written, `30 x 5 mm`; its area in square millimetres. Null where it is none. */
export function parseSectionMm2(text: string): number | null {
  const size = parseSizeMm(text);
  return size === null ? null : size[0] * size[1];
}

/** A size as written, `134 x 73 cm`; both measures in millimetres. Null where it is none. */
export function parseSizeMm(text: string): readonly [number, number] | null {
  const found = new RegExp(`^${NUMBER} ?[x×] ?${NUMBER} ?(mm|cm|m|in|ft)\\b`).exec(text.trim());
  if (!found) return null;
  const unit = MILLIMETRES[found[3] as string] as number;
  return [read(found[1]) * unit, read(found[2]) * unit];
}

/** A density as written, `1200-1800 kg/m3`; in kilograms a cubic metre. Null where it is none. */
export function parseDensity(text: string): Interval | null {
  const found = new RegExp(`^${NUMBER}(?: ?(?:-|–|to) ?${NUMBER})? ?kg/m(?:3|³)`).exec(text.trim());
  if (!found) return null;
  return { least: read(found[1]), most: read(found[2] ?? found[1]) };
}

function parse(text: string, units: Readonly<Record<string, number>>): Interval | null {
  const found = new RegExp(
    `^(?:about |c\\.? ?)?${NUMBER}(?: ?(?:-|–|to) ?${NUMBER})? ?(${Object.keys(units).join('|')})\\b`,
  ).exec(text.trim());
  if (!found) return null;
  const unit = units[found[3] as string] as number;
  return { least: read(found[1]) * unit, most: read(found[2] ?? found[1]) * unit };
}

function read(text: string | undefined): number {
  return Number((text ?? '').replace(',', '.'));
}
