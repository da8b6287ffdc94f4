import { oncePer } from '../base/once.ts';
import { type Catalogue, partsOfObject } from './catalogue.ts';

/** An object, its panel (`OB-x/A`) and a section of that (`OB-x/A.7`) are the same piece; two panels or two sections are not. */
export function samePiece(a: string, b: string): boolean {
  return a === b || isPartOf(a, b) || isPartOf(b, a);
}

function isPartOf(part: string, whole: string): boolean {
  return part.startsWith(`${whole}/`) || (whole.includes('/') && part.startsWith(`${whole}.`));
}

/** True where a piece is another one, or a part of it. */
export function isWithin(piece: string, other: string): boolean {
  return piece === other || isPartOf(piece, other);
}

/**
 * The pieces of an object that can part company: its panels, or their sections where it has any; the object itself
 * where it has no panels.
 */
export function smallestPieces(catalogue: Catalogue, object: string): readonly string[] {
  return piecesByObject(catalogue).get(object) ?? [];
}

const piecesByObject = oncePer(
  (catalogue: Catalogue): ReadonlyMap<string, readonly string[]> =>
    new Map(
      catalogue.ofType('object').map((object) => {
        const parts = partsOfObject(object).map((part) => `${object.id}/${part}`);
        const smallest = parts.filter((one) => !parts.some((other) => other !== one && isPartOf(other, one)));
        return [object.id, smallest.length === 0 ? [object.id] : smallest];
      }),
    ),
);

/** Smallest pieces under the names of the largest that they make up: all sections of a panel are the panel, all panels the object. */
export function namedWhole(catalogue: Catalogue, pieces: readonly string[]): readonly string[] {
  const have = new Set(pieces);
  const named: string[] = [];
  for (const id of new Set(pieces.map((one) => one.split('/')[0] as string))) {
    const smallest = smallestPieces(catalogue, id);
    const object = catalogue.get(id);
    if (smallest.every((one) => have.has(one))) named.push(id);
    else if (object?.type === 'object') {
      const own = smallest.filter((one) => have.has(one));
      const panels = [...new Set(own.map((one) => one.split('.')[0] as string))];
      for (const panel of panels) {
        const ofPanel = smallest.filter((one) => isWithin(one, panel));
        named.push(...(ofPanel.every((one) => have.has(one)) ? [panel] : ofPanel.filter((one) => have.has(one))));
      }
    }
  }
  return named;
}
