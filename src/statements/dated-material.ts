import { type Grade, gradeOfRank, lowestGrade, rankOf } from '../base/grade.ts';
import { nearest } from '../base/nearest.ts';
import { inRow, named, phrase, type Said } from '../base/said.ts';
import type { Entry } from '../model/entry.ts';
import table from '../reference/dated-materials.json' with { type: 'json' };

/** A row of the table of dated materials. */
export type DatedMaterial = (typeof table)[number];

/** A material as a trace names it. */
export type NamedMaterial = NonNullable<Entry<'evidence'>['keys']['materials']>[number];

/** Which identifications suffice where the table needs one: an element tells no class and no crystal form. */
const SUFFICES: Readonly<Record<NamedMaterial['identified-as'], readonly NamedMaterial['identified-as'][]>> = {
  'crystal form': ['crystal form'],
  compound: ['crystal form', 'compound'],
  element: ['crystal form', 'compound', 'element'],
  class: ['crystal form', 'compound', 'class'],
  look: ['crystal form', 'compound', 'element', 'class', 'look'],
};

/** The table of dated materials, each row with source, standing and how sure it is. */
export const DATED_MATERIALS: readonly DatedMaterial[] = table;

/** Finds the row of a material by its name or id; words may come in another order. */
export function findMaterial(name: string): DatedMaterial | null {
  const wanted = wordsOf(name);
  return table.find((row) => wordsOf(row.material) === wanted || row.id === name.trim().toLowerCase()) ?? null;
}

/** Names in the table that look like the one given. */
export function nearMaterials(name: string): readonly string[] {
  return nearest(
    name,
    table.map((row) => row.material),
  );
}

/** `Titanium white, anatase` and `Titanium white, made, anatase` are the same row. */
function wordsOf(name: string): string {
  const parts = name.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
  return parts
    .filter((word) => word !== 'made')
    .sort()
    .join(' ');
}

/**
 * Grade of the bound that a dated material gives: the lowest of the identification, the row's cap
 * (high: established; medium or from memory: probable; doubtful: possible) and the ceilings for a
 * coarser identification than the row needs, and for materials that also occur in nature.
 */
export function gradeOfMaterial(
  material: NamedMaterial,
  row: DatedMaterial,
): { readonly grade: Grade; readonly note: Said } {
  const notes: Said[] = [];
  const caps: Grade[] = [material.grade];
  const cap = rowCap(row);
  if (rankOf(cap) > rankOf(material.grade))
    notes.push(
      row.standing === 'memory'
        ? phrase('the year is {0} and not verified in the table', named(row.howSure))
        : phrase('the year is {0} in the table', named(row.howSure)),
    );
  caps.push(cap);
  if (!SUFFICES[row.needs as keyof typeof SUFFICES].includes(material['identified-as'])) {
    caps.push('possible');
    notes.push(phrase('identified as {0}, where {1} is needed', named(material['identified-as']), named(row.needs)));
  }
  if (row.naturalOrAncient && material['natural-form-excluded'] === undefined) {
    caps.push('possible');
    notes.push(phrase('it also occurs in nature or antiquity'));
  }
  return { grade: lowestGrade(...caps), note: inRow(notes, '; ') };
}

function rowCap(row: DatedMaterial): Grade {
  const byCertainty = row.howSure === 'high' ? 0 : row.howSure === 'medium' ? 1 : 2;
  return gradeOfRank(Math.max(byCertainty, row.standing === 'memory' ? 1 : 0));
}
